/* No wrong text on any public photograph, and in each family at least as many right as were measured. */
#include <stdlib.h>
#include <string.h>

#include "photos.h"

/* What scan-camera read on 2026-11-25, less one where a family has more than 30 pictures (another build of a
 * library may lose one), beside the best of ZBar, libzxing 1.4 and zxing-wasm 3.1.4 alone on the same files.
 */
static const struct {
	const char *family;
	int least;
} floors[] = {
    {"bb code128", 25}, {"bb datamatrix", 30}, {"bb ean13", 68},    {"bb ean8", 4},
    {"bb qrcode", 85},  {"bb upca", 57},       {"cpp code128", 10}, {"cpp datamatrix", 43},
    {"cpp ean13", 25},  {"cpp qrcode", 61},    {"cpp upca", 26},
};

static int least_of(const char *family)
{
	for (size_t i = 0; i < sizeof floors / sizeof *floors; i++)
		if (strcmp(floors[i].family, family) == 0)
			return floors[i].least;
	return 0;
}

int main(void)
{
	struct photos p;
	struct tally t[FAMILIES_MAX];
	char camera[512];
	const char *bin = getenv("BANDTALLY_BIN");
	snprintf(camera, sizeof camera, "%s/scan-camera", bin ? bin : "build/release/bin");
	photos_open(&p);
	bool good = photos_read(&p, camera);
	size_t n = photos_tally(&p, t);
	printf("%-16s %8s %6s %6s %6s %6s\n", "family", "pictures", "right", "wrong", "none", "floor");
	for (size_t i = 0; i < n; i++) {
		int least = least_of(t[i].family);
		printf("%-16s %8d %6d %6d %6d %6d%s\n", t[i].family, t[i].pictures, t[i].right, t[i].wrong,
		       t[i].pictures - t[i].right, least,
		       t[i].right < least ? "  FAILED: below its floor" : "");
		good = good && t[i].wrong == 0 && t[i].right >= least;
	}
	photos_free(&p);
	printf(good && n ? "photos: no wrong text\n" : "photos: FAILED\n");
	return !good || !n;
}
