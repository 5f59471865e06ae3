/* What a stores bench says and asks (words/sayings.h says how they are written). */
#ifndef BANDTALLY_WORDS_STOCK_WORDS_H
#define BANDTALLY_WORDS_STOCK_WORDS_H

/* clang-format off */
/* What records hold: why something was refused, and what stood open then. */
#define SAYINGS_STOCK(X, N) \
	SAYINGS_STOCK_REFUSALS(X, N) \
	SAYINGS_STOCK_PARTS(X, N) \
	SAYINGS_BENCH(X, N)

/* What was entered, in replies alone. {what} says which lot, {then} what it means. */
#define STOCK_WORDS(X, N) \
	/* deeds, and what is true where they fit (count/deed.h) */ \
	X(DEED_EACH_LABEL, "deed-each-label", "each label") \
	X(DEED_PACK_OF_EACH, "deed-pack-of-each", "each pack") \
	X(DEED_TO_ROOM, "deed-to-room", "TO ROOM with its number") \
	X(CARD_OF_ROOM, "card-of-room", "TO ROOM {n}") \
	X(USE_OF_ROOM, "use-of-room", "packs go to this room: scan each after this") \
	X(DEED_TYPE_IT, "deed-type-it", "it") \
	X(DEED_TYPE_KEY, "deed-type-key", "its key") \
	X(TRUTH_NOT_SCANNED, "truth-not-scanned", "if it cannot be scanned") \
	X(TRUTH_OTHER_NUMBER, "truth-other-number", "for another number") \
	X(TRUTH_LEFT, "truth-left", "to leave it") \
	X(TRUTH_NOBODY_HERE, "truth-nobody-here", "if nobody is there") \
	X(TRUTH_ALL_DONE, "truth-all-done", "when all is done") \
	X(TRUTH_NO_NOTICE, "truth-no-notice", "if there is none") \
	X(TRUTH_ONE_SPOILT, "truth-one-spoilt", "if one is spoilt") \
	X(TRUTH_NOT_OUT, "truth-not-out", "if labels did not come out whole") \
	X(TRUTH_TO_LABEL, "truth-to-label", "for packs without a code") \
	X(TRUTH_CAME_BACK, "truth-came-back", "if one comes back") \
	X(TRUTH_TO_COUNT, "truth-to-count", "to count") \
	X(TRUTH_NOT_TO_USE, "truth-not-to-use", "if it must not be used") \
	X(TRUTH_FOUND_HERE, "truth-found-here", "if something was found") \
	X(STOCK_READ_TWICE, "stock-read-twice", "Read twice, entered once.") \
	X(STOCK_PERSON, "stock-person", "{person} works at this bench.") \
	X(STOCK_LEFT, "stock-left", "Left: nothing was entered.") \
	X(STOCK_IS_DONE, "stock-is-done", "Done.") \
	N(STOCK_RECEIVED, "stock-received", \
	  "Received: {n} pack of {item}, {what}. {then}", "Received: {n} packs of {item}, {what}. {then}") \
	N(STOCK_RECEIVED_OPEN, "stock-received-open", \
	  "Received and not confirmed: {n} pack of {item}, {what}. It is not issued until a second person has confirmed it. {then}", \
	  "Received and not confirmed: {n} packs of {item}, {what}. They are not issued until a second person has confirmed them. {then}") \
	X(STOCK_CONFIRMED, "stock-confirmed", \
	  "Confirmed by {other_person}: {item}, {what}, packs: {n}. They may be issued. {then}") \
	X(LABELS_NUMBERED, "labels-numbered", \
	  "Labels {item_number} to {last_number} for {item}, {what}. Where: {where}. {then} Read each back.") \
	X(LABELS_REPLACED, "labels-replaced", \
	  "Entered as spoilt, since not read back: {n}. Tear them up. In their place labels {item_number} to {last_number} are printed: read each back.") \
	N(LABEL_READ_BACK, "label-read-back", \
	  "Label {item_number} read back. {n} is open.", "Label {item_number} read back. {n} are open.") \
	X(LABELS_ARE_SPOILT, "labels-are-spoilt", \
	  "Not used any more: labels {item_number} to {last_number}. Open: {n}.") \
	X(LABELS_ALL_THERE, "labels-all-there", \
	  "{item}, {what}: of labels {item_number} to {last_number} each is read back, spoilt or destroyed.") \
	N(STOCK_ISSUED, "stock-issued", \
	  "Issued to {room}: {n} pack of {item}, {what}. {then}", "Issued to {room}: {n} packs of {item}, {what}. {then}") \
	X(STOCK_PUT_BACK, "stock-put-back", "On the shelf again: {item}, {what}.") \
	X(STOCK_BACK_APART, "stock-back-apart", \
	  "Back in stores, and not issued: {item}, {what}, {why}. Lay it apart, not on the shelf; WRITE OFF when it is thrown away.") \
	N(STOCK_WRITTEN_OFF, "stock-written-off", \
	  "Written off: {n} pack of {item}, {what}: {reason}.", "Written off: {n} packs of {item}, {what}: {reason}.") \
	X(STOCK_NOT_SEALED, "stock-not-sealed", "Written off, not sealed, dry and clean: {item}, {what}.") \
	X(STOCK_COUNTED, "stock-counted", \
	  "Counted {n} of {item}, {what}; by the record {most}. Received {received}, labelled {labelled}, issued {issued}, " \
	  "opened {opened}, returned {returned}, written off {written_off}, unaccounted {unaccounted}. {then}") \
	X(STOCK_LABEL_HERE, "stock-label-here", \
	  "Label {item_number} is on the shelf: {item}, {what}. To issue it scan TO ROOM with the room's number first.") \
	X(STOCK_LABEL_APART, "stock-label-apart", \
	  "Label {item_number} is in stores, and not issued: {item}, {what}, {why}. Lay it apart, not on the shelf; WRITE OFF when it is thrown away.") \
	X(STOCK_QUARANTINED, "stock-quarantined", \
	  "In quarantine: {item}, {what}. On the shelf {n}, in rooms {most}, opened {opened}. {then}") \
	X(STOCK_RELEASED, "stock-released", "Released by {person} and {other_person}: {item}, {what}.") \
	X(STOCK_FOUND, "stock-found", \
	  "FOUND: {item} comes from case {case}, where it was missing. Look at that patient's digit now and tell the surgeon.") \
	X(STOCK_FOUND_NO_CASE_OF_LOT, "stock-found-no-case-of-lot", \
	  "No case misses {item} of lot {lot}, and none is charged: one of another lot may still be missing. Which cases had one is listed for the nurse in charge: give {key} and the tray at 'bandtally stock found'.") \
	X(STOCK_FOUND_NO_CASE, "stock-found-no-case", \
	  "No case misses {item}, and none is charged. Which cases had one is listed for the nurse in charge: give {key} and the tray at 'bandtally stock found'.") \
	X(RECALL_HAS_IT, "recall-has-it", \
	  "RECALL: {item}, {what}, is in quarantine since now: {reason}. Case {case} has one on its sheet. Tell the surgeon.") \
	X(EARLIER_IN_STORES, "earlier-in-stores", \
	  "An earlier one lies in stores: lot {other_lot}, expiry {other_date}.") \
	X(LABEL_CALLED_SPOILT, "label-called-spoilt", \
	  "Stores entered its label {item_number} as spoilt: if the pack has two labels, only one is to be on the sheet.") \
	X(LABEL_CALLED_THROWN, "label-called-thrown", \
	  "Stores entered the pack with label {item_number} as thrown away: if anything is wrong with it, use another.") \
	X(THEN_EXPIRED, "then-expired", "It has expired: it is not issued. Lay it apart.") \
	X(THEN_EXPIRES_30, "then-expires-30", "It expires within 30 days.") \
	X(THEN_EXPIRES_90, "then-expires-90", "It expires within 90 days.") \
	X(THEN_QUARANTINE, "then-quarantine", "It is in quarantine ({reason}): lay it apart.") \
	X(THEN_NEAR_LOT, "then-near-lot", "Lot {other_lot} of it reads alike: compare the packs.") \
	X(THEN_WAIT, "then-wait", "What waited to be confirmed waits: CONFIRM, and a second person's badge.") \
	X(THEN_EARLIER, "then-earlier", "An earlier one lies on the shelf: lot {other_lot}, expiry {other_date}.") \
	X(BEFORE_STERILISING, "before-sterilising", "Before sterilising.") \
	X(AFTER_STERILISING, "after-sterilising", "After sterilising.")

