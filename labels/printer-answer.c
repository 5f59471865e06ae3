#include "labels/printer-answer.h"

#include <errno.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cups/ipp.h>

#define HEAD_BYTES 8 /* version, status, number of the request */
#define LENGTH_MAX 0x7fff

struct slice {
	const char *bytes; /* not ended by a NUL */
	size_t size;
};

struct walk {
	struct slice all;
	size_t at;
	int group; /* tag of the group that it is in, 0 none yet */
	int tag;
	struct slice name, value;
	int depth; /* of collections */
};

enum step { STEP_END, STEP_GROUP, STEP_VALUE };

static bool take(struct walk *w, size_t size, struct slice *out)
{
	if (w->at > w->all.size || w->all.size - w->at < size)
		return false;
	*out = (struct slice){w->all.bytes + w->at, size};
	w->at += size;
	return true;
}

static bool take_long(struct walk *w, struct slice *out)
{
	struct slice two;
	if (!take(w, 2, &two))
		return false;
	size_t size = (size_t)(uint8_t)two.bytes[0] << 8 | (uint8_t)two.bytes[1];
	return size <= LENGTH_MAX && take(w, size, out);
}

/* The tag was taken. A further value of an attribute has no name of its own. */
static bool take_value(struct walk *w)
{
	struct slice name;
	if (!w->group || !take_long(w, &name) || !take_long(w, &w->value))
		return false;
	if (name.size)
		w->name = name;
	return w->name.size > 0;
}

static int count_depth(struct walk *w)
{
	w->depth += (w->tag == IPP_TAG_BEGIN_COLLECTION) - (w->tag == IPP_TAG_END_COLLECTION);
	return w->depth < 0 ? -EPROTO : 0;
}

/* The next group or value outside of collections, or -EPROTO. */
static int next(struct walk *w)
{
	struct slice tag;
	while (take(w, 1, &tag)) {
		bool within = w->depth > 0;
		w->tag = (uint8_t)tag.bytes[0];
		if (w->tag < IPP_TAG_UNSUPPORTED_VALUE) { /* it parts groups */
			w->group = w->tag;
			w->name = (struct slice){0};
			if (within || w->tag == IPP_TAG_ZERO)
				return -EPROTO;
			return w->tag == IPP_TAG_END ? STEP_END : STEP_GROUP;
		}
		if (!take_value(w) || count_depth(w) < 0)
			return -EPROTO;
		if (!within && !w->depth)
			return STEP_VALUE;
	}
	return -EPROTO;
}

int answer_status(const struct buf *answer)
{
	struct walk w = {.all = {answer->data, answer->size}};
	struct slice head;
	int step;
	if (!take(&w, HEAD_BYTES, &head))
		return -EPROTO;
	while ((step = next(&w)) > STEP_END)
		;
	return step < 0 ? step : (uint8_t)head.bytes[2] << 8 | (uint8_t)head.bytes[3];
}

/* --- one value ---------------------------------------------------------------------------------- */

static bool same(struct slice s, const char *text)
{
	return s.size == strlen(text) && memcmp(s.bytes, text, s.size) == 0;
}

static bool begins(struct slice s, const char *text)
{
	return s.size >= strlen(text) && memcmp(s.bytes, text, strlen(text)) == 0;
}

static bool holds(struct slice s, const char *text)
{
	return s.size > 0 && memmem(s.bytes, s.size, text, strlen(text));
}

/* 0 where it is of another type or out of its range, which does not hold 0. */
static int number(const struct walk *w, int tag, int least, int most)
{
	const uint8_t *p = (const uint8_t *)w->value.bytes;
	if (w->tag != tag || w->value.size != 4)
		return 0;
	int64_t n = (int32_t)((uint32_t)p[0] << 24 | (uint32_t)p[1] << 16 | (uint32_t)p[2] << 8 | p[3]);
	return n < least || n > most ? 0 : (int)n;
}

static bool keyword(const struct walk *w, const char *name)
{
	return same(w->name, name) && (w->tag == IPP_TAG_KEYWORD || w->tag == IPP_TAG_NAME);
}

/* A name or text, with its language before it or without (RFC 8010 section 3.9). */
static bool words(const struct walk *w, int plain, int with_language, struct slice *out)
{
	struct slice language;
	struct walk in = {.all = w->value};
	*out = w->value;
	return w->tag == plain || (w->tag == with_language && take_long(&in, &language) &&
	                           take_long(&in, out) && in.at == w->value.size);
}

/* --- jobs --------------------------------------------------------------------------------------- */

