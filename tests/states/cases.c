/* Long days in three rooms, made by a repeatable random choice that leans to what fits: cases end, rooms are
 * busy side by side, time passes between scans, the power fails, clocks are set. What the walk over all states
 * cannot reach because it is late, far apart or in two rooms is here.
 *
 *     cases --digest FILE [--update]     one line a kind of day, compared with FILE
 *     cases --tell DAY                   what is scanned, decided and said on that day, to compare two builds
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/own-codes.h"
#include "count/rule.h"
#include "decide/next.h"
#include "digest.h"
#include "event-words.h"
#include "known.h"

#define DAYS 480
#define SCANS 260 /* a day */
#define KINDS 4   /* of days */

struct day {
	struct station st;
	struct moment now;
	int64_t seq;
	uint64_t random, *digest;
	int tell;
	struct {
		char identity[IDENTITY_MAX];
		int32_t case_no;
		uint8_t back;
	} used[400];
	int n_used;
	struct {
		int32_t number, case_no, room;
	} slips[200];
	int n_slips;
};

static uint32_t below(struct day *d, uint32_t n)
{
	d->random = d->random * 6364136223846793005u + 1442695040888963407u;
	return (uint32_t)(d->random >> 33) % n;
}

static void keep(struct day *d, struct event e)
{
	e.seq = ++d->seq;
	if (station_apply(&d->st, &e) < 0) {
		fprintf(stderr, "cases: an event does not apply: %s\n", event_name(e.kind));
		exit(1);
	}
	if (e.kind == EV_ITEM_USED && d->n_used < 400) {
		snprintf(d->used[d->n_used].identity, IDENTITY_MAX, "%s", e.thing.identity);
		d->used[d->n_used].case_no = e.case_no;
		d->used[d->n_used++].back = (uint8_t)e.n;
	}
	if (e.kind == EV_SLIP_QUEUED && d->n_slips < 200) {
		d->slips[d->n_slips].number = e.n;
		d->slips[d->n_slips].room = e.room;
		d->slips[d->n_slips++].case_no = e.case_no;
	}
}

static void tell(const struct day *d, const struct input *in, const struct outcome *out)
{
	struct event_context c = {.staff = &d->st.staff, .now = in->at, .room = in->room};
	struct buf words = {0};
	for (int i = 0; i < out->count; i++) {
		buf_add_text(&words, "  ");
		event_words(&out->events[i], &c, &words);
		buf_add_text(&words, "\n");
	}
	printf("> room %d, act %d, card %s of %d, digit %s, number %d, %s %s %s\n%d: %s | %s\n%s", in->room,
	       in->act, own_card_name(in->card), in->card_room, own_digit_name(in->digit), in->number,
	       in->thing.line, in->thing.identity, in->text, out->reply.verdict, out->reply.said,
	       out->reply.next.words, words.size ? words.data : "");
	buf_free(&words);
}

static void consider(struct day *d, const struct input *in, struct outcome *out)
{
	decide_known(&d->st, in, out);
	digest_outcome(d->digest, &d->st, in, out);
	if (d->tell)
		tell(d, in, out);
}

static void apply(struct day *d, const struct outcome *out)
{
	for (int i = 0; i < out->count; i++)
		keep(d, out->events[i]);
	for (int i = 0; i < SHEETS_MAX; i++)
		if (rule_check(&d->st.sheets[i])) {
			fprintf(stderr, "cases: a rule is broken by: %s\n", out->reply.said);
			exit(1);
		}
}

/* --- what there is to scan ----------------------------------------------------------------------- */

