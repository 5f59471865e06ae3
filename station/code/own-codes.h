/* The codes that this house prints itself: cards, badges, slips, case labels, trays and item labels.
 *
 * They are plain text, so that any scanner can send them, and use only capital letters and digits that the
 * US, UK, German, French, Swiss, Spanish, Italian, Nordic and Portuguese keyboards have on the same keys: a
 * scanner that types in the wrong layout still sends them right. That leaves, of the letters,
 *
 *     B C D E F G H I J K L N O P R S T U V X            (not A M Q W Y Z)
 *
 * A linear code (Code 128, or QR on paper) is
 *
 *     BT  site (2 letters)  kind (1 digit)  payload (digits)  check (2 digits)
 *
 *     kind        payload                                length   example, site BC
 *     1 card      room 2, meaning 3 (enum own_card)        12     BTBC10104051: OFF, room 1
 *     2 digit     room 2, digit 2 (1 to 24)                11
 *     3 badge     number 6                                 13
 *     4 slip      station 2, slip 7, copy 2, proof 6       24     BTBC40700000410184215324: slip 41, copy 1
 *     5 case      station 2, number 7                      16
 *     6 scanner   step 2                                    9     (the scanner-check sheet)
 *     7 tray      number 6                                 13
 *     9 paper     room 2, number 5                         14     (a paper count sheet of that room)
 *
 * The practice set is printed with BX in place of BT. The letter stands under the check digits as everything else does, so
 * that none of its codes is read as one of the others, nor the other way round; it has no scanner-check sheet, and a pack of
 * it is its kind 7. What it stands for counts nothing but in practice.
 *
 * The stores' item label is GS1 DataMatrix with one element string, (91) 'internal company information':
 *
 *     role (P pack, R paper or return bag)  site (2)  station (2)  number (8)  check (2)      15 characters
 *
 * which takes 11 codewords of the 12 that a 16×16 symbol holds; 8×32 holds 10, so that the flat symbol is 12×26.
 *
 * The site's letters name the hospital; each of its stations has a number, and the numbers of slips, cases and items are
 * unique by letters and station. Cards, digits, badges and trays are the hospital's. The six digits of a slip prove the
 * paper: they are made from the station's key, so that nobody can work them out. Earlier versions wrote slips, cases and
 * items without station and proof (16, 14 and 13 characters); those are station 0, and are read for ever.
 *
 * The check digits are ISO/IEC 7064 MOD 97-10 over everything before them, letters as A=10 … Z=35, as IBAN
 * and the Legal Entity Identifier (ISO 17442) have it. They catch every single wrong character and every
 * swap.
 */
#ifndef BANDTALLY_CODE_OWN_CODES_H
#define BANDTALLY_CODE_OWN_CODES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "code/fault.h"

enum own_kind {
	OWN_NONE = 0, /* not one of ours */
	OWN_CARD = 1,
	OWN_DIGIT = 2,
	OWN_BADGE = 3,
	OWN_SLIP = 4,
	OWN_CASE = 5,
	OWN_SCANNER_CHECK = 6,
	OWN_TRAY = 7,
	OWN_ITEM = 8, /* the item label: written as the value of (91) */
	OWN_PAPER_SHEET = 9,
};

#define OWN_SITE_LETTERS "BCDEFGHIJKLNOPRSTUVX"
#define OWN_CODE_MAX 25 /* with the NUL: the longest is a slip's, 24 characters */
#define OWN_STATIONS 100
#define OWN_PROOFS 999999 /* of a slip, from 1 */
#define OWN_DIGITS 24
/* Numbers of OWN_SCANNER_CHECK: the first code of that sheet, and the one that ends it. */
#define OWN_CHECK_START 1
#define OWN_CHECK_END 2