static void take_of_job(const struct walk *w, const char *title, struct job_said *out)
{
	struct slice said;
	if (same(w->name, "job-id"))
		out->id = number(w, IPP_TAG_INTEGER, 1, INT32_MAX);
	else if (same(w->name, "job-state"))
		out->state = number(w, IPP_TAG_ENUM, IPP_JSTATE_PENDING, IPP_JSTATE_COMPLETED);
	else if (keyword(w, "job-state-reasons"))
		out->history_is_missing |= same(w->value, "cups-ipp-missing-job-history");
	else if (same(w->name, "job-name") && words(w, IPP_TAG_NAME, IPP_TAG_NAMELANG, &said)) {
		out->named = true;
		out->ours = same(said, title);
	} else if (same(w->name, "job-printer-state-message") &&
	           words(w, IPP_TAG_TEXT, IPP_TAG_TEXTLANG, &said))
		/* While CUPS tries to reach a printer it sets no state reason, only its backend's message (cups
		 * 2.4). In another language the sentence about time still comes. */
		out->cannot_reach = holds(said, "unavailable at this time") ||
		                    holds(said, "Connecting to printer") || holds(said, "not responding");
}

bool answer_next_job(const struct buf *answer, size_t *at, const char *title, struct job_said *out)
{
	struct walk w = {.all = {answer->data, answer->size}, .at = *at ? *at : HEAD_BYTES};
	int step;
	while ((step = next(&w)) == STEP_VALUE || (step == STEP_GROUP && w.group != IPP_TAG_JOB))
		;
	if (step != STEP_GROUP)
		return false;
	*out = (struct job_said){0};
	do { /* up to the mark of the next group, which is looked at again */
		*at = w.at;
		step = next(&w);
		if (step == STEP_VALUE)
			take_of_job(&w, title, out);
	} while (step == STEP_VALUE);
	return true;
}

/* --- the printer -------------------------------------------------------------------------------- */

/* The printer's state reasons as they begin, RFC 8011 section 5.4.12; the first counts. */
static const struct {
	const char *begins;
	enum saying why;
} reasons[] = {
    {"media-empty", SAY_PRINTER_OUT_OF_PAPER},
    {"media-needed", SAY_PRINTER_WANTS_PAPER},
    {"media-jam", SAY_PRINTER_JAM},
    {"door-open", SAY_PRINTER_OPEN},
    {"cover-open", SAY_PRINTER_OPEN},
    {"toner-empty", SAY_PRINTER_TONER},
    {"marker-supply-empty", SAY_PRINTER_INK},
    {"offline", SAY_PRINTER_SILENT},
    {"connecting-to-device", SAY_PRINTER_SILENT},
    {"timed-out", SAY_PRINTER_SILENT},
    {"paused", SAY_PRINTER_PAUSED},
    {"stopped", SAY_PRINTER_STOPPED},
};
#define REASONS_COUNT (sizeof reasons / sizeof *reasons)

static void take_reason(struct slice said, size_t *first, struct printer_said *out)
{
	for (size_t k = 0; k < *first; k++)
		if (begins(said, reasons[k].begins)) {
			*first = k;
			out->trouble = reasons[k].why;
		}
	out->history_is_missing |= same(said, "cups-ipp-missing-job-history");
}

void answer_media_size(const char *media, double *width_mm, double *height_mm)
{
	const char *size = strrchr(media, '_');
	char *end = NULL;
	*width_mm = *height_mm = 0;
	if (!size)
		return;
	double w = strtod(size + 1, &end), h = *end == 'x' ? strtod(end + 1, &end) : 0;
	double unit = strcmp(end, "mm") == 0 ? 1 : strcmp(end, "in") == 0 ? 25.4 : 0;
	if (w * unit >= 50 && w * unit <= 1000 && h * unit >= 50 && h * unit <= 1000) {
		*width_mm = w * unit;
		*height_mm = h * unit;
	}
}

static void keep_media(struct slice said, char out[64])
{
	if (said.size < 64) {
		memcpy(out, said.bytes, said.size);
		out[said.size] = 0;
	}
}

void answer_printer(const struct buf *answer, const char *media, struct printer_said *out)
{
	struct walk w = {.all = {answer->data, answer->size}, .at = HEAD_BYTES};
	size_t first = REASONS_COUNT;
	bool stopped = false;
	char ready[64] = "";
	*out = (struct printer_said){0};
	for (int step; (step = next(&w)) > STEP_END;) {
		if (step != STEP_VALUE || w.group != IPP_TAG_PRINTER)
			continue;
		if (keyword(&w, "printer-state-reasons"))
			take_reason(w.value, &first, out);
		else if (keyword(&w, "media-supported"))
			out->has_media |= *media && same(w.value, media);
		else if (keyword(&w, "media-ready")) {
			out->says_ready = true;
			out->is_ready |= *media && same(w.value, media);
			if (!ready[0])
				keep_media(w.value, ready);
		} else if (keyword(&w, "media-default"))
			keep_media(w.value, out->other);
		else if (keyword(&w, "print-scaling-supported"))
			out->fits |= same(w.value, "auto-fit");
		else if (same(w.name, "printer-state"))
			stopped = number(&w, IPP_TAG_ENUM, IPP_PSTATE_IDLE, IPP_PSTATE_STOPPED) ==
			          IPP_PSTATE_STOPPED;
	}
	if (ready[0])
		snprintf(out->other, sizeof out->other, "%s", ready);
	if (stopped && !out->trouble)
		out->trouble = SAY_PRINTER_STOPPED;
}
