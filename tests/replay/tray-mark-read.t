# The mark of an instrument that a tray brought is read at the count: it is one of those, and not one more. The code of the tray accounts for nothing, and read once more it brings nothing.
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
> tray TRAY-HAND
refused: Hand tray is already on the sheet and bears no number: for a further pack scan ADD first.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Hand tray is already on the sheet and bears no number: for a further pack scan ADD first."
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × artery forceps, curved side by side: scan SHOWN 2 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> tray TRAY-HAND
refused: The code of the tray accounts for none of its things: show each as it is asked for.
next: Lay 2 × artery forceps, curved side by side: scan SHOWN 2 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: refused, case 1, "The code of the tray accounts for none of its things: show each as it is asked for."
> pack FORCEPS 87
question: Extra item: artery forceps, curved, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: extra-item, case 1, item 4, FORCEPS:87 "artery forceps, curved" forceps known by its mark, n 1, first
  event: asked, case 1, extra, item 4
> card YES
accepted: Artery forceps, curved: one of those that were counted in without their mark; it is known by it from now on. Scan its mark again to account for it.
next: Show the artery forceps, curved: scan its mark; NEXT, then YES when both have seen it; NO if it is not there.
  event: asked, case 1, nothing more, first
  event: item-struck, case 1, item 4
  event: item-listed, case 1, item 1, FORCEPS:87 "artery forceps, curved" forceps known by its mark
> pack FORCEPS 87
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Show the artery forceps, curved: scan YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, mark, item 1, n 1, first
> show
item 1: artery forceps, curved, accounted, 1 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: needle, here, 0 of 3
item 4: artery forceps, curved, struck, 0 of 1
