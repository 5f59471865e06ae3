#include "run/outbox.h"

#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "base/log.h"
#include "base/name.h"
#include "run/board.h"
#include "run/label-jobs.h"
#include "run/practice-slips.h"
#include "run/teller.h"

#define PRINT_LINE_MAX (1u << 20)
#define COPIES 100    /* job id = slip * COPIES + copy */
#define HANDED_MAX 48 /* of the 64 that the printer's program takes; others wait here, and are not given up */
#define HAND_AT_ONCE 4
#define LOOK_MAX 64 /* slips that are looked up in a second */

static struct outbox_entry *entry_of(struct daemon *d, int32_t slip)
{
	for (int i = 0; i < UNSEEN_MAX; i++)
		if (d->outbox[i].slip == slip)
			return &d->outbox[i];
	return NULL;
}

/* 1 where that is new. */
static int set_why(struct daemon *d, int32_t slip, enum saying why)
{
	struct outbox_entry *x = entry_of(d, slip);
	if (!x || x->why == why)
		return 0;
	x->why = why;
	d->core.changes++;
	return 1;
}

#define FILE_NAME_MAX 48

static void file_name(int32_t slip, int copy, char out[FILE_NAME_MAX])
{
	snprintf(out, FILE_NAME_MAX, "slip-%07d-copy-%d.pdf", (int)slip, copy);
}

/* Where the printer's program may write, and nowhere else: what is whole is moved out of its reach. */
#define UNFINISHED "slips/.unfinished"

static json_t *destination(struct daemon *d, int32_t slip, int copy)
{
	char path[PATH_MAX + FILE_NAME_MAX], name[FILE_NAME_MAX];
	json_t *to = json_object();
	if (d->core.settings.printer[0]) {
		json_object_set_new(to, "printer", json_string(d->core.settings.printer));
		return to;
	}
	file_name(slip, copy, name);
	snprintf(path, sizeof path, "%s/" UNFINISHED "/%s", d->core.folder, name);
	json_object_set_new(to, "pdf", json_string(path));
	return to;
}

static int send_job(struct daemon *d, const struct slip *s, int again)
{
	struct error e = {0};
	_cleanup_(buf_free) struct buf line = {0};
	_cleanup_(json_drop) json_t *o = json_object();
	json_t *job = json_object();
	json_t *document = teller_slip(&d->core, s->case_no, s->number, (enum slip_kind)s->kind, s->copy, &e);
	json_object_set_new(o, "v", json_integer(1));
	json_object_set_new(o, "job", job);
	if (!document) { /* it stays in the outbox, and the board goes on saying that it was not seen */
		if (set_why(d, s->number, SAY_PRINTER_NOT_MADE))
			log_warn(LOG_PAPER, "slip %d of case %d cannot be made: %s", (int)s->number,
			         (int)s->case_no, e.text);
		return -EINVAL;
	}
	json_object_set_new(job, "id", json_integer((json_int_t)s->number * COPIES + s->copy));
	json_object_set_new(job, "to", destination(d, s->number, s->copy));
	json_object_set_new(job, "document", document);
	if (again) {
		json_t *before = json_object();
		json_object_set_new(before, "cups", json_integer(s->job));
		json_object_set_new(job, "again", before);
	}
	int n = json_write_canonical(o, &line);
	if (n == 0)
		n = buf_add_text(&line, "\n");
	return n < 0 ? n : child_send(d->print, line.data, line.size);
}

/* A slip that nobody has seen: the station's, or what the record has of an older one. RECORD_HAS_NONE where it was seen as
 * well. */
static int unseen(struct daemon *d, int32_t number, struct slip *out)
{
	struct paper paper;
	const struct slip *s = station_slip(&d->core.station, number);
	int n = s ? RECORD_FOUND : record_slip_of(d->core.record, number, 1, out, &paper);
	if (s)
		*out = *s;
	if (n < 0)
		log_warn_errno(LOG_RECORD, n, "the record could not be asked about slip %d", (int)number);
	return n == RECORD_FOUND && out->state == SLIP_SEEN ? RECORD_HAS_NONE : n;
}

