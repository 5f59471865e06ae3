#include "tool/audit-pages.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "base/clock.h"
#include "report/days.h"
#include "tool/audit-language.h"
#include "tool/client.h"
#include "tool/report-make.h"
#include "tool/report-page.h"

#define PAGES_MAX (1 + 4 + 12 + ROOMS_MAX)
#define PART_BYTES 24000 /* twice that as JSON is still a request */
#define WAIT_MS 20       /* for a board that has too much to read */
#define WAIT_AT_MOST 500 /* so often */
#define PLACE "/audit"   /* where the board shows them */

enum page_kind { PAGE_YEAR, PAGE_QUARTER, PAGE_MONTH, PAGE_ROOM, PAGE_KINDS };

struct one_page {
	enum page_kind kind;
	char name[24]; /* in its address */
	char said[80]; /* in a link */
	struct source_span span;
	int room;
};

struct pages {
	struct report_base base;
	struct one_page list[PAGES_MAX];
	int n, year, room;
	int to; /* the connection on which they are handed over */
};

/* --- which ------------------------------------------------------------------------------------------------------- */

static struct one_page *add_page(struct pages *p, enum page_kind kind, int first, int last)
{
	struct one_page *page = &p->list[p->n++];
	*page =
	    (struct one_page){.kind = kind, .span = days_of_months(p->year, first, last), .room = p->room};
	return page;
}

/* Up to when there is something to report: a clock that was set back does not hide what lies behind it. */
static int32_t last_day(const struct report_base *b)
{
	int32_t day = report_last_day(b);
	for (size_t i = 0; i < b->summary.count; i++)
		if (b->summary.rows[i].day > day)
			day = b->summary.rows[i].day;
	return day;
}

static void list_pages(struct pages *p)
{
	const struct recorded *at = p->base.settings;
	const struct language *language = p->base.language;
	int32_t until = last_day(&p->base);
	struct one_page *x = add_page(p, PAGE_YEAR, 1, 12);
	snprintf(x->name, sizeof x->name, "%d", p->year);
	snprintf(x->said, sizeof x->said, "%d", p->year);
	for (int q = 1; q <= 4 && days_of_months(p->year, 3 * q - 2, 3 * q).from <= until; q++) {
		x = add_page(p, PAGE_QUARTER, 3 * q - 2, 3 * q);
		snprintf(x->name, sizeof x->name, "%d-q%d", p->year, q);
		say_part_in(language, SAY(RW_PAGE_QUARTER, .n = q, .year = p->year), x->said, sizeof x->said);
	}
	for (int m = 1; m <= 12 && days_of_months(p->year, m, m).from <= until; m++) {
		x = add_page(p, PAGE_MONTH, m, m);
		snprintf(x->name, sizeof x->name, "%d-%02d", p->year, m);
		snprintf(x->said, sizeof x->said, "%d-%02d", p->year, m);
	}
	for (int i = 0; i < at->n_rooms && !p->room; i++) {
		if (at->rooms[i].kind != ROOM_OF_CASES)
			continue;
		x = add_page(p, PAGE_ROOM, 1, 12);
		x->room = at->rooms[i].number;
		snprintf(x->name, sizeof x->name, "%d-room-%d", p->year, x->room);
		snprintf(x->said, sizeof x->said, "%s, %d", at->rooms[i].name, p->year);
	}
}

/* --- where they lead ----------------------------------------------------------------------------------------------- */

static struct page_link link_to(const struct one_page *x)
{
	struct page_link to;
	snprintf(to.to, sizeof to.to, PLACE "/%s", x->name);
	snprintf(to.said, sizeof to.said, "%s", x->said);
	return to;
}

/* All reports, and the one before and behind it of its kind. */
static int links_of(const struct pages *p, int which, struct page_link out[3])
{
	const struct one_page *x = &p->list[which];
	int n = 0;
	out[n] = (struct page_link){.to = PLACE};
	snprintf(out[n++].said, sizeof out->said, "%s", saying_text_in(p->base.language, SAY_RW_PAGE_ALL));
	for (int step = -1; step <= 1 && x->kind != PAGE_ROOM; step += 2) {
		int at = which + step;
		if (at < 0 || at >= p->n || p->list[at].kind != x->kind)
			continue;
		out[n] = link_to(&p->list[at]);
		const char *said = p->list[at].said;
		say_part_in(p->base.language,
		            step < 0 ? SAY(RW_PAGE_EARLIER, .words = said)
		                     : SAY(RW_PAGE_LATER, .words = said),
		            out[n++].said, sizeof out->said);
	}
	return n;
}

/* The day and time of the last event, as its place had them. */
static void stood_at(const struct pages *p, char out[40])
{
	char day[11];
	struct moment at = p->base.last.at;
	int minute = clock_minute_of_day(at.wall_ms, at.utc_min);
	day_text(report_last_day(&p->base), day);
	snprintf(out, 40, "%s %02d:%02d", day, minute / 60, minute % 60);
}

