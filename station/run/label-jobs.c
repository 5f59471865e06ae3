#include "run/label-jobs.h"

#include <errno.h>
#include <limits.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/name.h"
#include "run/board.h"
#include "run/media.h"
#include "run/request.h"
#include "tell/pack-labels.h"

#define FILE_NAME_MAX 48
#define UNFINISHED "slips/.unfinished" /* where the printer's program may write, and nowhere else */

/* --- a document -------------------------------------------------------------------------------------- */

/* A new reference; NULL with `e`: labels.ini has no such medium. */
static json_t *document_of(const struct daemon *d, const struct batch *b, const char *medium, struct error *e)
{
	const struct station *st = &d->core.station;
	const struct line *line = catalogue_by_key(&st->catalogue, b->line);
	struct moment now = core_now(&d->core);
	char when[26];
	_cleanup_(json_drop) json_t *lies = *medium ? media_find(d->core.folder, medium, e) : json_object();
	if (!lies)
		return NULL;
	clock_text_full(now.wall_ms, now.utc_min, when);
	json_t *o = pack_labels_document(
	    &(struct pack_labels){.time = when,
	                          .site = st->site,
	                          .site_name = st->site_name,
	                          .station = st->number,
	                          .name = line ? line->name : b->line,
	                          .lot = b->lot,
	                          .language = station_language(st, core_bench_room(&d->core)),
	                          .expiry = b->expiry,
	                          .first = (int32_t)b->first,
	                          .count = (int32_t)(b->last - b->first + 1)});
	json_object_update(o, lies);
	return o;
}

static int send(struct daemon *d, const char *key, json_t *value)
{
	_cleanup_(buf_free) struct buf line = {0};
	_cleanup_(json_drop) json_t *o = json_object();
	json_object_set_new(o, "v", json_integer(1));
	json_object_set_new(o, key, value);
	int n = json_write_canonical(o, &line);
	if (n == 0)
		n = buf_add_text(&line, "\n");
	return n < 0 ? n : child_send(d->print, line.data, line.size);
}

/* --- jobs -------------------------------------------------------------------------------------------- */

static struct label_job *job_of(struct daemon *d, int64_t first)
{
	for (int i = 0; i < PRINTINGS_MAX; i++)
		if (d->labels[i].first == first)
			return &d->labels[i];
	return NULL;
}

static void set_why(struct daemon *d, struct label_job *j, enum saying why)
{
	d->core.changes += j->why != why;
	j->why = why;
}

static void file_name(const struct label_job *j, char out[FILE_NAME_MAX])
{
	snprintf(out, FILE_NAME_MAX, "labels-%08d-%08d.pdf", (int)j->first, (int)j->last);
}

static json_t *destination(const struct daemon *d, const struct label_job *j)
{
	char path[PATH_MAX + FILE_NAME_MAX], name[FILE_NAME_MAX];
	json_t *to = json_object();
	if (d->core.settings.labels_printer[0]) {
		json_object_set_new(to, "printer", json_string(d->core.settings.labels_printer));
		return to;
	}
	file_name(j, name);
	snprintf(path, sizeof path, "%s/" UNFINISHED "/%s", d->core.folder, name);
	json_object_set_new(to, "pdf", json_string(path));
	return to;
}

static void print(struct daemon *d, struct label_job *j, const struct batch *b)
{
	struct error e = {0};
	json_t *document = document_of(d, b, d->core.settings.labels_medium, &e), *job = json_object();
	json_object_set_new(job, "id", json_integer((json_int_t)-j->first));
	json_object_set_new(job, "to", destination(d, j));
	if (!document) {
		json_decref(job);
		log_warn(LOG_PAPER, "labels %d to %d cannot be made: %s", (int)j->first, (int)j->last,
		         e.text);
		set_why(d, j, SAY_PRINTER_NOT_MADE);
		return;
	}
	json_object_set_new(job, "document", document);
	if (send(d, "job", job) != 0)
		set_why(d, j, SAY_PRINTER_NO_PROGRAM);
}

/* Where there is no place left, the oldest of which nothing is wrong gives its own: their labels are numbered, and open. */
static struct label_job *place(struct daemon *d)
{
	struct label_job *j = job_of(d, 0);
	for (int i = 0; i < PRINTINGS_MAX && !j; i++)
		if (!stock_printing_of(&d->core.stock, d->labels[i].first))
			j = &d->labels[i];
	return j ? j : &d->labels[0];
}

/* A job of which labels were spoilt and none is open: what is still to come of it would be torn up. */
static void withdraw_spoilt(struct daemon *d, const struct event *e)
{
	for (int i = 0; i < PRINTINGS_MAX; i++) {
		struct label_job *j = &d->labels[i];
		const struct printing *p = stock_printing_with(&d->core.stock, j->first);
		if (!j->first || j->unwanted || e->batch.first < j->first || e->batch.last > j->last ||
		    (p && printing_open(p)))
			continue;
		json_t *of = json_object();
		json_object_set_new(of, "id", json_integer((json_int_t)-j->first));
		j->unwanted = 1;
		set_why(d, j, SAY_NONE);
		send(d, "withdraw", of);
	}
}

/* After a start of the station nothing is known of what it printed before, but for what somebody read. */
static void forget_unknown(struct daemon *d, int64_t number)
{
	for (int i = 0; i < PRINTINGS_MAX; i++) {
		struct label_job *j = &d->labels[i];
		if (j->why == SAY_PRINTER_NOT_KNOWN && j->first <= number && number <= j->last) {
			*j = (struct label_job){0};
			d->core.changes++;
		}
	}
}

