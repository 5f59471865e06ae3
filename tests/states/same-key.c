/* Two states of one key must agree in all that is said: a key that leaves out something that a decision reads would hide states. */
#include "walk-run.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "known.h"

#define SAMPLE 10 /* every so many-th state is compared with others of its key */

static void add_skeleton(char *out, size_t size, size_t *used, const char *text)
{
	for (; *text && *used + 1 < size; text++)
		out[(*used)++] = *text;
	out[*used] = 0;
}

/* Where a name begins at `text`: its length, and what stands for it. */
static size_t name_at(const char *text, const char **instead)
{
	for (int d = 1; d <= DIGITS_MAX + 1; d++) {
		size_t n = strlen(own_digit_name(d));
		if (strncasecmp(text, own_digit_name(d), n) == 0) {
			*instead = "DIGIT";
			return n;
		}
	}
	*instead = "CIRC";
	return strncmp(text, "RELIEF", 6) == 0 ? 6 : 0;
}

/* Words without names and numbers. */
static void skeleton(const char *text, char *out, size_t size)
{
	size_t used = 0;
	out[0] = 0;
	while (*text) {
		const char *instead;
		size_t n = name_at(text, &instead);
		if (!n && (n = strspn(text, "0123456789")))
			instead = "#";
		if (!n) {
			char one[2] = {*text, 0};
			add_skeleton(out, size, &used, one);
			text++;
			continue;
		}
		add_skeleton(out, size, &used, instead);
		text += n;
	}
}

static int words_differ(const char *a, const char *b)
{
	static char x[SAID_MAX * 2], y[SAID_MAX * 2];
	skeleton(a, x, sizeof x);
	skeleton(b, y, sizeof y);
	return strcmp(x, y) != 0;
}

static int outcomes_differ(const struct outcome *a, const struct outcome *b)
{
	const struct next *x = &a->reply.next, *y = &b->reply.next;
	int differ = a->reply.verdict != b->reply.verdict || a->count != b->count || x->n_deeds != y->n_deeds;
	for (int i = 0; !differ && i < a->count; i++)
		differ = a->events[i].kind != b->events[i].kind || a->events[i].what != b->events[i].what;
	for (int i = 0; !differ && i < x->n_deeds; i++)
		differ = x->deeds[i].kind != y->deeds[i].kind || x->deeds[i].truth != y->deeds[i].truth ||
		         x->deeds[i].n != y->deeds[i].n || x->deeds[i].then != y->deeds[i].then;
	return differ || words_differ(a->reply.said, b->reply.said) || words_differ(x->words, y->words);
}

static int input_answer_of(const struct input *in)
{
	return in->act == ACT_CARD || in->act == ACT_BADGE;
}

struct tried {
	struct key inputs[INPUTS_MAX];
	struct key before, after;
	struct outcome out;
};

/* Refused, or entered once already: nothing changes. */
static int is_without_effect(const struct tried *t)
{
	int effect = !key_is_same(t->before, t->after);
	for (int i = 0; i < t->out.count; i++)
		effect |= t->out.events[i].kind != EV_REFUSED;
	return !effect;
}

static void name_inputs(struct world *w, const struct snapshot *s, struct tried *t)
{
	struct names names;
	snapshot_put(s, w);
	t->before = key_of_state(w, &names);
	for (int i = 0; i < w->n_inputs; i++)
		t->inputs[i] = key_of_input(w, &names, &w->inputs[i].in);
}

static void try(struct world *w, const struct snapshot *s, int input, struct tried *t)
{
	snapshot_put(s, w);
	snapshot_scan(w, &w->inputs[input].in, &t->out);
	world_settle_rooms(w);
	t->after = key_of_state(w, NULL);
}

static void tell_difference(const struct walk *w, uint32_t parent, int input, const struct tried *a,
                            const struct tried *b)
{
	printf("TWO STATES OF ONE KEY DIFFER, by %s after:\n", w->world.inputs[input].name);
	walk_tell_path(w, parent);
	printf("  one says: %s | next: %s\n  the other: %s | next: %s\n  what follows is %s\n",
	       a->out.reply.said, a->out.reply.next.words, b->out.reply.said, b->out.reply.next.words,
	       key_is_same(a->after, b->after) ? "the same" : "another state");
}

/* Two sheets that the key says are one state must be answered alike, to every input, and lead to states that are one
 * again. The second state is the one that the world is in. */
static void compare_states(struct walk *w, const struct snapshot *first, uint32_t parent)
{
	static struct tried a, b;
	struct snapshot *second = snapshot_take(&w->world);
	name_inputs(&w->world, first, &a);
	name_inputs(&w->world, second, &b);
	for (int i = 0; i < w->world.n_inputs; i++) {
		int k = 0;
		while (k < w->world.n_inputs && !key_is_same(a.inputs[i], b.inputs[k]))
			k++;
		if (k == w->world.n_inputs) {
			printf("NO INPUT OF THE OTHER STATE IS LIKE %s\n", w->world.inputs[i].name);
			w->broken |= 1;
			break;
		}
		try(&w->world, first, i, &a);
		try(&w->world, second, k, &b);
		if (!outcomes_differ(&a.out, &b.out) && key_is_same(a.after, b.after))
			continue;
		if (is_without_effect(&a) && is_without_effect(&b) && input_answer_of(&w->world.inputs[i].in))
			continue;
		if (!(w->broken & 1))
			tell_difference(w, parent, i, &a, &b);
		w->broken |= 1;
	}
	w->compared++;
	snapshot_put(second, &w->world);
	free(second);
}

/* The world is in a state that was visited already (or not: is_new). */
void walk_sample(struct walk *w, struct key key, int is_new, uint32_t parent)
{
	int first;
	if (key.a % SAMPLE || w->saboteur || w->digest)
		return;
	uint32_t *at = keys_at(&w->samples, key, &first);
	if (is_new && first) {
		w->sampled = realloc(w->sampled, sizeof *w->sampled * (w->n_sampled + 1));
		if (!w->sampled)
			exit(1);
		w->sampled[w->n_sampled++] = snapshot_take(&w->world);
		*at = w->n_sampled;
	} else if (*at) {
		const struct snapshot *s = w->sampled[(*at & 0xffffff) - 1];
		if (*at >> 24 < 3 && memcmp(&s->sheet, &w->world.station.sheets[0], sizeof s->sheet) != 0) {
			*at += 1 << 24;
			compare_states(w, s, parent);
		}
	}
}
