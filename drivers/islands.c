#include "drivers/islands.h"

#include <errno.h>
#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

/* Light is the mean of what lies this far around: some modules of the largest symbols that are looked for. */
#define REACH 24
#define SIDE_LEAST 20
#define SIDE_MOST 240 /* a larger one is found without */
/* More runs than this are texture: the rest of the picture is left out. */
#define RUNS_MAX (1 << 18)

/* Dark pixels of one row without a gap; `up` leads to the island's first run. */
struct run {
	int16_t left, right;
	uint32_t up;
};

struct found {
	uint32_t first; /* run */
	struct box box;
	int dark; /* pixels */
};

struct islands {
	struct run *run;
	uint32_t runs;
	struct found *of; /* by an island's first run */
	uint32_t *row;    /* the first run of each row, and one more */
	uint32_t *sum;    /* of each column, over the rows around */
	size_t rows_room, columns_room;
	int height;
	uint32_t chosen[ISLANDS_MAX];
	int count;
};

struct islands *islands_new(void)
{
	struct islands *s = calloc(1, sizeof *s);
	if (!s)
		return NULL;
	s->run = malloc(RUNS_MAX * sizeof *s->run);
	s->of = malloc(RUNS_MAX * sizeof *s->of);
	if (s->run && s->of)
		return s;
	islands_free(s);
	return NULL;
}

void islands_free(struct islands *s)
{
	if (!s)
		return;
	free(s->run);
	free(s->of);
	free(s->row);
	free(s->sum);
	free(s);
}

static int make_room(struct islands *s, const struct plane *p)
{
	size_t rows = (size_t)p->height + 1, columns = (size_t)p->width;
	if (rows > s->rows_room) {
		uint32_t *row = realloc(s->row, rows * sizeof *row);
		if (!row)
			return -ENOMEM;
		s->row = row;
		s->rows_room = rows;
	}
	if (columns > s->columns_room) {
		uint32_t *sum = realloc(s->sum, columns * sizeof *sum);
		if (!sum)
			return -ENOMEM;
		s->sum = sum;
		s->columns_room = columns;
	}
	return 0;
}

static uint32_t root(struct islands *s, uint32_t r)
{
	while (s->run[r].up != r) {
		s->run[r].up = s->run[s->run[r].up].up;
		r = s->run[r].up;
	}
	return r;
}

/* The earlier run leads, so that an island's first run is its root. */
static void join(struct islands *s, uint32_t a, uint32_t b)
{
	a = root(s, a);
	b = root(s, b);
	if (a < b)
		s->run[b].up = a;
	else
		s->run[a].up = b;
}

static void join_row_above(struct islands *s, int y)
{
	uint32_t above = y > 0 ? s->row[y - 1] : s->row[y];
	for (uint32_t r = s->row[y]; r < s->runs; r++) {
		while (above < s->row[y] && s->run[above].right < s->run[r].left - 1)
			above++;
		for (uint32_t a = above; a < s->row[y] && s->run[a].left <= s->run[r].right + 1; a++)
			join(s, a, r);
	}
}

/* An eighth darker than its surroundings, and by enough to be no grain. */
static bool is_dark(int v, uint32_t sum, uint32_t pixels)
{
	return (uint32_t)v * pixels * 8 < sum * 7 && (uint32_t)(v + 12) * pixels < sum;
}

static void find_runs(struct islands *s, const uint8_t *line, int width, uint32_t rows)
{
	uint32_t sum = 0;
	bool open = false;
	for (int x = 0; x < REACH && x < width; x++)
		sum += s->sum[x];
	for (int x = 0; x < width; x++) {
		if (x + REACH < width)
			sum += s->sum[x + REACH];
		if (x > REACH)
			sum -= s->sum[x - REACH - 1];
		int left = x < REACH ? 0 : x - REACH, right = x + REACH < width ? x + REACH : width - 1;
		if (!is_dark(line[x], sum, (uint32_t)(right - left + 1) * rows)) {
			open = false;
		} else if (open) {
			s->run[s->runs - 1].right = (int16_t)x;
		} else if (s->runs < RUNS_MAX) {
			s->run[s->runs] = (struct run){(int16_t)x, (int16_t)x, s->runs};
			s->runs++;
			open = true;
		}
	}
}

