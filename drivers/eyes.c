#include "drivers/eyes.h"

#include <errno.h>
#include <stdlib.h>

#include "drivers/islands.h"
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
	struct islands *islands;
	unsigned next_island;
	enum view lucky;            /* see eyes_watch(); VIEW_PLAIN where there is none */
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
	eyes->islands = islands_new();
	if (eyes->zbar && eyes->islands)
		return eyes;
	eyes_free(eyes);
	return NULL;
}

void eyes_free(struct eyes *eyes)
{
	if (!eyes)
		return;
	zbar_reader_free(eyes->zbar);
	islands_free(eyes->islands);
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
	case VIEW_SMOOTH:
		return plane_smooth(picture, &eyes->a);
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
	case VIEW_ISLANDS:
		return -EINVAL; /* no picture of its own */
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

static struct place untilted(struct place at, int degrees, const struct plane *picture)
{
	plane_untilt(picture, degrees, &at.x, &at.y);
	return at;
}

static struct place in_picture(struct place at, enum view view, const struct plane *picture)
{
	if (doubles(view))
		return (struct place){at.x / 2, at.y / 2};
	if (halves(view))
		return (struct place){at.x * 2, at.y * 2};
	if (view == VIEW_TILTED_LEFT || view == VIEW_TILTED_RIGHT)
		return untilted(at, view == VIEW_TILTED_LEFT ? -TILT_DEGREES : TILT_DEGREES, picture);
	if (view == VIEW_TURNED)
		return (struct place){at.y, picture->height - 1 - at.x};
	return at;
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

/* Further than this from upright libzxing reads less. */
#define UPRIGHT_DEGREES 8
/* Modules of a larger cut-out are large enough. */
#define CUT_DOUBLE_MAX 120
/* Read in one look, which is to take about as long as the other looks. */
#define CUT_PIXELS_MAX 120000

/* How a cut-out was shown. */
struct shown {
	const struct plane *plane;
	bool upright, doubled;
};

static struct place in_cut(struct place at, const struct shown *shown, const struct plane *cut, int degrees)
{
	if (shown->doubled)
		at = (struct place){at.x / 2, at.y / 2};
	return shown->upright ? untilted(at, -degrees, cut) : at;
}

static int show_cut(struct eyes *eyes, const struct shown *shown, const struct box *at, int degrees,
                    symbology_set kinds)
{
	int r = zxing_read(shown->plane, kinds, &eyes->found);
	if (r <= 0)
		return r;
	struct reading *read = &eyes->found.item[eyes->found.count - 1];
	for (int i = 0; i < 4; i++) {
		struct place p = in_cut(read->corner[i], shown, &eyes->a, degrees);
		read->corner[i] = (struct place){p.x + at->left, p.y + at->top};
	}
	read->box = box_round(read->corner);
	return r;
}

/* As it lies, set upright, and doubled. 1 when it was read. */
static int ask_about_cut(struct eyes *eyes, const struct box *at, int degrees, symbology_set kinds)
{
	struct shown shown = {.plane = &eyes->a};
	int r = show_cut(eyes, &shown, at, degrees, kinds);
	if (r == 0 && degrees > UPRIGHT_DEGREES && degrees < 90 - UPRIGHT_DEGREES) {
		shown = (struct shown){.plane = &eyes->b, .upright = true};
		r = plane_tilt(&eyes->a, -degrees, &eyes->b);
		if (r == 0)
			r = show_cut(eyes, &shown, at, degrees, kinds);
	}
	if (r == 0 && shown.plane->width <= CUT_DOUBLE_MAX) {
		r = plane_double(shown.plane, &eyes->blanked);
		shown.plane = &eyes->blanked;
		shown.doubled = true;
		if (r == 0)
			r = show_cut(eyes, &shown, at, degrees, kinds);
	}
	return r;
}

static int look_for_islands(struct eyes *eyes, const struct plane *picture)
{
	symbology_set kinds =
	    eyes->wanted & (SYMBOLOGY_BIT(SYMBOLOGY_QR) | SYMBOLOGY_BIT(SYMBOLOGY_DATAMATRIX));
	eyes->found.count = 0;
	int count = kinds ? islands_find(eyes->islands, picture) : 0;
	/* Where there are too many for one look, the next look begins where this one ends. */
	for (int k = 0, pixels = 0; k < count && pixels < CUT_PIXELS_MAX; k++) {
		struct box at;
		int i = (int)(eyes->next_island++ % (unsigned)count);
		int degrees, r = islands_cut(eyes->islands, picture, i, &eyes->a, &at, &degrees);
		pixels += eyes->a.width * eyes->a.height;
		if (r == 0)
			r = ask_about_cut(eyes, &at, degrees, kinds);
		if (r < 0)
			return r;
	}
	return count < 0 ? count : 0;
}

static int look_at_view(struct eyes *eyes, const struct plane *picture, enum view view, enum care care)
{
	const struct plane *shown;
	eyes->found.count = 0;
	if (doubles(view) && (int64_t)picture->width * picture->height > DOUBLE_PIXELS_MAX)
		return 0;
	int r = prepare(eyes, picture, view, &shown);
	if (r == -EFBIG)
		return 0;
	if (r == 0)
		r = ask_both(eyes, shown, care);
	for (size_t i = 0; i < eyes->found.count; i++) {
		struct reading *read = &eyes->found.item[i];
		for (int k = 0; k < 4; k++)
			read->corner[k] = in_picture(read->corner[k], view, picture);
		read->box = box_round(read->corner);
	}
	return r;
}

int eyes_look(struct eyes *eyes, const struct plane *picture, enum view view, enum care care,
              struct readings *out)
{
	int r =
	    view == VIEW_ISLANDS ? look_for_islands(eyes, picture) : look_at_view(eyes, picture, view, care);
	if (r < 0)
		return r;
	readings_add_all(out, &eyes->found);
	return 0;
}

static const enum view turns[] = {VIEW_LEVEL,       VIEW_HALF_SHARP, VIEW_SHARP,       VIEW_TURNED,
                                  VIEW_TILTED_LEFT, VIEW_INVERTED,   VIEW_TILTED_RIGHT};

static int watch_empty(struct eyes *eyes, const struct plane *frame, unsigned long number,
                       struct readings *out)
{
	eyes->lucky = VIEW_PLAIN;
	if (number % 2 == 0)
		return eyes_look(eyes, frame, VIEW_PLAIN, CARE_FRAME, out);
	if (number % 4 == 1)
		return eyes_look(eyes, frame, VIEW_ISLANDS, CARE_GLANCE, out);
	return eyes_look(eyes, frame, turns[number / 4 % (sizeof turns / sizeof *turns)], CARE_GLANCE, out);
}

/* A bit for each witness that read something. */
static unsigned spoke(const struct readings *r)
{
	unsigned bits = 0;
	for (size_t i = 0; i < r->count; i++)
		bits |= 1U << r->item[i].witness;
	return bits;
}

int eyes_watch(struct eyes *eyes, const struct plane *frame, unsigned long number, bool in_view,
               struct readings *out)
{
	if (!in_view)
		return watch_empty(eyes, frame, number, out);
	int r = eyes_look(eyes, frame, VIEW_ISLANDS, CARE_GLANCE, out);
	if (r == 0)
		r = eyes_look(eyes, frame, VIEW_PLAIN, CARE_CLOSE, out);
	if (r == 0)
		r = eyes_look(eyes, frame, VIEW_SMOOTH, CARE_FRAME, out);
	if (r < 0)
		return r;
	unsigned before = spoke(out);
	enum view other = turns[number % (sizeof turns / sizeof *turns)];
	if (eyes->lucky != VIEW_PLAIN && number % 3 != 2)
		other = eyes->lucky;
	r = eyes_look(eyes, frame, other, CARE_FRAME, out);
	if (spoke(&eyes->found) & ~before)
		eyes->lucky = other;
	return r;
}