static void pack(struct day *d, struct input *in, const char *key, int number)
{
	const struct line *l = catalogue_by_key(&d->st.catalogue, key);
	struct thing *th = &in->thing;
	in->act = l->role == ROLE_TRAY ? ACT_TRAY : ACT_THING;
	in->line = l;
	snprintf(th->line, sizeof th->line, "%s", l->key);
	snprintf(th->name, sizeof th->name, "%s", l->name);
	th->role = (uint8_t)l->role;
	th->single_use = (uint8_t)l->single_use;
	th->rolls_on = (uint8_t)l->rolls_on;
	th->shows_on_xray = (uint8_t)l->shows_on_xray;
	if (l->identity)
		snprintf(th->identity, sizeof th->identity, "%s:%d", key, number);
	th->identity_kind = (uint8_t)l->identity;
	if (l->role != ROLE_FORCEPS && l->role != ROLE_TRAY) {
		snprintf(th->lot, sizeof th->lot, "%c", 'A' + number % 3);
		th->expiry = number % 17 == 3 ? 20261124 : number % 17 == 4 ? 20261125 : 20280331;
	}
	for (int i = 0; i < LINE_CONTENTS_MAX && l->contents[i].key[0]; i++)
		in->parts[i] = catalogue_by_key(&d->st.catalogue, l->contents[i].key);
	for (int i = 0; th->identity[0] && i < d->n_used; i++)
		if (strcmp(d->used[i].identity, th->identity) == 0) {
			in->known.used_in = d->used[i].case_no;
			in->known.used_back = d->used[i].back;
		}
}

static void any_pack(struct day *d, struct input *in, int32_t case_no)
{
	static const char *const keys[] = {"T", "T", "T", "N", "N", "R", "F", "F", "F", "O", "TRAY", "G"};
	const char *key = keys[below(d, sizeof keys / sizeof *keys)];
	int again = below(d, 12) == 0; /* what an earlier case may have used */
	pack(d, in, key, *key == 'F' ? 1 + (int)below(d, 4) : (again ? 0 : case_no) * 4 + (int)below(d, 4));
}

static void mark(struct day *d, struct input *in, const struct item *it)
{
	const struct line *l = catalogue_by_key(&d->st.catalogue, it->thing.line);
	if (!l)
		return;
	pack(d, in, l->key, 0);
	in->thing = it->thing;
	if (!it->thing.identity[0])
		in->thing.identity_kind = IDENTITY_NONE;
}

static void any_slip(struct day *d, struct input *in)
{
	uint32_t back = below(d, 3);
	in->act = ACT_SLIP;
	in->copy = 1 + (int32_t)below(d, 2);
	in->number = 1;
	if (d->n_slips <= (int)back)
		return;
	in->number = d->slips[d->n_slips - 1 - (int)back].number;
	in->known.slip_case = d->slips[d->n_slips - 1 - (int)back].case_no;
	in->known.slip_room = d->slips[d->n_slips - 1 - (int)back].room;
}

static void any_card(struct day *d, struct input *in)
{
	static int cards[128], n_cards;
	if (!n_cards)
		for (int m = own_card_next(0); m && n_cards < 128; m = own_card_next(m))
			cards[n_cards++] = m;
	in->act = ACT_CARD;
	in->card = cards[below(d, (uint32_t)n_cards)];
}

static void any_text(struct day *d, struct input *in)
{
	static const char *const typed[] = {"INC-1", "45 mm", "60 mm", "61 mm", "case 1: left and not right"};
	static const enum act acts[] = {ACT_TYPED,   ACT_TYPED,   ACT_UNKNOWN,    ACT_BROKEN,
	                                ACT_FOREIGN, ACT_PATIENT, ACT_CASE_LABEL, ACT_HALF};
	in->act = acts[below(d, sizeof acts / sizeof *acts)];
	in->number = (int32_t)below(d, 90);
	snprintf(in->text, sizeof in->text, "%s", in->act == ACT_TYPED ? typed[below(d, 5)] : "a code");
	if (in->act == ACT_PATIENT)
		in->text[0] = 0;
}

static void any_digit(struct day *d, struct input *in)
{
	static const int digits[] = {1, 2, 2, 7, 11, 24};
	in->act = ACT_DIGIT;
	in->digit = digits[below(d, sizeof digits / sizeof *digits)];
}

static void any(struct day *d, struct input *in, const struct sheet *s)
{
	switch (below(d, 8)) {
	case 0:
		any_digit(d, in);
		break;
	case 1:
		in->act = ACT_BADGE;
		in->number = 1 + (int32_t)below(d, 9);
		break;
	case 2:
		any_pack(d, in, s ? s->case_no : 0);
		break;
	case 3:
		any_slip(d, in);
		break;
	case 4:
		any_text(d, in);
		break;
	default:
		any_card(d, in);
	}
}

