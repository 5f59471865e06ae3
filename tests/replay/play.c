#include "play.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "boards.h"
#include "code/own-codes.h"
#include "count/rule.h"
#include "decide/decide.h"
#include "decide/stored-enter.h"
#include "event-words.h"
#include "slips.h"
#include "tell/view.h"
#include "texts.h"

void play_die(const char *what, const char *why)
{
	fprintf(stderr, "replay: %s: %s\n", what, why);
	exit(1);
}

static const char *kind_of(const void *record, int64_t seq)
{
	const struct play *p = record;
	return seq > 0 && seq <= p->n_events ? event_name(p->events[seq - 1].kind) : "nothing";
}

static void tell_event(struct play *p, const struct event *e)
{
	struct event_context c = {
	    .staff = &p->st.staff, .now = p->now, .room = p->room, .kind_of = kind_of, .record = p};
	buf_add_text(&p->said, "  event: ");
	event_words(e, &c, &p->said);
	buf_add_text(&p->said, "\n");
}

/* In place of the digits that a station's key makes. */
int32_t play_proof(int32_t slip, int32_t copy)
{
	return slip * 100 + copy;
}

static void put_down(struct play *p, struct event *e)
{
	if (p->n_events == p->events_room) {
		p->events_room = p->events_room ? p->events_room * 2 : 256;
		p->events = realloc(p->events, sizeof *p->events * (size_t)p->events_room);
		if (!p->events)
			play_die("no memory for an event", event_name(e->kind));
	}
	e->seq = p->n_events + 1;
	p->events[p->n_events++] = *e;
}

static struct slips_source so_far(const struct play *p)
{
	return (struct slips_source){.station = &p->st,
	                             .events = p->events,
	                             .count = p->n_events,
	                             .now = p->now,
	                             .language = p->language};
}

/* As the outbox does, once all that was decided together is stored and applied. */
static void print(struct play *p, const struct event *events, int count)
{
	const struct slips_source from = so_far(p);
	for (int i = 0; i < count; i++)
		if (events[i].kind == EV_SLIP_QUEUED)
			json_array_append_new(p->printed, slips_queued(&from, &events[i]));
}

void play_print_open_cases(struct play *p)
{
	const struct slips_source from = so_far(p);
	for (int i = 0; i < SHEETS_MAX; i++)
		if (p->st.sheets[i].case_no)
			json_array_append_new(p->printed, slips_case(&from, p->st.sheets[i].case_no));
}

void play_keep(struct play *p, struct event e)
{
	const char *own = texts_unknown(&p->known, &e);
	if (own)
		play_die("an event holds a text that nobody typed and no setting says", own);
	put_down(p, &e);
	tell_event(p, &e);
	if (station_apply(&p->st, &e) < 0)
		play_die("an event does not apply", event_name(e.kind));
	day_take(&p->day, &e);
	if (e.kind == EV_ITEM_USED && p->n_used < 64) {
		snprintf(p->used[p->n_used].identity, IDENTITY_MAX, "%s", e.thing.identity);
		p->used[p->n_used].case_no = e.case_no;
		p->used[p->n_used++].back = e.n;
	}
	if (e.kind == EV_SLIP_QUEUED)
		buf_printf(&p->said, "prints: %s slip %d\n", slip_kind_name((enum slip_kind)e.what),
		           (int)e.n);
	if (e.kind == EV_FOUND_AFTER)
		buf_printf(&p->said, "addendum: case %d\n", (int)e.case_no);
}

/* The printer writes each slip at once, unless the script says 'printer off'. */
void play_put_on_paper(struct play *p)
{
	for (int i = 0; i < p->st.n_unseen && !p->printer_off; i++) {
		struct slip s = p->st.unseen[i];
		if (s.state == SLIP_QUEUED)
			play_keep(p, (struct event){.kind = EV_SLIP_STATE,
			                            .at = p->now,
			                            .room = s.room,
			                            .case_no = s.case_no,
			                            .n = s.number,
			                            .what = SLIP_WRITTEN,
			                            .other = s.copy});
	}
}

