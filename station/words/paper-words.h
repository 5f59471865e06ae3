/* What papers say besides slips, whatever they are filled with: the paper count sheet, the labels of packs, the
 * teaching sheet, the patient's leaflet, cards and badges. The form is that of sayings.h.
 */
#ifndef BANDTALLY_WORDS_PAPER_WORDS_H
#define BANDTALLY_WORDS_PAPER_WORDS_H

/* clang-format off */
#define PAPER_WORDS(X, N) \
	PAPER_SHARED(X, N) \
	COUNT_SHEET(X, N) \
	PACK_LABEL(X, N) \
	BRIEFING(X, N) \
	LEAFLET(X, N) \
	DIGIT_CARDS(X, N) \
	CARD_PAGES(X, N) \
	BADGES(X, N) \
	SCANNER_CHECK(X, N) \
	TEST_PAGE(X, N)

#define PAPER_SHARED(X, N) \
	X(P_ROOM_ONLY, "paper-room-only", "{room} only") \
	X(P_PATIENT, "paper-patient", "Patient's label")

#define COUNT_SHEET(X, N) \
	X(CS_TITLE, "sheet-title", "Paper count sheet") \
	X(CS_NUMBER, "sheet-number", "no. {n}") \
	X(CS_HOW, "sheet-how", \
	  "While the station is silent the room counts on this sheet. Copy first what the board still shows, with the time that stands beside it. Then write each thing when it happens, with its time.") \
	X(CS_DATE, "sheet-date", "date") \
	X(CS_CASE, "sheet-case", "case, or its label") \
	X(CS_FROM_TO, "sheet-from-to", "from, to") \
	X(CS_COPIED, "sheet-copied", "copied from the board as of") \
	X(CS_DIGITS, "sheet-digits", "Digits") \
	X(CS_DIGIT, "sheet-digit", "digit, in words: left or right, which") \
	X(CS_ON, "sheet-on", "on at") \
	X(CS_REMINDED, "sheet-reminded", "reminder at: told by") \
	X(CS_OFF, "sheet-off", "off at") \
	X(CS_MINUTES, "sheet-minutes", "minutes") \
	X(CS_BARE, "sheet-bare", "seen bare at, before the dressing") \
	X(CS_BY, "sheet-by", "by") \
	X(CS_ITEMS, "sheet-items", "Counted in and accounted for") \
	X(CS_ITEM, "sheet-item", "no., item, lot or mark") \
	X(CS_IN, "sheet-in", "counted in") \
	X(CS_ADDED, "sheet-added", "added") \
	X(CS_OUT, "sheet-out", "accounted for") \
	X(CS_EVIDENCE, "sheet-evidence", "how: its mark, or shown to both; intact, cut and complete") \
	X(CS_FIRST, "sheet-first", "1  finger or toe tourniquet") \
	X(CS_SECOND, "sheet-second", "2  artery forceps") \
	X(CS_COUNTS, "sheet-counts", "Counts, agreed aloud by two") \
	X(CS_COUNTS_ALONE, "sheet-counts-alone", "Counts: single-person") \
	X(CS_INITIAL, "sheet-initial", "initial") \
	X(CS_HANDOVER, "sheet-handover", "handover") \
	X(CS_FINAL, "sheet-final", "final") \
	X(CS_AT, "sheet-at", "at") \
	X(CS_AND, "sheet-and", "and") \
	X(CS_ALSO_LOOKED, "sheet-also-looked", "also looked") \
	X(CS_WRITTEN_BY, "sheet-written-by", "written by") \
	X(CS_SEARCH, "sheet-search", "DISCREPANCY: something is missing, extra or in pieces") \
	X(CS_INCIDENT, "sheet-incident", "incident number") \
	X(CS_SIGN_OUT, "sheet-sign-out", "Sign-out: read aloud, tick what is so") \
	X(CS_SURGEON, "sheet-surgeon", "surgeon or operator") \
	X(CS_SKIN_BEFORE, "sheet-skin-before", "skin before") \
	X(CS_SKIN_AFTER, "sheet-skin-after", "after") \
	X(CS_COLOUR, "sheet-colour", "colour back") \
	X(CS_OUTCOME, "sheet-outcome", "Outcome") \
	X(CS_ALL_SHOWN, "sheet-all-shown", "all accounted for, nothing extra, each digit seen bare") \
	X(CS_UNRESOLVED, "sheet-unresolved", "ended UNRESOLVED, by the surgeon") \
	X(CS_CANCELLED, "sheet-cancelled", "cancelled") \
	X(CS_AFTERWARDS, "sheet-afterwards", \
	  "When the station is back: scan this code, then enter the sheet from top to bottom. What is entered stays marked late.") \
	X(CS_CAUTION, "sheet-caution", \
	  "A count that agrees can still be wrong: in doubt look again. This paper supports the count that people make; local policy and the licensed practitioner decide. It belongs into the notes.")

