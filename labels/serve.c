#include "labels/serve.h"

#include <errno.h>
#include <poll.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/name.h"
#include "labels/pictures.h"
#include "labels/send.h"

#define LINE_MAX_BYTES (1024 * 1024)
#define JOBS_MAX 64
#define FIRST_WAIT_MS 300
#define LONGEST_WAIT_MS 15000
#define LAST_MS 10000 /* after the end of input */

struct slot {
	struct job job;
	bool used;
	int64_t next_ms, wait_ms;
};

struct server {
	int out;
	struct buf in;
	const struct languages *languages;
	bool skipping; /* the rest of a line that was too long */
	struct slot slots[JOBS_MAX];
};

static int64_t now_ms(void)
{
	return clock_now().boot_ms;
}

static int write_line(int fd, json_t *value)
{
	struct buf line _cleanup_(buf_free) = {0};
	int r = value ? json_write_canonical(value, &line) : -ENOMEM;
	if (r == 0)
		r = buf_add(&line, "\n", 1);
	json_decref(value);
	for (size_t done = 0; r == 0 && done < line.size;) {
		ssize_t n = write(fd, line.data + done, line.size - done);
		if (n < 0 && errno != EINTR)
			r = -errno;
		else if (n > 0)
			done += (size_t)n;
	}
	return r;
}

static int tell(struct server *s, const struct job *j)
{
	json_t *job = json_pack("{s:I,s:s,s:i,s:s}", "id", (json_int_t)j->id, "state",
	                        job_state_name(j->state), "pages", j->pages, "text", j->text);
	if (job && j->why)
		json_object_set_new(job, "why", json_string(saying_key(j->why) + strlen("printer-")));
	if (job && j->cups)
		json_object_set_new(job, "cups", json_integer(j->cups));
	return write_line(s->out, json_pack("{s:i,s:o}", "v", 1, "job", job));
}

static int tell_fault(struct server *s, const char *text)
{
	return write_line(s->out,
	                  json_pack("{s:i,s:{s:s,s:s}}", "v", 1, "fault", "code", "line", "text", text));
}

static struct slot *free_slot(struct server *s)
{
	for (int i = 0; i < JOBS_MAX; i++)
		if (!s->slots[i].used)
			return &s->slots[i];
	return NULL;
}

/* Tells every change. A job that is over leaves its slot. */
static int step(struct server *s, struct slot *slot)
{
	int r = job_step(&slot->job) ? tell(s, &slot->job) : 0;
	slot->wait_ms = slot->job.state == JOB_SENT && slot->wait_ms < 2000
	                    ? slot->wait_ms + FIRST_WAIT_MS
	                    : slot->wait_ms * 3 / 2 + FIRST_WAIT_MS;
	if (slot->wait_ms > LONGEST_WAIT_MS)
		slot->wait_ms = LONGEST_WAIT_MS;
	if (slot->job.state == JOB_SENT && slot->wait_ms > 2000)
		slot->wait_ms = 2000;
	slot->next_ms = now_ms() + slot->wait_ms;
	if (job_is_over(&slot->job)) {
		job_deinit(&slot->job);
		memset(slot, 0, sizeof *slot);
	}
	return r;
}

static bool only_has(const json_t *object, const char *const *names)
{
	const char *key;
	json_t *value;
	json_object_foreach((json_t *)object, key, value)
	{
		const char *const *n = names;
		while (*n && strcmp(*n, key) != 0)
			n++;
		if (!*n)
			return false;
	}
	return json_is_object(object);
}

static int read_job(const struct languages *languages, const json_t *line, struct job *j, const char **pdf,
                    struct error *e)
{
	static const char *const line_names[] = {"v", "job", NULL}, *const to_names[] = {"pdf", "printer",
	                                                                                 NULL};
	static const char *const job_names[] = {"id", "to", "document", "again", NULL};
	static const char *const again_names[] = {"cups", NULL};
	const json_t *job = json_object_get(line, "job"), *to = json_object_get(job, "to");
	const json_t *again = json_object_get(job, "again");
	const char *printer = json_text(to, "printer");
	*pdf = json_text(to, "pdf");
	if (!only_has(line, line_names) || json_number(line, "v", 0) != 1 || !only_has(job, job_names))
		return error_set(e, -EINVAL,
		                 "job line: it is not {\"v\":1,\"job\":{…}} with id, to, document and again: "
		                 "correct the line");
	if (!only_has(to, to_names) || json_object_size(to) != 1 || (!**pdf && !*printer))
		return error_set(
		    e, -EINVAL, "job: 'to' is neither a file nor a printer: give one of 'pdf' and 'printer'");
	if (again && (!only_has(again, again_names) || json_number(again, "cups", -1) < 0 ||
	              json_number(again, "cups", -1) > INT32_MAX))
		return error_set(e, -EINVAL,
		                 "job: 'again' is no job number: give {\"cups\":number}, 0 when not known");
	if (again) {
		j->look_first = true;
		j->cups = (int)json_number(again, "cups", 0);
	}
	json_t *document = json_object_get(job, "document");
	int r = *printer ? printer_read(printer, &j->printer, e) : 0;
	name_tell_all(document); /* a slip is not kept back for a name */
	return r < 0 ? r : job_make(j, languages, document, e);
}