/* What people would do: what the station's next step names, by and large. */
static void fitting(struct day *d, struct input *in, const struct sheet *s)
{
	int cards[DEEDS_MAX], n = 0;
	struct next next;
	next_step(&d->st, s, in->room, in->at, &next);
	for (int i = 0; i < next.n_deeds; i++)
		if (next.deeds[i].kind == DEED_CARD)
			cards[n++] = next.deeds[i].n;
	switch (below(d, 6)) {
	case 0:
	case 1:
		in->act = ACT_BADGE;
		in->number = 1 + (int32_t)below(d, 3);
		break;
	case 2:
		if (s->n_digits)
			in->digit = s->digits[below(d, s->n_digits)].number;
		in->act = ACT_DIGIT;
		if (!in->digit)
			any_digit(d, in);
		break;
	case 3:
		if (s->n_items)
			mark(d, in, &s->items[below(d, s->n_items)]);
		if (!in->line)
			any_pack(d, in, s->case_no);
		break;
	case 4:
		in->act = ACT_CARD;
		in->card = s->n_items && !below(d, 3) ? CARD_FINAL_COUNT : CARD_INTACT;
		break;
	default:
		in->act = ACT_CARD;
		in->card = n ? cards[below(d, (uint32_t)n)] : CARD_YES;
	}
}

static int is_answered(const struct sheet *s)
{
	return s->final == FINAL_ASKING && !sheet_next_open(s) && !sheet_missing(s);
}

static int32_t badge_for(struct day *d, const struct sheet *s)
{
	if (s->single)
		return 1;
	if (!s->team.at[PLACE_FIELD])
		return 2;
	return below(d, 6) ? 3 : 4;
}

static int card_for(struct day *d, const struct sheet *s)
{
	if (s->discrepancy && s->search_done < d->st.policy.n_search)
		return below(d, 4) ? CARD_STEP_DONE : CARD_NOT_DONE;
	if (s->discrepancy)
		return below(d, 3) ? CARD_FOUND : CARD_END_UNRESOLVED;
	if (s->final == FINAL_NONE)
		return CARD_FINAL_COUNT;
	static const int said[] = {CARD_INTACT, CARD_INTACT, CARD_INTACT,           CARD_YES,
	                           CARD_YES,    CARD_NO,     CARD_CUT_AND_COMPLETE, CARD_PIECES_MISSING};
	return said[below(d, 8)];
}

static void answer(struct day *d, struct input *in, const struct sheet *s)
{
	static const int yes_or_no[] = {CARD_YES, CARD_YES, CARD_YES, CARD_NO};
	in->act = ACT_CARD;
	in->card = s->asked.what == Q_OFF ? CARD_OFF : yes_or_no[below(d, 4)];
	if (s->asked.what == Q_SURGEON_ENDS || s->asked.what == Q_HANDOVER_OUT ||
	    s->asked.what == Q_HANDOVER_IN || s->asked.what == Q_HANDOVER_AGREE ||
	    s->asked.what == Q_VISITOR || s->asked.what == Q_FIELD_TOO) {
		in->act = ACT_BADGE;
		in->number = 1 + (int32_t)below(d, 4);
	} else if (s->asked.what == Q_WHICH_OFF || s->asked.what == Q_MOVE_TO ||
	           s->asked.what == Q_HANDOVER_SEEN) {
		in->act = ACT_DIGIT;
		in->digit = s->n_digits ? s->digits[below(d, s->n_digits)].number : 2;
	} else if (s->asked.what == Q_INCIDENT) {
		in->act = ACT_TYPED;
		snprintf(in->text, sizeof in->text, "INC-7");
	} else if (s->asked.what == Q_WHO_LOOKED) {
		in->card = CARD_LOOKED_PATIENT + (int)below(d, 4);
	}
}

