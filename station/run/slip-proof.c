#include "run/slip-proof.h"

#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"

#define MINUTE_MS 60000

int32_t slip_proof(const struct seal *s, const char *site, int station, int32_t slip, int copy)
{
	char of[40];
	uint8_t mac[SEAL_MAC_BYTES];
	uint64_t n = 0;
	int size = snprintf(of, sizeof of, "%.2s|%02d|%07d|%02d", site, station, (int)slip, copy);
	seal_mac(s, "slip", of, (size_t)size, mac);
	for (size_t i = 0; i < sizeof n; i++)
		n = n << 8 | mac[i];
	return 1 +
	       (int32_t)(n %
	                 OWN_PROOFS); /* of 2^64: no number is likelier than another by more than 1 in 10^13 */
}

/* A clock that starts anew is another time altogether. */
static int within_a_minute(struct moment then, struct moment now)
{
	int64_t ms = moment_between_ms(then, now);
	return then.boot == now.boot && ms >= 0 && ms < MINUTE_MS;
}

static int is_silent(const struct guesser *x, struct moment now)
{
	return x->silenced.boot && within_a_minute(x->silenced, now);
}

static int quietest(const struct guesses *g)
{
	int least = 0;
	for (int i = 1; i < GUESSES_MAX; i++) {
		const struct guesser *a = &g->list[i], *b = &g->list[least];
		if (moment_between_ms(a->wrong[a->n - 1], b->wrong[b->n - 1]) > 0)
			least = i;
	}
	return least;
}

static struct guesser *place_for(struct guesses *g, const char *scanner)
{
	int i = 0;
	while (i < GUESSES_MAX && g->list[i].scanner[0] && strcmp(g->list[i].scanner, scanner) != 0)
		i++;
	struct guesser *x = &g->list[i < GUESSES_MAX ? i : quietest(g)];
	if (strcmp(x->scanner, scanner) != 0) {
		*x = (struct guesser){0};
		snprintf(x->scanner, sizeof x->scanner, "%.32s", scanner);
	}
	return x;
}

enum guessed guesses_note(struct guesses *g, const char *scanner, struct moment now)
{
	struct guesser *x = place_for(g, scanner);
	if (x->n == GUESSES_IN_A_MINUTE) {
		x->n--;
		memmove(&x->wrong[0], &x->wrong[1], sizeof *x->wrong * (size_t)x->n);
	}
	x->wrong[x->n++] = now;
	if (x->n < GUESSES_IN_A_MINUTE || !within_a_minute(x->wrong[0], now))
		return GUESS_NOTED;
	x->silenced = x->wrong[0] = now;
	x->n = 1; /* that is over when it is answered again: five more silence it anew */
	return GUESS_ONE_TOO_MANY;
}

int guesses_silent(const struct guesses *g, const char *scanner, struct moment now)
{
	for (int i = 0; i < GUESSES_MAX; i++)
		if (g->list[i].scanner[0] && strcmp(g->list[i].scanner, scanner) == 0)
			return is_silent(&g->list[i], now);
	return 0;
}

int guesses_words(const struct guesses *g, const struct language *language, struct moment now, json_t *list)
{
	char words[240];
	int n = 0;
	for (int i = 0; i < GUESSES_MAX; i++) {
		const struct guesser *x = &g->list[i];
		if (!x->scanner[0] || !is_silent(x, now))
			continue;
		n++;
		if (!list)
			continue;
		say_sentence_in(language, SAY(SLIP_CODES_TRIED, .scanner = x->scanner), words, sizeof words);
		json_array_append_new(list, json_string(words));
	}
	return n;
}
