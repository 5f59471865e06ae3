/* What the page of stores says by itself (board/page/stores.js), as board-words.h has it of the board. */
#ifndef BANDTALLY_WORDS_STORES_WORDS_H
#define BANDTALLY_WORDS_STORES_WORDS_H

/* clang-format off */
#define STORES_WORDS(X, N) \
	STORES_PAGE(X, N) \
	STORES_ANSWERS(X, N)

/* of these the page makes its own sentences (page-catalogue.h) */
#define STORES_PAGE(X, N) \
	STORES_FRAME(X, N) \
	STORES_TODAY(X, N) \
	STORES_STOCK(X, N) \
	STORES_LABELS(X, N) \
	STORES_RECALL(X, N) \
	STORES_IMPORT(X, N) \
	STORES_TRAYS(X, N)

#define STORES_FRAME(X, N) \
	X(ST_TITLE, "board-st-title", "Stores") \
	X(ST_PERSON, "board-st-person", "{person} works at this bench") \
	X(ST_NOBODY, "board-st-nobody", "Nobody is badged at this bench yet") \
	X(ST_BENCH, "board-st-bench", "At this bench") \
	X(ST_PARTS, "board-st-parts", "Parts of this page") \
	X(ST_TYPED, "board-st-typed", "What a scanner cannot say") \
	X(ST_TYPED_HOW, "board-st-typed-how", "A key, a lot, a day, a quantity or a reason, as it is asked for. It is entered as typed.") \
	X(ST_BADGE_HOW, "board-st-badge-how", "A badge is asked for: scan it, or type its number.") \
	X(ST_ENTER, "board-st-enter", "Enter") \
	X(ST_OTHER, "board-st-other", "Begin something else") \
	X(ST_CLOSED, "board-st-closed", \
	  "This page only shows: to type and to ask, whoever looks after the station opens it with 'bandtally board stores'.") \
	X(ST_NO_BENCH, "board-st-no-bench", "The station has no stores bench of this number.") \
	X(ST_WAIT, "board-st-wait", "The station is asked.") \
	X(ST_PRINT, "board-st-print", "Print this list") \
	X(ST_PRINTED, "board-st-printed", "Printed {date} {time}. What changes later does not stand here.") \
	X(ST_NONE, "board-st-none", "None that the station knows of.")

#define STORES_TODAY(X, N) \
	X(ST_TODAY, "board-st-today", "Today") \
	X(ST_TODAY_NOTHING, "board-st-today-nothing", "Nothing is due that the station knows of.") \
	X(ST_TODO_EXPIRED, "board-st-todo-expired", "Expired: lay apart and write off") \
	X(ST_TODO_30, "board-st-todo-expires-30", "Expires within 30 days") \
	X(ST_TODO_90, "board-st-todo-expires-90", "Expires within 90 days") \
	X(ST_TODO_CONFIRM, "board-st-todo-confirm", "Not confirmed: a second person compares lot and expiry (CONFIRM)") \
	X(ST_TODO_READ, "board-st-todo-read-back", "Labels not read back: read them, or enter them as spoilt") \
	X(ST_TODO_BOX, "board-st-todo-box-again", "Labels are all accounted for: the box again, to close them") \
	X(ST_TODO_RETURNED, "board-st-todo-returned", "Returned unopened and still in a room: sealed, dry, clean?") \
	X(ST_TODO_UNACCOUNTED, "board-st-todo-unaccounted", "Unaccounted: counted and not found") \
	X(ST_TODO_LOW, "board-st-todo-low", "Below its minimum") \
	X(ST_TODO_MISSING, "board-st-todo-missing", "Missed by a case: look for it in trays, linen and bins (FOUND)") \
	X(ST_HEAD_WHAT, "board-st-head-what", "What is to be done") \
	X(ST_HEAD_LINE, "board-st-head-line", "Line") \
	X(ST_HEAD_LOT, "board-st-head-lot", "Lot") \
	X(ST_HEAD_MANY, "board-st-head-many", "How many") \
	X(ST_HEAD_WHEN, "board-st-head-when", "When") \
	N(ST_DAYS, "board-st-days", "in {n} day", "in {n} days") \
	X(ST_DAY_TODAY, "board-st-day-today", "today") \
	N(ST_DAYS_AGO, "board-st-days-ago", "{n} day ago", "{n} days ago") \
	X(ST_OF_MINIMUM, "board-st-of-minimum", "{n}, at least {most}") \
	X(ST_CASE, "board-st-case", "case {case}")

