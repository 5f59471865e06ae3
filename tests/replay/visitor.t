# Visiting staff without a badge of this site.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> card VISITOR 1
question: Visitor 1.
next: Write the visitor's name on the paper sheet. Scan the circulating badge.
> badge SCRUB-1
refused: The circulating badge vouches for a visitor: scan it, or NO.
next: Write the visitor's name on the paper sheet. Scan the circulating badge.
> badge CIRC-2
accepted: Visitor 1: visiting.
next: Scan each pack and instrument as it is counted in.
> card VISITOR 1
refused: Visitor 1 is in the team already.
next: Scan each pack and instrument as it is counted in.
