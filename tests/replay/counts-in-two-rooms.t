# Somebody who counts in one room badges in to count in another: the reply says so. A suspended case keeps nobody.
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
+ 1 min

room 2
> card NEW CASE
accepted: Theatre 2: Case 2 opened in Theatre 2.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> badge SUPPORT-4
accepted: Theatre 2: SUPPORT-4: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SUPPORT-4, "SUPPORT-4", first
> badge CIRC-2
accepted: Theatre 2: CIRC-2: circulating. CIRC-2 counts in Theatre 1 as well, case 1, which is open: who leaves that team hands over there.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person CIRC-2, "CIRC-2", first
+ 1 min

room 1
> card SUSPEND
accepted: Theatre 1: Case 1 is suspended. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> card NEW CASE
accepted: Theatre 1: Case 3 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 3
> badge SCRUB-1
accepted: Theatre 1: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 3, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: Theatre 1: CIRC-2: circulating. CIRC-2 counts in Theatre 2 as well, case 2, which is open: who leaves that team hands over there.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 3, circulating, person CIRC-2, "CIRC-2", first
