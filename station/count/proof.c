#include "count/proof.h"

#include <string.h>

static void apply_key(struct proof *p, const struct event *e)
{
	const uint8_t how = KEY_MADE | KEY_DAMAGED | KEY_CHANGED;
	memcpy(p->kid, e->key.kid, sizeof p->kid);
	p->exposed = (uint8_t)e->n & (KEY_OTHERS | KEY_LINK);
	if (!(e->n & how))
		return;
	p->changed = e->seq;
	p->changed_how = (uint8_t)e->n & how;
}

void proof_apply(struct proof *p, const struct event *e)
{
	if (e->kind == EV_KEY)
		apply_key(p, e);
	if (e->kind != EV_INCARNATION)
		return;
	p->begun = e->seq;
	p->begun_why = e->what;
	p->begun_head = e->head.seq;
}

int proof_waits(const struct proof *p, int64_t seq)
{
	return seq && (p->changed == seq || p->begun == seq);
}

void proof_settle(struct proof *p, int64_t seq)
{
	if (p->changed == seq)
		p->changed = p->changed_how = 0;
	if (p->begun == seq)
		p->begun = p->begun_head = p->begun_why = 0;
}

static enum saying how_changed(const struct proof *p)
{
	return p->changed_how & KEY_DAMAGED ? SAY_KEY_WAS_DAMAGED
	       : p->changed_how & KEY_MADE  ? SAY_KEY_WAS_LOST
	                                    : SAY_KEY_IS_ANOTHER;
}

int proof_words(const struct proof *p, const struct language *language, int from, char *out, size_t size)
{
	const struct say all[] = {
	    {.saying = p->changed ? SAY_FAULT_KEY : SAY_NONE,
	     .what = how_changed(p),
	     .event = (int32_t)p->changed},
	    {.saying = p->exposed & KEY_OTHERS ? SAY_FAULT_KEY_READ : SAY_NONE},
	    {.saying = p->exposed & KEY_LINK ? SAY_FAULT_KEY_LINK : SAY_NONE},
	};
	for (int i = from; i < (int)(sizeof all / sizeof *all); i++)
		if (all[i].saying) {
			say_sentence_in(language, &all[i], out, size);
			return i + 1;
		}
	return 0;
}

static enum saying begun_saying(enum incarnation_why why)
{
	switch (why) {
	case INCARNATION_BEHIND:
		return SAY_BEGUN_BEHIND;
	case INCARNATION_OTHER:
		return SAY_BEGUN_OTHER;
	case INCARNATION_NO_HEAD:
		return SAY_BEGUN_NO_HEAD;
	case INCARNATION_PAPER:
		return SAY_BEGUN_PAPER;
	case INCARNATION_ASIDE: /* which stands there until that file is taken away */
		return SAY_NONE;
	}
	return SAY_BEGUN_ELSE;
}

int proof_doubt(const struct proof *p, const struct language *language, char *out, size_t size)
{
	enum saying why = p->begun ? begun_saying((enum incarnation_why)p->begun_why) : SAY_NONE;
	out[0] = 0;
	if (!why)
		return 0;
	say_sentence_in(language,
	                &(const struct say){.saying = p->begun_head ? SAY_DOUBT_BEGUN_AT : SAY_DOUBT_BEGUN,
	                                    .what = why,
	                                    .event = (int32_t)p->begun,
	                                    .other_event = (int32_t)p->begun_head},
	                out, size);
	return 1;
}
