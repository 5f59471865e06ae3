/* The document of a slip: what the events of one case say, in the form that labels/slip-fields.c states.
 *
 * Nothing here signs: the document comes without its "jws", which whoever has the station's key makes of what is handed to it.
 * The same values give the same document: all that a further copy says otherwise is its number, when it was made and in
 * whose words (rule 25).
 */
#ifndef BANDTALLY_TELL_SLIP_H
#define BANDTALLY_TELL_SLIP_H

#include "base/json.h"
#include "tell/past.h"
#include "tell/story.h"
#include "words/language.h"

/* What one copy of a slip is made from. Everything that is pointed to is borrowed, and none of it is NULL. */
struct slip_source {
	const struct story *story; /* of its case, as story_make() tells it */
	enum slip_kind kind;
	int32_t number; /* of the slip */
	int copy;       /* from 1 */
	int32_t proof;  /* the six digits of this copy; 0 of record format 1, which had none */
	int station;    /* its number, as this copy's code bears it */
	int practice;   /* 1: its code is of the practice set, by which the paper is marked across */
	const struct language *language; /* of the slip's own event; NULL English */
	const struct past *past; /* what stood at the slip's own event: site, rooms, names, points, search */
	/* this copy */
	struct moment now;                        /* of its own event, and of a case that is shown: now */
	const char *paper;                        /* roll80, a6, a5, a4 */
	int dpi, label_width_mm, label_height_mm; /* of the patient's label; 0 the paper's own space */
	const char *time;                         /* when it is written, RFC 3339 */
	const char *version;                      /* of the program in whose words */
	/* the event that first queued the slip, up to which the story was told */
	int64_t seq;
	const char *chain; /* its hash in hex */
};

/* The document but for "jws". A new reference. */
json_t *slip_document(const struct slip_source *from);

/* The summary that the station's key signs for the slip's QR: slip, copy, site, room, case, outcome, ended_ms,
 * seq, chain. A new reference. */
json_t *slip_summary(const struct slip_source *from);

/* Puts into the document at which event of the record it was told, and the "jws" that `sign` appends to the buffer: of the
 * summary and the record's incarnation. 0, or the negative errno of `sign`. */
typedef int (*slip_sign_fn)(const void *by, const json_t *summary, struct buf *jws);
int slip_sign(const struct slip_source *from, int32_t incarnation, slip_sign_fn sign, const void *by,
              json_t *document);

#endif
