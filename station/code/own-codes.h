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
	char site[3];   /* 2 letters of OWN_SITE_LETTERS; whether it is this site is the caller's question */
	int room;       /* card, digit: 0..99 */
	int meaning;    /* card: enum own_card, or another number of 0..999 that this version does not know */
	int digit;      /* digit: 1..24 */
	int32_t number; /* badge and tray 0..999999; slip and case 0..9999999; item 0..99999999; check: step
	                   0..99 */
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

/* What a card means. The numbers are printed on paper that hangs on walls: never reuse or change one. */
enum own_card {
	/* the case */
	CARD_NEW_CASE = 1,
	CARD_SUSPEND = 2,
	CARD_CANCEL = 3,
	CARD_PATIENT_LEAVES = 4,
	CARD_END_UNRESOLVED = 5,
	/* answers, and taking back */
	CARD_YES = 10,
	CARD_NO = 11,
	CARD_MISREAD = 12,
	CARD_UNDO = 13,
	CARD_INTERRUPTED = 14,
	CARD_NEXT = 15, /* stands between two equal answers */
	/* counting in, and what happens on the way */
	CARD_ADD = 20,
	CARD_RETURNED_UNOPENED = 21,
	CARD_UNLISTED_TOURNIQUET = 22,
	CARD_NO_CODE = 23,
	CARD_MARK_UNREADABLE = 24,
	CARD_WRONG_NUMBER_IN_PACK = 25,
	CARD_DROPPED = 26,
	CARD_FORCEPS_MOVED = 27,
	/* the tourniquet, and its condition */
	CARD_OFF = 40,
	CARD_INTACT = 41,
	CARD_CUT_AND_COMPLETE = 42,
	CARD_PIECES_MISSING = 43,
	CARD_OFFCUT = 44,
	/* counts */
	CARD_FINAL_COUNT = 50,
	CARD_HANDOVER = 51,
	CARD_WITHOUT_FULL_SIGHT = 52,
	CARD_MISSING = 53, /* nothing is shown for the line that was asked */
	CARD_DRESSING_ALREADY_ON = 54,
	/* the search */
	CARD_STEP_DONE = 60,
	CARD_NOT_DONE = 61,
	CARD_FOUND = 62,
	/* the room */
	CARD_AWAKE_PATIENT = 70,
	CARD_SPARE_SCANNER = 71,
	CARD_THIS_ROOM = 72, /* a scanner that is carried follows it */
	/* who else looked at the digit, for a lone operator */
	CARD_LOOKED_PATIENT = 80,
	CARD_LOOKED_CARER = 81,
	CARD_LOOKED_COLLEAGUE = 82,
	CARD_LOOKED_NOBODY = 83,
	/* people without a badge: 90 + n */
	CARD_VISITOR_1 = 91,
	CARD_VISITOR_2 = 92,
	CARD_VISITOR_3 = 93,
	CARD_VISITOR_4 = 94,
	/* it happened earlier: 100 + minutes */
	CARD_1_MINUTE_AGO = 101,
	CARD_2_MINUTES_AGO = 102,
	CARD_3_MINUTES_AGO = 103,
	CARD_5_MINUTES_AGO = 105,
	CARD_10_MINUTES_AGO = 110,
	/* so many of the asked line are shown, laid side by side: 200 + number */
	CARD_SHOWN_1 = 201,
	CARD_SHOWN_2 = 202,
	CARD_SHOWN_3 = 203,
	CARD_SHOWN_4 = 204,
	CARD_SHOWN_5 = 205,
	CARD_SHOWN_6 = 206,
	CARD_SHOWN_7 = 207,
	CARD_SHOWN_8 = 208,
	CARD_SHOWN_9 = 209,
	CARD_SHOWN_10 = 210,
};

/* The words on the card ("CUT AND COMPLETE"), "" for a number that is no card. Static, never NULL. */
const char *own_card_name(int meaning);
/* The card after `meaning` in order of number, 0 after the last: `for (m = own_card_next(0); m; …)`. */
int own_card_next(int meaning);

/* A digit in words ("right index finger", "left great (big) toe"), "" outside 1..24. Static, never NULL.
 * 1-5 right thumb to little finger, 6-10 left, 11-15 right great to little toe, 16-20 left, 21-24 'other
 * digit' that somebody describes (a sixth finger, a stump, syndactyly). */
const char *own_digit_name(int number);

#endif
