#include "drivers/sight.h"

#include <stdlib.h>
#include <string.h>

#define CELLS_ACROSS 16
#define CELLS_DOWN 9
#define STEP 4 /* every fourth pixel and row says enough */

struct light {
	int mean, grain; /* of the whole frame; grain: by which neighbours differ, on average */
	int range;       /* between its darkest and its brightest cell */
};

struct sums {
	long light, grain, count;
};

static void add_cell(const struct plane *p, int across, int down, struct sums *to)
{
	int right = (across + 1) * p->width / CELLS_ACROSS, bottom = (down + 1) * p->height / CELLS_DOWN;
	for (int y = down * p->height / CELLS_DOWN; y < bottom; y += STEP)
		for (int x = across * p->width / CELLS_ACROSS; x + 1 < right; x += STEP) {
			const uint8_t *at = p->pixels + (size_t)y * (size_t)p->width + x;
			to->light += at[0];
			to->grain += abs(at[0] - at[1]);
			to->count++;
		}
}

static struct light light_of(const struct plane *p)
{
	struct sums all = {0};
	long least = 255, most = 0;
	for (int i = 0; i < CELLS_ACROSS * CELLS_DOWN; i++) {
		struct sums cell = {0};
		add_cell(p, i % CELLS_ACROSS, i / CELLS_ACROSS, &cell);
		if (!cell.count)
			continue;
		long mean = cell.light / cell.count;
		least = mean < least ? mean : least;
		most = mean > most ? mean : most;
		all.light += cell.light;
		all.grain += cell.grain;
		all.count += cell.count;
	}
	if (!all.count) /* too small to say anything of */
		return (struct light){.mean = 255, .range = 255};
	return (struct light){(int)(all.light / all.count), (int)(all.grain / all.count),
	                      (int)(most - least)};
}

enum sees sight_of(const struct plane *frame)
{
	struct light l = light_of(frame);
	bool even = l.range < SIGHT_EVEN_RANGE;
	if (l.mean < SIGHT_DARK_MEAN && (!even || l.grain >= SIGHT_DARK_GRAIN))
		return SEES_DARK;
	return even ? SEES_COVERED : SEES_WELL;
}

/* Not against somebody's intent: of two frames of a sensor that works no two are the same to the last bit. */
static uint64_t print_of(const struct plane *p)
{
	uint64_t print = 0xcbf29ce484222325u, word = 0; /* FNV-1a, eight bytes at a time */
	size_t size = (size_t)p->width * (size_t)p->height;
	for (size_t i = 0; i + sizeof word <= size; i += sizeof word) {
		memcpy(&word, p->pixels + i, sizeof word);
		print = (print ^ word) * 0x100000001b3u;
	}
	return print;
}

static int64_t patience_ms(enum sees sees)
{
	return sees == SEES_WELL ? SIGHT_AGAIN_MS : sees == SEES_FROZEN ? 0 : SIGHT_BLIND_MS;
}

bool sight_frame(struct sight *s, const struct plane *frame, int64_t now_ms)
{
	uint64_t print = print_of(frame);
	if (!s->begun || print != s->print)
		s->print_ms = now_ms;
	s->print = print;
	enum sees sees = sight_of(frame);
	if (sees == SEES_WELL && now_ms - s->print_ms >= SIGHT_FROZEN_MS)
		sees = SEES_FROZEN;
	if (!s->begun || sees != s->seems)
		s->seems_ms = now_ms;
	s->seems = sees;
	s->begun = true;
	if (sees == s->told || now_ms - s->seems_ms < patience_ms(sees))
		return false;
	s->told = sees;
	return true;
}

const char *sight_word(enum sees sees)
{
	static const char *const words[] = {
	    [SEES_WELL] = "over", [SEES_DARK] = "dark", [SEES_COVERED] = "covered", [SEES_FROZEN] = "frozen"};
	return words[sees];
}

const char *sight_text(enum sees sees)
{
	static const char *const texts[] = {
	    [SEES_WELL] = "the camera sees again",
	    [SEES_DARK] = "it is dark where the camera looks: put a light on there, or use the spare scanner",
	    [SEES_COVERED] = "the camera's lens is covered, or it looks at one even surface: uncover or turn "
	                     "it, or use the spare scanner",
	    [SEES_FROZEN] = "the camera's picture stands still: pull its plug and plug it in again, and use "
	                    "the spare scanner meanwhile",
	};
	return texts[sees];
}
