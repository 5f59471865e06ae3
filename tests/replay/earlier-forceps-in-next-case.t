# Forceps missing in one case turn up while the next is counted in: they act on the case they came from, and stand on no
# other sheet (rules 21 and 24). Once they are back there, they may be used again.
begins from next-without-forceps
> pack FORCEPS 53
accepted: FOUND: artery forceps, curved comes from case 1, where it was missing. Look at that patient's digit now and tell the surgeon. Keep it out of this field.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: found-after, case 1, FORCEPS:53 "artery forceps, curved" forceps known by its mark
addendum: case 1
  event: slip-queued, case 1, addendum, copy 1, n 3, "en"
prints: addendum slip 3
  event: owed, case 1, patient-called-back
  event: owed, case 1, ward-told
  event: item-used, case 1, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1
  event: slip-state, case 1, written, copy 1, n 3
> show
item 1: finger tourniquet, green, M, here, 0 of 1
> slip 3
accepted: Slip 0000003 of case 1, copy 1, seen: this paper came out.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: slip-state, case 1, seen, copy 1, n 3
> pack FORCEPS 53
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 2, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1, first
> show
item 1: finger tourniquet, green, M, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
