#include "count/settled.h"

#include <stdio.h>

int64_t settled_event(const struct event *correction)
{
	long long seq = 0;
	int used = 0;
	if (correction->ref || correction->format != 1)
		return correction->ref;
	return sscanf(correction->text, "event %18lld: %n", &seq, &used) == 1 && used ? seq : 0;
}

void unfollowed_settle(struct station *st, int64_t seq)
{
	int kept = 0;
	if (!seq)
		return;
	for (int i = 0; i < st->n_unfollowed; i++)
		if (st->unfollowed[i].seq != seq)
			st->unfollowed[kept++] = st->unfollowed[i];
	if (kept == st->n_unfollowed && st->more_unfollowed) /* one of those that are only counted */
		st->more_unfollowed--;
	st->n_unfollowed = kept;
}
