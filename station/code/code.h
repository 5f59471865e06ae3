/* What a barcode says: the front of this folder. Values in, values out; nothing is allocated.
 *
 * `code_read` takes what a scanner sent and says which of five kinds it is, splits it into elements, checks
 * each one, and fills the few fields that counting needs. The kinds have their own headers, in reading order:
 *
 *     aim.h         what the scanner says about the symbol ("]d2")         ISO/IEC 15424
 *     gs1.h         application identifiers: learn GS1 here                GS1 General Specifications
 *     hibc.h        the Health Industry Bar Code                           ANSI/HIBC 2.6
 *     own-codes.h   what this house prints itself
 *     check-digit.h the arithmetic
 *
 * Without an AIM identifier the kind is decided in this order:
 *   1. one of ours (own-codes.h), also in the groups in which it stands on paper: its shape and its check digits cannot come
 *   by chance;
 *   2. '+' at the head: HIBC;
 *   3. 8, 12, 13 or 14 digits with a right check digit: a trade item number (EAN-8, UPC-A, EAN-13, ITF-14);
 * 13 or 14 digits with a wrong one are a trade item number that was misread or mistyped;
 *   4. what announces itself as GS1: an identifier in brackets ('(01)…', as people key it), a separator
 * (0x1D), a Digital Link address with a key in it, or 00, 01 or 02 with at least as many digits as it has;
 *   5. what cannot well be anything else: (11) or (17) with a date that exists and more elements behind it,
 * as on the second symbol of a pack; (8003) or (8017) with a right check digit; (8004) with 12 characters or
 * more; (91) with one of our item labels in it;
 *   6. plain text.
 *
 * Where the scanner says what the symbol is, that counts first: "]d2" is GS1 or an error, "]E0" a trade item
 * number or an error. "]C0", "]d1" and the like say only that the symbol has no FNC1; packs printed without
 * it exist, so the order above holds for them, without step 5 and without errors for 13 or 14 digits. What
 * announces itself as one kind and is wrong is an error, never plain text: a misread pack must not become an
 * unknown one.
 */
#ifndef BANDTALLY_CODE_CODE_H
#define BANDTALLY_CODE_CODE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "code/fault.h"
#include "code/own-codes.h"

#define CODE_BYTES_MAX 4096 /* more than a driver's line can carry; the error says so */
#define CODE_ELEMENTS_MAX 32
#define CODE_AI_MAX 8
#define CODE_VALUE_MAX 91 /* (8030), (91)-(99) and others: 90 characters */
#define CODE_PLAIN_MAX 128
#define CODE_WANTS_MAX 96

enum code_kind {
	CODE_PLAIN = 0,  /* none of the others; only `plain` is filled */
	CODE_GS1,        /* element strings */
	CODE_HIBC,       /* primary, secondary or both */
	CODE_TRADE_ITEM, /* a bare GTIN: EAN-13, UPC-A, EAN-8, ITF-14 */
	CODE_OWN,        /* ours: `own` is filled (for an item label `elements` has its (91)) */
};

enum code_carrier {
	CARRIER_UNKNOWN = 0, /* the scanner did not say */
	CARRIER_GS1,         /* the symbol itself says GS1: FNC1 seen, or ]C1 ]d2 ]Q3 ]e0 ]J1 */
	CARRIER_OTHER,       /* the symbol itself says that it is not */
};

struct code_element {
	char ai[CODE_AI_MAX]; /* GS1: "01", "8004"; HIBC: "LIC", "PCN", "U", "LOT", "SER", "EXP", "MFG", "QTY"
	                       */
	const char *title;    /* "GTIN", "BATCH/LOT", "" where GS1 gives none; static */
	char value[CODE_VALUE_MAX]; /* as in the symbol, without identifier and separator */
	size_t at;                  /* where the value begins in the data that was read */
	bool kept;                  /* code_keep(ai): may be stored (rule 20) */
};

/* Text fields are "" and numbers 0 where the code does not say. Dates are yyyymmdd; a day 00 is already the
 * last day of its month. */
