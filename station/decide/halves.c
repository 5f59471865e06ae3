#include "decide/halves.h"

#include <stdio.h>
#include <string.h>

#include "decide/input.h"

static int is_waiting(const struct half *half, struct moment now)
{
	return half->scanner[0] && moment_between_ms(half->at, now) < HALF_WAIT_MS;
}

static struct half *find(struct halves *h, const char *scanner)
{
	for (int i = 0; i < HALVES_MAX; i++)
		if (strcmp(h->list[i].scanner, scanner) == 0)
			return &h->list[i];
	return NULL;
}

/* A free place, or that of the one that has waited longest. */
static struct half *place(struct halves *h, struct moment now, struct half *forgotten)
{
	struct half *oldest = &h->list[0];
	for (int i = 0; i < HALVES_MAX; i++) {
		if (!is_waiting(&h->list[i], now))
			return &h->list[i];
		if (h->list[i].at.boot_ms < oldest->at.boot_ms)
			oldest = &h->list[i];
	}
	*forgotten = *oldest;
	return oldest;
}

static int is_joined(const struct half *half, struct code *code)
{
	struct code both = half->code;
	struct code_fault fault;
	if (code_join(&both, code, &fault) < 0 || !both.product[0])
		return 0;
	*code = both;
	return 1;
}

enum halves_join halves_take(struct halves *h, const char *scanner, int32_t room, struct code *code,
                             struct moment now, struct half *forgotten)
{
	struct half *half = find(h, scanner);
	int joined = half && is_waiting(half, now) && is_joined(half, code);
	forgotten->scanner[0] = 0;
	if (half)
		*half = (struct half){0};
	if (joined)
		return HALVES_JOINED;
	if (!code_is_half(code))
		return HALVES_WHOLE;
	half = place(h, now, forgotten);
	*half = (struct half){.room = room, .code = *code, .at = now};
	snprintf(half->scanner, sizeof half->scanner, "%s", scanner);
	return HALVES_WAITS;
}
