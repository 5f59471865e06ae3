#include "run/asked.h"

#include <errno.h>
#include <sodium.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/name.h"
#include "run/board.h"
#include "run/file-lists.h"
#include "run/request.h"
#include "run/stock-steps.h"
#include "run/typing.h"

#define PART_MAX 1400 /* bytes: a line of the board's holds no more in hex digits */

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

static json_t *begin_again(void)
{
	return answer_no("the file did not come whole, or another page sent one: choose it again");
}

static int is_its_file(const struct page_asks *a)
{
	return secret_same(&a->d->file.who, &a->who);
}

static json_t *take_part(const struct page_asks *a)
{
	unsigned char part[PART_MAX];
	size_t size = 0;
	const char *hex = json_text(a->q, "hex"), *end = hex;
	struct buf *bytes = &a->d->file.bytes;
	int64_t at = json_number(a->q, "at", -1);
	if (at == 0) {
		buf_clear(bytes);
		a->d->file.who = a->who;
	}
	if (!is_its_file(a) || at != (int64_t)bytes->size ||
	    sodium_hex2bin(part, sizeof part, hex, strlen(hex), NULL, &size, &end) < 0 || *end)
		return begin_again();
	if (bytes->size + size > ASKED_FILE_MAX)
		return answer_no("the file is longer than 1 MiB: split it");
	if (buf_add(bytes, part, size) < 0)
		return answer_no("out of memory: try again");
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
		return begin_again();
	json_t *o = answer_with_ok(
	    import_catalogue(&a->d->core, bytes->data, bytes->size, json_truth(a->q, "whole"), preview, &e),
	    &e);
	if (!preview)
		buf_free(&a->d->file.bytes);
	return o;
}

/* --- each ------------------------------------------------------------------------------------------ */

static json_t *answer_to(const struct page_asks *a)
{
	struct client page = {.d = a->d, .rights = RIGHT_STORES};
	const char *what = json_text(a->q, "do");
	if (strcmp(what, "step") == 0)
		return take_step(a);
	if (strcmp(what, "file") == 0)
		return take_part(a);
	if (strcmp(what, "import") == 0)
		return import(a);
	request *fn = request_at_page(what);
	return fn ? fn(&page, a->q) : answer_no("the page asks for something unknown: load it again");
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
	json_t *answer = json_object();
	json_object_set_new(answer, "id", json_string(json_text(ask, "id")));
	const char *why = refused(d, &a, cookie);
	if (why)
		json_object_set_new(answer, "refused", json_string(why));
	else
		json_object_set_new(answer, "answer", answer_to(&a));
	board_say(d, "answer", answer);
	board_show(d);
}