#define SAYINGS_STOCK_REFUSALS(X, N) \
	X(STOCK_ASKED_FIRST, "stock-asked-first", "That is no answer to what is asked: {question}") \
	X(STOCK_NO_UNDO, "stock-no-undo", \
	  "Nothing is taken back at a bench. What was entered wrongly is mended by COUNT SHELF or WRITE OFF.") \
	X(STOCK_NO_USE, "stock-no-use", "That has no use at a stores bench: nothing was entered.") \
	X(STOCK_NOT_KNOWN, "stock-not-known", \
	  "The catalogue has no line '{key}': type its key, and its lot behind a slash where there are several.") \
	X(STOCK_WHICH_LOT, "stock-which-lot", \
	  "Stores have {n} lots of {item}: scan a pack that says its lot, or type {key}, a slash and the lot.") \
	X(STOCK_WHICH_EXPIRY, "stock-which-expiry", \
	  "Stores have lot {lot} of {item} with {n} expiries: scan a pack whose code says its expiry, or type {key}/{lot}/2028-03-31 with the day on the pack, 'none' where it bears none.") \
	X(STOCK_NONE_OF_IT, "stock-none-of-it", "Stores have never received {item}, {what}.") \
	X(STOCK_NO_NUMBER, "stock-no-number", "'{code}' is no number from 0 to {most}: type one, or scan NUMBER with it.") \
	X(STOCK_TOO_MANY, "stock-too-many", "{n} packs are too many at once: at most {most}.") \
	X(STOCK_NO_DAY, "stock-no-day", "'{code}' is no day: type it as 2028-03-31, or 'none' where the pack bears no expiry.") \
	X(STOCK_NO_LOT_TEXT, "stock-no-lot-text", "'{code}' cannot be a lot: type what is printed behind LOT, at most 30 characters.") \
	X(STOCK_NO_TEXT, "stock-no-text", "That cannot be kept: type it anew, in at most 120 characters.") \
	X(STOCK_ANOTHER_BADGE, "stock-another-badge", \
	  "{person} began it: a second person's badge confirms it. Nobody there: NOBODY TO CONFIRM.") \
	X(STOCK_ANOTHER_RELEASES, "stock-another-releases", "{person} began it: a second person releases it. DONE leaves it.") \
	X(STOCK_NOTHING_WAITS, "stock-nothing-waits", "{item}, {what}: nothing of it waits to be confirmed.") \
	X(STOCK_NOT_LABELLED, "stock-not-labelled", \
	  "The catalogue does not say where a label goes on {item}, and whether before or after sterilising: it is not labelled.") \
	X(STOCK_NO_LABELS_LEFT, "stock-no-labels-left", \
	  "Only {most} of {item}, {what}, have no label: {n} were not printed. Receive what came first.") \
	N(STOCK_PRINTINGS_OPEN, "stock-printings-open", \
	  "Labels of {n} printing were not read back: read them back, or SPOILT LABEL and their numbers.", \
	  "Labels of {n} printings were not read back: read them back, or SPOILT LABEL and their numbers.") \
	X(STOCK_NUMBERS_OVER, "stock-numbers-over", \
	  "This station's item numbers are used up: ask whoever looks after the station for another number of it.") \
	X(LABEL_READ_ALREADY, "label-read-already", "Label {item_number} was read back already: look whether it stands on two packs.") \
	X(LABEL_NOT_READ, "label-not-read", "Label {item_number} was not read back: DONE, then scan it.") \
	X(LABEL_IS_SPOILT, "label-is-spoilt", "Label {item_number} was entered as spoilt or destroyed: take it off. Print another.") \
	X(LABEL_WRITTEN_OFF, "label-written-off", "Label {item_number}: this pack was written off. Throw it away.") \
	X(LABEL_USED, "label-used", "Label {item_number}: its pack was opened in case {case}. This is its wrapper or bag.") \
	X(LABEL_OTHER_STATION, "label-other-station", \
	  "Labelled at station {station}: fetch its list, or count the pack by its maker's code.") \
	X(LABEL_NOT_OF_RECORD, "label-not-of-record", \
	  "Label {item_number} is not in this record: fetch the list of the station that printed it, or count the pack by its maker's code.") \
	X(LABEL_NOT_SO, "label-not-so", "{item_number} is no label of these that could be spoilt: nothing was entered.") \
	X(LABELS_NOT_SO, "labels-not-so", "'{code}' names no labels: type a number, or two with a dash, at most {most} of them.") \
	X(BOX_IS_ANOTHER, "box-is-another", \
	  "That is another lot than the labels are of ({item}, {what}): compare the packs with their labels before anything is issued.") \
	X(LABEL_IN_ROOM, "label-in-room", \
	  "Label {item_number} was issued to {other_room} and is not on the shelf: DONE, then scan it and answer whether it is sealed.") \
	X(LABEL_ISSUED_ALREADY, "label-issued-already", "Label {item_number} is issued to {room} already.") \
	X(ISSUED_BY_LABEL, "issued-by-label", "{item} is issued by its labels: scan the label on each pack.") \
	X(STOCK_WITHHELD, "stock-withheld", "Not issued: {item}, {what}, {why}. Lay it apart.") \
	X(STOCK_TOO_FEW, "stock-too-few", \
	  "By the record only {most} of {item}, {what}, lie there: {n} were not entered. COUNT SHELF finds the difference.") \
	N(STOCK_WAITS, "stock-waits", \
	  "{n} pack of {item}, {what}, waits for a second person, and is neither issued nor written off before: CONFIRM, and that person's badge. On the shelf besides: {most}.", \
	  "{n} packs of {item}, {what}, wait for a second person, and are neither issued nor written off before: CONFIRM, and that person's badge. On the shelf besides: {most}.") \
	X(STOCK_NO_ROOM, "stock-no-room", "Room {n} is no room of this station where operations are: scan the card of another.") \
	X(STOCK_OF_THIS_ROOM_ONLY, "stock-this-room-only", "Label {item_number} lies on the shelf by the record: nothing comes back.") \
	X(NOT_IN_QUARANTINE, "not-in-quarantine", "{item}, {what}, is not in quarantine.") \
	X(FOUND_ON_OPEN_SHEET, "found-on-open-sheet", \
	  "{item} is on the open sheet of case {case} in {room}: take it there now.") \
	X(FOUND_PROVES_NO_MORE, "found-proves-no-more", \
	  "That is the wrapper or bag of {item}: it proves only that the pack was opened. Is the item itself in your hand? Then type {key}, or scan the slip of its case.") \
	X(FOUND_WHICH_OF_CASE, "found-which-of-case", \
	  "Case {case} misses more than one kind of thing: say first what was found, by its line or its mark; DONE to leave it as it is.") \
	X(FOUND_NO_CASE_OF_SLIP, "found-no-case-of-slip", \
	  "Case {case} has not ended, or misses nothing: scan the slip of the case that misses one, or DONE.")