/* The ordinary case, straight on. */
static void ordinary(struct day *d, struct input *in, const struct sheet *s)
{
	int on = sheet_first_digit_on(s), look = s->final == FINAL_AGREED ? sheet_next_look(s) : 0;
	if (s->asked.what) {
		answer(d, in, s);
	} else if (!s->team.at[PLACE_FIELD] || (!s->single && !s->team.at[PLACE_CIRCULATING]) ||
	           (s->debts.count && below(d, 2)) || (s->n_items && !s->initial_agreed && below(d, 2))) {
		in->act = ACT_BADGE;
		in->number = s->debts.count && below(d, 2) ? 1 : badge_for(d, s);
	} else if (!s->n_items || (s->n_items < 3 && !s->n_digits && below(d, 2))) {
		any_pack(d, in, s->case_no);
	} else if (!s->n_digits || on || look) {
		in->act = ACT_DIGIT;
		in->digit = on ? on : look ? look : s->n_digits ? s->digits[0].number : 1 + (int)below(d, 24);
	} else if (s->final == FINAL_AGREED || is_answered(s)) {
		in->act = ACT_BADGE;
		in->number = s->final == FINAL_AGREED ? 1 : badge_for(d, s);
	} else {
		in->act = ACT_CARD;
		in->card = card_for(d, s);
		const struct item *it = sheet_item_const(s, sheet_next_open(s));
		if (it && it->thing.identity_kind == IDENTITY_MARK && s->final == FINAL_ASKING && below(d, 2))
			mark(d, in, it);
	}
}

/* --- a day --------------------------------------------------------------------------------------- */

static void choose(struct day *d, struct input *in, int32_t room)
{
	int index = station_sheet_of_room(&d->st, room);
	const struct sheet *s = index >= 0 ? &d->st.sheets[index] : NULL;
	memset(in, 0, sizeof *in);
	uint32_t how = below(d, 10);
	if (s && how < 6)
		ordinary(d, in, s);
	else if (s && how < 9)
		fitting(d, in, s);
	else if (!s && below(d, 2)) {
		in->act = ACT_CARD;
		in->card = CARD_NEW_CASE;
	} else
		any(d, in, s);
	in->at = d->now;
	in->room = room;
	in->card_room = below(d, 40) ? room : 1 + (int32_t)below(d, 3);
	in->flags = below(d, 30) ? 0 : below(d, 2) ? EVENT_KEYED : EVENT_LATE;
	snprintf(in->scanner, sizeof in->scanner, "hand-%d", (int)room);
}

static void pass(struct day *d)
{
	static const int seconds[] = {1, 1, 2, 3, 5, 8, 20, 20, 40, 200};
	static struct outcome out;
	int64_t ms = seconds[below(d, 10)] * (below(d, 40) ? 1000 : 9000);
	d->now.boot_ms += ms;
	d->now.wall_ms += ms;
	if (below(d, 120) == 0)
		d->now.wall_ms += ((int64_t)below(d, 3) - 1) * 1800000;
	if (below(d, 120) == 0) {
		d->now.boot++;
		d->now.boot_ms = 5000;
		d->now.wall_ms += 60000 * (int64_t)below(d, 60);
		keep(d, (struct event){.kind = EV_STARTED, .at = d->now, .n = d->now.boot});
	}
	for (int i = 0; i < 20; i++) {
		consider(d, &(struct input){.at = d->now}, &out);
		apply(d, &out);
		if (!out.count || out.events[0].kind == EV_ALIVE)
			break;
	}
}

static struct line line_of(const char *key, const char *name, enum role role, enum identity_kind identity)
{
	struct line l = {
	    .role = role, .identity = identity, .marked = 1, .visible = 1, .single_use = 1, .per_pack = 1};
	snprintf(l.key, sizeof l.key, "%s", key);
	snprintf(l.name, sizeof l.name, "%s", name);
	snprintf(l.codes[0], sizeof l.codes[0], "%s", key);
	return l;
}

static void set_lines(struct station *st)
{
	struct line lines[] = {
	    line_of("T", "tourniquet", ROLE_TOURNIQUET, IDENTITY_PACK),
	    line_of("N", "tourniquet without number", ROLE_TOURNIQUET, IDENTITY_NONE),
	    line_of("R", "tourniquet that rolls on", ROLE_TOURNIQUET, IDENTITY_PACK),
	    line_of("F", "forceps", ROLE_FORCEPS, IDENTITY_MARK),
	    line_of("O", "swabs", ROLE_OTHER, IDENTITY_NONE),
	    line_of("G", "glove finger", ROLE_REFUSED, IDENTITY_NONE),
	    line_of("TRAY", "tray", ROLE_TRAY, IDENTITY_NONE),
	};
	lines[0].size_min_mm = 45;
	lines[0].size_max_mm = 60;
	lines[1].per_pack = 2;
	lines[2].rolls_on = 1;
	lines[2].per_pack = 2;
	lines[3].single_use = 0;
	lines[3].shows_on_xray = 1;
	lines[4].per_pack = 5;
	snprintf(lines[5].instead, sizeof lines[5].instead, "a listed one");
	lines[6].single_use = 0;
	lines[6].contents[0] = (struct line_part){"F", 2};
	lines[6].contents[1] = (struct line_part){"O", 3};
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++)
		catalogue_set(&st->catalogue, &lines[i], NULL);
}

