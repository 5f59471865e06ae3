/* GS1 element strings: what they are, and how they are taken apart.
 *
 * A GS1 symbol carries one or more ELEMENT STRINGS, one behind the other. Each begins with an APPLICATION
 * IDENTIFIER (AI), 2 to 4 digits that say what the value is:
 *
 *     01 09506000134352   17 270331   10 ABC123 <GS>   21 4711
 *     |  |                |  |        |  |      |      |
 *     |  GTIN, 14 digits  |  use by   |  lot    |      serial number
 *     AI                  AI          AI        separator
 *
 * On the label people read the same with brackets, which are not in the symbol:
 * (01)09506000134352(17)270331(10)ABC123(21)4711
 *
 * HOW A VALUE ENDS. AIs that begin with 00-04, 11-20, 31-36 or 41 have a predefined length: 14 digits for
 * (01), 6 for (17); the next AI follows at once. Every other value ends at the separator character or with
 * the data, even where its length happens to be fixed, as the 18 digits of (8017). The separator is FNC1 in
 * the symbol, and GS (0x1D) in what the scanner sends. A scanner that drops it glues '10ABC123' and '214711'
 * into one lot: a longer lot than the pack has, and no serial. So a value over its length is reported as what
 * it most likely is.
 *
 * WHAT A VALUE IS MADE OF. A table (gs1-table.inc) says for each AI: one or more parts, each with a character
 * set, a length and rules:
 *
 *     set N  digits                        set X  the 82 characters of ISO/IEC 646 that all systems share
 *     set Y  capitals, digits, '#-/'       set Z  base64url, as in RFC 4648
 *
 * (8008), made at: a date of 6 digits, an hour of 2, then minutes and seconds that may be left out. The rules
 * are check digits, dates, countries, currencies and so on: gs1-rules.h.
 *
 * DATES are YYMMDD. In most of them day 00 means 'the last day of that month'. The century is the one that
 * lies nearest: from 49 years back to 50 years on.
 *
 * WHAT GOES TOGETHER. A lot says nothing without the product: (10) needs (01), (02), (03), (8006) or (8026).
 * And some exclude each other: (01), 'this is', and (02), 'this contains'. Both hold over all symbols on one
 * thing, so a lone (10) is half of a pair and not an error, until no other symbol comes.
 *
 * GTIN, the Global Trade Item Number, is one number in four lengths: EAN-8, UPC-A (12), EAN-13 and GTIN-14;
 * here always 14 digits, filled with zeros in front. SSCC is a pallet, GLN a place or a firm, GRAI an asset
 * that comes back, GIAI one asset (an instrument, a tray), GSRN a person in a service relation: (8017) who
 * gives it, (8018) who receives it, which in a hospital is a patient.
 *
 * Sources: GS1 General Specifications; the table and the rules are checked against the GS1 Barcode Syntax
 * Dictionary (gs1/gs1-syntax-dictionary on GitHub, ff2eb4bf), from which make-gs1-table makes the table.
 */
#ifndef BANDTALLY_CODE_GS1_H
#define BANDTALLY_CODE_GS1_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "code/code.h"
#include "code/gs1-rules.h"

#define GS1_SEPARATOR '\x1d'
#define GS1_PARTS_MAX 5
#define GS1_RULES_MAX 3

struct gs1_part {
	char set; /* 'N' 'X' 'Y' 'Z' */
	unsigned char min, max;
	bool optional; /* may be left out, with everything behind it */
	enum gs1_rule rules[GS1_RULES_MAX];
};

/* One identifier, or a run of neighbours that differ in the last digit only ("3100" to "3105": the digit is
 * the place of the decimal point). */
struct gs1_ai {
	const char *first, *last;
	bool predefined; /* length known beforehand: no separator behind it */
	bool attribute;  /* may stand in the query of a Digital Link address */
	const char *title;
	struct gs1_part parts[GS1_PARTS_MAX]; /* up to the first with max 0 */
	/* Groups of which one must be there: '|' or, '+' and, 'n' any digit: "01+21|03+21". */
	const char *needs;
	/* Identifiers that must not be there: "01|255|310n". */
	const char *never;
	/* Digital Link: NULL where it is no key; otherwise the qualifiers in order, ways separated by '|':
	 * "22,10,21|235". */
	const char *path;
};

/* The identifier that `size` bytes begin with; NULL for none. Its length is strlen(first). */
const struct gs1_ai *gs1_find(const char *data, size_t size);
/* The identifier that these digits are, no more and no fewer; NULL for none. */
const struct gs1_ai *gs1_ai(const char *digits, size_t size);
/* The n-th row of the table, NULL behind the last. */
const struct gs1_ai *gs1_row(size_t n);
/* The most characters that a value of it can have. */
size_t gs1_length_max(const struct gs1_ai *ai);

/* Judges one value: lengths, character sets, rules. `fault->at` counts from the start of the value, and
 * `fault->why` is the reason alone, without what to do. 0 or -EINVAL. */
int gs1_value(const struct gs1_ai *ai, const char *value, size_t size, int32_t today,
              struct code_fault *fault);

/* Takes element strings apart into out->elements. 0 or -EINVAL with `fault`; `out` is then undefined. */
int gs1_split(struct code *out, const char *data, size_t size, int32_t today, struct code_fault *fault);
/* The same for text with brackets, as printed and keyed; '\(' is a bracket inside a value. */
int gs1_split_bracketed(struct code *out, const char *text, size_t size, int32_t today,
                        struct code_fault *fault);
/* The same for a GS1 Digital Link address (gs1-link.c):
 * 'https://example.com/01/09506000134352/10/ABC?17=270331'. -ENOENT where it is an address without a GS1 key
 * in it. A GTIN may be given in 8, 12, 13 or 14 digits. */
int gs1_split_link(struct code *out, const char *text, size_t size, int32_t today, struct code_fault *fault);

/* Judges the elements together: one value for an identifier that is repeated, none that exclude each other, a
 * serial where a digital signature needs one. 0 or -EINVAL with `fault`. */
int gs1_pairs(const struct code *code, struct code_fault *fault);
/* Writes what is still missing, "(10) needs (01), (02), …", or "". */
void gs1_wants(const struct code *code, char *out, size_t room);

#endif
