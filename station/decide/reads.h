/* Which codes were read a moment ago, in which room (rule 22): within the repeat time the same code is one read
 * where another scanner of the room reads it, or the same scanner with nothing else between. One scanner that reads
 * A, B and A again was meant, and so is what was typed. A stored scan whose code was entered in the room since it was
 * made was made good then. A thing of an ended case, and what bears a mark, right after itself in its room is one read, however late,
 * as long as it stands where that read entered it. A plain value that the caller keeps; it need not outlive a restart,
 * since what must never be entered twice however late stands on the sheet (sheet.last_answer).
 */
#ifndef BANDTALLY_DECIDE_READS_H
#define BANDTALLY_DECIDE_READS_H

#include "decide/input.h"
#include "decide/outcome.h"

#define READS_MAX 32
#define READ_KEY_MAX (LINE_KEY_MAX + LOT_MAX + IDENTITY_MAX + 16)

struct reads {
	struct read {
		int32_t room;
		char scanner[33];
		char key[READ_KEY_MAX]; /* "" this place is free */
		struct moment at;       /* the last time, repeats included */
		uint64_t order;         /* of the last time among all reads */
	} list[READS_MAX];
	uint64_t reads; /* so far */
};

/* Sets in->repeated. `repeat_ms` is the policy's. Codes that are never entered have no repeats. */
void reads_look(const struct reads *r, struct input *in, int32_t repeat_ms);

/* Notes what was entered: to be called after decide(), with its verdict. What was refused was not entered, and
 * is looked at anew when it comes again. */
void reads_note(struct reads *r, const struct input *in, enum verdict verdict);

#endif
