#include "drivers/reader-zbar.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <zbar.h>

/* libzbar keeps some memory of every QR code it has read, so a scanner does not live long. */
#define READS_PER_SCANNER 100

struct zbar_reader {
	zbar_image_scanner_t *scanner;
	symbology_set wanted;
	int reads;
};

static const struct {
	zbar_symbol_type_t type;
	enum symbology symbology;
} kinds[] = {
    /* UPC-A and UPC-E are left off as kinds of their own: so they come as the EAN-13 that they are. */
    {ZBAR_EAN13, SYMBOLOGY_EAN},
    {ZBAR_EAN8, SYMBOLOGY_EAN8},
    {ZBAR_CODE128, SYMBOLOGY_CODE128},
    {ZBAR_QRCODE, SYMBOLOGY_QR},
    {ZBAR_I25, SYMBOLOGY_ITF},
    {ZBAR_CODE39, SYMBOLOGY_CODE39},
    {ZBAR_CODABAR, SYMBOLOGY_CODABAR},
    {ZBAR_DATABAR, SYMBOLOGY_DATABAR},
    {ZBAR_DATABAR_EXP, SYMBOLOGY_DATABAR_EXPANDED},
};
#define KINDS (sizeof kinds / sizeof *kinds)

/* libzbar's own does not take NULL. */
static void drop_scanner(struct zbar_reader *r)
{
	if (r->scanner)
		zbar_image_scanner_destroy(r->scanner);
	r->scanner = NULL;
}

static int set_up(struct zbar_reader *r)
{
	drop_scanner(r);
	r->scanner = zbar_image_scanner_create();
	if (!r->scanner)
		return -ENOMEM;
	r->reads = 0;
	zbar_image_scanner_set_config(r->scanner, ZBAR_NONE, ZBAR_CFG_ENABLE, 0);
	for (size_t i = 0; i < KINDS; i++)
		if (r->wanted & SYMBOLOGY_BIT(kinds[i].symbology))
			zbar_image_scanner_set_config(r->scanner, kinds[i].type, ZBAR_CFG_ENABLE, 1);
	/* Bytes as they are in the symbol: what they mean is not the driver's to guess. */
	zbar_image_scanner_set_config(r->scanner, ZBAR_QRCODE, ZBAR_CFG_BINARY, 1);
	zbar_image_scanner_set_config(r->scanner, ZBAR_NONE, ZBAR_CFG_POSITION, 1);
	/* With its cache on, one part of a structured-append QR code ends the process. */
	zbar_image_scanner_enable_cache(r->scanner, 0);
	return 0;
}

struct zbar_reader *zbar_reader_new(symbology_set wanted)
{
	struct zbar_reader *r = calloc(1, sizeof *r);
	if (!r)
		return NULL;
	r->wanted = wanted;
	if (set_up(r) < 0) {
		free(r);
		return NULL;
	}
	return r;
}

void zbar_reader_free(struct zbar_reader *r)
{
	if (!r)
		return;
	drop_scanner(r);
	free(r);
}

static const char *aim_of(enum symbology s, unsigned modifiers)
{
	bool gs1 = modifiers & (1U << ZBAR_MOD_GS1), industry = modifiers & (1U << ZBAR_MOD_AIM);
	switch (s) {
	case SYMBOLOGY_EAN:
		return "]E0";
	case SYMBOLOGY_EAN8:
		return "]E4";
	case SYMBOLOGY_CODE128:
		return gs1 ? "]C1" : industry ? "]C2" : "]C0";
	case SYMBOLOGY_QR:
		return gs1 ? "]Q3" : industry ? "]Q5" : "]Q1";
	case SYMBOLOGY_DATAMATRIX:
		return gs1 ? "]d2" : industry ? "]d3" : "]d1";
	case SYMBOLOGY_ITF:
		return "]I0";
	case SYMBOLOGY_CODE39:
		return "]A0";
	case SYMBOLOGY_CODABAR:
		return "]F0";
	case SYMBOLOGY_DATABAR:
	case SYMBOLOGY_DATABAR_EXPANDED:
		return "]e0";
	}
	return "";
}

/* Of a QR code it gives the corners; of any other, line by line, where it met it: of those the ends on all four sides. */
static void find_corners(const zbar_symbol_t *s, struct place corner[4])
{
	struct box b = {0};
	unsigned places = zbar_symbol_get_loc_size(s);
	bool corners = zbar_symbol_get_type(s) == ZBAR_QRCODE && places == 4;
	for (unsigned i = 0; i < places; i++) {
		int x = zbar_symbol_get_loc_x(s, i), y = zbar_symbol_get_loc_y(s, i);
		struct box met = {x, y, x, y};
		if (corners)
			corner[i] = (struct place){x, y};
		if (i == 0)
			b = met;
		box_widen(&b, &met);
	}
	if (corners)
		return;
	corner[0] = (struct place){b.left, b.top};
	corner[1] = (struct place){b.right, b.top};
	corner[2] = (struct place){b.right, b.bottom};
	corner[3] = (struct place){b.left, b.bottom};
}

static void take_symbol(const zbar_symbol_t *s, struct readings *out)
{
	size_t size = zbar_symbol_get_data_length(s), k = 0;
	/* What is said to be only a part of a message still speaks against a whole one in its place. */
	bool in_part = zbar_symbol_get_type(s) == ZBAR_PARTIAL || zbar_symbol_get_components(s);
	while (k < KINDS && kinds[k].type != zbar_symbol_get_type(s))
		k++;
	if ((k == KINDS && !in_part) || size > READING_DATA_MAX || out->count == READINGS_MAX)
		return;
	struct reading *to = &out->item[out->count++];
	*to = (struct reading){.symbology = k == KINDS ? SYMBOLOGY_QR : kinds[k].symbology,
	                       .witness = WITNESS_ZBAR,
	                       .size = size,
	                       .times = 1,
	                       .in_part = in_part};
	find_corners(s, to->corner);
	to->box = box_round(to->corner);
	memcpy(to->data, zbar_symbol_get_data(s), size);
	strcpy(to->aim, aim_of(to->symbology, zbar_symbol_get_modifiers(s)));
}

int zbar_reader_read(struct zbar_reader *r, const struct plane *p, int density, struct readings *out)
{
	if ((!r->scanner || r->reads++ == READS_PER_SCANNER) && set_up(r) < 0)
		return -ENOMEM;
	zbar_image_t *image = zbar_image_create();
	if (!image)
		return -ENOMEM;
	zbar_image_scanner_set_config(r->scanner, ZBAR_NONE, ZBAR_CFG_X_DENSITY, density);
	zbar_image_scanner_set_config(r->scanner, ZBAR_NONE, ZBAR_CFG_Y_DENSITY, density);
	zbar_image_set_format(image, zbar_fourcc('Y', '8', '0', '0'));
	zbar_image_set_size(image, (unsigned)p->width, (unsigned)p->height);
	zbar_image_set_data(image, p->pixels, (unsigned long)p->width * (unsigned long)p->height, NULL);
	zbar_scan_image(r->scanner, image);
	for (const zbar_symbol_t *s = zbar_image_first_symbol(image); s; s = zbar_symbol_next(s))
		take_symbol(s, out);
	zbar_image_destroy(image);
	return 0;
}
