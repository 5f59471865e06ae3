/* What a script prints: each slip's document as the daemon makes it, and what its key signs, as text to read and
 * to compare. Named blanks stand for what a script does not have: "<hash>" of the record's last event, and
 * "<signature>" for the signed summary. */
#ifndef BANDTALLY_TESTS_SLIPS_H
#define BANDTALLY_TESTS_SLIPS_H

#include "base/buf.h"
#include "base/json.h"
#include "count/station.h"

struct slips_source {
	const struct station *station;
	const struct event *events; /* all, in order; the first has seq 1 */
	int count;
	struct moment now;               /* when it is printed */
	const struct language *language; /* NULL English */
};

/* The slip that `queued` queues, after its whole batch was applied. `chain`: the hash that the record's own event
 * would have, were the script's events its record. A new reference: { title, document, signed, chain }. */
json_t *slips_queued(const struct slips_source *from, const struct event *queued);

/* A case without a slip of its own, as case show tells it. A new reference: { title, document }. */
json_t *slips_case(const struct slips_source *from, int32_t case_no);

/* Appends the text of a list of the above, and beneath each what is otherwise in `elsewhere`: the same list, made
 * in another zone, whose name is `where`. */
void slips_write(const json_t *list, const json_t *elsewhere, const char *where, struct buf *out);

#endif
