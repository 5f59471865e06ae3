# Cards carry their room (rule 18).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> card OFF of room 2
refused: This is a card of Theatre 2; this scanner works for Theatre 1. Nothing was entered. In Theatre 1: take that room's own card. In Theatre 2: scan THIS ROOM of Theatre 2, then this again.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: refused, case 1, "This is a card of Theatre 2; this scanner works for Theatre 1. Nothing was entered. In Theatre 1: take that room's own card. In Theatre 2: scan THIS ROOM of Theatre 2, then this again."
> card THIS ROOM of room 2
accepted: This scanner now works for Theatre 2.
next: Next patient: scan NEW CASE.
  event: scanner-room, for a while, n 2, "hand-1"