static int is_spoilt(const struct event *e)
{
	return e->kind == EV_LABEL_FATE && !label_is_on_pack((enum label_fate)e->what);
}

void label_jobs_stored(struct daemon *d, const struct event *events, int count)
{
	for (int i = 0; i < count; i++) {
		if (events[i].kind == EV_LABEL_FATE)
			forget_unknown(d, events[i].batch.first);
		if (is_spoilt(&events[i]))
			withdraw_spoilt(d, &events[i]);
	}
	for (int i = 0; i < count && !d->numbers_only; i++) {
		const struct event *e = &events[i];
		if (e->kind != EV_LABELLED || e->n != 1 || !core_is_bench(&d->core, e->room))
			continue;
		struct label_job *j = place(d);
		*j = (struct label_job){.first = e->batch.first, .last = e->batch.last, .room = e->room};
		print(d, j, &e->batch);
	}
}

/* Whether somebody has had one of them in the hand, or they lie where papers are fetched. */
static int came_out(const struct daemon *d, const struct printing *p)
{
	char path[PATH_MAX + FILE_NAME_MAX], name[FILE_NAME_MAX];
	const struct label_job j = {.first = p->batch.first, .last = p->batch.last};
	if (printing_open(p) <= j.last - j.first)
		return 1;
	file_name(&j, name);
	snprintf(path, sizeof path, "%s/labels/%s", d->core.folder, name);
	return access(path, F_OK) == 0;
}

void label_jobs_start(struct daemon *d)
{
	for (int i = 0; i < d->core.stock.n_printings; i++) {
		const struct printing *p = &d->core.stock.printings[i];
		if (!core_is_bench(&d->core, p->room) || came_out(d, p))
			continue;
		*place(d) = (struct label_job){.first = p->batch.first,
		                               .last = p->batch.last,
		                               .room = p->room,
		                               .why = SAY_PRINTER_NOT_KNOWN};
		log_warn(LOG_PRINTER,
		         "printing: labels %d to %d: the station was started anew, and does not know whether "
		         "they came out: look for them, or number others (PRINT LABELS, YES)",
		         (int)p->batch.first, (int)p->batch.last);
	}
}

/* Out of the reach of the printer's program, into labels/. */
static int finish_file(const struct daemon *d, const struct label_job *j)
{
	char from[PATH_MAX + FILE_NAME_MAX], to[PATH_MAX + FILE_NAME_MAX], name[FILE_NAME_MAX];
	file_name(j, name);
	snprintf(to, sizeof to, "%s/labels", d->core.folder);
	if (mkdir(to, 0750) < 0 && errno != EEXIST)
		return -errno;
	snprintf(from, sizeof from, "%s/" UNFINISHED "/%s", d->core.folder, name);
	snprintf(to, sizeof to, "%s/labels/%s", d->core.folder, name);
	return rename(from, to) < 0 ? -errno : 0;
}

void label_job_word(struct daemon *d, const json_t *job)
{
	const char *state = json_text(job, "state"), *text = json_text(job, "text"),
	           *why = strstr(text, ": ");
	int64_t id = json_number(job, "id", 0);
	struct label_job *j = id < 0 && id >= -INT32_MAX ? job_of(d, (int32_t)-id) : NULL;
	char words[EVENT_TEXT_MAX];
	if (!j)
		return;
	snprintf(words, sizeof words, "%.200s", why ? why + 2 : text);
	name_mend(words);
	if (strcmp(state, "waiting") == 0 || strcmp(state, "failed") == 0)
		log_warn(LOG_PRINTER, "printing: labels %d to %d: %s", (int)j->first, (int)j->last, words);
	else
		log_line("printing: labels %d to %d: %s", (int)j->first, (int)j->last, words);
	int n = strcmp(state, "written") == 0 ? finish_file(d, j) : 0;
	if (n < 0) {
		log_warn_errno(LOG_PAPER, n, "labels %d to %d cannot be put into labels/", (int)j->first,
		               (int)j->last);
		set_why(d, j, SAY_PRINTER_NOT_KEPT);
	} else if (strcmp(state, "written") == 0 || strcmp(state, "done") == 0 ||
	           strcmp(state, "withdrawn") == 0)
		*j = (struct label_job){0};
	else
		set_why(d, j,
		        strcmp(state, "sent") == 0 ? SAY_NONE : saying_of_printer(json_text(job, "why")));
	d->core.changes++;
	board_show(d);
}

/* --- a picture --------------------------------------------------------------------------------------- */

int label_preview(struct daemon *d, const struct batch *of, const char *medium, const char *id,
                  struct error *e)
{
	struct batch b = *of;
	b.first = b.last = d->core.station.last_item_no + 1;
	json_t *document = document_of(d, &b, *medium ? medium : d->core.settings.labels_medium, e);
	if (!document)
		return e->code;
	json_object_del(document, "sheet"); /* one label, not the sheet that it lies on */
	json_t *picture = json_object();
	json_object_set_new(picture, "id", json_string(id));
	json_object_set_new(picture, "document", document);
	return send(d, "picture", picture);
}

void label_picture(struct daemon *d, const json_t *picture)
{
	const json_t *all = json_object_get(picture, "pictures");
	json_t *told = json_is_array(all) ? answer_yes() : answer_no(json_text(picture, "fault"));
	if (json_is_array(all))
		json_object_set(told, "pictures", (json_t *)all);
	board_answer(d, json_text(picture, "id"), NULL, told);
}