/* The one that was queued first among those that wait; `after` the one that was looked at last. */
static struct outbox_entry *next_waiting(struct daemon *d, int32_t after)
{
	struct outbox_entry *next = NULL;
	for (int i = 0; i < UNSEEN_MAX; i++) {
		struct outbox_entry *x = &d->outbox[i];
		if (x->slip > after && !x->sent && !x->over && !x->unkept.is &&
		    (!next || x->slip < next->slip))
			next = x;
	}
	return next;
}

/* Hands slips to the printer's program, as many as it takes and a few at a time: each is told from the record and signed.
 * Those that may have reached the printer already it looks for first (`again`). What cannot be made or sent now is tried
 * again the next second. */
static void hand_over(struct daemon *d)
{
	struct slip s;
	struct outbox_entry *x;
	int handed = 0;
	int32_t after = 0;
	if (!child_running(d->print)) /* which it says when it is */
		return;
	for (int i = 0; i < UNSEEN_MAX; i++)
		handed += d->outbox[i].slip && d->outbox[i].sent;
	for (int i = 0; i < HAND_AT_ONCE && handed < HANDED_MAX && (x = next_waiting(d, after)); i++) {
		after = x->slip;
		int n = unseen(d, x->slip, &s);
		x->sent = n == 1 && send_job(d, &s, s.state != SLIP_QUEUED) == 0;
		handed += x->sent;
		if (n == 0)
			*x = (struct outbox_entry){0};
	}
}

/* A free place, or one whose slip the printer's program gave up: that says so among the slips not seen. */
static struct outbox_entry *place(struct daemon *d)
{
	struct outbox_entry *x = entry_of(d, 0);
	for (int i = 0; i < UNSEEN_MAX && !x; i++)
		if (d->outbox[i].over)
			x = &d->outbox[i];
	return x;
}

/* Where there is no place it is found later, in the record. */
static void put_in(struct daemon *d, const struct slip *s)
{
	struct outbox_entry *x = entry_of(d, s->number);
	if (!x)
		x = place(d);
	if (x)
		*x = (struct outbox_entry){.slip = s->number, .copy = s->copy, .room = s->room};
	else if (s->number > d->outbox_next)
		d->outbox_next = s->number;
}

static int is_on_its_way(const struct slip *s)
{
	return s->state == SLIP_QUEUED || s->state == SLIP_SENT || s->state == SLIP_WAITING;
}

static int state_from_name(const char *name)
{
	static const struct {
		const char *name;
		enum slip_state state;
	} names[] = {{"written", SLIP_WRITTEN},
	             {"sent", SLIP_SENT},
	             {"done", SLIP_DONE},
	             {"waiting", SLIP_WAITING},
	             {"failed", SLIP_FAILED}};
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (strcmp(names[i].name, name) == 0)
			return (int)names[i].state;
	return -EINVAL;
}

/* Of a slip that it was given: no other paper is replaced at its word. 0 or a negative errno. */
static int finish_file(struct daemon *d, const struct slip *s)
{
	char from[PATH_MAX + FILE_NAME_MAX], to[PATH_MAX + FILE_NAME_MAX], name[FILE_NAME_MAX];
	const struct outbox_entry *x = entry_of(d, s->number);
	if (!x || !x->sent || x->copy != s->copy)
		return -EALREADY;
	file_name(s->number, s->copy, name);
	snprintf(from, sizeof from, "%s/" UNFINISHED "/%s", d->core.folder, name);
	snprintf(to, sizeof to, "%s/slips/%s", d->core.folder, name);
	return rename(from, to) < 0 ? -errno : 0;
}

/* What the printer's program says of a slip, for the board. */
static void take_state(struct daemon *d, int32_t slip, enum slip_state state, enum saying why)
{
	struct outbox_entry *x = entry_of(d, slip);
	if (!x)
		return;
	x->unkept.is = 0;
	x->over = state == SLIP_FAILED;
	x->sent &= !x->over;
	if (state == SLIP_WRITTEN || state == SLIP_DONE)
		*x = (struct outbox_entry){0};
	else
		set_why(d, slip, state == SLIP_WAITING || state == SLIP_FAILED ? why : SAY_NONE);
}

/* What the printer's program said, which hears printers, is for the board and the journal. */
static void log_word(const struct slip *s, enum slip_state state, const char *said)
{
	char words[EVENT_TEXT_MAX];
	const char *why = strstr(said, ": ");
	snprintf(words, sizeof words, "%.200s", why ? why + 2 : said);
	name_mend(words);
	if (state == SLIP_WAITING || state == SLIP_FAILED)
		log_warn(LOG_PRINTER, "printing: slip %d, copy %d: %s", (int)s->number, (int)s->copy, words);
	else
		log_line("printing: slip %d, copy %d: %s", (int)s->number, (int)s->copy, words);
}

