# The label of a tourniquet that is missing in an earlier case is scanned while the next is open: it proves only itself (rule
# 11), and the reply says what to do with the tourniquet in the hand.
begins from next-without-tourniquet
> pack GREEN-M 519 lot T26 expiry 20280331
refused: That is the wrapper or bag of the finger tourniquet, green, M that case 1 did not account for: it proves only itself. Is the item itself in your hand? Then scan FOUND and the slip of case 1.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 2, "That is the wrapper or bag of the finger tourniquet, green, M that case 1 did not account for: it proves only itself. Is the item itself in your hand? Then scan FOUND and the slip of case 1."
> card FOUND
question: Nothing is missing in this case. It may be of an earlier one.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, case 2, found, first
> slip 2
accepted: Found after the end: entered for case 1. Look at that patient's digit now and tell the surgeon.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 2, nothing more, first
  event: found-after, case 1, no line "an item without a number"
addendum: case 1
  event: slip-queued, case 1, addendum, copy 1, n 3, "en"
prints: addendum slip 3
  event: owed, case 1, patient-called-back
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 3
> slip 3
accepted: Slip 0000003 of case 1, copy 1, seen: this paper came out.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: slip-state, case 1, seen, copy 1, n 3
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 2, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> show
item 1: finger tourniquet, green, M, here, 0 of 1
