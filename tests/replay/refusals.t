# Refused by name and reason at counting in (rules 4 and 5).
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

quarantine GREEN-M BAD recalled by its maker
> pack GREEN-M 120 lot OLD expiry 20200131
refused: Not counted in: finger tourniquet, green, M expired on 31 Jan 2020. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "Not counted in: finger tourniquet, green, M expired on 31 Jan 2020. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET."
> pack GREEN-M 121 lot BAD expiry 20280331
refused: Not counted in: finger tourniquet, green, M is in quarantine (recalled by its maker). Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "Not counted in: finger tourniquet, green, M is in quarantine (recalled by its maker). Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET."
> pack GLOVE
refused: Not counted in: glove finger may not be used as a tourniquet; use a listed finger tourniquet. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "Not counted in: glove finger may not be used as a tourniquet; use a listed finger tourniquet. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET."
> unknown (01)09506000199999
refused: Not in the catalogue: (01)09506000199999. Not counted. Use a listed item, or NO CODE to count it; a tourniquet that is on: UNLISTED TOURNIQUET.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: refused, case 1, "Not in the catalogue: (01)09506000199999. Not counted. Use a listed item, or NO CODE to count it; a tourniquet that is on: UNLISTED TOURNIQUET."
> pack GREEN-M 122 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:122 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 122 lot T26 expiry 20280331
refused: Finger tourniquet, green, M: on the sheet already, not counted twice.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Finger tourniquet, green, M: on the sheet already, not counted twice."
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. If it is on a digit, scan that digit card now.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, no line "tourniquet, not listed" tourniquet unlisted, n 1, first
  event: owed, case 1, listing, item 2
> card NEW CASE
refused: Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL."
> badge SCRUB-5
refused: SCRUB-5 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "SCRUB-5 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge."
> badge SUPPORT-7
refused: SUPPORT-7 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "SUPPORT-7 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge."
> pack GREEN-M 122 lot T26 expiry 20280331
refused: Finger tourniquet, green, M: on the sheet already, not counted twice.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "Finger tourniquet, green, M: on the sheet already, not counted twice."
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack GREEN-M 122 lot T26 expiry 20280331
accepted: Returned unopened: finger tourniquet, green, M. It may be used in another case.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-returned, case 1, item 1, first
  event: asked, case 1, nothing more
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack GREEN-M 122 lot T26 expiry 20280331
refused: Finger tourniquet, green, M cannot go back unopened: it is not lying here as counted in.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: refused, case 1, "Finger tourniquet, green, M cannot go back unopened: it is not lying here as counted in."
> pack GREEN-M 122 lot T26 expiry 20280331
refused: Finger tourniquet, green, M cannot go back unopened: it is not lying here as counted in.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: refused, case 1, "Finger tourniquet, green, M cannot go back unopened: it is not lying here as counted in."
> badge SUPPORT-7
refused: SUPPORT-7 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: refused, case 1, "SUPPORT-7 is not in this team, and the place is taken: to take over scan HANDOVER, then this badge."
