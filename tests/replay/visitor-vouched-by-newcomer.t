# The badge that vouches for a visitor circulates from then on, and the answer says so.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> card VISITOR 1
question: Visitor 1.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: asked, case 1, visitor-is-surgeon, person visitor 1, first
> card NO
question: Visitor 1.
next: Write the visitor's name on the paper sheet: scan the circulating badge; NEXT, then NO to leave it as it is.
  event: asked, case 1, visitor, person visitor 1, first
> badge CIRC-2
accepted: Visitor 1: at the field. CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
  event: asked, case 1, nothing more
  event: joined, case 1, field, person visitor 1, "visitor 1"
> badge SCRUB-1
refused: SCRUB-1 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "SCRUB-1 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge."