static int keep_word(struct daemon *d, const struct slip *s, enum slip_state state, int64_t cups)
{
	struct event e = {.kind = EV_SLIP_STATE,
	                  .case_no = s->case_no,
	                  .room = s->room,
	                  .n = s->number,
	                  .what = (uint8_t)state,
	                  .other = s->copy,
	                  .ref = cups};
	if (state == SLIP_WRITTEN) /* where it lies: not the folder, for folders are moved */
		file_name(s->number, s->copy, e.text);
	return core_store(&d->core, &e, 1, NULL);
}

/* Of a paper that came the record would else say for ever that it is on its way. */
static void hold_word(struct daemon *d, int32_t slip, enum slip_state state, int64_t cups, enum saying why)
{
	struct outbox_entry *x = entry_of(d, slip);
	if (!x)
		return;
	x->unkept.is = 1;
	x->unkept.state = state;
	x->unkept.cups = cups;
	set_why(d, slip, why);
}

static void take_word(struct daemon *d, const struct slip *s, enum slip_state state, int64_t cups,
                      const char *text, enum saying why)
{
	int n = 0;
	if (s->state != state || s->job != cups) {
		if (text) /* else it is said again */
			log_word(s, state, text);
		n = keep_word(d, s, state, cups);
	}
	if (n < 0)
		hold_word(d, s->number, state, cups, why);
	else
		take_state(d, s->number, state, why);
	if (state == SLIP_WRITTEN || state == SLIP_DONE || state == SLIP_FAILED)
		hand_over(d); /* there is room for another */
	board_show(d);
}

/* As soon as the record keeps anything again. */
static void say_again(struct daemon *d)
{
	struct slip s;
	for (int i = 0; i < UNSEEN_MAX && !d->core.doubt.storage[0]; i++) {
		struct outbox_entry *x = &d->outbox[i];
		int n = x->unkept.is ? unseen(d, x->slip, &s) : -ENOENT;
		if (n < 0)
			continue;
		x->unkept.is = 0;
		if (n == 1)
			take_word(d, &s, x->unkept.state, x->unkept.cups, NULL, x->why);
		else
			*x = (struct outbox_entry){0};
	}
}

/* Downwards, a few at a time, and no further while there is no place. */
void outbox_look(struct daemon *d)
{
	struct slip s;
	for (int i = 0; i < LOOK_MAX && d->outbox_next > 0 && place(d); i++) {
		int n = entry_of(d, d->outbox_next) ? 0 : unseen(d, d->outbox_next, &s);
		if (n < 0)
			break; /* the same one is asked about again */
		if (n && is_on_its_way(&s))
			put_in(d, &s);
		d->outbox_next--;
	}
	say_again(d);
	hand_over(d);
}

static void take_written(struct daemon *d, const struct slip *s, const char *text)
{
	char why[EVENT_TEXT_MAX];
	int n = finish_file(d, s);
	if (n == 0) {
		take_word(d, s, SLIP_WRITTEN, 0, text, SAY_NONE);
	} else if (n == -EALREADY) {
		log_warn(LOG_PROGRAM,
		         "printing: slip %d is said to be written, and was not to be: nothing is changed",
		         (int)s->number);
	} else {
		snprintf(why, sizeof why,
		         "slip: it is said to be written, and cannot be put into its folder: %s: check "
		         "slips/ in the data folder",
		         strerror(-n));
		take_word(d, s, SLIP_FAILED, 0, why, SAY_PRINTER_NOT_KEPT);
	}
}

