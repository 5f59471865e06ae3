/* What a printer answered: RFC 8010's bytes (section 3), read and checked before anything of them is believed. Pure.
 *
 * ipp:// is neither secret nor signed, and a printer is a machine of its own: whoever stands on its network can answer in its
 * place. So each length is held against what is there, values come out only in their type and range (RFC 8011), and what is
 * absent, of another type or out of its range was not said. Collections are passed over, however deep they are.
 */
#ifndef BANDTALLY_LABELS_PRINTER_ANSWER_H
#define BANDTALLY_LABELS_PRINTER_ANSWER_H

#include <stdbool.h>

#include "base/buf.h"
#include "words/english.h"

#define ANSWER_BYTES_MAX (1u << 20) /* 500 jobs of a print server are 60 kB */

/* The status, 0 to 0xffff (RFC 8011 appendix B; up to 0xff it is good), of an answer that is whole. -EPROTO where it is none. */
int answer_status(const struct buf *answer);

struct job_said {
	int id;                  /* 1 and up; 0 not said */
	int state;               /* an ipp_jstate_t; 0 not said */
	bool named, ours;        /* its name was said, and is the title */
	bool history_is_missing; /* a print server never learnt what became of it */
	bool cannot_reach;       /* a print server tries to reach its printer */
};

/* The next job of a whole answer; `at` is 0 before the first. False where there is none. */
bool answer_next_job(const struct buf *answer, size_t *at, const char *title, struct job_said *out);

struct printer_said {
	enum saying trouble; /* what people read and do, SAY_NONE nothing is known to be wrong */
	bool history_is_missing;
	bool has_media, fits; /* it knows the size `media`, and how to make a page smaller */
	bool says_ready;      /* it says what lies in its trays */
	bool is_ready;        /* `media` does */
	char other[64]; /* the first size that does, else the one that it takes by itself; "" not said */
};

/* The size that a name of RFC 8011 (PWG 5101.1) ends in, "na_letter_8.5x11in", in millimetres; 0 where it says none, or no size
 * of a sheet (50 to 1,000 mm). */
void answer_media_size(const char *media, double *width_mm, double *height_mm);

/* Of a whole answer. `media` may be "". */
void answer_printer(const struct buf *answer, const char *media, struct printer_said *out);

#endif
