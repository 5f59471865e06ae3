# Refused by name and reason at counting in (rules 4 and 5).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 120 lot OLD expiry 20200131
refused: Not counted in: finger tourniquet, green, M expired on 2020-01-31: take it off the field and use another. Take it off the field and use another. If it is already on the digit, scan UNLISTED TOURNIQUET.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 121 lot BAD expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot BAD, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> pack GLOVE
refused: Not counted in: glove finger may not be used as a tourniquet; use a listed finger tourniquet. Take it off the field and use another. If it is already on the digit, scan UNLISTED TOURNIQUET.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> unknown (01)09506000199999
refused: Not in the catalogue: (01)09506000199999. Not counted. Use a listed item; if it is already on the digit, scan UNLISTED TOURNIQUET.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> pack GREEN-M 122 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> pack GREEN-M 122 lot T26 expiry 20280331
refused: Finger tourniquet, green, M is on the sheet already and was not counted twice.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card UNLISTED TOURNIQUET
accepted: Entered: a tourniquet that is not listed. Say aloud what it is; a glove finger or a drain must not be used.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card NEW CASE
refused: Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge SCRUB-5
refused: SCRUB-5 is not in this team, and the place is taken: scan HANDOVER to change over.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge SUPPORT-7
refused: SUPPORT-7 is not in this team, and the place is taken: scan HANDOVER to change over.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> pack GREEN-M 122 lot T26 expiry 20280331
refused: Finger tourniquet, green, M is on the sheet already and was not counted twice.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card RETURNED UNOPENED
question: Returned unopened.
next: Scan the pack that goes back unopened.
> pack GREEN-M 122 lot T26 expiry 20280331
accepted: Returned unopened: finger tourniquet, green, M. It may be used in another case.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> card RETURNED UNOPENED
question: Returned unopened.
next: Scan the pack that goes back unopened.
> pack GREEN-M 122 lot T26 expiry 20280331
refused: Finger tourniquet, green, M cannot go back unopened: it is not lying here as counted in.
next: Scan the pack that goes back unopened.
> pack GREEN-M 122 lot T26 expiry 20280331
refused: Finger tourniquet, green, M cannot go back unopened: it is not lying here as counted in.
next: Scan the pack that goes back unopened.
> badge SUPPORT-7
refused: SUPPORT-7 is not in this team, and the place is taken: scan HANDOVER to change over.
next: Scan the pack that goes back unopened.