#define PACK_LABEL(X, N) \
	X(PL_PACK, "pack-label-pack", "PACK") \
	X(PL_BAG, "pack-label-bag", "PAPER OR RETURN BAG") \
	X(PL_ON_POUCH, "pack-label-on-pouch", "label 1 of 2: on the pouch") \
	X(PL_SECOND, "pack-label-second", "label 2 of 2") \
	X(PL_HOSPITAL, "pack-label-hospital", "hospital use only") \
	X(PL_NOT_PROOF, "pack-label-not-proof", "not proof that the item came back; hospital use only") \
	X(PL_USE_BY, "pack-label-use-by", "use by {date}") \
	X(PL_NUMBER, "pack-label-number", "no. {text}") \
	X(PL_LOT_NUMBER, "pack-label-lot-number", "lot {lot}  ·  no. {text}")

/* The teaching sheet of a room. Each fact is given with its source on the paper; what has none is said to be common practice. */
#define BRIEFING(X, N) \
	X(BR_FROM, "briefing-from", "{text}, {room}: for the team") \
	X(BR_TITLE, "briefing-title", "Count the band") \
	X(BR_LEAD, "briefing-lead", \
	  "A finger or toe tourniquet is small, and a dressing hides it. Left on, it costs the digit.") \
	X(BR_SHOUT, "briefing-shout", \
	  "Final count, then look at the bare digit, then the dressing. In this order, each time.") \
	X(BR_WHY, "briefing-why", "Why it is forgotten") \
	X(BR_WHY_1, "briefing-why-1", \
	  "It is taken for part of the glove or dressing, above all where it has the colour of skin. (2)") \
	X(BR_WHY_2, "briefing-why-2", \
	  "The artery forceps come back and the count looks complete, while the band stays. They are two items, counted apart. (3)") \
	X(BR_WHY_3, "briefing-why-3", \
	  "People change, the list is long, the phone rings: whoever put it on is not always whoever dresses. (5)") \
	X(BR_WHY_4, "briefing-why-4", \
	  "In England and Wales 15 serious incidents were reported in four years: 10 further operations, 2 amputations. (1)") \
	X(BR_DO, "briefing-do", "What to do") \
	X(BR_DO_1, "briefing-do-1", \
	  "Use a bright or tagged band that is made and marked for this. Never a glove finger or a drain. (1, 4)") \
	X(BR_DO_2, "briefing-do-2", "Count it in before it goes on, and say aloud: which digit, and when.") \
	X(BR_DO_3, "briefing-do-3", \
	  "Scan the digit's card when it goes on, and card and OFF when it comes off. Tell the surgeon the minutes.") \
	X(BR_DO_4, "briefing-do-4", \
	  "At the end show band and forceps to both of you. Then both look at the bare digit: colour, warmth, nothing round it.") \
	X(BR_DO_5, "briefing-do-5", \
	  "If anything is missing: say it aloud, stop closing, count again. Then look at and feel the digit, under the dressing too.") \
	X(BR_LOOK, "briefing-look", "What to look for afterwards") \
	X(BR_LOOK_1, "briefing-look-1", \
	  "Pain that grows, a pale, blue or cold digit, no feeling in it: take the dressing down and look. At once, not at the next round.") \
	X(BR_LOOK_2, "briefing-look-2", "An X-ray may not show a band. (5)") \
	X(BR_FOOT_1, "briefing-foot-1", \
	  "(1) BMJ 2010;340:c1981. (2) Injury 2002;33:76-77. (3) AHRQ PSNet WebM&M, 26 August 2020. (4) British Orthopaedic Association, standard on intraoperative tourniquets, 2021: regulator-approved devices, highly visible or put on with instruments that are counted. (5) Common practice, no source; so is what stands here without a number.") \
	X(BR_FOOT_2, "briefing-foot-2", \
	  "No published limit for the time of a finger or toe tourniquet was found: the times of the reminders are local policy. Hang this where patients cannot read it. It supports the team's own judgement and local policy, and replaces neither.")