static void on_line(void *context, struct child *c, const char *line, size_t size)
{
	struct daemon *d = context;
	_cleanup_(json_drop) json_t *o = line ? json_read(line, size, NULL) : NULL;
	const json_t *job = json_object_get(o, "job");
	int64_t id = json_number(job, "id", 0);
	int state = state_from_name(json_text(job, "state"));
	int64_t cups = json_number(job, "cups", 0);
	struct slip of;
	const struct slip *s =
	    id > 0 && id / COPIES <= INT32_MAX && unseen(d, (int32_t)(id / COPIES), &of) == 1 ? &of : NULL;
	(void)c;
	if (json_object_get(o, "picture")) {
		label_picture(d, json_object_get(o, "picture"));
		return;
	}
	if (id < 0)
		label_job_word(d, job);
	if (id >= PRACTICE_JOBS && state >= 0)
		practice_slips_word(d, id, (enum slip_state)state, cups);
	if (json_object_get(o, "fault"))
		log_warn(LOG_PRINTER, "printing: %s", json_text(json_object_get(o, "fault"), "text"));
	if (state < 0 || !s || s->copy != id % COPIES)
		return;
	if (cups < 0 || cups > INT32_MAX) {
		log_warn(
		    LOG_PROGRAM,
		    "printing: slip %d is said to be job %lld, which no job can be: its number is not kept",
		    (int)s->number, (long long)cups);
		cups = 0;
	}
	if (state == SLIP_WRITTEN)
		take_written(d, s, json_text(job, "text"));
	else
		take_word(d, s, (enum slip_state)state, cups, json_text(job, "text"),
		          saying_of_printer(json_text(job, "why")));
}

/* After a start: whatever was not finished goes in again, and the printer is asked before it is sent. */
static void on_started(void *context, struct child *c)
{
	struct daemon *d = context;
	(void)c;
	for (int i = 0; i < UNSEEN_MAX; i++)
		d->outbox[i].sent = 0;
	hand_over(d);
}

int outbox_start(struct daemon *d)
{
	static const struct child_calls calls = {on_line, on_started, NULL};
	char slips[PATH_MAX];
	char *const argv[] = {"bandtally-print", "--serve", slips, NULL};
	snprintf(slips, sizeof slips, "%s/slips", d->core.folder);
	mkdir(slips, 0750);
	snprintf(slips, sizeof slips, "%s/" UNFINISHED, d->core.folder);
	mkdir(slips, 0750);
	for (int i = 0; i < d->core.station.n_unseen; i++)
		if (is_on_its_way(&d->core.station.unseen[i]))
			put_in(d, &d->core.station.unseen[i]);
	if (d->core.station.older_unseen)
		d->outbox_next = d->core.station.unseen[0].number;
	return child_start(&d->print, &d->children, argv, PRINT_LINE_MAX, 1, -1, &calls, d);
}

void outbox_stop(struct daemon *d)
{
	child_free(d->print);
	d->print = NULL;
}

void outbox_stored(struct daemon *d, const struct event *events, int count)
{
	int any = 0;
	for (int i = 0; i < count; i++)
		if (events[i].kind == EV_SLIP_QUEUED) {
			put_in(d, &(struct slip){.number = events[i].n,
			                         .copy = (uint8_t)events[i].other,
			                         .room = events[i].room});
			any = 1;
		} else if (events[i].kind == EV_SLIP_STATE && events[i].what == SLIP_SEEN) {
			struct outbox_entry *x = entry_of(d, events[i].n);
			if (x)
				*x = (struct outbox_entry){0};
		}
	if (any)
		hand_over(d);
}

int outbox_retry(struct daemon *d, int32_t slip, struct error *e)
{
	struct slip old;
	struct paper paper;
	const struct slip *s = station_slip(&d->core.station, slip);
	int n = s ? RECORD_FOUND
	          : record_slip_of(d->core.record, slip, 1, &old,
	                           &paper); /* the oldest fall out of the station's list */
	if (n < 0)
		return error_set(e, n, "the record could not be asked about slip %d: %s: try again",
		                 (int)slip, strerror(-n));
	if (n == RECORD_FOUND && !s && old.state != SLIP_SEEN)
		s = &old;
	if (!s)
		return error_set(e, -ENOENT, "slip %d is not waiting to be seen: see 'bandtally print list'",
		                 (int)slip);
	struct event again = {.kind = EV_SLIP_QUEUED,
	                      .case_no = s->case_no,
	                      .room = s->room,
	                      .n = s->number,
	                      .what = s->kind,
	                      .other = s->copy + 1};
	if (again.other >= COPIES)
		return error_set(e, -ENOSPC, "slip %d has 99 copies already: find out what became of them",
		                 (int)slip);
	n = teller_language(&d->core, s->case_no, slip, again.text, sizeof again.text, e);
	return n < 0 ? n : core_store(&d->core, &again, 1, e);
}
