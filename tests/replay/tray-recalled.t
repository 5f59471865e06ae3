# One thing on a tray's list is recalled: the tray is not counted in, and one that goes back is laid apart.
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
> tray TRAY-HAND
accepted: Counted in: hand tray, 5 instruments from its list.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, FORCEPS "artery forceps, curved" forceps on-xray, n 1, first
  event: item-in, case 1, item 2, FORCEPS "artery forceps, curved" forceps on-xray, n 1
  event: item-in, case 1, item 3, NEEDLE "needle" other single-use on-xray, n 3
> pack GREEN-M 829 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 4, GREEN-M:829 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first

quarantine NEEDLE * recalled by its maker
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> tray TRAY-HAND
refused: The tray is not counted in: needle is in quarantine (recalled by its maker). Take the tray off the field and use another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "The tray is not counted in: needle is in quarantine (recalled by its maker). Take the tray off the field and use another."
  event: asked, case 1, nothing more
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> tray TRAY-HAND
accepted: The tray goes back unopened. But needle is in quarantine (recalled by its maker): lay the tray apart for stores; no case may use it.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-returned, case 1, item 1, first
  event: item-returned, case 1, item 2
  event: item-returned, case 1, item 3
  event: asked, case 1, nothing more
> tray TRAY-HAND
refused: The tray is not counted in: needle is in quarantine (recalled by its maker). Take the tray off the field and use another.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "The tray is not counted in: needle is in quarantine (recalled by its maker). Take the tray off the field and use another."
> show
item 1: artery forceps, curved, returned, 0 of 1
item 2: artery forceps, curved, returned, 0 of 1
item 3: needle, returned, 0 of 3
item 4: finger tourniquet, green, M, here, 0 of 1
