# While the next case is open, FOUND and a slip name the earlier case that an item without a mark comes from (rule 21).
begins from next-without-tourniquet
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
> show
item 1: finger tourniquet, green, M, here, 0 of 1
