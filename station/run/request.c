#include "run/request.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/log.h"
#include "base/name.h"
#include "code/date.h"
#include "tell/view.h"

void request_leave(struct client *c)
{
	stream_free(c->stream);
	if (c->copying) { /* nobody waits for the copy any more */
		loop_cancel(c->d->loop, c);
		record_copy_stop(c->d->core.record);
		c->d->copying = 0;
	}
	if (c->copy_file[0])
		unlink(c->copy_file);
	if (c->d->reports.from == c)
		c->d->reports.from = NULL;
	for (struct client **at = &c->d->clients; *at; at = &(*at)->next)
		if (*at == c) {
			*at = c->next;
			break;
		}
	free(c);
}

/* An answer that cannot be made is told to be missing; who cannot be told even that is left, and hears so by it. */
int request_answer(struct client *c, json_t *o)
{
	static const char missing[] = "{\"error\":\"the answer could not be made: out of memory: try again\","
	                              "\"ok\":false}\n";
	_cleanup_(buf_free) struct buf line = {0};
	int made = json_write_canonical(o, &line) == 0 && buf_add_text(&line, "\n") == 0;
	int n = made ? stream_send(c->stream, line.data, line.size)
	             : stream_send(c->stream, missing, sizeof missing - 1);
	json_decref(o);
	if (n < 0) {
		log_warn(LOG_ASKED, "a program at the socket does not take its answer: %s: it is left",
		         strerror(-n));
		request_leave(c);
	}
	return n;
}

json_t *answer_yes(void)
{
	json_t *o = json_object();
	json_object_set_new(o, "ok", json_true());
	return o;
}

json_t *answer_no(const char *why)
{
	json_t *o = json_object();
	json_object_set_new(o, "ok", json_false());
	json_object_set_new(o, "error", name_told(why, ERROR_TEXT_MAX));
	return o;
}

json_t *answer_yes_or_no(int n, const struct error *e)
{
	return n < 0 ? answer_no(e->text) : answer_yes();
}

json_t *answer_with_ok(json_t *o, const struct error *e)
{
	if (!o)
		return answer_no(e->text);
	json_object_set_new(o, "ok", json_true());
	return o;
}

json_t *answer_reply(const struct reply *r)
{
	json_t *o = answer_yes();
	json_object_set_new(o, "verdict", json_string(verdict_name(r->verdict)));
	json_object_set_new(o, "said", name_told(r->said, sizeof r->said));
	json_object_set_new(o, "next", name_told(r->next.words, sizeof r->next.words));
	json_object_set_new(o, "deeds", view_deeds(&r->next, NULL));
	return o;
}

int request_number(const json_t *q, const char *key, int64_t low, int64_t high, int32_t *out,
                   struct error *why)
{
	const json_t *v = json_object_get(q, key);
	int64_t n = json_integer_value(v);
	if (!v)
		return 0;
	if (!json_is_integer(v) || n < low || n > high)
		return error_set(why, -EINVAL,
		                 "'%s' must be a whole number from %" PRId64 " to %" PRId64 ": give another",
		                 key, low, high);
	*out = (int32_t)n;
	return 0;
}

int request_day(const json_t *q, const char *key, int32_t *out, struct error *why)
{
	int n = request_number(q, key, 0, 99991231, out, why);
	if (n == 0 && *out && !date_make(*out / 10000, *out / 100 % 100, *out % 100))
		return error_set(why, -EINVAL, "'%s' is no day: give one as 20280331, or leave it out", key);
	return n;
}

int request_text(const json_t *q, const char *key, char *out, size_t size, struct error *why)
{
	const char *text = json_text(q, key);
	if (strlen(text) >= size)
		return error_set(why, -EINVAL, "'%s' is longer than %zu bytes: shorten it", key, size - 1);
	memcpy(out, text, strlen(text) + 1);
	return 0;
}

int request_name(const json_t *q, const char *key, char *out, size_t size, struct error *why)
{
	char what[24];
	snprintf(what, sizeof what, "'%s'", key);
	int n = *json_text(q, key) ? name_check(what, json_text(q, key), size - 1, why) : 0;
	return n < 0 ? n : request_text(q, key, out, size, why);
}
