#include "decide/slip-read.h"

#include <stdio.h>

#include "decide/answer.h"

int input_is_lost(const struct station *st, const struct input *in)
{
	return in->known.newer && in->known.slip.number != in->number && in->number <= st->last_slip_no;
}

/* A paper whose digits this station did not give it. */
static void refuse_strange(struct turn *t)
{
	const struct input *in = t->in;
	int known = in->known.slip.number == in->number;
	if (input_is_lost(t->station, in))
		turn_refuse(t, SAY(SLIP_BEFORE_RESTORE, .slip = in->number, .copy = in->copy));
	else if (in->known.newer)
		turn_refuse(t, SAY(SLIP_NEWER, .slip = in->number, .copy = in->copy));
	else if (in->known.paper.queued && !in->proof)
		turn_refuse(t, SAY(SLIP_LONGER_CODE, .slip = in->number, .copy = in->copy));
	else if (!known && !in->proof)
		turn_refuse(t, SAY(SLIP_NOT_IN_RECORD, .slip = in->number));
	else if (known && !in->known.paper.queued)
		turn_refuse(t, SAY(SLIP_NO_SUCH_COPY, .slip = in->number, .copy = in->copy));
	else
		turn_refuse(t, SAY(SLIP_NOT_OURS, .slip = in->number, .copy = in->copy));
}

static void refuse_second(struct turn *t)
{
	const struct paper *paper = &t->in->known.paper;
	if (paper->seen == paper->copy)
		turn_refuse(t, SAY(SLIP_SEEN_BEFORE, .slip = t->in->number, .copy = paper->copy));
	else
		turn_refuse(t, SAY(SLIP_COPY_SEEN, .slip = t->in->number, .copy = paper->copy,
		                   .other_copy = paper->seen));
}

static void seen_elsewhere(struct turn *t, const struct slip *slip)
{
	if (turn_has_case(t)) {
		turn_refuse(t, SAY(SLIP_OF_OTHER_ROOM, .slip = slip->number, .case_no = slip->case_no,
		                   .room = station_room_name(t->station, slip->room)));
		return;
	}
	turn_ask_saying(t,
	                (struct asked){.what = Q_SLIP_HERE, .n = slip->number, .item = (uint8_t)t->in->copy},
	                SAY(R_SLIP_OF, .slip = slip->number, .case_no = slip->case_no,
	                    .room = station_room_name(t->station, slip->room)));
}

int slip_is_proven(struct turn *t)
{
	const struct known *known = &t->in->known;
	if (known->unanswered)
		turn_refuse(t, SAY(SLIPS_NOT_ANSWERED));
	else if (known->unasked)
		turn_refuse_unasked(t);
	else if (known->slip.number != t->in->number || !paper_is_ours(&known->paper, t->in->proof))
		refuse_strange(t);
	else
		return 1;
	return 0;
}

/* The paper proves itself: its own code was read back, so it exists (DESIGN section 8). */
void slip_take(struct turn *t)
{
	const struct slip *slip = &t->in->known.slip;
	const struct paper *paper = &t->in->known.paper;
	if (!slip_is_proven(t) || answer_slip(t) == ANSWERED)
		return;
	if (paper->seen)
		refuse_second(t);
	else if (!paper->made)
		turn_refuse(t, SAY(SLIP_NOT_PRINTED, .slip = slip->number, .copy = paper->copy));
	else if (slip->room != t->in->room)
		seen_elsewhere(t, slip);
	else
		turn_slip_seen(t, slip, paper);
}