#define STORES_STOCK(X, N) \
	X(ST_STOCK, "board-st-stock", "Stock") \
	X(ST_LOTS, "board-st-lots", "Lots, a table that may be wider than the screen") \
	X(ST_FILTER, "board-st-filter", "Key, name or lot") \
	X(ST_ONLY, "board-st-only", "Which") \
	X(ST_ONLY_ALL, "board-st-only-all", "All that lies somewhere") \
	X(ST_ONLY_DUE, "board-st-only-due", "Expired, or within 90 days") \
	X(ST_ONLY_WAITS, "board-st-only-waits", "Not confirmed") \
	X(ST_ONLY_WITHHELD, "board-st-only-withheld", "Expired or in quarantine") \
	X(ST_ONLY_ROOMS, "board-st-only-rooms", "In rooms") \
	X(ST_ONLY_UNACCOUNTED, "board-st-only-unaccounted", "Unaccounted") \
	X(ST_HEAD_EXPIRY, "board-st-head-expiry", "Expiry") \
	X(ST_HEAD_SHELF, "board-st-head-shelf", "Shelf") \
	X(ST_HEAD_WAITS, "board-st-head-waits", "Not confirmed") \
	X(ST_HEAD_ROOMS, "board-st-head-rooms", "In rooms") \
	X(ST_HEAD_RECEIVED, "board-st-head-received", "Received") \
	X(ST_HEAD_LABELLED, "board-st-head-labelled", "Labelled") \
	X(ST_HEAD_ISSUED, "board-st-head-issued", "Issued") \
	X(ST_HEAD_OPENED, "board-st-head-opened", "Opened") \
	X(ST_HEAD_RETURNED, "board-st-head-returned", "Returned") \
	X(ST_HEAD_WRITTEN, "board-st-head-written", "Written off") \
	X(ST_HEAD_UNACCOUNTED, "board-st-head-unaccounted", "Unaccounted") \
	X(ST_WHY_EXPIRED, "board-st-why-expired", "expired") \
	X(ST_WHY_QUARANTINE, "board-st-why-quarantine", "in quarantine") \
	X(ST_WHY_NO_LINE, "board-st-why-no-line", "not in the catalogue") \
	X(ST_IN_ROOM, "board-st-in-room", "{room} {n}") \
	X(ST_NOTHING_FOUND, "board-st-nothing-found", "Nothing of that kind lies anywhere.") \
	N(ST_MORE, "board-st-more", "And {n} lot besides: type more of its name.", "And {n} lots besides: type more of the name.") \
	N(ST_FOUND, "board-st-found", "{n} lot, what expires first at the top", "{n} lots, what expires first at the top")

#define STORES_LABELS(X, N) \
	X(ST_LABELS, "board-st-labels", "Labels") \
	X(ST_LABELS_OPEN, "board-st-labels-open", "Printed, and not closed") \
	X(ST_LABELS_NONE, "board-st-labels-none", "No labels are open.") \
	X(ST_HEAD_NUMBERS, "board-st-head-numbers", "Labels") \
	X(ST_HEAD_OPEN, "board-st-head-open", "Not read back") \
	X(ST_HEAD_PLACE, "board-st-head-place", "Where it goes") \
	X(ST_RANGE, "board-st-range", "{item_number} to {last_number}") \
	X(ST_BEFORE, "board-st-before", "before sterilising") \
	X(ST_AFTER, "board-st-after", "after sterilising") \
	X(ST_PREVIEW_HEAD, "board-st-preview-head", "A label as it will be printed") \
	X(ST_PREVIEW_EXPIRY, "board-st-preview-expiry", "Expiry, as 2028-03-31 (none: it has none)") \
	X(ST_PREVIEW_MEDIUM, "board-st-preview-medium", "Roll or sheet of labels.ini (none: as the bench prints)") \
	X(ST_PREVIEW_SIZE, "board-st-preview-size", \
	  "At real size: lay a ruler beside this line and set it to 50 mm") \
	X(ST_PREVIEW_PACK, "board-st-preview-pack", "Label for the pack, {n} x {most} mm") \
	X(ST_PREVIEW_BAG, "board-st-preview-bag", "Label for the paper or return bag, {n} x {most} mm") \
	X(ST_READ_ALL, "board-st-read-all", "all; the box again closes them")

