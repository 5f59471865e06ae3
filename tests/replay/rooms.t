# Cards carry their room (rule 18).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> card OFF of room 2
refused: This card belongs to Theatre 2, but this scanner works for Theatre 1. Nothing was entered. If you are in Theatre 2 now, scan its card THIS ROOM, then this card again.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: refused, case 1, "This card belongs to Theatre 2, but this scanner works for Theatre 1. Nothing was entered. If you are in Theatre 2 now, scan its card THIS ROOM, then this card again."
> card THIS ROOM of room 2
accepted: This scanner now works for Theatre 2.
next: Next patient: scan NEW CASE.
  event: scanner-room, for a while, n 2, "hand-1"