static void add_line(uint32_t *sum, const uint8_t *line, int width)
{
	for (int x = 0; x < width; x++)
		sum[x] += line[x];
}

static void take_line(uint32_t *sum, const uint8_t *line, int width)
{
	for (int x = 0; x < width; x++)
		sum[x] -= line[x];
}

static void trace(struct islands *s, const struct plane *p)
{
	size_t width = (size_t)p->width;
	memset(s->sum, 0, width * sizeof *s->sum);
	s->runs = 0;
	s->height = p->height;
	for (int y = 0; y < REACH && y < p->height; y++)
		add_line(s->sum, p->pixels + (size_t)y * width, p->width);
	for (int y = 0; y < p->height; y++) {
		int top = y < REACH ? 0 : y - REACH,
		    bottom = y + REACH < p->height ? y + REACH : p->height - 1;
		if (y + REACH < p->height)
			add_line(s->sum, p->pixels + (size_t)(y + REACH) * width, p->width);
		if (y > REACH)
			take_line(s->sum, p->pixels + (size_t)(y - REACH - 1) * width, p->width);
		s->row[y] = s->runs;
		find_runs(s, p->pixels + (size_t)y * width, p->width, (uint32_t)(bottom - top + 1));
		join_row_above(s, y);
	}
	s->row[p->height] = s->runs;
}

static void measure(struct islands *s)
{
	for (int y = 0; y < s->height; y++) {
		for (uint32_t r = s->row[y]; r < s->row[y + 1]; r++) {
			uint32_t first = root(s, r);
			struct box line = {s->run[r].left, y, s->run[r].right, y};
			if (first == r)
				s->of[r] = (struct found){.first = r, .box = line};
			box_widen(&s->of[first].box, &line);
			s->of[first].dark += s->run[r].right - s->run[r].left + 1;
		}
	}
}

static bool could_be(const struct found *f)
{
	int across = f->box.right - f->box.left + 1, down = f->box.bottom - f->box.top + 1;
	int shorter = across < down ? across : down, longer = across < down ? down : across;
	/* 8x32 is the longest symbol; two sides of 10 modules and nothing else fill a fifth. */
	return shorter >= SIDE_LEAST && longer <= SIDE_MOST && longer <= 5 * shorter &&
	       f->dark > across * down / 6 && f->dark < across * down * 3 / 4;
}

static int area(const struct found *f)
{
	return (f->box.right - f->box.left + 1) * (f->box.bottom - f->box.top + 1);
}

/* Keeps the list sorted, largest first. */
static void choose(struct islands *s, uint32_t first)
{
	int at = s->count;
	while (at > 0 && area(&s->of[s->chosen[at - 1]]) < area(&s->of[first]))
		at--;
	if (at == ISLANDS_MAX)
		return;
	if (s->count < ISLANDS_MAX)
		s->count++;
	memmove(&s->chosen[at + 1], &s->chosen[at], (size_t)(s->count - 1 - at) * sizeof *s->chosen);
	s->chosen[at] = first;
}

int islands_find(struct islands *s, const struct plane *p)
{
	int r = make_room(s, p);
	if (r < 0)
		return r;
	trace(s, p);
	measure(s);
	s->count = 0;
	for (uint32_t i = 0; i < s->runs; i++)
		if (s->run[i].up == i && could_be(&s->of[i]))
			choose(s, i);
	return s->count;
}

static uint32_t first_of(const struct islands *s, uint32_t r)
{
	while (s->run[r].up != r)
		r = s->run[r].up;
	return r;
}

/* The symbol that the island is the border of, as a square about a middle. */
struct square {
	double x, y, half_diagonal; /* pixels */
	double cosine, sine;        /* of the diagonal's direction */
};

#define DIRECTIONS 12

/* The two places of the island that are furthest apart are two opposite corners: the ends of its two sides.
 */
