# The marks of a tray's instruments are read while it is counted in: they are on the sheet already. One that lay beside the tray is
# counted in with ADD.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> tray TRAY-HAND
accepted: Counted in: hand tray, 5 instruments from its list.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, FORCEPS "artery forceps, curved" forceps on-xray, n 1, first
  event: item-in, case 1, item 2, FORCEPS "artery forceps, curved" forceps on-xray, n 1
  event: item-in, case 1, item 3, NEEDLE "needle" other single-use on-xray, n 3
> pack FORCEPS 87
refused: Artery forceps, curved is already on the sheet without its mark, as a tray's are: one of those needs nothing more; for a further one scan ADD first.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Artery forceps, curved is already on the sheet without its mark, as a tray's are: one of those needs nothing more; for a further one scan ADD first."
> pack FORCEPS 88
refused: Artery forceps, curved is already on the sheet without its mark, as a tray's are: one of those needs nothing more; for a further one scan ADD first.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Artery forceps, curved is already on the sheet without its mark, as a tray's are: one of those needs nothing more; for a further one scan ADD first."
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack FORCEPS 89
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 4, FORCEPS:89 "artery forceps, curved" forceps known by its mark, n 1, first
  event: asked, case 1, nothing more
> pack FORCEPS 89
accepted: Entered once already: artery forceps, curved. If it is meant again: NEXT, then this.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
> show
item 1: artery forceps, curved, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: needle, here, 0 of 3
item 4: artery forceps, curved, here, 0 of 1
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> pack FORCEPS 90
refused: Artery forceps, curved is already on the sheet without its mark, as a tray's are: one of those needs nothing more; for a further one scan ADD first.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: refused, case 1, "Artery forceps, curved is already on the sheet without its mark, as a tray's are: one of those needs nothing more; for a further one scan ADD first."
> show
item 1: artery forceps, curved, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: needle, here, 0 of 3
item 4: artery forceps, curved, here, 0 of 1
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × artery forceps, curved side by side: scan SHOWN 2 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> pack FORCEPS 89
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Lay 2 × artery forceps, curved side by side: scan SHOWN 2 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: item-shown, case 1, mark, item 4, n 1, first
> card SHOWN 2
accepted: Accounted for: artery forceps, curved: shown to both, 2 of 2.
next: Lay 3 × needle side by side: scan SHOWN 3 if all are there; NEXT, then SHOWN and their number for as many as are; NO if none is there.
  event: item-shown, case 1, shown, item 1, n 1, first
  event: item-shown, case 1, shown, item 2, n 1
