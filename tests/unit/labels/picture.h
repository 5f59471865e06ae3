/* A printed page as a picture: as its printer would have it, and as a camera would see it. */
#ifndef BANDTALLY_TESTS_LABELS_PICTURE_H
#define BANDTALLY_TESTS_LABELS_PICTURE_H

#include "base/buf.h"

struct picture {
	int width, height;
	unsigned char *grey; /* the caller's to free */
};

/* A folder for the pages, made and removed with the test. 0 or -1. */
int pictures_open(void);
void pictures_close(void);

/* One page, one bit a dot, no smoothing. Stops the test where it cannot be made. */
struct picture picture_of_page(const struct buf *pdf, int page, int dpi);

/* What a camera sees of it: `width_mm` of the page across the view, its middle at x, y, held `degrees` askew and leaning
 * back, so that its upper edge is `lean` (0.1: a tenth) further away; not quite in focus, and with grain. */
struct view_of_page {
	double x_mm, y_mm, width_mm, degrees, lean;
	int width, height; /* pixels */
};
struct picture picture_seen(const struct picture *page, int dpi, const struct view_of_page *view);

#endif
