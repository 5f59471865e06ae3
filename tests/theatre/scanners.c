/* Scanners between people and the station. Reads of one scanner keep their order. */
#include <string.h>

#include "play.h"

static int is_camera_of(int room)
{
	return room == 0 ? 1 : 3;
}

static int64_t put_in_queue(struct play *p, const struct entry *e, int64_t at_ms)
{
	if (p->n_queue == QUEUE_MAX)
		return at_ms;
	int64_t *last = &p->scanner_free_ms[(int)e->scanner];
	at_ms = at_ms > *last ? at_ms : *last + 40;
	*last = at_ms;
	int i = p->n_queue++;
	for (; i > 0 && p->queue[i - 1].at_ms > at_ms; i--)
		p->queue[i] = p->queue[i - 1];
	p->queue[i].at_ms = at_ms;
	p->queue[i].entry = *e;
	return at_ms;
}

/* The card beside the one that was meant. */
static int neighbour(struct play *p, struct scanned *c)
{
	if (c->act == ACT_DIGIT) {
		c->n += c->n > 1 && (c->n == OWN_DIGITS || one_of(&p->chance, 2)) ? -1 : 1;
		return 1;
	}
	if (c->act != ACT_CARD || c->n > CARD_WITHOUT_FULL_SIGHT)
		return 0;
	int next = own_card_next(c->n);
	next = next ? next : CARD_NEW_CASE;
	if (next == CARD_UNDO || next == CARD_SUSPEND)
		return 0;
	c->n = next;
	return 1;
}

static void read_twice(struct play *p, struct entry *e, int64_t at_ms)
{
	int room = room_index(scanner_home(e->scanner));
	e->read = READ_TWICE;
	e->asked = 0;
	e->reports = -1;
	e->cause = 0;
	if (one_of(&p->chance, 2) && stage_works_for(p->stage, e->scanner) == room_numbers[room])
		e->scanner = (int8_t)is_camera_of(room);
	e->id = (int16_t)p->next_id++;
	put_in_queue(p, e, at_ms + between(&p->chance, 50, 1900));
}

static struct entry read_of(struct play *p, const struct actor *who, const struct intent *in)
{
	const struct stage *g = p->stage;
	struct entry e = {.kind = ENTRY_READ,
	                  .operation = (int8_t)who->op,
	                  .scanner = (int8_t)who->scanner,
	                  .code = in->code,
	                  .read = (uint8_t)in->kind,
	                  .id = (int16_t)p->next_id++,
	                  .group = (int16_t)in->group,
	                  .reports = (int16_t)in->reports,
	                  .made_ms = in->at_ms,
	                  .thing = -1};
	const struct sheet *s = stage_sheet(g, g->world.operations[who->op].room);
	e.question = s->asked.what;
	if (in->asked && in->kind == READ_FRESH) {
		e.asked = 1;
		e.answers = *in->asked;
		if (in->asked->item)
			memcpy(e.answers_line, s->items[in->asked->item - 1].thing.line,
			       sizeof e.answers_line);
	}
	return e;
}

void scan_by(struct play *p, struct actor *who, const struct intent *in)
{
	struct entry e = read_of(p, who, in);
	int64_t at = in->at_ms + between(&p->chance, 60, 350);
	if (e.code.act == ACT_TYPED) { /* at the board, by nobody's scanner */
		put_in_queue(p, &e, at);
		return;
	}
	if (p->troubles & (TROUBLE_MISS | TROUBLE_MISSED) && in_hundred(&p->chance, 4))
		return;
	if (in->at_ms < p->scanner_out_ms[who->scanner]) {
		if (e.code.act == ACT_PATIENT || (e.code.act == ACT_CARD && e.code.n == CARD_THIS_ROOM))
			return;
		e.late = 1;
		e.made_ms = at;
		at = p->scanner_out_ms[who->scanner];
	} else if (p->troubles & TROUBLE_LATE && in_hundred(&p->chance, 3)) {
		at += between(&p->chance, 1000, 25000);
	}
	if (p->troubles & TROUBLE_NEIGHBOUR && in->kind == READ_FRESH && in_hundred(&p->chance, 2) &&
	    neighbour(p, &e.code)) {
		e.read = READ_NEIGHBOUR;
		e.asked = 0;
		e.cause = CAUSE_NEIGHBOUR;
		who->undo = one_of(&p->chance, 2);
		if (who->undo)
			e.cause = 0;
	}
	at = put_in_queue(p, &e, at);
	if (p->troubles & TROUBLE_TWICE && at - in->at_ms < 1000 && in_hundred(&p->chance, 12))
		read_twice(p, &e, at);
}

void scanner_laid_down(struct play *p, int scanner)
{
	int kept = 0;
	for (int i = 0; i < p->n_queue; i++)
		if (p->queue[i].entry.scanner != scanner)
			p->queue[kept++] = p->queue[i];
	p->n_queue = kept;
	p->scanner_free_ms[scanner] = p->scanner_out_ms[scanner] = 0;
}

static struct entry take_from_queue(struct play *p, int i)
{
	struct entry e = p->queue[i].entry;
	p->n_queue--;
	memmove(p->queue + i, p->queue + i + 1, sizeof *p->queue * (size_t)(p->n_queue - i));
	return e;
}

static void deliver(struct play *p, struct entry *e)
{
	int room = room_index(stage_works_for(p->stage, e->scanner));
	stage_do(p->stage, e);
	if (e->group >= 0)
		p->heard[e->group] = (uint8_t)(room + 1);
}

/* The scanner is back in reach: what it has stored comes at once. */
static void deliver_stored(struct play *p, int scanner, int64_t at)
{
	struct entry sent = {.kind = ENTRY_SENT,
	                     .at_ms = at,
	                     .scanner = (int8_t)scanner,
	                     .thing = -1,
	                     .group = -1,
	                     .reports = -1,
	                     .id = (int16_t)p->next_id++};
	for (int i = 0; i < p->n_queue;)
		if (p->queue[i].entry.late && p->queue[i].entry.scanner == scanner) {
			struct entry e = take_from_queue(p, i);
			e.at_ms = at;
			sent.operation = e.operation;
			sent.group = e.group;
			deliver(p, &e);
		} else {
			i++;
		}
	deliver(p, &sent);
}

void deliver_first(struct play *p)
{
	int64_t at = p->queue[0].at_ms > p->stage->true_ms ? p->queue[0].at_ms : p->stage->true_ms;
	if (p->queue[0].entry.late) {
		deliver_stored(p, p->queue[0].entry.scanner, at);
		return;
	}
	struct entry e = take_from_queue(p, 0);
	e.at_ms = at;
	deliver(p, &e);
}
