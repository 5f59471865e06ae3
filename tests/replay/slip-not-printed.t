# A slip's code proves a paper only once that paper was made, and by its own six digits; a copy that never was proves
# nothing, and one that the record does not know, though its digits are right, is newer than the record.
begins from count-agreed
printer off
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:520 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
> slip 1
refused: Slip 0000001, copy 1, was not printed yet: a typed or copied code proves no paper. Wait for it.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Slip 0000001, copy 1, was not printed yet: a typed or copied code proves no paper. Wait for it."
> slip 1 copy 7 digits 1
refused: Slip 0000001 has no copy 7: this paper is not ours. Put the right slip in the notes.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Slip 0000001 has no copy 7: this paper is not ours. Put the right slip in the notes."
> slip 1 digits 1
refused: Slip 0000001, copy 1, is not ours: its six digits are not this station's. Find out where it comes from, and put the right slip in the notes.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Slip 0000001, copy 1, is not ours: its six digits are not this station's. Find out where it comes from, and put the right slip in the notes."
> slip 1 old
refused: Slip 0000001, copy 1: its paper bears a longer code than this: scan the code on the paper itself.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Slip 0000001, copy 1: its paper bears a longer code than this: scan the code on the paper itself."
> slip 9 digits 1
refused: Slip 0000009, copy 1, is not ours: its six digits are not this station's. Find out where it comes from, and put the right slip in the notes.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Slip 0000009, copy 1, is not ours: its six digits are not this station's. Find out where it comes from, and put the right slip in the notes."
> slip 9 old
refused: Slip 0000009 is not in this record, and its code, of an earlier version, does not say whose it is: find out, and put the right slip in the notes.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Slip 0000009 is not in this record, and its code, of an earlier version, does not say whose it is: find out, and put the right slip in the notes."
> slip 9
refused: Slip 0000009, copy 1, is of this station and newer than this record: was an older record put back? Count by hand, and tell whoever looks after the station.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Slip 0000009, copy 1, is of this station and newer than this record: was an older record put back? Count by hand, and tell whoever looks after the station."
> slip 1
refused: Slip 0000001, copy 1, was not printed yet: a typed or copied code proves no paper. Wait for it.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Slip 0000001, copy 1, was not printed yet: a typed or copied code proves no paper. Wait for it."
+ 3 s
> slip 1
refused: Slip 0000001, copy 1, was not printed yet: a typed or copied code proves no paper. Wait for it.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Slip 0000001, copy 1, was not printed yet: a typed or copied code proves no paper. Wait for it."
