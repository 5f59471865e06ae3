#include "drivers/eyes.h"

#include <errno.h>
#include <stdlib.h>

#include "drivers/reader-zbar.h"
#include "drivers/zxing.h"

/* How many codes of one kind the second witness is asked for in one view; it gives one at a time. */
#define CODES_A_KIND 6
/* Doubling a picture that is larger than this shows nothing new, and takes long. */
#define DOUBLE_PIXELS_MAX (4 * 1024 * 1024)

/* Upright and on its side each decoder bears about half of this. */
#define TILT_DEGREES 22

struct eyes {
	symbology_set wanted;
	struct zbar_reader *zbar;
	struct plane a, b, blanked; /* kept from picture to picture for their memory */
	struct readings found;      /* in one view, with boxes in its pixels */
};

struct eyes *eyes_new(symbology_set wanted)
{
	struct eyes *eyes = calloc(1, sizeof *eyes);
	if (!eyes)
		return NULL;
	eyes->wanted = wanted;
	eyes->zbar = zbar_reader_new(wanted);
	if (eyes->zbar)
		return eyes;
	free(eyes);
	return NULL;
}

void eyes_free(struct eyes *eyes)
{
	if (!eyes)
		return;
	zbar_reader_free(eyes->zbar);
	plane_free(&eyes->a);
	plane_free(&eyes->b);
	plane_free(&eyes->blanked);
	free(eyes);
}

static int two_steps(struct eyes *eyes, const struct plane *picture,
                     int (*first)(const struct plane *, struct plane *),
                     int (*second)(const struct plane *, struct plane *))
{
	int r = first(picture, &eyes->b);
	return r < 0 ? r : second(&eyes->b, &eyes->a);
}

/* Points `shown` at the view, which lies in `eyes` or is the picture itself. */
static int prepare(struct eyes *eyes, const struct plane *picture, enum view view, const struct plane **shown)
{
	*shown = &eyes->a;
	switch (view) {
	case VIEW_PLAIN:
		*shown = picture;
		return 0;
	case VIEW_LEVEL:
		return plane_level(picture, &eyes->a);
	case VIEW_DOUBLE:
		return plane_double(picture, &eyes->a);
	case VIEW_TURNED:
		return plane_turn(picture, &eyes->a);
	case VIEW_SHARP:
		return plane_sharpen(picture, &eyes->a);
	case VIEW_HALF:
		return plane_halve(picture, &eyes->a);
	case VIEW_HALF_SHARP:
		return two_steps(eyes, picture, plane_halve, plane_sharpen);
	case VIEW_DOUBLE_SHARP:
		return two_steps(eyes, picture, plane_double, plane_sharpen);
	case VIEW_SHARP_DOUBLE:
		return two_steps(eyes, picture, plane_sharpen, plane_double);
	case VIEW_LEVEL_DOUBLE:
		return two_steps(eyes, picture, plane_level, plane_double);
	case VIEW_INVERTED:
		return plane_invert(picture, &eyes->a);
	case VIEW_TILTED_LEFT:
		return plane_tilt(picture, -TILT_DEGREES, &eyes->a);
	case VIEW_TILTED_RIGHT:
		return plane_tilt(picture, TILT_DEGREES, &eyes->a);
	}
	return -EINVAL;
}

static bool doubles(enum view view)
{
	return view == VIEW_DOUBLE || view == VIEW_DOUBLE_SHARP || view == VIEW_SHARP_DOUBLE ||
	       view == VIEW_LEVEL_DOUBLE;
}

static bool halves(enum view view)
{
	return view == VIEW_HALF || view == VIEW_HALF_SHARP;
}

static struct box untilted(const struct box *b, int degrees, const struct plane *picture)
{
	int x[4] = {b->left, b->right, b->right, b->left}, y[4] = {b->top, b->top, b->bottom, b->bottom};
	struct box out = {0};
	for (int i = 0; i < 4; i++) {
		plane_untilt(picture, degrees, &x[i], &y[i]);
		struct box corner = {x[i], y[i], x[i], y[i]};
		if (i == 0)
			out = corner;
		box_widen(&out, &corner);
	}
	return out;
}