/* The fields of a code. Fields that a kind does not have are 0 or "". */
struct own_code {
	enum own_kind kind;
	bool practice;  /* of the practice set */
	char site[3];   /* 2 letters of OWN_SITE_LETTERS; whether it is this site is the caller's question */
	int room;       /* card, digit, paper sheet: 0..99 */
	int meaning;    /* card: enum own_card, or another number of 0..999 that this version does not know */
	int digit;      /* digit: 1..24 */
	int32_t number; /* badge and tray 0..999999; slip and case 0..9999999; item 0..99999999; check: step
	                   0..99; paper sheet 0..99999 */
	int copy;       /* slip: 0..99 */
	int station;    /* slip, case, item: 0..99 */
	int32_t proof;  /* slip: 1..999999, its six digits; 0 as earlier versions wrote it */
	bool old;       /* case, item, slip: as earlier versions wrote it, without station and proof */
	char role;      /* item: 'P' or 'R' */
};

/* Reads one of ours, linear or item label value (keyed in small letters too).
 * 0: `out` is filled. -ENOENT: it does not have the shape of one of ours. -EINVAL: it has, but is misread or
 * cut short (check digits, length, letters, range), and `fault` says which. `out` is OWN_NONE unless 0. */
int own_code_read(const char *text, size_t size, struct own_code *out, struct code_fault *fault);

/* Writes the text with its check digits: for OWN_ITEM the value of (91), without the identifier.
 * 0, or -EINVAL where a field is out of its range (`out` is then ""). */
int own_code_write(const struct own_code *code, char out[OWN_CODE_MAX]);

/* As it stands on paper to be typed: "BTHU 1010 4045", "PHU 0000 0000 0527". code_read() takes it so, and an item label's
 * with 91 before it or without. "" where `text` is none of ours. */
#define OWN_CODE_SHOWN_MAX 40
void own_code_shown(const char *text, char out[OWN_CODE_SHOWN_MAX]);

/* The answer cards, as one list: X(NUMBER, NAME, "words on it", GROUP, the number that it says, "what it is for").
 * The numbers are printed on paper that hangs on walls: never reuse or change one. What a card does is decided in
 * station/decide/card.c, what it answers in answer.c; one that is left out in card.c does not compile. */
