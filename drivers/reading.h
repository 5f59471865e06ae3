/* What one decoder says it read in one picture: a witness's statement, not yet a code. */
#ifndef BANDTALLY_DRIVERS_READING_H
#define BANDTALLY_DRIVERS_READING_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/wire.h"

#define READING_DATA_MAX 3072 /* a QR code holds at most 2,953 bytes; its 7,089 digits do not fit a line */
#define READINGS_MAX 64

enum symbology {
	SYMBOLOGY_EAN, /* EAN-13, UPC-A and UPC-E alike, always as 13 digits */
	SYMBOLOGY_EAN8,
	SYMBOLOGY_CODE128,
	SYMBOLOGY_QR,
	SYMBOLOGY_DATAMATRIX,
	SYMBOLOGY_ITF,
	SYMBOLOGY_CODE39,
	SYMBOLOGY_CODABAR,
	SYMBOLOGY_DATABAR,
	SYMBOLOGY_DATABAR_EXPANDED,
};
#define SYMBOLOGY_COUNT 10

/* Which symbologies are looked for: bit 1 << symbology. */
typedef uint32_t symbology_set;
#define SYMBOLOGY_BIT(s) ((symbology_set)1 << (s))

enum witness {
	WITNESS_ZBAR,
	WITNESS_ZXING,
};

struct place {
	int x, y;
};

/* In pixels of the picture as it was taken, whatever was done to it before reading. */
struct box {
	int left, top, right, bottom;
};

struct reading {
	enum symbology symbology;
	enum witness witness;
	char aim[WIRE_AIM_SIZE + 1]; /* ISO/IEC 15424, for a reader that leaves ECI out */
	char data[READING_DATA_MAX]; /* as the AIM identifier says; FNC1 separators are 0x1D */
	size_t size;
	struct place
	    corner[4];  /* as the last look saw them, whose pixels these are until eyes_look() returns */
	struct box box; /* round the corners of all looks */
	int times;      /* in how many looks it was read so */
	bool in_part;   /* one part of a larger message, or a code that programs scanners: never a scan */
};

struct readings {
	struct reading item[READINGS_MAX];
	size_t count; /* further readings of a picture are dropped */
};

/* Adds a reading; the same reading by the same witness in the same place is counted instead. */
void readings_add(struct readings *to, const struct reading *r);
void readings_add_all(struct readings *to, const struct readings *from);

bool reading_same_code(const struct reading *a, const struct reading *b); /* symbology, AIM and data */

struct box box_round(const struct place corner[4]);
struct box box_thick(const struct box *b);
void box_widen(struct box *b, const struct box *by); /* to hold both */

/* True where the middle of one lies in the other. A linear code may have been seen on one scan line only, so
 * a box is taken to be at least a quarter as thick as it is long; box_thick() gives that box. */
bool boxes_meet(const struct box *a, const struct box *b);

#endif
