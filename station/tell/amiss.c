#include "tell/amiss.h"

static enum amiss_how how_of(const struct item *it, int ended)
{
	if (!item_open(it))
		return 0;
	if (it->place == ITEM_EXTRA)
		return AMISS_EXTRA;
	if (it->condition == CONDITION_PIECES_MISSING)
		return AMISS_PIECES;
	return it->missing ? AMISS_MISSING : ended ? AMISS_OPEN : 0;
}

/* Of things that nobody can tell apart it is not known which one is missing: all that were counted in count. */
static int is_of(const struct sheet *s, const struct amiss *a, int item)
{
	const struct item *first = sheet_item_const(s, a->item), *it = sheet_item_const(s, item);
	if (item == a->item)
		return 1;
	return a->how != AMISS_EXTRA && a->how != AMISS_PIECES && item_counts(it) &&
	       it->place != ITEM_EXTRA && it->condition != CONDITION_PIECES_MISSING &&
	       item_is_alike(first, it);
}

static void count_in(struct amiss *a, const struct item *it, enum amiss_how how)
{
	a->pieces = (int16_t)(a->pieces + it->pieces);
	a->shown = (int16_t)(a->shown + it->shown);
	if (how == AMISS_MISSING)
		a->missing = (int16_t)(a->missing + it->missing);
	else if (how == AMISS_OPEN)
		a->missing = (int16_t)(a->missing + it->pieces - it->shown);
}

uint32_t amiss_digits(const struct sheet *s, int item)
{
	uint32_t digits = 0;
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++)
		if (sheet_may_be_on(s, item, d))
			digits |= 1u << d;
	return digits;
}

int amiss_list(const struct sheet *s, int ended, struct amiss out[ITEMS_MAX])
{
	int n = 0, taken[ITEMS_MAX + 1] = {0};
	for (int i = 1; i <= s->n_items; i++) {
		enum amiss_how how = how_of(&s->items[i - 1], ended);
		if (!how || taken[i])
			continue;
		struct amiss *a = &out[n++];
		*a = (struct amiss){.how = how,
		                    .item = (uint8_t)i,
		                    .timed = role_has(s->items[i - 1].thing.role, TRAIT_TIMED) != 0,
		                    .digits = amiss_digits(s, i)};
		for (int k = 1; k <= s->n_items; k++)
			if (is_of(s, a, k)) {
				count_in(a, &s->items[k - 1], how_of(&s->items[k - 1], ended));
				taken[k] = 1;
			}
	}
	return n;
}

void amiss_digits_words(const struct language *language, uint32_t digits, int with_or, char *out, size_t size)
{
	char names[DIGIT_NUMBER_MAX][60], list[400];
	const char *parts[DIGIT_NUMBER_MAX];
	int n = 0;
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++)
		if (digits >> d & 1) {
			say_part_in(language, SAY(SLIP_THE_DIGIT, .digit = d), names[n], sizeof names[n]);
			parts[n] = names[n];
			n++;
		}
	if (!with_or || n < 2) {
		say_list(language, parts, n, out, size);
		return;
	}
	list[0] = 0;
	for (int i = 0; i + 1 < n; i++)
		said_join(list, sizeof list, ", ", parts[i]);
	say_part_in(language, SAY(SLIP_OR, .first = list, .second = parts[n - 1]), out, size);
}

static enum saying word_of(enum amiss_how how)
{
	switch (how) {
	case AMISS_MISSING:
	case AMISS_OPEN:
		return SAY_SLIP_WAS_MISSING;
	case AMISS_PIECES:
		return SAY_SLIP_WAS_IN_PIECES;
	case AMISS_EXTRA:
		return SAY_SLIP_WAS_EXTRA;
	}
	return SAY_SLIP_WAS_MISSING;
}

void amiss_words(const struct language *language, const struct sheet *s, char *out, size_t size)
{
	struct amiss all[ITEMS_MAX];
	int n = amiss_list(s, 0, all);
	out[0] = 0;
	for (int i = 0; i < n; i++) {
		char one[160];
		const struct say say = {.saying = word_of(all[i].how),
		                        .item = sheet_item_const(s, all[i].item)->thing.name,
		                        .n = all[i].how == AMISS_EXTRA ? all[i].pieces : all[i].missing};
		say_part_in(language, &say, one, sizeof one);
		said_join(out, size, "; ", one);
	}
}
