#include "count/proof.h"

#include <stdio.h>
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

enum sentence { SAY_CHANGED = 1, SAY_OTHERS, SAY_LINK, SENTENCES };

static int say_changed(const struct proof *p, char *out, size_t size)
{
	const char *what = p->changed_how & KEY_DAMAGED ? "was damaged and lies aside as station.key-damaged"
	                   : p->changed_how & KEY_MADE  ? "was lost"
	                                                : "is another than before";
	if (!p->changed)
		return 0;
	snprintf(
	    out, size,
	    "The station's key %s: slips are signed with another from event %lld on. Find out who did it; "
	    "restore the old one, or keep its public part for old slips; then 'bandtally audit settle %lld "
	    "WHAT'",
	    what, (long long)p->changed, (long long)p->changed);
	return 1;
}

static int say(const struct proof *p, enum sentence which, char *out, size_t size)
{
	static const char
	    others[] = "Other users of this machine can read the station's key, and could sign slips as "
	               "this station: make it readable for its owner alone (chmod 600 station.key)",
	    link[] = "The station's key is a symbolic link, and others may own what it names: put the "
	             "file itself into the data folder";
	if (which == SAY_CHANGED)
		return say_changed(p, out, size);
	if (!(p->exposed & (which == SAY_OTHERS ? KEY_OTHERS : KEY_LINK)))
		return 0;
	snprintf(out, size, "%s", which == SAY_OTHERS ? others : link);
	return 1;
}

int proof_words(const struct proof *p, int from, char *out, size_t size)
{
	for (int i = from + 1; i < SENTENCES; i++)
		if (say(p, (enum sentence)i, out, size))
			return i;
	return 0;
}

static const char *begun_words(enum incarnation_why why)
{
	switch (why) {
	case INCARNATION_BEHIND:
		return "an older record was put back";
	case INCARNATION_OTHER:
		return "another record was put in place of the station's";
	case INCARNATION_NO_HEAD:
		return "nothing says whether this is the station's latest record (its head file is gone)";
	case INCARNATION_ASIDE:
		return "the station works on a new record";
	case INCARNATION_PAPER:
		return "a paper is newer than the record: an older one was put back";
	}
	return "the station works on another record than before";
}

int proof_doubt(const struct proof *p, char *out, size_t size)
{
	out[0] = 0;
	if (!p->begun ||
	    p->begun_why == INCARNATION_ASIDE) /* which stands there until that file is taken away */
		return 0;
	int n = snprintf(out, size, "%s", begun_words((enum incarnation_why)p->begun_why));
	if (p->begun_head && n > 0 && (size_t)n < size)
		n += snprintf(out + n, size - (size_t)n, ": that one had come to event %lld",
		              (long long)p->begun_head);
	if (n > 0 && (size_t)n < size)
		snprintf(out + n, size - (size_t)n,
		         ": what it does not hold the station does not know: count by hand, look at the last "
		         "papers, then "
		         "'bandtally audit settle %lld WHAT'",
		         (long long)p->begun);
	return 1;
}
