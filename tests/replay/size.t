# The stated circumference is held against what the maker states; pressure is never judged.
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
> typed 70 mm
accepted: Circumference of the digit stated as 70 mm.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: size-stated, case 1, n 70, first
> pack GREEN-M 300 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028). The maker states 45 to 60 mm for the finger tourniquet, green, M: another size may be needed.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:300 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> typed 55 mm
accepted: Circumference of the digit stated as 55 mm.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: size-stated, case 1, n 55, first
> typed 555 mm
refused: Nothing asks for text now. A barcode is typed whole, as it stands under the bars.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Nothing asks for text now. A barcode is typed whole, as it stands under the bars."
