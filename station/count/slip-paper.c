#include "count/slip-paper.h"

static void queued(struct slip *slip, struct paper *paper, const struct event *e)
{
	slip->case_no = e->case_no;
	slip->room = e->room;
	slip->kind = e->what;
	slip->copy = (uint8_t)e->other;
	if (slip->state != SLIP_SEEN)
		slip->state = SLIP_QUEUED;
	if (e->other != paper->copy)
		return;
	paper->queued = 1;
	paper->proof = e->proof;
	paper->station = e->station;
}

static void became(struct slip *slip, struct paper *paper, const struct event *e)
{
	if (e->what == SLIP_SEEN && !paper->seen)
		paper->seen = (uint8_t)e->other;
	/* A job that has reached the printer may be on paper whatever is said of it afterwards. */
	if (e->other == paper->copy &&
	    (e->what == SLIP_WRITTEN || e->what == SLIP_SENT || e->what == SLIP_DONE))
		paper->made = 1;
	if (slip->state == SLIP_SEEN)
		return;
	slip->state = e->what;
	slip->job = (int32_t)e->ref;
}

void paper_follow(struct slip *slip, struct paper *paper, const struct event *e)
{
	if (e->n != slip->number)
		return;
	if (e->kind == EV_SLIP_QUEUED)
		queued(slip, paper, e);
	else if (e->kind == EV_SLIP_STATE)
		became(slip, paper, e);
}

int paper_is_ours(const struct paper *paper, int32_t proof)
{
	return paper->queued && paper->proof == proof;
}
