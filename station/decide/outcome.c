#include "decide/outcome.h"

#include <string.h>

/* --- what is said --------------------------------------------------------------------------------- */

/* The sentence at `*i` with all that it lists; `*i` becomes the place behind it. */
static void say_whole(const struct reply *r, const struct language *language, int *i, char out[2 * SAID_MAX])
{
	char list[SAID_LIST_MAX];
	struct say say = said_say(&r->parts[(*i)++]);
	int from = *i;
	while (*i < r->n_parts && r->listed[*i])
		(*i)++;
	said_list(language, &r->parts[from], *i - from, list, sizeof list);
	say.list = list;
	say_sentence_in(language, &say, out, 2 * SAID_MAX);
}

#define CUT "…"

/* Behind a whole letter where it does not fit, and so that it is seen. */
static void append(char out[SAID_MAX], const char *sentence)
{
	size_t used = strlen(out), length = strlen(sentence), room = SAID_MAX - 1 - used;
	if (length <= room) {
		memcpy(out + used, sentence, length + 1);
		return;
	}
	if (room < sizeof CUT)
		return;
	room -= sizeof CUT - 1;
	while (room && ((unsigned char)sentence[room] & 0xc0) == 0x80)
		room--;
	memcpy(out + used, sentence, room);
	memcpy(out + used + room, CUT, sizeof CUT);
}

static void say_all(const struct reply *r, const struct language *language, char out[SAID_MAX])
{
	char sentence[2 * SAID_MAX];
	out[0] = 0;
	for (int i = 0; i < r->n_parts;) {
		if (i)
			append(out, " ");
		say_whole(r, language, &i, sentence);
		append(out, sentence);
	}
}

void reply_words_in(const struct reply *r, const struct language *language, char out[SAID_MAX])
{
	if (!language || !r->n_parts)
		memcpy(out, r->said, SAID_MAX);
	else
		say_all(r, language, out);
}

/* --- what is to be said --------------------------------------------------------------------------- */

void reply_say(struct reply *r, enum verdict verdict, const struct say *what)
{
	r->verdict = verdict;
	r->n_parts = 0;
	reply_add(r, what);
}

void reply_add(struct reply *r, const struct say *what)
{
	if (r->n_parts < REPLY_PARTS) {
		r->listed[r->n_parts] = 0;
		said_keep(&r->parts[r->n_parts++], what);
	}
	say_all(r, NULL, r->said);
}

void reply_list(struct reply *r, const struct say *thing)
{
	int from = r->n_parts;
	while (from && r->listed[from - 1])
		from--;
	int n = said_list_add(&r->parts[from], r->n_parts - from, REPLY_PARTS - from, thing);
	if (from + n > r->n_parts)
		r->listed[r->n_parts++] = 1;
	say_all(r, NULL, r->said);
}
