/* Plays a script of scans through the pure count and compares what it says.
 *
 * A script is text. Lines that begin with '>' or '+' are input; the lines after each are what the station
 * must say, as "accepted|refused|question: …" and "next: …". An empty line ends an expectation; '#' is a
 * comment.
 *   > card OFF                 a card of the present room by its printed words
 *   > card OFF of room 2       one of another room; a digit card likewise
 *   > digit right index finger
 *   > badge CIRC-2
 *   > pack GREEN-M 101 lot A expiry 20270331      identity and the rest are optional
 *   > tray TRAY-HAND
 *   > slip 1 | slip 1 copy 2 | slip 1 digits 123456 | slip 1 old | case 41 | typed TEXT | unknown TEXT
 *   > late card OFF | > keyed digit right thumb    entered later than it happened; typed, not scanned
 *   > camera card OFF          read by the room's camera, not its handheld
 *   > print again 1            a further copy of slip 1, as `bandtally print retry 1` asks for
 *   > stored 640 s: card OFF; 20 s badge CIRC-2       stored scans that come at once, and how old each is;
 *                              without an age: one second younger than the one before
 *   > show                     sheet: items, digits, debts
 *   >> card OFF                the same, a tenth of a second after the scan before; else 3 s after it
 *   + 5 min | + 3 s | + once 2880 min (one tick at the end) | + boot 30 min (a power cut as long)
 *   + wall 60 min (somebody sets the clock)
 *   room 2                     the scanner works for room 2 from here on
 *   catalogue BLADE-15,blade,blade      stores list a further line: key, name and role, one of each pack
 *   quarantine GREEN-M A why
 *   withdrawn SURG-3
 *   policy one_by_one | policy repeat_ms 500     a number of policy.ini by its key; yes where none follows
 *   printer off | printer on   slips are queued and not written
 * Behind the reply stands what was decided, one line an event: "  event: …" (event-words.h), and how often
 * where the same comes several times running.
 *   begin 2027-04-03T13:50Z    the first line: the station's wall clock then, else 2026-11-25T10:00Z
 * Beside NAME.t stands NAME.slips: what each slip says that the script prints, made at its event, and then each case
 * that is still open; in UTC, and what is otherwise where the clocks change in April and September. Both are there
 * whole, so a script is played twice.
 * `replay --update FILE…` writes what the station says now into both, for reading.
 * `replay [--update] --samples FOLDER SCRIPTS` holds the slips among labels/samples to what the scripts print (samples.h).
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "base/buf.h"
#include "base/clock.h"
#include "code/own-codes.h"
#include "count/rule.h"
#include "decide/decide.h"
#include "decide/reads.h"
#include "decide/stored-enter.h"
#include "event-words.h"
#include "samples.h"
#include "slips.h"
#include "tell/view.h"
#include "texts.h"

/* New Zealand's rules (from memory), written out so that no file of zones is needed: UTC+13 until
 * the first Sunday of April at 3, UTC+12 until the last of September at 2. */
#define ELSEWHERE "NZST-12NZDT,M9.5.0,M4.1.0/3"

struct play {
	struct station st;
	struct outcome out;
	struct moment now;
	int32_t room;
	struct event *events; /* all so far: number n is the n-th */
	int n_events, events_room;
	json_t *printed; /* slips.h */
	struct reads reads;
	int printer_off;
	struct buf said;
	struct buf known; /* every text that people or settings gave (texts.h) */
	struct {
		char identity[IDENTITY_MAX];
		int32_t case_no;
		int back;
	} used[64];
	int n_used;
	struct input *batch; /* where scans go that came at once, NULL: each is decided on */
	int n_batch;
	int entering; /* further held scans follow */
};

static void die(const char *what, const char *why)
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
static int32_t proof_of(int32_t slip, int32_t copy)
{
	return slip * 100 + copy;
}

static void put_down(struct play *p, struct event *e)
{
	if (p->n_events == p->events_room) {
		p->events_room = p->events_room ? p->events_room * 2 : 256;
		p->events = realloc(p->events, sizeof *p->events * (size_t)p->events_room);
		if (!p->events)
			die("no memory for an event", event_name(e->kind));
	}
	e->seq = p->n_events + 1;
	p->events[p->n_events++] = *e;
}