/* clang-format off */
#define OWN_CARDS(X) \
	X(1, NEW_CASE, "NEW CASE", CASE, 0, "opens a case that has no label") \
	X(2, SUSPEND, "SUSPEND", CASE, 0, "puts the open case aside; scanned again, it goes on") \
	X(3, CANCEL, "CANCEL", CASE, 0, "no operation: what was opened is still accounted for") \
	X(4, PATIENT_LEAVES, "PATIENT LEAVES", CASE, 0, "the patient leaves the room before the case has ended") \
	X(5, END_UNRESOLVED, "END UNRESOLVED", CASE, 0, "after the search the surgeon ends a case in which something is missing") \
	X(10, YES, "YES", ANSWERS, 0, "it is so; in a count: it is there, and shown") \
	X(11, NO, "NO", ANSWERS, 0, "it is not so; in a count: it is not there") \
	X(12, MISREAD, "MISREAD", ANSWERS, 0, "a wrong digit, item or person was entered: the board asks for the right one") \
	X(13, UNDO, "UNDO", ANSWERS, 0, "takes back the last step") \
	X(14, INTERRUPTED, "INTERRUPTED", ANSWERS, 0, "the line that was being counted is counted again") \
	X(15, NEXT, "NEXT", ANSWERS, 0, "the same answer twice, and both are meant: scan this between them") \
	X(20, ADD, "ADD", ON_THE_WAY, 0, "a further pack of a kind that is on the sheet: scan it after this") \
	X(21, RETURNED_UNOPENED, "RETURNED UNOPENED", ON_THE_WAY, 0, "a pack goes back unopened: scan it after this") \
	X(22, UNLISTED_TOURNIQUET, "UNLISTED TOURNIQUET", ON_THE_WAY, 0, "a tourniquet that was not counted in is on a digit") \
	X(23, NO_CODE, "NO CODE", ON_THE_WAY, 0, "an item that has no code is counted in: write on paper what it is") \
	X(24, MARK_UNREADABLE, "MARK UNREADABLE", ON_THE_WAY, 0, "the mark on an instrument cannot be read") \
	X(25, WRONG_NUMBER_IN_PACK, "WRONG NUMBER IN PACK", ON_THE_WAY, 0, "a pack does not hold what it says: scan it after this") \
	X(26, DROPPED, "DROPPED", ON_THE_WAY, 0, "an item fell down and still counts: scan it after this") \
	X(27, FORCEPS_MOVED, "FORCEPS MOVED", ON_THE_WAY, 0, "the forceps were taken away, the tourniquet is still on") \
	X(40, OFF, "OFF", TOURNIQUET, 0, "the tourniquet has come off: its clock stops") \
	X(41, INTACT, "INTACT", TOURNIQUET, 0, "the tourniquet is here, whole and uncut") \
	X(42, CUT_AND_COMPLETE, "CUT AND COMPLETE", TOURNIQUET, 0, "the tourniquet is here, cut, with every piece of it") \
	X(43, PIECES_MISSING, "PIECES MISSING", TOURNIQUET, 0, "the tourniquet is here, but not all of it") \
	X(44, OFFCUT, "OFFCUT", TOURNIQUET, 0, "a piece that was cut off: it is counted as well") \
	X(50, FINAL_COUNT, "FINAL COUNT", COUNTS, 0, "begins the final count, before the dressing") \
	X(51, HANDOVER, "HANDOVER", COUNTS, 0, "somebody hands over to somebody else") \
	X(52, WITHOUT_FULL_SIGHT, "WITHOUT FULL SIGHT", COUNTS, 0, "at a handover: the tourniquet that is on cannot be seen") \
	X(53, MISSING, "MISSING", COUNTS, 0, "nothing is shown for the line that is asked for") \
	X(54, DRESSING_ALREADY_ON, "DRESSING ALREADY ON", COUNTS, 0, "a dressing is on before the look at the bare digit") \
	X(60, STEP_DONE, "STEP DONE", SEARCH, 0, "this step of the search was done") \
	X(61, NOT_DONE, "NOT DONE", SEARCH, 0, "this step of the search was not done, or there is no number yet") \
	X(62, FOUND, "FOUND", SEARCH, 0, "what is missing is in your hand") \
	X(70, AWAKE_PATIENT, "AWAKE PATIENT", ROOM, 0, "quiet sounds and plain words; scanned again, the usual ones") \
	X(71, SPARE_SCANNER, "SPARE SCANNER", ROOM, 0, "this scanner works here until a card of another room is scanned with it") \
	X(72, THIS_ROOM, "THIS ROOM", ROOM, 0, "this scanner works here for a while") \
	X(73, SHOW_CAMERA, "SHOW CAMERA", ROOM, 0, "the station's screen shows the camera's picture for 20 s; again ends it") \
	X(80, LOOKED_PATIENT, "WHO LOOKED: PATIENT", LOOKED, 0, "alone: the patient looked at the bare digit as well") \
	X(81, LOOKED_CARER, "WHO LOOKED: CARER", LOOKED, 0, "alone: a carer looked at the bare digit as well") \
	X(82, LOOKED_COLLEAGUE, "WHO LOOKED: COLLEAGUE", LOOKED, 0, "alone: a colleague looked at the bare digit as well") \
	X(83, LOOKED_NOBODY, "WHO LOOKED: NOBODY", LOOKED, 0, "alone: nobody else looked at the bare digit") \
	X(91, VISITOR_1, "VISITOR 1", VISITORS, 1, "somebody without a badge: write the name here") \
	X(92, VISITOR_2, "VISITOR 2", VISITORS, 2, "somebody without a badge: write the name here") \
	X(93, VISITOR_3, "VISITOR 3", VISITORS, 3, "somebody without a badge: write the name here") \
	X(94, VISITOR_4, "VISITOR 4", VISITORS, 4, "somebody without a badge: write the name here") \
	X(101, 1_MINUTE_AGO, "1 MINUTE AGO", EARLIER, 1, "it went on, or came off, so much earlier than was entered") \
	X(102, 2_MINUTES_AGO, "2 MINUTES AGO", EARLIER, 2, "it went on, or came off, so much earlier than was entered") \
	X(103, 3_MINUTES_AGO, "3 MINUTES AGO", EARLIER, 3, "it went on, or came off, so much earlier than was entered") \
	X(105, 5_MINUTES_AGO, "5 MINUTES AGO", EARLIER, 5, "it went on, or came off, so much earlier than was entered") \
	X(110, 10_MINUTES_AGO, "10 MINUTES AGO", EARLIER, 10, "it went on, or came off, so much earlier than was entered") \
	X(201, SHOWN_1, "SHOWN 1", SHOWN, 1, "so many of what is asked for are here") \
	X(202, SHOWN_2, "SHOWN 2", SHOWN, 2, "so many of what is asked for are here") \
	X(203, SHOWN_3, "SHOWN 3", SHOWN, 3, "so many of what is asked for are here") \
	X(204, SHOWN_4, "SHOWN 4", SHOWN, 4, "so many of what is asked for are here") \
	X(205, SHOWN_5, "SHOWN 5", SHOWN, 5, "so many of what is asked for are here") \
	X(206, SHOWN_6, "SHOWN 6", SHOWN, 6, "so many of what is asked for are here") \
	X(207, SHOWN_7, "SHOWN 7", SHOWN, 7, "so many of what is asked for are here") \
	X(208, SHOWN_8, "SHOWN 8", SHOWN, 8, "so many of what is asked for are here") \
	X(209, SHOWN_9, "SHOWN 9", SHOWN, 9, "so many of what is asked for are here") \
	X(210, SHOWN_10, "SHOWN 10", SHOWN, 10, "so many of what is asked for are here")

