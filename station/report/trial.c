/* How often a chart of a steady process signals though nothing changed: by trying. Each chart takes its limits from its own
 * points, for which no formula is known; the numbers are the same each time, so that a report is. */
#include <math.h>
#include <stdlib.h>

#include "report/stats.h"

#define TRIALS 4000

/* A splitmix64 step: public domain, Vigna 2015. */
static double draw(uint64_t *state)
{
	uint64_t z = *state += 0x9e3779b97f4a7c15u;
	z = (z ^ z >> 30) * 0xbf58476d1ce4e5b9u;
	z = (z ^ z >> 27) * 0x94d049bb133111ebu;
	return ((double)((z ^ z >> 31) >> 11) + 0.5) / 9007199254740992.0; /* 2^53: never 0 nor 1 */
}

static double normal(uint64_t *state)
{
	double r = sqrt(-2 * log(draw(state)));
	return r * cos(2 * M_PI * draw(state));
}

static int signals(enum stats_kind kind, double *values, uint8_t *beyond, int n, double p, uint64_t *state)
{
	struct stats_limits l = {0, 0, 0};
	double range;
	for (int i = 0; i < n; i++) {
		switch (kind) {
		case STATS_XMR:
			values[i] = normal(state);
			break;
		case STATS_CASES:
			values[i] = floor(log(draw(state)) / log1p(-p));
			break;
		case STATS_DAYS:
			values[i] = -log(draw(state));
			break;
		}
	}
	switch (kind) {
	case STATS_XMR:
		l = stats_xmr(values, n, &range);
		break;
	case STATS_CASES:
		l = stats_between_cases(values, n);
		break;
	case STATS_DAYS:
		l = stats_between_days(values, n);
		break;
	}
	return stats_signals(values, n, &l, kind == STATS_XMR, beyond) > 0;
}

double stats_false_share(enum stats_kind kind, int n, double p)
{
	uint64_t state = 20261127;
	int found = 0;
	double *values = calloc((size_t)n, sizeof *values);
	uint8_t *beyond = calloc((size_t)n, 1);
	for (int i = 0; values && beyond && i < TRIALS; i++)
		found += signals(kind, values, beyond, n, p, &state);
	double share = values && beyond ? (double)found / TRIALS : NAN;
	free(values);
	free(beyond);
	return share;
}
