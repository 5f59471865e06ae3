# One operator, two digits: OFF of the first does not begin the final count; the witness is named after the look, and a
# tourniquet that goes on again makes both be done anew.
room 3
> badge SURG-3
accepted: Case 1 opened in Minor injuries. SURG-3 works alone: single-person count.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: case-opened, case 1, n 1
  event: joined, case 1, field, person SURG-3, "SURG-3"
> pack GREEN-M 210 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: When the tourniquet goes on, before gloving: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-in, case 1, item 1, GREEN-M:210 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 211 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: When the tourniquet goes on, before gloving: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-in, case 1, item 2, GREEN-M:211 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 2, digit right thumb
  event: count-agreed, case 1, initial, person SURG-3, n SURG-3
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: On: right thumb and right index finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 10 min
  event: alive, 10 times
> digit right thumb
question: Tourniquet on the right thumb for 10 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:10, after 10 min. Off is not yet accounted for.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 10 min, total 10 min, longest 10 min
right index finger: on, now 10 min, total 10 min, longest 10 min
> digit right index finger
question: Tourniquet on the right index finger for 10 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:10, after 10 min. Off is not yet accounted for.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
  event: count-started, case 1, final
> card SHOWN 2
accepted: Accounted for: finger tourniquet, green, M: shown intact, 2 of 2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-shown, case 1, shown, item 2, intact, n 1
  event: count-agreed, case 1, final, person SURG-3, n SURG-3
> card WHO LOOKED: CARER
refused: WHO LOOKED belongs to a single-person count, after the look at the bare digit.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: refused, case 1, "WHO LOOKED belongs to a single-person count, after the look at the bare digit."
> digit right thumb
accepted: Right thumb seen bare at 10:10.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-seen-bare, case 1, digit right thumb, person SURG-3, first
> digit right index finger
question: Right index finger seen bare at 10:10.
next: Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY.
  event: digit-seen-bare, case 1, digit right index finger, person SURG-3, first
  event: asked, case 1, who-looked
> card WHO LOOKED: CARER
accepted: Looked at the bare digit as well: a carer.
next: Read the sign-out points aloud: scan the operator's badge if all are true; NO if one is not.
  event: who-looked, case 1, carer, first
  event: asked, case 1, nothing more
> digit right thumb
question: Right thumb: the clock runs as 'on?'. It was seen bare.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> card YES
accepted: Tourniquet on, right thumb, from 10:10; no forceps on it. The clock runs. It is taken for the finger tourniquet, green, M that was shown: if that one lies there as well, this is another: scan its pack; UNLISTED TOURNIQUET if there is none. The final count starts again.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right thumb, is-on, first
  event: digit-on, case 1, digit right thumb
  event: item-on, case 1, item 2, digit right thumb
  event: asked, case 1, nothing more
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:10, after 0 min. Off is not yet accounted for.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: item-off, case 1, item 2, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
  event: count-started, case 1, final
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card SHOWN 2
accepted: Accounted for: finger tourniquet, green, M: shown intact, 2 of 2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-shown, case 1, shown, item 2, intact, n 1
  event: count-agreed, case 1, final, person SURG-3, n SURG-3
> digit right thumb
accepted: Right thumb seen bare at 10:11.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-seen-bare, case 1, digit right thumb, person SURG-3, first
> digit right index finger
question: Right index finger seen bare at 10:11.
next: Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY.
  event: digit-seen-bare, case 1, digit right index finger, person SURG-3, first
  event: asked, case 1, who-looked
> card WHO LOOKED: NOBODY
accepted: Looked at the bare digit as well: nobody else.
next: Read the sign-out points aloud: scan the operator's badge if all are true; NO if one is not.
  event: who-looked, case 1, nobody, first
  event: asked, case 1, nothing more
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 2 of 2 shown intact. Seen bare: right thumb and right index finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: signed-out, case 1, person SURG-3, first
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:210 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: item-used, case 1, item 2, GREEN-M:211 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
