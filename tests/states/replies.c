/* Writes the table of every scan in each situation of a case, for a clinical safety officer to read.
 *   replies            prints tests/states/REPLIES.md
 *   replies --check F  fails where F says otherwise
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/buf.h"
#include "known.h"
#include "walk.h"

struct situation {
	const char *name;
	const char *scans[24]; /* by the inputs' names, from an empty room */
	int single;
};

#define TEAM "NEW CASE", "SCRUB", "CIRC"
#define COUNTED TEAM, "pack T T:1", "pack F F:1", "CIRC"
#define ON COUNTED, "right index finger"
#define OFF ON, "right index finger", "OFF"
#define AGREED OFF, "FINAL COUNT", "INTACT", "pack F F:1", "CIRC"

static const struct situation situations[] = {
    {"No case is open", {NULL}, 0},
    {"A case is open, nobody has badged in", {"NEW CASE"}, 0},
    {"Both have badged in, nothing is counted in", {TEAM}, 0},
    {"A tourniquet and a forceps are counted in, not agreed", {TEAM, "pack T T:1", "pack F F:1"}, 0},
    {"A digit card before the count: is it on?", {TEAM, "pack T T:1", "right index finger"}, 0},
    {"The initial count is agreed", {COUNTED}, 0},
    {"The tourniquet is on", {ON}, 0},
    {"The tourniquet is on, half an hour has passed", {ON, "half an hour passes"}, 0},
    {"The tourniquet is on, 'is it off?' is asked", {ON, "right index finger"}, 0},
    {"On before anything was counted: no team, no pack", {"right index finger"}, 0},
    {"The tourniquet is off, not accounted for", {OFF}, 0},
    {"Final count: the tourniquet is asked for", {OFF, "FINAL COUNT"}, 0},
    {"Final count: the forceps are asked for", {OFF, "FINAL COUNT", "INTACT"}, 0},
    {"Final count: all there, to be agreed", {OFF, "FINAL COUNT", "INTACT", "pack F F:1"}, 0},
    {"Discrepancy: the forceps are missing", {OFF, "FINAL COUNT", "INTACT", "NO"}, 0},
    {"Discrepancy: the search is complete", {OFF, "FINAL COUNT", "INTACT", "NO", "STEP DONE", "NOT DONE"}, 0},
    {"Final count agreed, the bare digit not looked at", {AGREED}, 0},
    {"Ready for the sign-out", {AGREED, "right index finger"}, 0},
    {"A handover has begun", {ON, "HANDOVER"}, 0},
    {"The case is suspended", {COUNTED, "SUSPEND"}, 0},
    {"One operator: pack counted in", {"SURG", "pack T T:1"}, 1},
    {"One operator: off, the tourniquet is asked for",
     {"SURG", "pack T T:1", "right index finger", "OFF"},
     1},
    {"One operator: who looked?",
     {"SURG", "pack T T:1", "right index finger", "OFF", "INTACT", "right index finger"},
     1},
};

static void set_state(struct world *w, const struct situation *s)
{
	static struct outcome out;
	for (int i = 0; i < 24 && s->scans[i]; i++) {
		int k = 0;
		while (k < w->n_inputs && strcmp(w->inputs[k].name, s->scans[i]) != 0)
			k++;
		if (k == w->n_inputs) {
			fprintf(stderr, "replies: no input '%s'\n", s->scans[i]);
			exit(1);
		}
		decide_known(&w->station, &w->inputs[k].in, &out);
		for (int e = 0; e < out.count; e++) {
			out.events[e].seq = 100 + e;
			station_apply(&w->station, &out.events[e]);
		}
	}
}

static void put_cell(struct buf *b, const char *text)
{
	for (; *text; text++)
		buf_printf(b, *text == '|' ? "\\%c" : "%c", *text);
}

static int first_like(const struct reply *replies, int at)
{
	for (int i = 0; i < at; i++)
		if (replies[i].verdict == replies[at].verdict &&
		    strcmp(replies[i].said, replies[at].said) == 0 &&
		    strcmp(replies[i].next.words, replies[at].next.words) == 0)
			return i;
	return at;
}

static void put_situation(struct buf *b, const struct situation *s)
{
	static const char *const verdicts[] = {"accepted", "refused", "question"};
	static const struct room_plan plan = {"table",      .tourniquets = 1, .forceps = 1,
	                                      .others = 1,  .rolls_on = 1,    .no_identity = 1,
	                                      .refused = 1, .digits = 2,      .people = 4};
	static struct world w;
	static struct outcome out;
	struct room_plan p = plan;
	p.single = s->single;
	world_init(&w, &p);
	set_state(&w, s);
	buf_printf(b, "\n## %s\n\n| scan | | the station says | what comes next |\n|---|---|---|---|\n",
	           s->name);
	/* Scans that get the same answer stand in one row. */
	static struct reply replies[INPUTS_MAX];
	for (int i = 0; i < w.n_inputs; i++) {
		struct input in = w.inputs[i].in;
		in.at = w.station.last; /* half an hour may have passed */
		decide_known(&w.station, &in, &out);
		replies[i] = out.reply;
	}
	for (int i = 0; i < w.n_inputs; i++) {
		if (w.inputs[i].in.act == ACT_TICK || first_like(replies, i) < i)
			continue;
		buf_add_text(b, "| ");
		for (int k = i, n = 0; k < w.n_inputs; k++)
			if (w.inputs[k].in.act != ACT_TICK && first_like(replies, k) == i)
				buf_printf(b, "%s%s", n++ ? ", " : "", w.inputs[k].name);
		buf_printf(b, " | %s | ", verdicts[replies[i].verdict]);
		put_cell(b, replies[i].said);
		buf_add_text(b, " | ");
		put_cell(b, replies[i].next.words);
		buf_add_text(b, " |\n");
	}
	world_deinit(&w);
}

static void put_all(struct buf *b)
{
	buf_add_text(b, "# What the station answers\n\nEvery kind of scan in each situation of a case, made "
	                "from the code by "
	                "`tests/states/replies.c`; a test fails when this file\nis out of date. Scans that "
	                "get the same answer stand in one row. T: a tourniquet with a "
	                "number on its pack. F: forceps with a mark on themselves. N: a tourniquet without "
	                "a\nnumber. R: one "
	                "that rolls on. O: two swabs. G: a glove finger. Room 1 with two people, or with one "
	                "operator where\nthe "
	                "heading says so. Reminders come with time, not with a scan.\n");
	for (size_t i = 0; i < sizeof situations / sizeof *situations; i++)
		put_situation(b, &situations[i]);
}

int main(int argc, char **argv)
{
	struct buf b = {0};
	put_all(&b);
	if (argc < 3) {
		fwrite(b.data, 1, b.size, stdout);
		buf_free(&b);
		return 0;
	}
	FILE *f = fopen(argv[2], "re");
	char *then = calloc(1, b.size + 2);
	size_t n = f && then ? fread(then, 1, b.size + 1, f) : 0;
	int same = n == b.size && memcmp(then, b.data, n) == 0;
	if (!same)
		fprintf(stderr,
		        "%s is out of date: make it anew with the program 'replies' and read what changed\n",
		        argv[2]);
	if (f)
		fclose(f);
	free(then);
	buf_free(&b);
	return !same;
}