static struct slips_source so_far(const struct play *p)
{
	return (struct slips_source){
	    .station = &p->st, .events = p->events, .count = p->n_events, .now = p->now};
}

/* As the outbox does, once all that was decided together is stored and applied. */
static void print(struct play *p, const struct event *events, int count)
{
	const struct slips_source from = so_far(p);
	for (int i = 0; i < count; i++)
		if (events[i].kind == EV_SLIP_QUEUED)
			json_array_append_new(p->printed, slips_queued(&from, &events[i]));
}

static void print_open_cases(struct play *p)
{
	const struct slips_source from = so_far(p);
	for (int i = 0; i < SHEETS_MAX; i++)
		if (p->st.sheets[i].case_no)
			json_array_append_new(p->printed, slips_case(&from, p->st.sheets[i].case_no));
}

static void keep(struct play *p, struct event e)
{
	const char *own = texts_unknown(&p->known, &e);
	if (own)
		die("an event holds a text that nobody typed and no setting says", own);
	put_down(p, &e);
	tell_event(p, &e);
	if (station_apply(&p->st, &e) < 0)
		die("an event does not apply", event_name(e.kind));
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
static void put_on_paper(struct play *p)
{
	for (int i = 0; i < p->st.n_unseen && !p->printer_off; i++) {
		struct slip s = p->st.unseen[i];
		if (s.state == SLIP_QUEUED)
			keep(p, (struct event){.kind = EV_SLIP_STATE,
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
	in->known.newer =
	    in->act == ACT_SLIP && !paper.queued && in->proof && in->proof == proof_of(in->number, in->copy);
}

static void carry_out(struct play *p, struct input *in)
{
	static const char *const verdicts[] = {"accepted", "refused", "question"};
	for (int i = 0; in->thing.identity[0] && i < p->n_used; i++)
		if (strcmp(p->used[i].identity, in->thing.identity) == 0) {
			in->known.used_in = p->used[i].case_no;
			in->known.used_back = (uint8_t)p->used[i].back;
		}
	look_up_slip(p, in);
	reads_look(&p->reads, in, p->st.policy.repeat_ms);
	decide(&p->st, in, &p->out);
	reads_note(&p->reads, in, p->out.reply.verdict);
	if (in->act != ACT_TICK || p->out.reply.said[0])
		buf_printf(&p->said, "%s: %s\nnext: %s\n", verdicts[p->out.reply.verdict], p->out.reply.said,
		           p->out.reply.next.words);
	for (int i = 0; i < p->out.count; i++) {
		struct event *e = &p->out.events[i];
		if (e->kind == EV_SLIP_QUEUED)
			e->proof = proof_of(e->n, e->other);
		keep(p, *e);
	}
	print(p, p->out.events, p->out.count);
	put_on_paper(p);
	uint32_t broken = rule_check_all(&p->st);
	for (int i = 0; i < p->st.n_rooms; i++)
		broken |= rule_check_stored(&p->st, p->st.rooms[i].number);
	if (p->out.enter || p->entering) /* between a YES and the last entry */
		broken &= ~(1u << RULE_DISTRUST);
	for (int r = 1; r <= RULE_MAX; r++)
		if (broken >> r & 1)
			buf_printf(&p->said, "RULE %d BROKEN: %s\n", r, rule_text((enum rule)r));
}

static void take(struct play *p, struct input *in)
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
		take(p, &in);
	} while (p->out.count && p->out.events[0].kind != EV_ALIVE);
}

static int card_by_name(const char *name)
{
	for (int m = own_card_next(0); m; m = own_card_next(m))
		if (strcmp(own_card_name(m), name) == 0)
			return m;
	die("no such card", name);
	return 0;
}

static int32_t badge_number(const struct play *p, const char *name)
{
	for (size_t i = 0; i < p->st.staff.count; i++)
		if (strcmp(p->st.staff.list[i].name, name) == 0)
			return p->st.staff.list[i].number;
	return 999;
}

static void thing_words(struct play *p, struct input *in, char *words)
{
	char *save = NULL, *key = strtok_r(words, " ", &save), *w;
	const struct line *line = key ? catalogue_by_key(&p->st.catalogue, key) : NULL;
	if (!line)
		die("no such line", key ? key : "");
	in->line = line;
	struct thing *th = &in->thing;
	snprintf(th->line, sizeof th->line, "%s", line->key);
	snprintf(th->name, sizeof th->name, "%s", line->name);
	th->role = (uint8_t)line->role;
	th->single_use = (uint8_t)line->single_use;
	th->rolls_on = (uint8_t)line->rolls_on;
	th->identity_kind = (uint8_t)line->identity;
	while ((w = strtok_r(NULL, " ", &save))) {
		if (strcmp(w, "lot") == 0)
			snprintf(th->lot, sizeof th->lot, "%s", strtok_r(NULL, " ", &save));
		else if (strcmp(w, "expiry") == 0)
			th->expiry = atoi(strtok_r(NULL, " ", &save));
		else
			snprintf(th->identity, sizeof th->identity, "%s:%s", line->key, w);
	}
	if (!th->identity[0])
		th->identity_kind = IDENTITY_NONE;
	for (int i = 0; i < LINE_CONTENTS_MAX && line->contents[i].key[0]; i++)
		in->parts[i] = catalogue_by_key(&p->st.catalogue, line->contents[i].key);
}

static void show(struct play *p)
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

static void print_again(struct play *p, const char *number)
{
	const struct slip *s = station_slip(&p->st, atoi(number));
	if (!s)
		die("no such slip waits to be seen", number);
	struct event again = {.kind = EV_SLIP_QUEUED,
	                      .at = p->now,
	                      .case_no = s->case_no,
	                      .room = s->room,
	                      .n = s->number,
	                      .what = s->kind,
	                      .other = s->copy + 1,
	                      .proof = proof_of(s->number, s->copy + 1)};
	keep(p, again);
	print(p, &again, 1);
}

static uint32_t flag_of(char **line)
{
	static const struct {
		const char *word;
		uint32_t flag;
	} flags[] = {{"late ", EVENT_LATE}, {"keyed ", EVENT_KEYED}};
	for (size_t i = 0; i < sizeof flags / sizeof *flags; i++)
		if (strncmp(*line, flags[i].word, strlen(flags[i].word)) == 0) {
			*line += strlen(flags[i].word);
			return flags[i].flag;
		}
	return 0;
}

/* " of room 2", behind the name of a card. */
static void of_room(char *name, struct input *in)
{
	char *of = strstr(name, " of room ");
	if (of) {
		in->card_room = atoi(of + 9);
		*of = 0;
	}
}

static void scan(struct play *p, char *line)
{
	struct input in = {.flags = flag_of(&line)};
	if (strncmp(line, "camera ", 7) == 0) {
		line += 7;
		snprintf(in.scanner, sizeof in.scanner, "camera-1");
	}
	char *rest = strchr(line, ' ');
	if (rest)
		*rest++ = 0;
	else
		rest = line + strlen(line);
	in.card_room = p->room;
	if (strcmp(line, "card") == 0) {
		of_room(rest, &in);
		in.act = ACT_CARD;
		in.card = card_by_name(rest);
	} else if (strcmp(line, "digit") == 0) {
		of_room(rest, &in);
		in.act = ACT_DIGIT;
		while (in.digit <= OWN_DIGITS && strcmp(own_digit_name(in.digit), rest) != 0)
			in.digit++;
		if (in.digit > OWN_DIGITS)
			die("no such digit", rest);
	} else if (strcmp(line, "badge") == 0) {
		in.act = ACT_BADGE;
		in.number = badge_number(p, rest);
	} else if (strcmp(line, "pack") == 0 || strcmp(line, "tray") == 0) {
		in.act = line[0] == 'p' ? ACT_THING : ACT_TRAY;
		thing_words(p, &in, rest);
	} else if (strcmp(line, "slip") == 0) {
		in.act = ACT_SLIP;
		in.copy = strstr(rest, " copy ") ? atoi(strstr(rest, " copy ") + 6) : 1;
		in.number = atoi(rest);
		in.proof = strstr(rest, " old")       ? 0
		           : strstr(rest, " digits ") ? atoi(strstr(rest, " digits ") + 8)
		                                      : proof_of(in.number, in.copy);
	} else if (strcmp(line, "case") == 0) {
		in.act = ACT_CASE_LABEL;
		in.number = atoi(rest);
	} else if (strcmp(line, "paper") == 0) {
		in.act = ACT_PAPER_SHEET;
		in.number = atoi(rest);
	} else if (strcmp(line, "typed") == 0 || strcmp(line, "unknown") == 0) {
		in.act = line[0] == 't' ? ACT_TYPED : ACT_UNKNOWN;
		snprintf(in.text, sizeof in.text, "%s", rest);
	} else if (strcmp(line, "print") == 0 && strncmp(rest, "again ", 6) == 0) {
		print_again(p, rest + 6);
		return;
	} else if (strcmp(line, "show") == 0) {
		show(p);
		return;
	} else {
		die("no such input", line);
	}
	take(p, &in);
}

/* Where the scripts are played, civil time is what TZ says. */
static void set_wall(struct play *p, int64_t wall_ms)
{
	p->now.wall_ms = wall_ms;
	p->now.utc_min = clock_utc_min(wall_ms);
}

static void pass(struct play *p, int64_t ms)
{
	set_wall(p, p->now.wall_ms + ms);
	p->now.boot_ms += ms;
	tick(p);
}

static void stored(struct play *p, char *line);

static void scan_after(struct play *p, char *line)
{
	int at_once = line[1] == '>';
	set_wall(p, p->now.wall_ms + (at_once ? 100 : 3000));
	p->now.boot_ms += at_once ? 100 : 3000;
	scan(p, line + (at_once ? 3 : 2));
}

/* "640 s: pack GREEN-M 101; digit left thumb; 20 s card OFF" */
static void stored(struct play *p, char *line)
{
	struct input list[40] = {0}, in = {.act = ACT_STORED, .stored = list};
	char *save = NULL, *colon = strchr(line, ':');
	int age = atoi(line);
	if (!colon || age < 1)
		die("no such batch", line);
	p->batch = list;
	for (char *w = strtok_r(colon + 1, ";", &save); w && p->n_batch < 40;
	     w = strtok_r(NULL, ";", &save)) {
		int own = 0, used = 0, at = p->n_batch;
		w += strspn(w, " ");
		if (sscanf(w, "%d s %n", &own, &used) == 1 && used)
			age = own;
		scan(p, w + used);
		list[at].at.boot_ms -= age * 1000;
		list[at].at.wall_ms -= age * 1000;
		age--;
	}
	in.n_stored = p->n_batch;
	p->batch = NULL;
	p->n_batch = 0;
	take(p, &in);
}

static void wait_for(struct play *p, const char *text)
{
	int n = 0;
	char unit[8] = "";
	int boot = strncmp(text, "boot ", 5) == 0, wall = strncmp(text, "wall ", 5) == 0;
	int once = strncmp(text, "once ", 5) == 0;
	if (sscanf(text + (boot || wall || once ? 5 : 0), "%d %7s", &n, unit) != 2)
		die("no such wait", text);
	int64_t ms = (int64_t)n * (strcmp(unit, "min") == 0 ? 60000 : 1000);
	if (wall || boot)
		set_wall(p, p->now.wall_ms + ms);
	if (wall)
		return;
	if (boot) {
		p->now.boot++;
		p->now.boot_ms = 5000;
		keep(p, (struct event){.kind = EV_STARTED, .at = p->now, .n = p->now.boot});
		return;
	}
	/* The daemon ticks each second; here once a minute is enough. */
	for (; ms > 60000 && !once; ms -= 60000)
		pass(p, 60000);
	pass(p, ms);
}

static void set_up(struct play *p, const char *folder)
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
		die(path, strerror(errno));
	size_t n = fread(text, 1, sizeof text, f), count;
	fclose(f);
	struct line *lines;
	struct error e;
	if (catalogue_read_csv(text, n, &lines, &count, &e) < 0)
		die(path, e.text);
	snprintf(p->st.site, sizeof p->st.site, "BC");
	snprintf(p->st.site_name, sizeof p->st.site_name, "Example Hand Unit");
	policy_default(&p->st.policy);
	p->st.rooms[p->st.n_rooms++] = (struct room){.number = 1, .name = "Theatre 1"};
	p->st.rooms[p->st.n_rooms++] = (struct room){.number = 2, .name = "Theatre 2"};
	p->st.rooms[p->st.n_rooms++] = (struct room){.number = 3, .name = "Minor injuries", .single = 1};
	p->room = 1;
	buf_add(&p->known, text, n);
	p->now = (struct moment){.boot = 1, .boot_ms = 1000000};
	set_wall(p, 1795600800000);
	keep(p, (struct event){.kind = EV_STARTED, .at = p->now, .n = 1});
	for (size_t i = 0; i < count; i++)
		keep(p, (struct event){.kind = EV_LINE_SET, .at = p->now, .line = lines[i]});
	free(lines);
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		buf_printf(&p->known, "%s\n", people[i].name);
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		keep(p, (struct event){.kind = EV_STAFF_SET, .at = p->now, .staff = people[i]});
	texts_of_station(&p->known, &p->st);
}

static void begin(struct play *p, const char *text)
{
	struct tm t = {0};
	const char *end = strptime(text, "%Y-%m-%dT%H:%MZ", &t);
	if (!end || *end)
		die("no such time to begin", text);
	set_wall(p, (int64_t)timegm(&t) * 1000);
}

static void add_line(struct play *p, const char *row)
{
	char text[400];
	struct line *lines;
	struct error e;
	size_t count;
	int n = snprintf(text, sizeof text, "key,name,role\n%s\n", row);
	if (catalogue_read_csv(text, (size_t)n, &lines, &count, &e) < 0)
		die(row, e.text);
	keep(p, (struct event){.kind = EV_LINE_SET, .at = p->now, .line = lines[0]});
	free(lines);
}

static void set_policy(struct policy *p, const char *line)
{
	char name[40] = "";
	int value = 1;
	if (sscanf(line, "%39s %d", name, &value) < 1)
		die("no setting in a script", line);
#define X(number, member_name, text, section, key, member, form, low, high, unset)                           \
	if (strcmp(name, key) == 0) {                                                                        \
		p->member = value;                                                                           \
		return;                                                                                      \
	}
	POLICY_NUMBERS(X)
#undef X
	die("no such setting in a script", line);
}

static void command(struct play *p, char *line)
{
	char key[32] = "", lot[32] = "", why[100] = "";
	if (strncmp(line, "room ", 5) == 0) {
		p->room = atoi(line + 5);
	} else if (strncmp(line, "begin ", 6) == 0) {
		begin(p, line + 6);
	} else if (strncmp(line, "catalogue ", 10) == 0) {
		add_line(p, line + 10);
	} else if (sscanf(line, "quarantine %24s %30s %99[^\n]", key, lot, why) == 3) {
		struct event e = {.kind = EV_QUARANTINED, .at = p->now};
		snprintf(e.thing.line, sizeof e.thing.line, "%.24s", key);
		snprintf(e.thing.lot, sizeof e.thing.lot, "%.30s", strcmp(lot, "*") == 0 ? "" : lot);
		snprintf(e.text, sizeof e.text, "%s", why);
		keep(p, e);
	} else if (strncmp(line, "withdrawn ", 10) == 0) {
		keep(p, (struct event){
		            .kind = EV_STAFF_WITHDRAWN, .at = p->now, .person = badge_number(p, line + 10)});
	} else if (strcmp(line, "printer off") == 0 || strcmp(line, "printer on") == 0) {
		p->printer_off = strcmp(line, "printer off") == 0;
		put_on_paper(p);
	} else if (strncmp(line, "policy ", 7) == 0) {
		set_policy(&p->st.policy, line + 7);
	} else {
		die("no such line in a script", line);
	}
}

/* Adds the lines; one that comes several times running comes once, with how often. */
static void add_folded(struct buf *whole, const char *lines)
{
	while (*lines) {
		size_t size = strcspn(lines, "\n") + 1;
		int times = 1;
		while (strncmp(lines + size * (size_t)times, lines, size) == 0)
			times++;
		buf_add(whole, lines, size - 1);
		if (times > 1)
			buf_printf(whole, ", %d times", times);
		buf_add_text(whole, "\n");
		lines += size * (size_t)times;
	}
}

struct played {
	struct buf script; /* with what the station says now */
	json_t *printed;
};

static struct played play(const char *path, const char *zone)
{
	static struct play p;
	memset(&p, 0, sizeof p);
	setenv("TZ", zone, 1);
	tzset();
	p.printed = json_array();
	char folder[400], line[1024];
	snprintf(folder, sizeof folder, "%s", path);
	char *slash = strrchr(folder, '/');
	if (slash)
		*slash = 0;
	set_up(&p, slash ? folder : ".");
	FILE *f = fopen(path, "re");
	if (!f)
		die(path, strerror(errno));
	struct buf whole = {0};
	int expecting = 0;
	while (fgets(line, sizeof line, f)) {
		line[strcspn(line, "\n")] = 0;
		int input = line[0] == '>' || line[0] == '+';
		if (expecting && line[0] && !input)
			continue; /* an old expectation */
		expecting = 0;
		buf_printf(&whole, "%s\n", line);
		buf_printf(&p.known, "%s\n", line);
		buf_clear(&p.said);
		if (strncmp(line, "> stored ", 9) == 0)
			stored(&p, line + 9);
		else if (line[0] == '>')
			scan_after(&p, line);
		else if (line[0] == '+')
			wait_for(&p, line + 2);
		else if (line[0] && line[0] != '#')
			command(&p, line);
		if (input && p.said.size)
			add_folded(&whole, p.said.data);
		expecting = input;
	}
	fclose(f);
	print_open_cases(&p);
	buf_free(&p.said);
	buf_free(&p.known);
	free(p.events);
	station_deinit(&p.st);
	return (struct played){whole, p.printed};
}

static struct buf read_file(const char *path)
{
	struct buf b = {0};
	char part[4096];
	size_t n;
	FILE *f = fopen(path, "re");
	while (f && (n = fread(part, 1, sizeof part, f)) > 0)
		buf_add(&b, part, n);
	if (f)
		fclose(f);
	return b;
}

static void tell_difference(const char *path, const char *now, const char *then)
{
	int line = 1;
	while (*now && *now == *then) {
		line += *now == '\n';
		now++, then++;
	}
	fprintf(stderr, "%s line %d: the station says otherwise:\n  now:      …%.160s\n  expected: …%.160s\n",
	        path, line, now, then);
}

/* Compares what is said now with the file, or writes it there. 1 where it is otherwise. */
static int compare(const char *path, const struct buf *now, int update)
{
	struct buf then = read_file(path);
	int same = now->size == then.size && (!now->size || memcmp(now->data, then.data, now->size) == 0);
	if (!same && update) {
		FILE *f = fopen(path, "we");
		if (!f || fwrite(now->data, 1, now->size, f) != now->size || fclose(f) != 0)
			die(path, strerror(errno));
	} else if (!same) {
		tell_difference(path, now->data ? now->data : "", then.data ? then.data : "");
	}
	buf_free(&then);
	return !same && !update;
}

static int replay(const char *path, int update)
{
	char beside[512];
	struct played here = play(path, "UTC"), there = play(path, ELSEWHERE);
	_cleanup_(buf_free) struct buf slips = {0};
	const char *dot = strrchr(path, '.');
	snprintf(beside, sizeof beside, "%.*s.slips", dot ? (int)(dot - path) : (int)strlen(path), path);
	slips_write(here.printed, there.printed, "in New Zealand", &slips);
	int bad = compare(path, &here.script, update) + compare(beside, &slips, update);
	json_decref(here.printed);
	json_decref(there.printed);
	buf_free(&here.script);
	buf_free(&there.script);
	return bad;
}

static int hold_samples(const char *folder, const char *scripts, int update)
{
	int bad = 0;
	for (const struct sample *s = samples; s->name; s++) {
		char path[512];
		snprintf(path, sizeof path, "%s/%s.t", scripts, s->script);
		struct played played = play(path, "UTC");
		json_t *document = sample_document(s, played.printed);
		char *text = json_dumps(document, JSON_INDENT(1));
		_cleanup_(buf_free) struct buf now = {0};
		buf_printf(&now, "%s\n", text);
		snprintf(path, sizeof path, "%s/%s.json", folder, s->name);
		bad += compare(path, &now, update);
		free(text);
		json_decref(document);
		json_decref(played.printed);
		buf_free(&played.script);
	}
	return bad;
}

int main(int argc, char **argv)
{
	int update = argc > 1 && strcmp(argv[1], "--update") == 0, bad = 0;
	if (argc == 4 + update && strcmp(argv[1 + update], "--samples") == 0)
		return hold_samples(argv[2 + update], argv[3 + update], update) != 0;
	for (int i = 1 + update; i < argc; i++)
		bad += replay(argv[i], update);
	return bad != 0;
}
