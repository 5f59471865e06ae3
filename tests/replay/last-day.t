# A pack is good to the end of the day that stands on it. A digit may be as thick as the largest stated size, no thicker.
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
> pack GREEN-M 320 lot T26 expiry 20261125
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 25 Nov 2026).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:320 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20261125 single-use, n 1, first
> pack GREEN-M 321 lot T26 expiry 20261124
refused: Not counted in: finger tourniquet, green, M expired on 24 Nov 2026. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Not counted in: finger tourniquet, green, M expired on 24 Nov 2026. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET."
> typed 60 mm
accepted: Circumference of the digit stated as 60 mm.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: size-stated, case 1, n 60, first
> typed 61 mm
accepted: Circumference of the digit stated as 61 mm. The maker states 45 to 60 mm for the finger tourniquet, green, M: another size may be needed.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: size-stated, case 1, n 61, first
> typed 45 mm
accepted: Circumference of the digit stated as 45 mm.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: size-stated, case 1, n 45, first
> typed 44 mm
accepted: Circumference of the digit stated as 44 mm. The maker states 45 to 60 mm for the finger tourniquet, green, M: another size may be needed.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: size-stated, case 1, n 44, first
