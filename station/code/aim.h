/* What a scanner says about the symbol: the AIM identifier of ISO/IEC 15424, three characters before the
 * data.
 *
 *     ]   d   2
 *     |   |   +-- modifier: what the symbology's own rules add (an FNC1, a check digit, an escape)
 *     |   +------ symbology: d Data Matrix, C Code 128, Q QR Code, E EAN/UPC, I Interleaved 2 of 5 …
 *     +---------- flag
 *
 * The same bytes mean different things by it: "]d2" is Data Matrix with FNC1 in the first place, so GS1
 * element strings; "]d1" is any Data Matrix. Most scanners do not send the identifier until they are set up
 * to.
 */
#ifndef BANDTALLY_CODE_AIM_H
#define BANDTALLY_CODE_AIM_H

#include <stdbool.h>
#include <stddef.h>

enum aim_meaning {
	AIM_NONE = 0,   /* not an identifier */
	AIM_ANY,        /* a symbology that carries anything, and says that this is not GS1 */
	AIM_GS1,        /* FNC1 in the first place, or GS1 DataBar: element strings */
	AIM_EAN,        /* EAN-13, UPC-A, UPC-E: 13 digits (many scanners send UPC-A as 12) */
	AIM_EAN_ADD_ON, /* the same, and 2 or 5 digits of an add-on symbol behind it */
	AIM_ADD_ON,     /* the add-on symbol alone */
	AIM_EAN_8,      /* 8 digits */
	AIM_ITF,        /* Interleaved 2 of 5 */
	AIM_ITF_CUT,    /* Interleaved 2 of 5 whose check digit the scanner checked and left out */
	AIM_FULL_ASCII, /* Code 39 read in pairs, so that the '+A' of a HIBC code arrives as 'a' */
	AIM_KEYBOARD,   /* not a symbol: somebody typed */
};

struct aim {
	enum aim_meaning meaning;
	const char *symbology; /* "Data Matrix", in words for people; static; "" for none */
};

/* Reads the three characters of an identifier. False, and AIM_NONE, where they are none. */
bool aim_read(const char *text, size_t size, struct aim *out);

#endif
