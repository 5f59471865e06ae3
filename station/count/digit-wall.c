/* Through a power cut only the wall clock spans the gap (rule 14), and anyone can set it. So reminders go by the longer of
 * both clocks, and what the wall clock says is said only where it does not contradict the other. */
#include "count/digit.h"

#define SLACK_MS 60000 /* a wall clock is put right by seconds all the time */

static int64_t longer(int64_t a, int64_t b)
{
	return a > b ? a : b;
}

void by_wall_start(struct digit *d)
{
	uint8_t gaps = d->by_wall.gaps;
	d->by_wall = (struct by_wall){0};
	d->by_wall.gaps = gaps;
}

void by_wall_off(struct digit *d, struct moment at)
{
	d->by_wall.off_wall_ms = at.wall_ms;
	d->by_wall.off_ms = 0;
}

/* What is more than was measured falls into a cut. */
void by_wall_earlier(struct digit *d, int64_t ms)
{
	int64_t in_cut = d->gap && ms > d->known_ms ? ms - d->known_ms : 0;
	if (!in_cut && ms > d->known_ms)
		ms = d->known_ms;
	d->by_wall.cut_ms -= in_cut < d->by_wall.cut_ms ? in_cut : d->by_wall.cut_ms;
	d->by_wall.off_wall_ms -= d->by_wall.off_wall_ms ? ms : 0;
	d->by_wall.off_ms += ms;
}

void by_wall_reminded(struct digit *d, struct moment at)
{
	d->by_wall.reminded_at = at;
	d->by_wall.back = 0;
}

static void by_wall_cross(struct digit *d, struct moment last, struct moment started)
{
	struct by_wall *w = &d->by_wall;
	int64_t cut = started.wall_ms - last.wall_ms, seen = 0;
	if (last.boot == d->since.boot && last.boot_ms > d->since.boot_ms)
		seen = last.boot_ms - d->since.boot_ms;
	if (digit_is_on(d)) {
		w->cut_ms += longer(cut, 0);
		w->gaps = 1;
	} else if (d->state == DIGIT_OFF) {
		w->off_ms += seen + longer(cut, 0);
	} else {
		return;
	}
	w->cuts = 1;
	w->back |= cut < 0;
}

void digit_cross_boot(struct digit *d, struct moment last, struct moment started)
{
	if (d->doubted) {
		if (last.boot == d->doubt_since.boot && last.boot_ms > d->doubt_since.boot_ms)
			d->doubt_known_ms += last.boot_ms - d->doubt_since.boot_ms;
		d->doubt_gap = 1;
		d->doubt_since = started;
	}
	by_wall_cross(d, last, started);
	if (!digit_is_on(d) && d->state != DIGIT_OFF)
		return;
	if (digit_is_on(d)) {
		if (last.boot == d->since.boot && last.boot_ms > d->since.boot_ms)
			d->known_ms += last.boot_ms - d->since.boot_ms;
		d->gap = 1;
	}
	d->since = started;
}

static int is_off(const struct digit *d)
{
	return d->state == DIGIT_OFF;
}

static int64_t known_ms(const struct digit *d, struct moment now)
{
	return is_off(d) ? d->known_ms : digit_stretch_ms(d, now);
}

/* Between two wall times, whatever happened to the clock between them. */
static int64_t wall_span_ms(const struct digit *d, struct moment now)
{
	int64_t end = !is_off(d)               ? now.wall_ms
	              : d->by_wall.off_wall_ms ? d->by_wall.off_wall_ms
	                                       : d->since.wall_ms;
	return end - d->on_wall_ms;
}

int digit_wall_holds(const struct digit *d, struct moment now)
{
	return wall_span_ms(d, now) + SLACK_MS >= known_ms(d, now);
}

/* Two readings: the cuts by themselves, which a clock that was set before or after them does not change; and from
 * beginning to end, which is right where the clock was wrong at the start and has been put right. */
static int64_t stretch_ms(const struct digit *d, struct moment now)
{
	int64_t known = known_ms(d, now);
	return d->gap ? longer(known + d->by_wall.cut_ms, wall_span_ms(d, now)) : known;
}

int64_t digit_by_wall_ms(const struct digit *d, struct moment now)
{
	return d->gap && digit_wall_holds(d, now) ? stretch_ms(d, now) : 0;
}

int64_t digit_open_ms(const struct digit *d, struct moment now)
{
	if (d->doubted)
		return d->doubt_gap ? longer(digit_stretch_ms(d, now), now.wall_ms - d->doubt_wall_ms)
		                    : digit_stretch_ms(d, now);
	int64_t ms = stretch_ms(d, now);
	if (is_off(d))
		ms += d->by_wall.off_ms + longer(moment_between_ms(d->since, now), 0);
	return d->by_wall.cuts ? longer(ms, now.wall_ms - d->on_wall_ms) : ms;
}
