#include "run/asked.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/base64.h"
#include "base/clock.h"
#include "base/log.h"
#include "base/name.h"
#include "code/date.h"
#include "run/board.h"
#include "run/file-lists.h"
#include "run/label-jobs.h"
#include "run/request.h"
#include "run/stock-steps.h"
#include "run/typing.h"

struct page_asks { /* by a page */
	struct daemon *d;
	int32_t room;
	struct secret_hash who;
	const json_t *q;
};

/* --- a step ---------------------------------------------------------------------------------------- */

static json_t *take_step(const struct page_asks *a)
{
	struct error e = {0};
	struct core *core = &a->d->core;
	char said[SAID_MAX];
	const struct reply *r = stock_step(core, a->room, "board", json_object_get(a->q, "step"), &e);
	if (!r)
		return answer_no(e.text);
	json_t *o = answer_yes();
	reply_words_in(r, core_language(core, a->room), said);
	json_object_set_new(o, "verdict", json_string(verdict_name(r->verdict)));
	json_object_set_new(o, "said", name_told(said, sizeof said));
	return o;
}

/* --- a file ---------------------------------------------------------------------------------------- */

static json_t *no(const struct page_asks *a, const struct say *why)
{
	char words[ERROR_TEXT_MAX];
	say_sentence_in(core_language(&a->d->core, a->room), why, words, sizeof words);
	return answer_no(words);
}

static int is_its_file(const struct page_asks *a)
{
	return secret_same(&a->d->file.who, &a->who);
}

static json_t *take_part(const struct page_asks *a)
{
	const char *part = json_text(a->q, "part");
	struct buf *bytes = &a->d->file.bytes;
	int64_t at = json_number(a->q, "at", -1);
	if (at == 0) {
		buf_clear(bytes);
		a->d->file.who = a->who;
	}
	if (!is_its_file(a) || at != (int64_t)bytes->size || base64url_read(bytes, part, strlen(part)) < 0)
		return no(a, SAY(ASKED_FILE_AGAIN));
	if (bytes->size > ASKED_FILE_MAX) {
		buf_free(bytes);
		return no(a, SAY(ASKED_FILE_LONG));
	}
	json_t *o = answer_yes();
	json_object_set_new(o, "size", json_integer((json_int_t)bytes->size));
	return o;
}

static json_t *import(const struct page_asks *a)
{
	struct error e = {0};
	const struct buf *bytes = &a->d->file.bytes;
	int preview = json_truth(a->q, "preview");
	if (!is_its_file(a) || !bytes->size)
		return no(a, SAY(ASKED_FILE_AGAIN));
	json_t *o = answer_with_ok(
	    import_catalogue(&a->d->core, bytes->data, bytes->size, json_truth(a->q, "whole"), preview, &e),
	    &e);
	if (!preview)
		buf_free(&a->d->file.bytes);
	return o;
}

/* --- a label ---------------------------------------------------------------------------------------- */

/* 2028-03-31, or "" none; -EINVAL where it is no day. */
static int32_t day_typed(const char *text)
{
	int y, m, d, used = 0;
	if (!*text)
		return 0;
	if (strlen(text) != 10 || sscanf(text, "%4d-%2d-%2d%n", &y, &m, &d, &used) != 3 || used != 10 ||
	    !date_make(y, m, d))
		return -EINVAL;
	return date_make(y, m, d);
}

/* NULL: it is drawn, and answered then. */
static json_t *preview(const struct page_asks *a, const char *id)
{
	struct error e = {0};
	struct batch b = {.expiry = day_typed(json_text(a->q, "expiry"))};
	const struct line *line = catalogue_by_key(&a->d->core.station.catalogue, json_text(a->q, "line"));
	if (!line)
		return no(a, SAY(ASKED_NO_LINE));
	if (b.expiry < 0)
		return no(a, SAY(ASKED_NO_DAY));
	if (request_name(a->q, "lot", b.lot, sizeof b.lot, &e) < 0)
		return answer_no(e.text);
	memcpy(b.line, line->key, sizeof b.line);
	int n = label_preview(a->d, &b, json_text(a->q, "medium"), id, &e);
	return n == 0 ? NULL : n == -EPIPE ? no(a, SAY(ASKED_NO_PRINTER)) : answer_no(e.text);
}

/* --- each ------------------------------------------------------------------------------------------ */

/* NULL: the answer comes later. */
static json_t *answer_to(const struct page_asks *a, const char *id)
{
	struct client page = {.d = a->d, .rights = RIGHT_STORES};
	const char *what = json_text(a->q, "do");
	if (strcmp(what, "step") == 0)
		return take_step(a);
	if (strcmp(what, "file") == 0)
		return take_part(a);
	if (strcmp(what, "import") == 0)
		return import(a);
	if (strcmp(what, "preview") == 0)
		return preview(a, id);
	request *fn = request_at_page(what);
	return fn ? fn(&page, a->q) : no(a, SAY(ASKED_UNKNOWN));
}

/* Why it is not looked at, as the board knows it; NULL: it is. Only what enters something is paced. */
static const char *refused(struct daemon *d, const struct page_asks *a, const char *cookie)
{
	if (!core_is_bench(&d->core, a->room) || !typing_allows(d, cookie, a->room))
		return "closed";
	if (strcmp(json_text(a->q, "do"), "step") != 0)
		return NULL;
	return pace_allows(&d->typed[core_room_index(&d->core, a->room)], clock_now().boot_ms) ? NULL
	                                                                                       : "often";
}

void asked_at_page(struct daemon *d, const json_t *ask)
{
	const char *cookie = json_text(ask, "cookie");
	int64_t room = json_number(ask, "room", 0);
	struct page_asks a = {.d = d,
	                      .room = room >= 1 && room <= ROOM_MAX ? (int32_t)room : 0,
	                      .who = secret_hash(cookie),
	                      .q = json_object_get(ask, "ask")};
	const char *id = json_text(ask, "id"), *why = refused(d, &a, cookie);
	json_t *told = why ? NULL : answer_to(&a, id);
	if (why || told)
		board_answer(d, id, why, told);
	board_show(d);
}
