# What was dropped goes back to be laid apart. A tray that was misread is struck as a whole.
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
> pack GREEN-M 874 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:874 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> tray TRAY-HAND
accepted: Counted in: hand tray, 5 instruments from its list.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, FORCEPS "artery forceps, curved" forceps on-xray, n 1, first
  event: item-in, case 1, item 3, FORCEPS "artery forceps, curved" forceps on-xray, n 1
  event: item-in, case 1, item 4, NEEDLE "needle" other single-use on-xray, n 3
> card DROPPED
question: Dropped.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: asked, case 1, dropped, first
> tray TRAY-HAND
refused: A tray's things are counted each by itself, and one without a code of its own is not entered as dropped: keep it in the room. The count asks for it.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: refused, case 1, "A tray's things are counted each by itself, and one without a code of its own is not entered as dropped: keep it in the room. The count asks for it."
> card MISREAD
question: Misread.
next: What was misread? Scan the pack; NO to leave it as it is.
  event: asked, case 1, move-to, first
> tray TRAY-HAND
accepted: Struck as a misread: hand tray. The record keeps it.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-struck, case 1, item 2, first
  event: item-struck, case 1, item 3
  event: item-struck, case 1, item 4
  event: asked, case 1, nothing more
> card DROPPED
question: Dropped.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: asked, case 1, dropped, first
> pack GREEN-M 874 lot T26 expiry 20280331
accepted: Dropped: finger tourniquet, green, M. It stays in the room and in the count.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-dropped, case 1, item 1, first
  event: asked, case 1, nothing more
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> pack GREEN-M 874 lot T26 expiry 20280331
accepted: Returned unopened: finger tourniquet, green, M. But it was dropped: lay it apart for stores; no case may use it.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: item-returned, case 1, item 1, first
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, returned, 0 of 1, dropped
item 2: artery forceps, curved, struck, 0 of 1
item 3: artery forceps, curved, struck, 0 of 1
item 4: needle, struck, 0 of 3