#define STORES_RECALL(X, N) \
	X(ST_RECALL, "board-st-recall", "Recall") \
	X(ST_QUARANTINES, "board-st-quarantines", "In quarantine now") \
	X(ST_HEAD_WHY, "board-st-head-why", "Why") \
	X(ST_HEAD_NOTICE, "board-st-head-notice", "Notice") \
	X(ST_HEAD_NEAR, "board-st-head-near", "Lots that read alike: a person judges") \
	X(ST_ALL_LOTS, "board-st-all-lots", "all lots") \
	X(ST_ASK_RECALL, "board-st-ask-recall", "Where does it lie, and which cases used it?") \
	X(ST_KEY, "board-st-key", "Key of the line") \
	X(ST_LOT_OR_ALL, "board-st-lot-or-all", "Lot (none: all lots)") \
	X(ST_SHOW, "board-st-show", "Show") \
	X(ST_RECALL_OF, "board-st-recall-of", "{key}, lot {lot}") \
	X(ST_RECALL_LINE, "board-st-recall-line", "{key}, all lots") \
	X(ST_HELD, "board-st-held", "It is in quarantine.") \
	X(ST_NOT_HELD, "board-st-not-held", "It is not in quarantine: QUARANTINE at the bench puts it there.") \
	X(ST_LIES, "board-st-lies", "Where it lies") \
	X(ST_OPEN_CASES, "board-st-open-cases", "Open cases that have one, told in their rooms") \
	X(ST_USED, "board-st-used", "Ended cases that used one") \
	X(ST_SILENT, "board-st-silent", "Rooms in which nothing was scanned since then: go and ask") \
	X(ST_SILENT_SINCE, "board-st-silent-since", "{room}, last on {date}") \
	X(ST_SILENT_EVER, "board-st-silent-ever", "{room}, nothing ever") \
	X(ST_OPEN_IN, "board-st-open-in", "case {case} in {room}") \
	X(ST_TOLD_SINCE, "board-st-told-since", "Cases have told stores what they took since {date}.") \
	X(ST_TOLD_NEVER, "board-st-told-never", "No case has told stores yet what it took.") \
	X(ST_HEAD_DAY, "board-st-head-day", "Day") \
	X(ST_HEAD_PACKS, "board-st-head-packs", "Packs") \
	X(ST_HEAD_SLIP, "board-st-head-slip", "Slip")