/* The cards of a stores bench, in the same way; what they do is decided in station/stock. Behind them, from
 * CARD_TO_ROOM + 1 on, stands one for each room that packs are issued to. */
#define OWN_STORES_CARDS(X) \
	X(301, RECEIVE, "RECEIVE", DELIVERY, 0, "a delivery: scan the box or the pack after this") \
	X(302, CONFIRM, "CONFIRM", DELIVERY, 0, "a second person confirms what was typed: scan the pack after this") \
	X(303, NOBODY_TO_CONFIRM, "NOBODY TO CONFIRM", DELIVERY, 0, "what was typed waits for a second person, and is not issued") \
	X(310, PRINT_LABELS, "PRINT LABELS", LABELS, 0, "labels for packs that bear no code: scan the box after this") \
	X(311, SPOILT_LABEL, "SPOILT LABEL", LABELS, 0, "a label that cannot be used: scan it after this, or type its number") \
	X(312, DESTROYED_LABEL, "DESTROYED LABEL", LABELS, 0, "a label that was torn up: scan it after this, or type its number") \
	X(321, RETURNED_PACK, "RETURNED PACK", SHELF, 0, "a pack comes back unopened: scan it after this") \
	X(322, COUNT_SHELF, "COUNT SHELF", SHELF, 0, "what lies on the shelf is counted: scan one pack of it after this") \
	X(323, WRITE_OFF, "WRITE OFF", SHELF, 0, "packs that are thrown away: scan one of them after this") \
	X(330, QUARANTINE, "QUARANTINE", RECALL, 0, "a line or a lot is not used any more: scan one pack of it after this") \
	X(331, RELEASE, "RELEASE", RECALL, 0, "a line or a lot may be used again: scan one pack of it after this") \
	X(340, DONE, "DONE", SHELF, 0, "this is finished") \
	X(351, NUMBER_1, "NUMBER 1", NUMBERS, 1, "so many boxes, packs or labels") \
	X(352, NUMBER_2, "NUMBER 2", NUMBERS, 2, "so many boxes, packs or labels") \
	X(353, NUMBER_3, "NUMBER 3", NUMBERS, 3, "so many boxes, packs or labels") \
	X(354, NUMBER_4, "NUMBER 4", NUMBERS, 4, "so many boxes, packs or labels") \
	X(355, NUMBER_5, "NUMBER 5", NUMBERS, 5, "so many boxes, packs or labels") \
	X(356, NUMBER_6, "NUMBER 6", NUMBERS, 6, "so many boxes, packs or labels") \
	X(357, NUMBER_8, "NUMBER 8", NUMBERS, 8, "so many boxes, packs or labels") \
	X(358, NUMBER_10, "NUMBER 10", NUMBERS, 10, "so many boxes, packs or labels") \
	X(359, NUMBER_20, "NUMBER 20", NUMBERS, 20, "so many boxes, packs or labels") \
	X(360, NUMBER_50, "NUMBER 50", NUMBERS, 50, "so many boxes, packs or labels") \
	X(361, NUMBER_100, "NUMBER 100", NUMBERS, 100, "so many boxes, packs or labels")