struct code {
	enum code_kind kind;
	enum code_carrier carrier;
	int count; /* of elements */
	struct code_element elements[CODE_ELEMENTS_MAX];

	char product[25];  /* GTIN as 14 digits; HIBC: '+', labeler, product, unit of measure: at most 24 */
	char lot[31];      /* (10); HIBC */
	char serial[31];   /* (21); HIBC */
	int32_t expiry;    /* (17), (7003); HIBC. The last day on which it may be used */
	uint8_t expiry_hh; /* HIBC and (7003) can give an hour; 0 where none */
	int32_t made;      /* (11); HIBC 16D */
	int64_t quantity;  /* (30); HIBC quantity */
	char giai[31];     /* (8004): an instrument or a tray with its own number */
	char grai[31];     /* (8003) without the filler 0: a returnable asset, serial behind it if any */
	char gsrn[19];     /* (8017), a member of staff. A patient's (8018) is never copied here */
	struct own_code own;
	char plain[CODE_PLAIN_MAX]; /* CODE_PLAIN: the text, control bytes as \x1d, cut short with '…' */

	bool patient; /* it identifies a patient, or may (HIBC "+/"): tell, and keep none (rule 20) */
	char wants[CODE_WANTS_MAX]; /* half of a pair: "(10) needs (01)", "link L needs a primary"; "" when
	                               whole */
	char check, link;           /* HIBC: check character of a primary, link character of a secondary */
};

/* Reads one scan. `aim` is the identifier that the scanner sent ("]C1"), "" when it sends none; one that
 * still stands at the head of the data is split off. `today` (yyyymmdd) settles the century of two-digit
 * years. 0, or -EINVAL with `fault` filled (may be NULL); `out` is then empty. Any bytes may be given. */
int code_read(struct code *out, const char *aim, const void *data, size_t size, int32_t today,
              struct code_fault *fault);

/* Joins the second symbol of one pack to the first (in either order of scanning): a GTIN and its lot and
 * expiry, a HIBC primary and the secondary that bears its link character. Pairs that GS1 requires or forbids
 * are judged over both. 0, or -EINVAL with the contradiction in `fault`; `first` is then as it was. */
int code_join(struct code *first, const struct code *second, struct code_fault *fault);

/* Rule 20: the identifiers that may be stored. A list of what is allowed, so that what GS1 adds later is
 * dropped until somebody has thought about it.
 *
 *     01 03     which product                          8003 8004  which asset (tray, instrument)
 *     10 21     which lot, which piece                 8006       which piece of a set (GTIN inside)
 *     11 17     made, use by                           8017       which member of staff (a badge)
 *     7003      use by, with the hour                  91         the item label of this house
 *     20 22     product variant, consumer variant      240 241    maker's and customer's part number
 *     30        how many inside                        250        second serial (of a part)
 *
 * Not: 8018 and 8019 (a patient and the instance of care), 7240-7259 (protocol, names, birth, sex, address),
 * 00 and 4xx (freight, places, addresses), 90 and 92-99 (anybody's own business, so possibly a hospital
 * number). HIBC's elements are all of the pack, and kept. */
bool code_keep(const char *ai);
/* Elements of a patient: (8018), and birth, sex, address, baby (7250-7252, 7257-7259). Names (7253-7256) may
 * be a member of staff's; they are not kept either way. */
bool code_is_patient(const char *ai);

/* Wipes every element that may not be kept, and with it the text of the fields that came from it. */
void code_reduce(struct code *code);
/* What may be stored, as text: "(01)09506000134352(17)270331(10)ABC", HIBC as printed without link and check
 * characters, our own code as written. Plain text gives "": it can be anything, a hospital number included; a
 * caller that knows it from the catalogue keeps the catalogue's text. Returns the length, or -ENOSPC. */
int code_kept_text(const struct code *code, char *out, size_t room);

/* "gs1", "hibc", "trade item", "own", "plain". Static. */
const char *code_kind_name(enum code_kind kind);

#endif