static int fail(struct server *s, struct job *j, const char *text)
{
	j->state = JOB_FAILED;
	snprintf(j->text, sizeof j->text, "%s", text);
	int r = tell(s, j);
	job_deinit(j);
	return r;
}

/* A job that is over already is left as it is. */
static int withdraw(struct server *s, int64_t id)
{
	for (int i = 0; i < JOBS_MAX; i++)
		if (s->slots[i].used && s->slots[i].job.id == id) {
			s->slots[i].job.unwanted = true;
			s->slots[i].wait_ms = 0;
			return step(s, &s->slots[i]);
		}
	return 0;
}

/* What a label would look like, for a screen: nothing is printed. */
static int draw_picture(struct server *s, const json_t *asked)
{
	struct error e = {0};
	json_t *document = json_object_get(asked, "document"), *told = json_object();
	name_tell_all(document);
	json_t *all = pictures_of_label(s->languages, document, &e);
	json_object_set_new(told, "id", json_string(json_text(asked, "id")));
	if (all)
		json_object_set_new(told, "pictures", all);
	else
		json_object_set_new(told, "fault", json_string(e.text));
	return write_line(s->out, json_pack("{s:i,s:o}", "v", 1, "picture", told));
}

static int take_line(struct server *s, const char *text, size_t size)
{
	struct error e = {0};
	struct job j = {0};
	const char *pdf;
	int r;
	json_t *line _cleanup_(json_drop) = json_read(text, size, &e);
	if (!line)
		return tell_fault(s, e.text);
	if (json_object_get(line, "picture"))
		return draw_picture(s, json_object_get(line, "picture"));
	const json_t *unwanted = json_object_get(json_object_get(line, "withdraw"), "id");
	if (json_is_integer(unwanted))
		return withdraw(s, json_integer_value(unwanted));
	const json_t *id = json_object_get(json_object_get(line, "job"), "id");
	if (!json_is_integer(id))
		return tell_fault(
		    s, "job line: the job has no number 'id': give {\"v\":1,\"job\":{\"id\":7,…}}");
	j.id = json_integer_value(id);
	r = read_job(s->languages, line, &j, &pdf, &e);
	if (r == -EMSGSIZE)
		j.why = SAY_PRINTER_LABEL_SMALL;
	if (r < 0)
		return fail(s, &j, e.text);
	if (*pdf) {
		job_write(&j, pdf);
		r = tell(s, &j);
		job_deinit(&j);
		return r;
	}
	struct slot *slot = free_slot(s);
	if (!slot)
		return fail(s, &j,
		            "printing: 64 jobs are waiting already: see to the printer, then print it again");
	*slot = (struct slot){.job = j, .used = true};
	return step(s, slot);
}

static int take_lines(struct server *s)
{
	char *end;
	while (s->in.size && (end = memchr(s->in.data, '\n', s->in.size))) {
		size_t size = (size_t)(end - s->in.data);
		int r = s->skipping || size == 0 ? 0 : take_line(s, s->in.data, size);
		s->skipping = false;
		buf_drop(&s->in, size + 1);
		if (r < 0)
			return r;
	}
	if (s->in.size <= LINE_MAX_BYTES)
		return 0;
	buf_clear(&s->in);
	if (s->skipping)
		return 0;
	s->skipping = true;
	return tell_fault(s, "job line: it is longer than 1 MiB: print fewer labels at a time");
}

static int read_more(struct server *s, int in, bool *ended)
{
	char chunk[65536];
	ssize_t n = read(in, chunk, sizeof chunk);
	if (n < 0)
		return errno == EINTR || errno == EAGAIN ? 0 : -errno;
	if (n == 0) {
		*ended = true;
		return 0;
	}
	int r = buf_add(&s->in, chunk, (size_t)n);
	return r < 0 ? r : take_lines(s);
}

/* The slot whose turn is next; NULL when nothing is on its way. */
static struct slot *next_slot(struct server *s)
{
	struct slot *next = NULL;
	for (int i = 0; i < JOBS_MAX; i++)
		if (s->slots[i].used && (!next || s->slots[i].next_ms < next->next_ms))
			next = &s->slots[i];
	return next;
}

static int loop(struct server *s, int in)
{
	bool ended = false;
	int64_t last_ms = 0;
	for (int r = 0; r == 0;) {
		struct slot *slot = next_slot(s);
		int64_t now = now_ms(), wait = slot ? slot->next_ms - now : -1;
		if (ended && (!slot || now >= last_ms))
			return 0;
		struct pollfd p = {.fd = ended ? -1 : in, .events = POLLIN};
		if (slot && wait < 0)
			wait = 0;
		if (poll(&p, 1, (int)wait) < 0 && errno != EINTR)
			return -errno;
		/* Lines first: a job for a file never waits for a printer that is asked again. */
		if (!ended && p.revents) {
			r = read_more(s, in, &ended);
			if (ended)
				last_ms = now_ms() + LAST_MS;
		} else if (slot && now_ms() >= slot->next_ms) {
			r = step(s, slot);
		}
		if (r < 0)
			return r;
	}
	return 0;
}

int serve(int in, int out, const struct languages *languages)
{
	static struct server s; /* 64 slots are too much for a stack; there is one server a process */
	memset(&s, 0, sizeof s);
	s.out = out;
	s.languages = languages;
	int r = loop(&s, in);
	for (int i = 0; i < JOBS_MAX; i++)
		job_deinit(&s.slots[i].job);
	buf_free(&s.in);
	return r;
}
