#include "script.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "code/own-codes.h"

static int card_by_name(const char *name)
{
	for (int m = own_card_next(0); m; m = own_card_next(m))
		if (strcmp(own_card_name(m), name) == 0)
			return m;
	play_die("no such card", name);
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
		play_die("no such line", key ? key : "");
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
			play_die("no such digit", rest);
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
		                                      : play_proof(in.number, in.copy);
	} else if (strcmp(line, "case") == 0) {
		in.act = ACT_CASE_LABEL;
		in.number = atoi(rest);
	} else if (strcmp(line, "paper") == 0) {
		in.act = ACT_PAPER_SHEET;
		in.number = atoi(rest);
	} else if (strcmp(line, "typed") == 0 || strcmp(line, "unknown") == 0) {
		in.act = line[0] == 't' ? ACT_TYPED : ACT_UNKNOWN;
		snprintf(in.text, sizeof in.text, "%s", rest);
	} else if (strcmp(line, "practice") == 0) {
		in.act = ACT_FOREIGN;
		in.what = SAY_SCAN_OF_PRACTICE;
	} else if (strcmp(line, "print") == 0 && strncmp(rest, "again ", 6) == 0) {
		play_print_again(p, rest + 6);
		return;
	} else if (strcmp(line, "show") == 0) {
		play_show(p);
		return;
	} else {
		play_die("no such input", line);
	}
	play_take(p, &in);
}

static void scan_after(struct play *p, char *line)
{
	int at_once = line[1] == '>';
	play_set_wall(p, p->now.wall_ms + (at_once ? 100 : 3000));
	p->now.boot_ms += at_once ? 100 : 3000;
	scan(p, line + (at_once ? 3 : 2));
}

/* "640 s: pack GREEN-M 101; digit left thumb; 20 s card OFF" */
static void stored(struct play *p, char *line)
{
	struct input list[40] = {0}, in = {.act = ACT_STORED, .stored = list};
	char *save = NULL, *scans = line + strcspn(line, ":");
	int age = atoi(line);
	if (!*scans || age < 1)
		play_die("no such batch", line);
	p->batch = list;
	for (char *w = strtok_r(scans + 1, ";", &save); w && p->n_batch < 40;
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
	play_take(p, &in);
}

static void wait_for(struct play *p, const char *text)
{
	int n = 0;
	char unit[8] = "";
	int boot = strncmp(text, "boot ", 5) == 0, wall = strncmp(text, "wall ", 5) == 0;
	int once = strncmp(text, "once ", 5) == 0;
	if (sscanf(text + (boot || wall || once ? 5 : 0), "%d %7s", &n, unit) != 2)
		play_die("no such wait", text);
	int64_t ms = (int64_t)n * (strcmp(unit, "min") == 0 ? 60000 : 1000);
	if (wall || boot)
		play_set_wall(p, p->now.wall_ms + ms);
	if (wall)
		return;
	if (boot) {
		p->now.boot++;
		p->now.boot_ms = 5000;
		play_keep(p, (struct event){.kind = EV_STARTED, .at = p->now, .n = p->now.boot});
		return;
	}
	/* The daemon ticks each second; here once a minute is enough. */
	for (; ms > 60000 && !once; ms -= 60000)
		play_pass(p, 60000);
	play_pass(p, ms);
}

static void begin(struct play *p, const char *text)
{
	struct tm t = {0};
	const char *end = strptime(text, "%Y-%m-%dT%H:%MZ", &t);
	if (!end || *end)
		play_die("no such time to begin", text);
	play_set_wall(p, (int64_t)timegm(&t) * 1000);
}

static void add_line(struct play *p, const char *row)
{
	char text[400];
	struct line *lines;
	struct error e;
	size_t count;
	int n = snprintf(text, sizeof text, "key,name,role\n%s\n", row);
	if (catalogue_read_csv(text, (size_t)n, &lines, &count, &e) < 0)
		play_die(row, e.text);
	play_keep(p, (struct event){.kind = EV_LINE_SET, .at = p->now, .line = lines[0]});
	free(lines);
}

static void set_policy(struct policy *p, const char *line)
{
	char name[40] = "";
	int value = 1;
	if (sscanf(line, "%39s %d", name, &value) < 1)
		play_die("no setting in a script", line);
#define X(number, member_name, text, section, key, member, form, low, high, unset)                           \
	if (strcmp(name, key) == 0) {                                                                        \
		p->member = value;                                                                           \
		return;                                                                                      \
	}
	POLICY_NUMBERS(X)
#undef X
	play_die("no such setting in a script", line);
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
		play_keep(p, e);
		struct event recalled[SHEETS_MAX];
		int n = station_recalls(&p->st, &e, recalled);
		for (int i = 0; i < n; i++)
			play_keep(p, recalled[i]);
	} else if (strncmp(line, "withdrawn ", 10) == 0) {
		play_keep(p, (struct event){.kind = EV_STAFF_WITHDRAWN,
		                            .at = p->now,
		                            .person = badge_number(p, line + 10)});
	} else if (strcmp(line, "printer off") == 0 || strcmp(line, "printer on") == 0) {
		p->printer_off = strcmp(line, "printer off") == 0;
		play_put_on_paper(p);
	} else if (strncmp(line, "used elsewhere ", 15) == 0) {
		if (sscanf(line + 15, "%40s case %d of station %d", p->elsewhere.identity,
		           &p->elsewhere.case_no, &p->elsewhere.station) != 3)
			play_die("which item is it", line);
	} else if (strcmp(line, "lists old") == 0 || strcmp(line, "lists fresh") == 0) {
		p->lists_old = strcmp(line, "lists old") == 0;
	} else if (strncmp(line, "policy ", 7) == 0) {
		set_policy(&p->st.policy, line + 7);
	} else {
		play_die("no such line in a script", line);
	}
}

void script_line(struct play *p, char *line)
{
	buf_printf(&p->known, "%s\n", line);
	buf_clear(&p->said);
	if (strncmp(line, "> stored ", 9) == 0)
		stored(p, line + 9);
	else if (line[0] == '>')
		scan_after(p, line);
	else if (line[0] == '+')
		wait_for(p, line + 2);
	else if (line[0] && line[0] != '#')
		command(p, line);
}