static struct square square_of(const struct islands *s, uint32_t first)
{
	double low[DIRECTIONS], high[DIRECTIONS];
	int from[DIRECTIONS][2], to[DIRECTIONS][2], best = 0;
	for (int d = 0; d < DIRECTIONS; d++)
		low[d] = 1e9, high[d] = -1e9;
	for (int y = s->of[first].box.top; y <= s->of[first].box.bottom; y++) {
		for (uint32_t r = s->row[y]; r < s->row[y + 1]; r++) {
			if (first_of(s, r) != first)
				continue;
			for (int d = 0; d < 2 * DIRECTIONS; d++) {
				int k = d / 2, x = d % 2 ? s->run[r].right : s->run[r].left;
				double along =
				    x * cos(k * M_PI / DIRECTIONS) + y * sin(k * M_PI / DIRECTIONS);
				if (along < low[k])
					low[k] = along, from[k][0] = x, from[k][1] = y;
				if (along > high[k])
					high[k] = along, to[k][0] = x, to[k][1] = y;
			}
		}
	}
	for (int d = 1; d < DIRECTIONS; d++)
		if (high[d] - low[d] > high[best] - low[best])
			best = d;
	double dx = to[best][0] - from[best][0], dy = to[best][1] - from[best][1], length = hypot(dx, dy);
	return (struct square){(to[best][0] + from[best][0]) / 2.0, (to[best][1] + from[best][1]) / 2.0,
	                       length / 2, dx / length, dy / length};
}

/* Has it its middle in the square, and is it no ring round it? On the axes of its diagonals a square is all
 * |u| + |v| up to half a diagonal. */
static bool in_square(const struct square *q, const struct box *b)
{
	double dx = (b->left + b->right) / 2.0 - q->x, dy = (b->top + b->bottom) / 2.0 - q->y;
	double u = dx * q->cosine + dy * q->sine, v = dy * q->cosine - dx * q->sine;
	return fabs(u) + fabs(v) <= q->half_diagonal && b->right - b->left < 2 * q->half_diagonal &&
	       b->bottom - b->top < 2 * q->half_diagonal;
}

static bool within(const struct box *a, const struct box *b)
{
	return a->left > b->left && a->right < b->right && a->top > b->top && a->bottom < b->bottom;
}

static struct box grown(const struct box *b, int by)
{
	return (struct box){b->left - by, b->top - by, b->right + by, b->bottom + by};
}

static void copy_run(const struct run *run, const struct plane *p, int y, const struct box *at,
                     struct plane *out)
{
	/* With a pixel around for its soft edge. */
	int left = run->left > 0 ? run->left - 1 : 0,
	    right = run->right + 1 < p->width ? run->right + 1 : run->right;
	left = left < at->left ? at->left : left;
	right = right > at->right ? at->right : right;
	if (right >= left)
		memcpy(out->pixels + (size_t)(y - at->top) * (size_t)out->width + (left - at->left),
		       p->pixels + (size_t)y * (size_t)p->width + left, (size_t)(right - left + 1));
}

int islands_cut(const struct islands *s, const struct plane *p, int i, struct plane *out, struct box *at,
                int *degrees)
{
	uint32_t first = s->chosen[i];
	const struct box *b = &s->of[first].box;
	int across = b->right - b->left + 1, down = b->bottom - b->top + 1;
	int rim = 4 + (across < down ? down : across) / 8;
	struct square q = square_of(s, first);
	int reach = (int)(q.half_diagonal * 9 / 8) + 2;
	/* What belongs to it lies close round the island, or in the square that it is the border of. */
	struct box near = grown(b, rim),
	           all = {(int)q.x - reach, (int)q.y - reach, (int)q.x + reach, (int)q.y + reach};
	box_widen(&all, &near);
	*at = grown(&all, rim);
	*degrees = ((int)lround(atan2(q.sine, q.cosine) * 180 / M_PI) + 405) % 90;
	int r = plane_resize(out, at->right - at->left + 1, at->bottom - at->top + 1);
	if (r < 0)
		return r;
	memset(out->pixels, 255, (size_t)out->width * (size_t)out->height);
	for (int y = at->top < 0 ? 0 : at->top; y <= at->bottom && y < s->height; y++) {
		for (uint32_t k = s->row[y]; k < s->row[y + 1]; k++) {
			const struct box *of = &s->of[first_of(s, k)].box;
			if (s->run[k].right >= at->left && s->run[k].left <= at->right &&
			    (within(of, &near) || in_square(&q, of)))
				copy_run(&s->run[k], p, y, at, out);
		}
	}
	return 0;
}