/* What a patient takes home. */
#define LEAFLET(X, N) \
	X(LF_TITLE, "leaflet-title", "After the operation on your finger or toe") \
	X(LF_LEAD, "leaflet-lead", \
	  "During your operation a tight band was used for a short time, so that the surgeon could see well. It comes off before the dressing goes on; the team counts it, and looks at the finger or toe. Please look as well, as soon as you can, at what the dressing leaves free. Do not undo it yourself unless your team told you to: with any sign below, call.") \
	X(LF_SHOUT, "leaflet-shout", "Call at once: {text}") \
	X(LF_IF, "leaflet-if", "By day or night, if your finger or toe") \
	X(LF_IF_1, "leaflet-if-1", \
	  "hurts more and more, or much more than you were told to expect, and the tablets do not help;") \
	X(LF_IF_2, "leaflet-if-2", "is white, grey, blue or black, or stays cold when the others are warm;") \
	X(LF_IF_3, "leaflet-if-3", "stays numb longer than you were told, or you cannot move it as before;") \
	X(LF_IF_4, "leaflet-if-4", "swells so that the dressing becomes tight, or bleeds through it;") \
	X(LF_IF_5, "leaflet-if-5", "or if you see or feel something tight round it that nobody told you about.") \
	X(LF_WAIT, "leaflet-wait", "Do not wait for your next appointment") \
	X(LF_WAIT_1, "leaflet-wait-1", "If nobody answers, go to the nearest emergency department and show this paper.") \
	X(LF_WAIT_2, "leaflet-wait-2", \
	  "Ask them to take the dressing down and to look at the whole finger or toe, to its root.") \
	X(LF_WAIT_3, "leaflet-wait-3", "Hold the hand or foot up on the way.") \
	X(LF_ELSE, "leaflet-else", "Otherwise") \
	X(LF_ELSE_1, "leaflet-else-1", \
	  "Keep the dressing dry and on for as long as you were told. Keep the hand or foot up, above the heart where you can.") \
	X(LF_ELSE_2, "leaflet-else-2", \
	  "Take the tablets as your team said. Follow what your own team told you wherever it differs from this paper.") \
	X(LF_FOOT, "leaflet-foot", \
	  "The signs are common practice in the care of hands and feet, without a source of their own. Why they matter: a forgotten band has cost people a finger or a toe (BMJ 2010;340:c1981). This paper does not replace the advice of your own team.")

#define DIGIT_CARDS(X, N) \
	X(DC_HEAD, "digit-cards-head", "{text}  ·  digit cards") \
	X(DC_HOW, "digit-cards-how", \
	  "Scan when a tourniquet goes on: its time starts. While it is on: shows the minutes. Only OFF stops the time. Again at the bare digit, before the dressing.") \
	X(DC_STRIPS, "digit-cards-strips", "{words} Cut into strips: the camera wants one at a time.") \
	X(DC_RIGHT_HAND, "digit-cards-right-hand", "RIGHT HAND") \
	X(DC_LEFT_HAND, "digit-cards-left-hand", "LEFT HAND") \
	X(DC_RIGHT_FOOT, "digit-cards-right-foot", "RIGHT FOOT") \
	X(DC_LEFT_FOOT, "digit-cards-left-foot", "LEFT FOOT") \
	X(DC_FOOT, "digit-cards-foot", "the foot from above, nails up") \
	X(DC_HAND, "digit-cards-hand", "the back of the hand, nails up") \
	X(DC_WRITE, "digit-cards-write", "a sixth finger, a stump, joined digits: say aloud which, and write it here") \
	X(DC_OTHER, "digit-cards-other", "ANOTHER DIGIT") \
	X(DC_OTHER_SAY, "digit-cards-other-say", "none of the twenty: say which")

