#include "decide/phrases.h"

#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "code/own-codes.h"
#include "decide/outcome.h"

void sentence_capital(char *sentence)
{
	if (sentence[0] >= 'a' && sentence[0] <= 'z')
		sentence[0] = (char)(sentence[0] - 'a' + 'A');
}

const char *moment_hm(struct moment at, char out[6])
{
	clock_text_hm(at.wall_ms, at.utc_min, out);
	return out;
}

int32_t moment_minute_of_day(struct moment at)
{
	return clock_minute_of_day(at.wall_ms, at.utc_min);
}

/* "1 finger tourniquet of 1 shown intact; 1 artery forceps of 1 shown": only what was seen (rule 15). */
int sheet_accounted_words(const struct sheet *s, char *out, size_t size)
{
	static const char *const conditions[] = {"", " intact", " cut and complete", " with pieces missing"};
	size_t used = 0;
	int items = 0;
	out[0] = 0;
	for (int i = 0; i < s->n_items && used + 1 < size; i++) {
		const struct item *it = &s->items[i];
		if (!item_counts(it) && it->place != ITEM_RETURNED)
			continue;
		const char *how = it->place == ITEM_RETURNED       ? "returned unopened"
		                  : it->evidence == EVIDENCE_MARK  ? "mark read"
		                  : it->evidence == EVIDENCE_SHOWN ? "shown"
		                                                   : "not accounted for";
		int n = snprintf(out + used, size - used, "%s%s: %d of %d %s%s", items ? "; " : "",
		                 it->thing.name, it->place == ITEM_RETURNED ? it->pieces : it->shown,
		                 it->pieces, how, conditions[it->condition & 3]);
		used += n > 0 ? (size_t)n : 0;
		items++;
	}
	return items;
}

static void shout(char *words)
{
	for (char *c = words; *c; c++)
		*c = (char)(*c >= 'a' && *c <= 'z' ? *c - 'a' + 'A' : *c);
}

/* " A TOURNIQUET IS ON THE LEFT THUMB.", or "". */
const char *sheet_on_words(const struct sheet *s, char out[80])
{
	int on = sheet_first_digit_on(s);
	const struct digit *d = sheet_digit_const(s, on);
	snprintf(out, 80,
	         !on                    ? "%s"
	         : d->state == DIGIT_ON ? " A TOURNIQUET IS ON THE %s."
	                                : " A TOURNIQUET MAY BE ON THE %s.",
	         own_digit_name(on));
	shout(out);
	return out;
}

/* What is not as it must be before the patient goes: " FORCEPS NOT ACCOUNTED FOR. LEFT THUMB NOT SEEN BARE.", or "". */
const char *sheet_open_words(const struct sheet *s, char out[OPEN_WORDS_MAX])
{
	char on[80];
	size_t used = (size_t)snprintf(out, OPEN_WORDS_MAX, "%s", sheet_on_words(s, on));
	for (int i = 0; i < s->n_items && used < OPEN_WORDS_MAX - 160; i++)
		if (item_open(&s->items[i]) && s->items[i].place != ITEM_ON)
			used += (size_t)snprintf(out + used, OPEN_WORDS_MAX - used, " %s NOT ACCOUNTED FOR.",
			                         s->items[i].thing.name);
	for (int i = 0; i < s->n_digits && used < OPEN_WORDS_MAX - 80; i++)
		if (s->digits[i].had && !digit_is_on(&s->digits[i]) && !s->digits[i].seen_bare)
			used += (size_t)snprintf(out + used, OPEN_WORDS_MAX - used, " %s NOT SEEN BARE.",
			                         own_digit_name(s->digits[i].number));
	shout(out);
	return out;
}

void reply_words_in(const struct reply *r, const struct language *language, char out[SAID_MAX])
{
	size_t used = 0;
	if (!language || !r->n_parts) {
		memcpy(out, r->said, SAID_MAX);
		return;
	}
	for (int i = 0; i < r->n_parts && used + 2 < SAID_MAX; i++) {
		struct say say = said_say(&r->parts[i]);
		if (i)
			out[used++] = ' ';
		say_sentence_in(language, &say, out + used, SAID_MAX - used);
		used += strlen(out + used);
	}
}