static void set_people(struct station *st)
{
	static const struct person people[] = {
	    {1, "SURG", STAFF_SURGEON, 1, 0},        {2, "SCRUB", STAFF_PRACTITIONER, 1, 0},
	    {3, "CIRC", STAFF_PRACTITIONER, 0, 0},   {4, "RELIEF", STAFF_PRACTITIONER, 1, 0},
	    {5, "SURG-5", STAFF_SURGEON, 1, 0},      {6, "CHARGE", STAFF_CHARGE, 1, 0},
	    {7, "FORMER", STAFF_PRACTITIONER, 1, 1}, {8, "FORMER-8", STAFF_SURGEON, 1, 1},
	};
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		staff_set(&st->staff, &people[i]);
}

static void begin(struct day *d, int number)
{
	struct station *st = &d->st;
	snprintf(st->site, sizeof st->site, "BC");
	policy_default(&st->policy);
	st->policy.both_badges = number % KINDS == 1;
	st->policy.points_one_by_one = number % KINDS == 2;
	st->policy.n_search = 3;
	st->policy.n_points = 2;
	st->rooms[st->n_rooms++] = (struct room){.number = 1, .name = "Room 1"};
	st->rooms[st->n_rooms++] = (struct room){.number = 2, .name = "Room 2"};
	st->rooms[st->n_rooms++] = (struct room){.number = 3, .name = "Bay 3", .single = 1};
	set_lines(st);
	set_people(st);
	d->random = (uint64_t)number * 1000003 + 2026;
	d->now = (struct moment){.boot = 1, .boot_ms = 7200000, .wall_ms = 1795600800000};
	keep(d, (struct event){.kind = EV_STARTED, .at = d->now, .n = 1});
	struct event held = {
	    .kind = EV_QUARANTINED, .at = d->now, .text = "called back", .thing = {.line = "N", .lot = "C"}};
	keep(d, held);
}

static void play(int number, uint64_t *digest, int telling)
{
	static struct day d;
	static struct outcome out;
	memset(&d, 0, sizeof d);
	d.digest = digest;
	d.tell = telling;
	begin(&d, number);
	int32_t room = number % KINDS == 3 ? 3 : 1;
	for (int scan = 0; scan < SCANS; scan++) {
		struct input in;
		if (below(&d, 25) == 0)
			room = 1 + (int32_t)below(&d, 3);
		pass(&d);
		/* What is refused says what it says, and then people try something else. */
		for (int i = 0; i < 4; i++) {
			choose(&d, &in, room);
			consider(&d, &in, &out);
			if (out.reply.verdict != VERDICT_REFUSED)
				break;
		}
		apply(&d, &out);
	}
	station_deinit(&d.st);
}

static int digest_all(const char *file, int update)
{
	static const char *const kinds[KINDS] = {"days as policy ships", "days with both badges",
	                                         "days with sign-out points one by one",
	                                         "days that begin with a lone operator"};
	struct buf lines = {0};
	for (int k = 0; k < KINDS; k++) {
		uint64_t digest = DIGEST_START;
		for (int i = k; i < DAYS; i += KINDS)
			play(i, &digest, 0);
		digest_line(&lines, digest, kinds[k]);
	}
	int bad = digest_compare(file, update, &lines);
	buf_free(&lines);
	return bad;
}

int main(int argc, char **argv)
{
	uint64_t digest = DIGEST_START;
	if (argc > 2 && strcmp(argv[1], "--digest") == 0)
		return digest_all(argv[2], argc > 3 && strcmp(argv[3], "--update") == 0);
	if (argc < 3 || strcmp(argv[1], "--tell") != 0) {
		fprintf(stderr, "cases: wrong usage: cases --digest FILE [--update], or cases --tell DAY\n");
		return 2;
	}
	play(atoi(argv[2]), &digest, 1);
	return 0;
}