/* As the daemon does: of the record, from its first event to its last. */
static void look_up_slip(struct play *p, struct input *in)
{
	int i = station_room_index(&p->st, in->room);
	int yes = in->act == ACT_CARD && i >= 0 && p->st.idle_asked[i] == Q_SLIP_HERE;
	if (in->act != ACT_SLIP && !yes)
		return;
	struct slip slip = {.number = yes ? p->st.idle_n[i] : in->number};
	struct paper paper = {.copy = yes ? p->st.idle_copy[i] : in->copy};
	for (int e = 0; e < p->n_events; e++)
		paper_follow(&slip, &paper, &p->events[e]);
	in->known.slip = slip.case_no ? slip : (struct slip){0};
	in->known.paper = paper;
	in->known.slip_case = in->act == ACT_SLIP ? slip.case_no : 0;
	in->known.newer = in->act == ACT_SLIP && !paper.queued && in->proof &&
	                  in->proof == play_proof(in->number, in->copy);
}

const char *play_verdict_name(enum verdict verdict)
{
	static const char *const names[] = {"accepted", "refused", "question"};
	return names[verdict];
}

static void carry_out(struct play *p, struct input *in)
{
	for (int i = 0; in->thing.identity[0] && i < p->n_used; i++)
		if (strcmp(p->used[i].identity, in->thing.identity) == 0) {
			in->known.used_in = p->used[i].case_no;
			in->known.used_back = (uint8_t)p->used[i].back;
		}
	in->known.lists_old = (uint8_t)p->lists_old;
	if (in->thing.identity[0] && strcmp(in->thing.identity, p->elsewhere.identity) == 0) {
		in->known.elsewhere = p->elsewhere.case_no;
		in->known.elsewhere_station = p->elsewhere.station;
	}
	look_up_slip(p, in);
	reads_look(&p->reads, in, p->st.policy.repeat_ms);
	decide(&p->st, in, &p->out);
	reads_note(&p->reads, in, p->out.reply.verdict);
	if (in->act != ACT_TICK || p->out.reply.said[0])
		buf_printf(&p->said, "%s: %s\nnext: %s\n", play_verdict_name(p->out.reply.verdict),
		           p->out.reply.said, p->out.reply.next.words);
	for (int i = 0; i < p->out.count; i++) {
		struct event *e = &p->out.events[i];
		if (e->kind == EV_SLIP_QUEUED)
			e->proof = play_proof(e->n, e->other);
		play_keep(p, *e);
	}
	print(p, p->out.events, p->out.count);
	if (p->boards && p->out.reply.said[0])
		json_array_append_new(p->boards, board_shown(p));
	play_put_on_paper(p);
	uint32_t broken = rule_check_all(&p->st);
	for (int i = 0; i < p->st.n_rooms; i++)
		broken |= rule_check_stored(&p->st, p->st.rooms[i].number);
	if (p->out.enter || p->entering) /* between a YES and the last entry */
		broken &= ~(1u << RULE_DISTRUST);
	for (int r = 1; r <= RULE_MAX; r++)
		if (broken >> r & 1)
			buf_printf(&p->said, "RULE %d BROKEN: %s\n", r, rule_text((enum rule)r));
}

void play_take(struct play *p, struct input *in)
{
	in->at = p->now;
	in->room = p->room;
	if (!in->scanner[0])
		snprintf(in->scanner, sizeof in->scanner, "hand-1");
	if (p->batch) {
		p->batch[p->n_batch++] = *in;
		return;
	}
	carry_out(p, in);
	struct input held;
	p->entering = p->out.enter;
	while (p->entering-- > 0 && stored_input(&p->st, p->room, p->now, &held)) {
		held.more = p->entering > 0;
		carry_out(p, &held);
	}
	p->entering = 0;
}

static void tick(struct play *p)
{
	do {
		struct input in = {.act = ACT_TICK};
		play_take(p, &in);
	} while (p->out.count && p->out.events[0].kind != EV_ALIVE);
}