/* Parts of the above. */
#define SAYINGS_STOCK_PARTS(X, N) \
	X(OF_LOT, "of-lot", "lot {lot}, expiry {date}") \
	X(OF_LOT_ALONE, "of-lot-alone", "lot {lot}, without an expiry") \
	X(OF_LOT_ALL_EXPIRIES, "of-lot-all-expiries", "lot {lot}") \
	X(OF_EXPIRY, "of-expiry", "no lot, expiry {date}") \
	X(OF_NO_LOT, "of-no-lot", "no lot and no expiry") \
	X(OF_ANY_LOT, "of-any-lot", "all lots") \
	X(STOCK_EXPIRED, "stock-expired", "it has expired") \
	X(STOCK_IN_QUARANTINE, "stock-in-quarantine", "it is in quarantine") \
	X(STOCK_NO_LINE, "stock-no-line", "its line is not in the catalogue any more")

/* What a bench asks (count/stock-enums.h), without its deeds. */
#define SAYINGS_BENCH(X, N) \
	X(BENCH_RECEIVE_WHAT, "bench-receive-what", "What came? The box or pack, or its key typed") \
	X(BENCH_LOT, "bench-lot", "Its code says no lot. What stands behind LOT on it? Type it, or 'none'") \
	X(BENCH_EXPIRY, "bench-expiry", "Its code says no expiry. Which day stands on it? Type it as 2028-03-31, or 'none'") \
	N(BENCH_HOW_MANY, "bench-how-many", "How many packs came?", "How many boxes came, of {n} packs in each?") \
	N(BENCH_SO_MANY, "bench-so-many", "{n} pack. Is that right?", "{n} packs. Is that right?") \
	X(BENCH_TYPED_BY, "bench-typed-by", "Who typed lot or expiry?") \
	X(BENCH_SECOND, "bench-second", "A second person compares lot and expiry with the pack") \
	X(BENCH_CONFIRM_WHAT, "bench-confirm-what", "What is confirmed?") \
	X(BENCH_PRINT_WHAT, "bench-print-what", "Labels for what? The box or pack, or its key typed") \
	X(BENCH_PRINT_MANY, "bench-print-many", "How many labels?") \
	X(BENCH_LABEL_WHICH, "bench-label-which", "Which label? It, or its number typed; several as 41-44") \
	X(BENCH_BOX_AGAIN, "bench-box-again", "Every label is accounted for. The box again, to close them") \
	X(BENCH_ISSUE, "bench-issue", "Issue to {room}") \
	X(BENCH_RETURN_WHAT, "bench-return-what", "What comes back unopened?") \
	X(BENCH_RETURN_FROM, "bench-return-from", "From which room? TO ROOM with its number") \
	X(BENCH_SEALED, "bench-sealed", "It comes back from {room}. Is it sealed, dry and clean?") \
	X(BENCH_COUNT_WHAT, "bench-count-what", "What is counted? One pack of it, or its key typed") \
	X(BENCH_COUNT_MANY, "bench-count-many", "How many packs lie on the shelf?") \
	N(BENCH_COUNT_WAITING, "bench-count-waiting", \
	  "How many packs lie there in all? {n} waits to be confirmed: count it too", \
	  "How many packs lie there in all? {n} wait to be confirmed: count them too") \
	X(BENCH_WRITE_WHAT, "bench-write-what", "What is written off? One pack of it, or its key typed") \
	X(BENCH_WRITE_MANY, "bench-write-many", "How many packs are written off?") \
	X(BENCH_WRITE_WHY, "bench-write-why", "Why is it written off?") \
	X(BENCH_QUARANTINE_WHAT, "bench-quarantine-what", "What must not be used? One pack of it, or its key typed, with /LOT") \
	X(BENCH_QUARANTINE_LOT, "bench-quarantine-lot", "Lot {lot} alone?") \
	X(BENCH_QUARANTINE_WHY, "bench-quarantine-why", "Why must it not be used?") \
	X(BENCH_NOTICE, "bench-notice", "The reference of the notice?") \
	X(BENCH_RELEASE_WHAT, "bench-release-what", "What is released? One pack of it, or its key typed, with /LOT") \
	X(BENCH_RELEASE_FIRST, "bench-release-first", "Who releases it?") \
	X(BENCH_RELEASE_SECOND, "bench-release-second", "Released by {person} and a second person") \
	X(BENCH_FOUND, "bench-found", "What was found? Its mark, or its key typed") \
	X(BENCH_FOUND_OF, "bench-found-of", "{n} cases miss one. The slip of the case it comes from") \
	X(BENCH_IDLE, "bench-idle", "Stores: a box or pack that came, or a label") \
	N(BENCH_READ_BACK, "bench-read-back", \
	  "Read back: {n} label of {item}, {what}, is open", "Read back: {n} labels of {item}, {what}, are open") \
	N(BENCH_PRINT_AGAIN, "bench-print-again", \
	  "{n} label of {item}, {what}, was not read back. Did it not come out whole, so that another is to be printed?", \
	  "{n} labels of {item}, {what}, were not read back. Did they not come out whole, so that others are to be printed?")
/* clang-format on */

#endif