static int write_index(const struct pages *p, struct buf *out, struct error *e)
{
	static const enum saying titles[PAGE_KINDS] = {SAY_RW_PAGE_YEAR, SAY_RW_PAGE_QUARTERS,
	                                               SAY_RW_PAGE_MONTHS, SAY_RW_PAGE_ROOMS};
	const struct language *language = p->base.language;
	struct page_link links[PAGES_MAX];
	struct page_group groups[PAGE_KINDS];
	char at[40], made[300], beside[120];
	const struct recorded *s = p->base.settings;
	int n = 0;
	for (int i = 0; i < p->n; i++) {
		links[i] = link_to(&p->list[i]);
		if (i == 0 || p->list[i].kind != p->list[i - 1].kind)
			groups[n++] = (struct page_group){saying_text_in(language, titles[p->list[i].kind]),
			                                  {&links[i], 0}};
		groups[n - 1].links.n++;
	}
	stood_at(p, at);
	say_part_in(language, SAY(RW_PAGE_MADE, .words = at), made, sizeof made);
	say_part_in(language, SAY(RW_PAGE_YEAR_BESIDE, .year = p->year - 1), beside, sizeof beside);
	return report_index_text(&(struct page_index){.language = language,
	                                              .site = *s->site_name ? s->site_name : s->site,
	                                              .title = saying_text_in(language, SAY_RW_PAGE_TITLE),
	                                              .about = (const char *const[]){made, beside, NULL},
	                                              .groups = groups,
	                                              .n_groups = n},
	                         out, e);
}

/* --- handed over ----------------------------------------------------------------------------------------------------- */

/* The board may have too much to read just now: then the same again. `told` stays the caller's. */
static int hand(struct pages *p, const json_t *told, struct error *e)
{
	for (int i = 0; i < WAIT_AT_MOST; i++) {
		_cleanup_(json_drop) json_t *a = client_ask_again(p->to, json_copy((json_t *)told), e);
		if (!a)
			return e->code;
		if (json_truth(a, "taken"))
			return 0;
		nanosleep(&(struct timespec){.tv_nsec = WAIT_MS * 1000000L}, NULL);
	}
	return error_set(e, -ETIMEDOUT,
	                 "the board does not read the reports: see the station's messages, and try again");
}

static int hand_word(struct pages *p, const char *word, struct error *e)
{
	_cleanup_(json_drop) json_t *q = json_pack("{s:s,s:b}", "do", "report", word, 1);
	return hand(p, q, e);
}

/* Up to PART_BYTES, and no letter in two. */
static size_t part_size(const struct buf *text, size_t from)
{
	size_t left = text->size - from, n = left < PART_BYTES ? left : PART_BYTES;
	while (n < left && n > 1 && ((unsigned char)text->data[from + n] & 0xc0) == 0x80)
		n--;
	return n;
}

static int hand_page(struct pages *p, const char *name, const struct buf *text, struct error *e)
{
	int n = 0;
	for (size_t at = 0, size; at < text->size && n == 0; at += size) {
		size = part_size(text, at);
		_cleanup_(json_drop) json_t *q =
		    json_pack("{s:s,s:s,s:s%}", "do", "report", "page", name, "part", text->data + at, size);
		n = q ? hand(p, q, e)
		      : error_set(e, -EINVAL,
		                  "a report cannot be handed over: a text in it is not UTF-8: see 'bandtally "
		                  "audit verify'");
	}
	return n;
}

static int make_page(struct pages *p, int which, struct error *e)
{
	const struct one_page *x = &p->list[which];
	_cleanup_(json_drop) json_t *doc = NULL;
	_cleanup_(buf_free) struct buf text = {0};
	struct page_link links[3];
	int n = report_make(&p->base, x->span, x->room, &doc, e);
	if (n >= 0)
		n = report_page_text(doc, p->base.language,
		                     (struct page_links){links, links_of(p, which, links)}, &text, e);
	return n < 0 ? n : hand_page(p, x->name, &text, e);
}

static int hand_all(struct pages *p, struct error *e)
{
	_cleanup_(buf_free) struct buf index = {0};
	int n = 0;
	for (int i = 0; i < p->n && n == 0; i++)
		n = make_page(p, i, e);
	if (n == 0)
		n = write_index(p, &index, e);
	if (n == 0)
		n = hand_page(p, "", &index, e);
	return n == 0 ? hand_word(p, "show", e) : n;
}

static int begin(struct pages *p, struct error *e)
{
	_cleanup_(json_drop) json_t *a =
	    client_ask_holding(json_pack("{s:s,s:b}", "do", "report", "begin", 1), &p->to, e);
	if (!a)
		return e->code;
	return json_truth(a, "taken") ? 0 : hand_word(p, "begin", e);
}

int audit_pages_show(int year, int room, struct error *e)
{
	static struct pages p;
	struct audit_language language;
	int64_t from = clock_now().boot_ms;
	p = (struct pages){.room = room, .to = -1};
	audit_language(&language, NULL, NULL, e); /* asks for none by name: it finds one */
	int n = report_base_open(&p.base, &(struct report_from){.language = language.is}, e);
	p.year = year ? year : last_day(&p.base) / 10000;
	if (n == 0)
		list_pages(&p);
	if (n == 0)
		n = begin(&p, e);
	if (n == 0)
		n = hand_all(&p, e);
	if (p.to >= 0)
		close(p.to);
	if (n == 0)
		fprintf(stderr, "reports: %d pages in %.1f s\n", p.n,
		        (double)(clock_now().boot_ms - from) / 1000);
	report_base_close(&p.base);
	audit_language_end(&language);
	return n;
}
