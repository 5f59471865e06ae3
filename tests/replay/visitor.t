# Visiting staff without a badge of this site.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> card VISITOR 1
question: Visitor 1.
next: Write the visitor's name on the paper sheet. Scan the circulating badge.
  event: asked, case 1, visitor, person visitor 1, first
> badge SCRUB-1
refused: The circulating badge vouches for a visitor: scan it, or NO.
next: Write the visitor's name on the paper sheet. Scan the circulating badge.
  event: refused, case 1, "The circulating badge vouches for a visitor: scan it, or NO."
> badge CIRC-2
accepted: Visitor 1: visiting.
next: Scan each pack and instrument as it is counted in.
  event: asked, case 1, nothing more, first
  event: joined, case 1, visitor, person visitor 1, "visitor 1"
> card VISITOR 1
refused: Visitor 1 is in the team already.
next: Scan each pack and instrument as it is counted in.
  event: refused, case 1, "Visitor 1 is in the team already."
