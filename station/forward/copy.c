#include "forward/copy.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/json.h"
#include "forward/pipe.h"

#define BATCH 2000
#define BUFFER_BYTES (256u << 10)

struct have {
	char site[3];
	int32_t number, incarnation;
	int64_t seq;
};

struct copy {
	struct store *from;
	struct store_head heads[COPY_STATIONS];
	int n_heads;
	struct have *have;
	size_t n_have;
	FILE *out;
};

static int take_have(struct copy *c, const char *line)
{
	_cleanup_(json_drop) json_t *o = json_loads(line, 0, NULL);
	const json_t *h = json_object_get(o, "have");
	struct have *more = h ? realloc(c->have, (c->n_have + 1) * sizeof *more) : NULL;
	if (!more)
		return h ? -ENOMEM : -EINVAL;
	c->have = more;
	struct have *at = &more[c->n_have++];
	*at = (struct have){.number = (int32_t)json_number(h, "number", 0),
	                    .incarnation = (int32_t)json_number(h, "incarnation", 0),
	                    .seq = json_number(h, "seq", 0)};
	snprintf(at->site, sizeof at->site, "%s", json_text(h, "site"));
	return 0;
}

static int read_have(struct copy *c, int in)
{
	FILE *f = fdopen(dup(in), "r");
	char *line = NULL;
	size_t room = 0;
	int n = f ? 0 : -errno;
	while (n == 0 && getline(&line, &room, f) >= 0)
		n = take_have(c, line);
	free(line);
	if (f)
		fclose(f);
	return n;
}

static void say(struct copy *c, const char *key, json_t *value)
{
	_cleanup_(json_drop) json_t *o = json_pack("{s:i,s:o}", "v", 1, key, value);
	char *text = o ? json_dumps(o, JSON_COMPACT) : NULL;
	fprintf(c->out, "%s\n", text ? text : "");
	free(text);
}

/* --- one station ---------------------------------------------------------------------------------------------------- */

static void put_event(void *context, const struct line_event *e)
{
	struct copy *c = context;
	fputs("{\"event\":", c->out);
	fwrite(e->text, 1, e->size, c->out);
	fprintf(c->out, ",\"hash\":\"%.64s\",\"seq\":%lld}\n", e->hash, (long long)e->seq);
}

/* The events of one incarnation behind `*at` up to `to`. */
static int copy_stretch(struct copy *c, const struct store_head *h, int64_t *at, int64_t to,
                        struct store_fault *f)
{
	while (*at < to) {
		struct store_at gone = {0};
		int n = store_gone(c->from, h, *at, &gone, f);
		if (n > 0) {
			say(c, "gone",
			    json_pack("{s:I,s:I,s:s}", "after", (json_int_t)*at, "to", (json_int_t)gone.seq,
			              "hash", gone.hash));
			*at = gone.seq;
			continue;
		}
		if (n == 0)
			n = store_each(c->from, h, at, to, BATCH, put_event, c, f);
		if (n < 0 || ferror(c->out))
			return n < 0 ? n : -EPIPE;
	}
	return 0;
}

/* Behind which incarnation this one began. */
static const struct store_head *before(const struct copy *c, const struct store_head *h)
{
	for (const struct store_head *b = h - 1; h->base_seq && b >= c->heads && b->id == h->id; b--)
		if (b->base_seq < h->base_seq && h->base_seq <= b->last_seq)
			return b;
	return NULL;
}

/* Its record from the first event on: of each incarnation what the next one began behind. */
static int copy_from_first(struct copy *c, const struct store_head *h, int64_t to, int64_t *at,
                           struct store_fault *f)
{
	const struct store_head *b = before(c, h);
	int n = b ? copy_from_first(c, b, h->base_seq, at, f) : 0;
	return n < 0 ? n : copy_stretch(c, h, at, to, f);
}

static const struct have *have_of(const struct copy *c, const struct store_head *h)
{
	for (size_t i = 0; i < c->n_have; i++)
		if (c->have[i].number == h->number && strcmp(c->have[i].site, h->site) == 0)
			return &c->have[i];
	return NULL;
}

/* `h`: its last incarnation. A copy of an earlier one may hold what the station does not have any more. */
static int copy_station(struct copy *c, const struct store_head *h, struct store_fault *f)
{
	const struct have *have = have_of(c, h);
	int goes_on = have && have->incarnation == h->incarnation && have->seq >= h->base_seq &&
	              have->seq <= h->last_seq;
	int64_t at = goes_on ? have->seq : 0;
	say(c, "station",
	    json_pack("{s:s,s:i,s:i,s:I,s:I}", "site", h->site, "number", (int)h->number, "incarnation",
	              (int)h->incarnation, "after", (json_int_t)at, "to", (json_int_t)h->last_seq));
	return goes_on ? copy_stretch(c, h, &at, h->last_seq, f) : copy_from_first(c, h, h->last_seq, &at, f);
}

/* --- all of them ------------------------------------------------------------------------------------------------------ */

static int copy_all(struct copy *c, struct store_fault *f)
{
	int stations = 0, n = c->n_heads = store_heads(c->from, c->heads, COPY_STATIONS, f);
	for (int i = 0; n >= 0 && i < c->n_heads; i++)
		if (i + 1 == c->n_heads || c->heads[i + 1].id != c->heads[i].id) {
			n = copy_station(c, &c->heads[i], f);
			stations++;
		}
	if (n >= 0)
		say(c, "all", json_pack("{s:i}", "stations", stations));
	return n < 0 ? n : 0;
}

int copy_run(const struct store_place *from, int in, int out)
{
	struct copy *c = calloc(1, sizeof *c);
	struct store_fault f = {0};
	int n = c ? read_have(c, in) : -ENOMEM;
	if (n == 0 && !(c->out = fdopen(dup(out), "w")))
		n = -errno;
	if (n < 0) {
		pipe_say(out, "state", json_pack("{s:s,s:s}", "code", "", "why", strerror(-n)));
		free(c);
		return n;
	}
	setvbuf(c->out, NULL, _IOFBF, BUFFER_BYTES);
	n = store_open(&c->from, from, &f);
	if (n == 0)
		n = copy_all(c, &f);
	if (n < 0)
		say(c, "state", json_pack("{s:s,s:s}", "code", forward_word_name(f.word), "why", f.why));
	store_close(c->from);
	if (fclose(c->out) != 0 && n == 0)
		n = -errno;
	free(c->have);
	free(c);
	return n;
}