void play_show(struct play *p)
{
	static const char *const places[] = {"",         "here",     "on",     "off",  "accounted",
	                                     "returned", "isolated", "struck", "extra"};
	static const char *const states[] = {"bare", "maybe on", "on", "off"};
	int index = station_sheet_of_room(&p->st, p->room);
	if (index < 0) {
		buf_printf(&p->said, "no case\n");
		return;
	}
	const struct sheet *s = &p->st.sheets[index];
	for (int i = 0; i < s->n_items; i++)
		buf_printf(&p->said, "item %d: %s, %s, %d of %d%s\n", i + 1, s->items[i].thing.name,
		           places[s->items[i].place], s->items[i].shown, s->items[i].pieces,
		           s->items[i].dropped ? ", dropped" : "");
	for (int i = 0; i < s->n_digits; i++) {
		const struct digit *d = &s->digits[i];
		char text[80] = "";
		digit_minutes_text(d, p->now, text, sizeof text);
		buf_printf(&p->said, "%s: %s%s, now %s, total %d min, longest %d min%s\n",
		           own_digit_name(d->number), states[d->state], d->marked ? ", marked" : "", text,
		           (int)(digit_total_ms(d, p->now) / 60000),
		           (int)(digit_longest_ms(d, p->now) / 60000), d->seen_bare ? ", seen bare" : "");
	}
	for (int i = 0; i < s->debts.count; i++)
		buf_printf(&p->said, "owed: %s\n", debt_name((enum debt_kind)s->debts.list[i].kind));
}

void play_print_again(struct play *p, const char *number)
{
	const struct slip *s = station_slip(&p->st, atoi(number));
	if (!s)
		play_die("no such slip waits to be seen", number);
	struct event again = {.kind = EV_SLIP_QUEUED,
	                      .at = p->now,
	                      .case_no = s->case_no,
	                      .room = s->room,
	                      .n = s->number,
	                      .what = s->kind,
	                      .other = s->copy + 1,
	                      .proof = play_proof(s->number, s->copy + 1)};
	play_keep(p, again);
	print(p, &again, 1);
}

/* Where the scripts are played, civil time is what TZ says. */
void play_set_wall(struct play *p, int64_t wall_ms)
{
	p->now.wall_ms = wall_ms;
	p->now.utc_min = clock_utc_min(wall_ms);
}

void play_pass(struct play *p, int64_t ms)
{
	play_set_wall(p, p->now.wall_ms + ms);
	p->now.boot_ms += ms;
	tick(p);
}

void play_set_up(struct play *p, const char *folder)
{
	static const struct person people[] = {
	    {1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0},   {2, "CIRC-2", STAFF_PRACTITIONER, 1, 0},
	    {3, "SURG-3", STAFF_SURGEON, 1, 0},         {4, "SUPPORT-4", STAFF_PRACTITIONER, 0, 0},
	    {5, "SCRUB-5", STAFF_PRACTITIONER, 1, 0},   {6, "CHARGE-6", STAFF_CHARGE, 1, 0},
	    {7, "SUPPORT-7", STAFF_PRACTITIONER, 0, 0},
	};
	char path[512], text[8192];
	snprintf(path, sizeof path, "%s/catalogue.csv", folder);
	FILE *f = fopen(path, "re");
	if (!f)
		play_die(path, strerror(errno));
	size_t n = fread(text, 1, sizeof text, f), count;
	fclose(f);
	struct line *lines;
	struct error e;
	if (catalogue_read_csv(text, n, &lines, &count, &e) < 0)
		play_die(path, e.text);
	snprintf(p->st.site, sizeof p->st.site, "BC");
	snprintf(p->st.site_name, sizeof p->st.site_name, "Example Hand Unit");
	policy_default(&p->st.policy);
	p->st.rooms[p->st.n_rooms++] = (struct room){.number = 1, .name = "Theatre 1"};
	p->st.rooms[p->st.n_rooms++] = (struct room){.number = 2, .name = "Theatre 2"};
	p->st.rooms[p->st.n_rooms++] = (struct room){.number = 3, .name = "Minor injuries", .single = 1};
	p->room = 1;
	buf_add(&p->known, text, n);
	p->now = (struct moment){.boot = 1, .boot_ms = 1000000};
	play_set_wall(p, 1795600800000);
	play_keep(p, (struct event){.kind = EV_STARTED, .at = p->now, .n = 1});
	for (size_t i = 0; i < count; i++)
		play_keep(p, (struct event){.kind = EV_LINE_SET, .at = p->now, .line = lines[i]});
	free(lines);
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		buf_printf(&p->known, "%s\n", people[i].name);
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		play_keep(p, (struct event){.kind = EV_STAFF_SET, .at = p->now, .staff = people[i]});
	texts_of_station(&p->known, &p->st);
}