#define CARD_PAGES(X, N) \
	X(CP_HEAD, "card-pages-head", "{text}  ·  cards") \
	X(CP_CUT_OUT, "card-pages-cut-out", "Cut out: the camera wants one card at a time") \
	X(CP_EVERY, "card-pages-every", "Every case, in the order of use") \
	X(CP_EVERY_NOTE, "card-pages-every-note", \
	  "The left column is the ordinary case from top to bottom; the right one answers or mends at any time. Laminate it whole. Cards that end something are on other pages, framed.") \
	X(CP_THEN_OPEN, "card-pages-then-open", \
	  "then two badges, pack and forceps; badge: count agreed; digit card: it is on") \
	X(CP_THEN_OFF, "card-pages-then-off", "the digit card first, then this") \
	X(CP_THEN_INTACT, "card-pages-then-intact", "then the mark on the forceps, or YES") \
	X(CP_THEN_YES, "card-pages-then-yes", "then badge: count agreed; digit card: seen bare; surgeon's badge; the slip") \
	X(CP_ALONE_OFF, "card-pages-alone-off", "before it: badge, pack, digit card (it is on); then digit card, and this") \
	X(CP_ALONE_INTACT, "card-pages-alone-intact", "then the digit card: seen bare") \
	X(CP_ALONE_LOOKED, "card-pages-alone-looked", "one of these four; then badge, and the slip") \
	X(CP_MISSING, "card-pages-missing", "Something is missing, extra or in pieces") \
	X(CP_MISSING_NOTE, "card-pages-missing-note", \
	  "The board leads through the search, step by step. Look at and feel the digit, under the dressing too.") \
	X(CP_NOW_AND_THEN, "card-pages-now-and-then", "Now and then") \
	X(CP_NOW_AND_THEN_NOTE, "card-pages-now-and-then-note", \
	  "The two framed cards end something: a count is still owed for whatever was opened.") \
	X(CP_VISITORS, "card-pages-visitors", "Visitors, and scanners") \
	X(CP_VISITORS_NOTE, "card-pages-visitors-note", \
	  "A visitor's name is written beside the code by the circulating practitioner.") \
	X(CP_NUMBERS, "card-pages-numbers", "A number") \
	X(CP_NUMBERS_NOTE, "card-pages-numbers-note", \
	  "SHOWN: so many of what is asked for lie here, side by side. MINUTES AGO: it went on or came off so much earlier than it was entered.") \
	X(CP_STORES_IN, "card-pages-stores-in", "What comes in, and its labels") \
	X(CP_STORES_IN_NOTE, "card-pages-stores-in-note", \
	  "Scan the box or pack that came; the board asks how many. What its code does not say is typed, and a second person compares it. Each label is read back before its pack is issued.") \
	X(CP_STORES_SHELF, "card-pages-stores-shelf", "The shelf, and what must not be used") \
	X(CP_STORES_SHELF_NOTE, "card-pages-stores-shelf-note", \
	  "A pack that comes back unopened is looked at before it goes to another room: sealed, dry, clean. Release needs two people.") \
	X(CP_STORES_ROOM, "card-pages-stores-room", "To a room") \
	X(CP_STORES_ROOM_NOTE, "card-pages-stores-room-note", "Then each pack; DONE.") \
	X(CP_HOW_MANY, "card-pages-how-many", "How many") \
	X(CP_HOW_MANY_NOTE, "card-pages-how-many-note", "So many boxes, packs or labels; any other number is typed.")

#define BADGES(X, N) \
	X(BG_REGISTERED, "badge-registered", "REGISTERED") \
	X(BG_NOT_REGISTERED, "badge-not-registered", "NOT REGISTERED") \
	X(BG_PRACTITIONER, "badge-practitioner", "scrub or circulating practitioner") \
	X(BG_SURGEON, "badge-surgeon", "surgeon or operator") \
	X(BG_CHARGE, "badge-charge", "nurse in charge")

/* The sheet from which the station learns how a scanner sends, and what each of its codes teaches. */
#define SCANNER_CHECK(X, N) \
	X(SC_TITLE, "scanner-check-title", "Scanner check") \
	X(SC_HOW, "scanner-check-how", \
	  "Scan every code once, from 1 downwards, and wait for the board after each. The station learns how this scanner sends letters, signs and the parts of a code. A code that the scanner does not read: go on with the next. That a code of this sheet is read says nothing about the print quality of others.") \
	X(SC_BEGIN, "scanner-check-begin", "Begin") \
	X(SC_BEGIN_FOR, "scanner-check-begin-for", "the station listens to this scanner") \
	X(SC_LETTERS, "scanner-check-letters", "Letters") \
	X(SC_LETTERS_FOR, "scanner-check-letters-for", "the keyboard layout that it types in: Y and Z, A and Q") \
	X(SC_DIGITS, "scanner-check-digits", "Digits") \
	X(SC_DIGITS_FOR, "scanner-check-digits-for", "whether it sends digits, or the signs that share their keys") \
	X(SC_SIGNS, "scanner-check-signs", "Signs") \
	X(SC_SIGNS_FOR, "scanner-check-signs-for", "signs that other makers' codes use") \
	X(SC_LOWER, "scanner-check-lower", "Small letters") \
	X(SC_LOWER_FOR, "scanner-check-lower-for", "whether small letters stay small") \
	X(SC_GS1_128_FOR, "scanner-check-gs1-128-for", "how it sends a code that has several parts") \
	X(SC_EAN13_FOR, "scanner-check-ean13-for", "what it sends before and behind a code") \
	X(SC_GS1_DATAMATRIX_FOR, "scanner-check-gs1-datamatrix-for", "the same of a square code") \
	X(SC_QR_FOR, "scanner-check-qr-for", "small and capital letters together") \
	X(SC_END, "scanner-check-end", "End") \
	X(SC_END_FOR, "scanner-check-end-for", "what was learnt of this scanner is kept")

/* The page that a first start prints to try a printer. */
#define TEST_PAGE(X, N) \
	X(TP_TITLE, "test-page-title", "Printer test") \
	X(TP_HOW, "test-page-how", \
	  "Scan this code, or type what stands below it, where the setup of the station asks for it. Then throw this page away: it is of no use to a count.")
/* clang-format on */

#endif