#define CARD_TO_ROOM 400
#define CARD_TO_ROOM_MAX 99

/* The groups that stand together on paper: X(NAME, "title"). */
#define OWN_STORES_CARD_GROUPS(X) \
	X(DELIVERY, "What comes in") \
	X(LABELS, "Labels") \
	X(SHELF, "The shelf") \
	X(RECALL, "Quarantine") \
	X(NUMBERS, "How many") \
	X(TO_ROOM, "To a room")

#define OWN_CARD_GROUPS(X) \
	X(CASE, "The case") \
	X(ANSWERS, "Answers, and taking back") \
	X(ON_THE_WAY, "Counting in, and on the way") \
	X(TOURNIQUET, "The tourniquet") \
	X(COUNTS, "Counts") \
	X(SEARCH, "Search") \
	X(ROOM, "The room") \
	X(LOOKED, "Who else looked") \
	X(VISITORS, "Visitors") \
	X(EARLIER, "It was earlier") \
	X(SHOWN, "Laid side by side")

/* X(NUMBER, "in words"): 1-5 right thumb to little finger, 6-10 left, 11-15 right great to little toe, 16-20 left, 21-24
 * 'other digit' that somebody describes (a sixth finger, a stump, syndactyly). */
#define OWN_DIGIT_NAMES(X) \
	X(1, "right thumb") \
	X(2, "right index finger") \
	X(3, "right middle finger") \
	X(4, "right ring finger") \
	X(5, "right little finger") \
	X(6, "left thumb") \
	X(7, "left index finger") \
	X(8, "left middle finger") \
	X(9, "left ring finger") \
	X(10, "left little finger") \
	X(11, "right great (big) toe") \
	X(12, "right second toe") \
	X(13, "right third toe") \
	X(14, "right fourth toe") \
	X(15, "right little toe") \
	X(16, "left great (big) toe") \
	X(17, "left second toe") \
	X(18, "left third toe") \
	X(19, "left fourth toe") \
	X(20, "left little toe") \
	X(21, "other digit 1, described") \
	X(22, "other digit 2, described") \
	X(23, "other digit 3, described") \
	X(24, "other digit 4, described")
/* clang-format on */

enum own_card {
#define X(number, name, words, group, says, use) CARD_##name = number,
	OWN_CARDS(X)
#undef X
};

enum own_stores_card {
#define X(number, name, words, group, says, use) CARD_##name = number,
	OWN_STORES_CARDS(X)
#undef X
};

enum own_card_group {
	CARDS_NONE = 0, /* of a number that is no card */
#define X(name, title) CARDS_##name,
	OWN_CARD_GROUPS(X)
#undef X
	    CARDS_GROUPS,
	CARDS_BEFORE_STORES = CARDS_GROUPS - 1,
#define X(name, title) CARDS_##name,
	OWN_STORES_CARD_GROUPS(X)
#undef X
	    CARDS_ALL_GROUPS
};

/* The words on the card ("CUT AND COMPLETE"), and the line below them; "" for a number that is no card. Static, never
 * NULL. */
const char *own_card_name(int meaning);
const char *own_card_use(int meaning);
enum own_card_group own_card_group(int meaning);
const char *own_card_group_title(enum own_card_group group);
/* 3 of SHOWN 3, VISITOR 3 and 3 MINUTES AGO, 0 of a card that says no number; and the card of a group that says so, 0
 * where there is none. */
int own_card_says(int meaning);
int own_card_saying(enum own_card_group group, int number);
/* The card after `meaning` in order of number, 0 after the last: `for (m = own_card_next(0); m; …)`. */
int own_card_next(int meaning);
/* The same of a stores bench: its cards, without those to a room; and whether a card is one of a bench. */
int own_stores_card_next(int meaning);
bool own_card_is_of_stores(int meaning);

/* A digit in words ("right index finger", "left great (big) toe"), "" outside 1..24. Static, never NULL. */
const char *own_digit_name(int number);

#endif
