# Visiting staff without a badge of this site.
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
> card VISITOR 1
question: Visitor 1.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: asked, case 1, visitor-is-surgeon, person visitor 1, first
> badge SCRUB-1
refused: First whether visitor 1 is the operating surgeon: scan YES or NO, then the badge of SCRUB-1.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: refused, case 1, "First whether visitor 1 is the operating surgeon: scan YES or NO, then the badge of SCRUB-1."
> card NO
question: Visitor 1.
next: Write the visitor's name on the paper sheet: scan the circulating badge; NEXT, then NO to leave it as it is.
  event: asked, case 1, visitor, person visitor 1, first
> badge SCRUB-1
refused: The circulating badge vouches for a visitor: scan it, or NO.
next: Write the visitor's name on the paper sheet: scan the circulating badge; NEXT, then NO to leave it as it is.
  event: refused, case 1, "The circulating badge vouches for a visitor: scan it, or NO."
> badge CIRC-2
accepted: Visitor 1: visiting.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: asked, case 1, nothing more, first
  event: joined, case 1, visitor, person visitor 1, "visitor 1"
> card VISITOR 1
question: Visitor 1.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: asked, case 1, visitor-is-surgeon, person visitor 1, first