static struct box in_picture(const struct box *b, enum view view, const struct plane *picture)
{
	if (doubles(view))
		return (struct box){b->left / 2, b->top / 2, b->right / 2, b->bottom / 2};
	if (halves(view))
		return (struct box){b->left * 2, b->top * 2, b->right * 2, b->bottom * 2};
	if (view == VIEW_TILTED_LEFT || view == VIEW_TILTED_RIGHT)
		return untilted(b, view == VIEW_TILTED_LEFT ? -TILT_DEGREES : TILT_DEGREES, picture);
	if (view == VIEW_TURNED)
		return (struct box){b->top, picture->height - 1 - b->right, b->bottom,
		                    picture->height - 1 - b->left};
	return *b;
}

/* The second witness gives one code of a picture: to be asked for the next, what it gave is painted over. */
static int ask_zxing(struct eyes *eyes, const struct plane *shown, symbology_set kinds)
{
	if (!(eyes->wanted & kinds))
		return 0;
	size_t before = eyes->found.count;
	int r = zxing_read(shown, eyes->wanted & kinds, &eyes->found);
	if (r <= 0)
		return r;
	r = plane_copy(shown, &eyes->blanked);
	for (int i = 1; r >= 0 && i < CODES_A_KIND && eyes->found.count > before; i++) {
		before = eyes->found.count;
		struct box around = box_thick(&eyes->found.item[before - 1].box);
		plane_blank(&eyes->blanked, &around);
		r = zxing_read(&eyes->blanked, eyes->wanted & kinds, &eyes->found);
	}
	return r < 0 ? r : 0;
}

static int ask_zbar(struct eyes *eyes, const struct plane *shown, enum care care)
{
	static const bool at_density[][5] = {
	    [CARE_GLANCE] = {0},
	    [CARE_FRAME] = {[2] = true},
	    [CARE_CLOSE] = {[1] = true},
	    [CARE_THOROUGH] = {[1] = true, [2] = true, [4] = true},
	};
	int r = 0;
	for (int density = 1; density < 5 && r == 0; density++)
		if (at_density[care][density])
			r = zbar_reader_read(eyes->zbar, shown, density, &eyes->found);
	return r;
}

static int ask_both(struct eyes *eyes, const struct plane *shown, enum care care)
{
	const symbology_set matrix = SYMBOLOGY_BIT(SYMBOLOGY_QR) | SYMBOLOGY_BIT(SYMBOLOGY_DATAMATRIX);
	const symbology_set databar =
	    SYMBOLOGY_BIT(SYMBOLOGY_DATABAR) | SYMBOLOGY_BIT(SYMBOLOGY_DATABAR_EXPANDED);
	eyes->found.count = 0;
	int r = ask_zbar(eyes, shown, care);
	if (r == 0)
		r = ask_zxing(eyes, shown, matrix);
	if (r == 0)
		r = ask_zxing(eyes, shown, ~(matrix | databar));
	if (r == 0)
		r = ask_zxing(eyes, shown, databar);
	return r;
}

int eyes_look(struct eyes *eyes, const struct plane *picture, enum view view, enum care care,
              struct readings *out)
{
	const struct plane *shown;
	if (doubles(view) && (int64_t)picture->width * picture->height > DOUBLE_PIXELS_MAX)
		return 0;
	int r = prepare(eyes, picture, view, &shown);
	if (r == -EFBIG)
		return 0;
	if (r == 0)
		r = ask_both(eyes, shown, care);
	for (size_t i = 0; r == 0 && i < eyes->found.count; i++) {
		struct reading *one = &eyes->found.item[i];
		one->box = in_picture(&one->box, view, picture);
		readings_add(out, one);
	}
	return r;
}

int eyes_watch(struct eyes *eyes, const struct plane *frame, unsigned long number, bool in_view,
               struct readings *out)
{
	static const enum view turns[] = {VIEW_LEVEL,       VIEW_HALF_SHARP, VIEW_SHARP,       VIEW_TURNED,
	                                  VIEW_TILTED_LEFT, VIEW_INVERTED,   VIEW_TILTED_RIGHT};
	enum view other = turns[number / 2 % (sizeof turns / sizeof *turns)];
	if (!in_view)
		return number % 2 ? eyes_look(eyes, frame, other, CARE_GLANCE, out)
		                  : eyes_look(eyes, frame, VIEW_PLAIN, CARE_FRAME, out);
	int r = eyes_look(eyes, frame, VIEW_PLAIN, CARE_CLOSE, out);
	return r < 0 ? r : eyes_look(eyes, frame, other, CARE_FRAME, out);
}