#define STORES_IMPORT(X, N) \
	X(ST_IMPORT, "board-st-import", "Catalogue") \
	X(ST_FILE, "board-st-file", "File of the spreadsheet (CSV)") \
	X(ST_WHOLE, "board-st-whole", "It is the whole catalogue: what it lacks is removed") \
	X(ST_PREVIEW, "board-st-preview", "Show what it would change") \
	X(ST_TAKE, "board-st-take", "Take it") \
	X(ST_EXPORT, "board-st-export", "Save the catalogue as a file") \
	X(ST_WOULD, "board-st-would", "Nothing is taken yet. Of {n} lines:") \
	X(ST_WAS_TAKEN, "board-st-was-taken", "Taken. Open cases keep the lines that they began with. Of {n} lines:") \
	X(ST_CHANGE_ADDED, "board-st-change-added", "added") \
	X(ST_CHANGE_CHANGED, "board-st-change-changed", "changed") \
	X(ST_CHANGE_REMOVED, "board-st-change-removed", "removed") \
	X(ST_CHANGE_ABSENT, "board-st-change-absent", "not in the file, stays") \
	X(ST_CHANGE_STAY, "board-st-change-stay", "as it was") \
	N(ST_CHANGE_PACKS, "board-st-change-packs", \
	  "{n} pack of it lies in stores or in a room: without its line it is not issued; its key finds it", \
	  "{n} packs of it lie in stores or in rooms: without its line none is issued; its key finds them") \
	X(ST_COUNT, "board-st-count", "{words}: {n}") \
	X(ST_HEAD_FILE_LINE, "board-st-head-file-line", "Line of the file") \
	X(ST_HEAD_CHANGE, "board-st-head-change", "Change") \
	X(ST_HEAD_COLUMNS, "board-st-head-columns", "Columns") \
	X(ST_COLUMN, "board-st-column", "{text}: was '{first}', is '{second}'") \
	X(ST_FILE_AGAIN, "board-st-file-again", "Choose a file first.")

#define STORES_TRAYS(X, N) \
	X(ST_TRAYS, "board-st-trays", "Trays and pouches") \
	X(ST_SHORT, "board-st-short", "Short: for the sterile services") \
	X(ST_SHORT_HOW, "board-st-short-how", \
	  "Instruments that a case ended without. Each comes from one of the trays or pouches beside it: the list goes back with them.") \
	X(ST_MISSED, "board-st-missed", "Ended cases that may miss one") \
	X(ST_FOUND_HOW, "board-st-found-how", \
	  "What comes back in a tray, linen or a bin is read to FOUND at the bench. It acts on the case that misses one; where none does, none is charged.") \
	X(ST_CAME_BACK, "board-st-came-back", "What was found, the last first") \
	X(ST_CAME_NONE, "board-st-came-none", "Nothing was entered as found.") \
	X(ST_CAME_CLOSED, "board-st-came-closed", "What was found is shown to whoever may type here.") \
	X(ST_OF_CASE, "board-st-of-case", "case {case}") \
	X(ST_OF_NO_CASE, "board-st-of-no-case", "no case missed one") \
	X(ST_ASK_HAD, "board-st-ask-had", "Which ended cases had one") \
	X(ST_SINCE, "board-st-since", "Since that tray's last use (may stay empty)") \
	X(ST_HAD, "board-st-had", "Ended cases that had {key}. None of them is charged: the list is for the nurse in charge.") \
	X(ST_LISTS, "board-st-lists", "Lists of trays and pouches") \
	X(ST_HEAD_OF, "board-st-head-of", "It comes from") \
	X(ST_HEAD_ENTERED, "board-st-head-entered", "Entered in") \
	X(ST_HEAD_CASE, "board-st-head-case", "Case") \
	X(ST_HEAD_ROOM, "board-st-head-room", "Room") \
	X(ST_HEAD_SHORT, "board-st-head-short", "Missing") \
	X(ST_HEAD_TRAYS, "board-st-head-trays", "Tray or pouch, and how many its list has") \
	X(ST_HEAD_CONTENTS, "board-st-head-contents", "Its list") \
	X(ST_LISTED, "board-st-listed", "{item}: {n}")

/* what the station answers to what is asked there */
#define STORES_ANSWERS(X, N) \
	X(ASKED_FILE_AGAIN, "asked-file-again", "The file did not come whole, or another page sent one: choose it again.") \
	X(ASKED_FILE_LONG, "asked-file-long", "The file is longer than 1 MiB: split it.") \
	X(ASKED_UNKNOWN, "asked-unknown", "The page asks for something unknown: load it again.") \
	X(ASKED_NO_PRINTER, "asked-no-printer", "The printer's program does not run, which draws the label: try again.") \
	X(ASKED_NO_LINE, "asked-no-line", "The catalogue has no such line: type its key.") \
	X(ASKED_NO_DAY, "asked-no-day", "That is no day: type it as 2028-03-31.")
/* clang-format on */

#endif
