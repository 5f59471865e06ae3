/* The public photographs of barcodes that the reading is measured on, and how a text is compared.
 *
 * They are half of the black-box pictures of zxing ("bb") and of the samples of zxing-cpp ("cpp"), both
 * Apache-2.0, which this project does not contain: data/photos/manifest.tsv beside the project
 * (../shared/data) or in $BANDTALLY_SHARED/data names each picture, its family and its text.
 *
 * Comparison: EAN-13 and UPC-A are padded to 13 digits; a separator (0x1D) and a leading "]C1" do not count
 * in Code 128, nor a separator in Data Matrix; a QR or Data Matrix text that is equal in another character
 * set is right. Wrong is any text that is neither the expected one nor another real code of the picture.
 */
#ifndef BANDTALLY_TESTS_PHOTOS_H
#define BANDTALLY_TESTS_PHOTOS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#define PHOTO_TEXT_MAX 8192
#define FAMILIES_MAX 16
#define SKIP 77

struct photo {
	char path[512];
	const char *name; /* within path */
	char family[32];  /* "bb ean13": set and symbology */
	char *text;       /* owned; `size` bytes, none in a family "none" */
	size_t size;
	bool right, wrong; /* what was found so far */
	int other;         /* further real codes that were read */
};

struct photos {
	struct photo *item;
	size_t count;
	char folder[448];
};

/* Reads the manifest. Prints 'skipped: …' and exits with SKIP where it is absent. */
void photos_open(struct photos *p);
void photos_free(struct photos *p);
void photos_clear(struct photos *p); /* forgets what was found */

/* Takes what was read in a picture; false where it is wrong. `photo` may be NULL (a name that is not listed).
 */
bool photo_take(struct photo *photo, const char *data, size_t size);
struct photo *photos_find(struct photos *p, const char *path); /* by the last part of a path */

struct tally {
	char family[32];
	int pictures, right, wrong;
};
/* In the order of the manifest. */
size_t photos_tally(const struct photos *p, struct tally out[FAMILIES_MAX]);

/* Reads all pictures with the program scan-camera, two processes side by side; true when they ended well. */
bool photos_read(struct photos *p, const char *scan_camera);

#endif
