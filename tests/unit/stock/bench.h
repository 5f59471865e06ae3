/* A small stores with its benches, and what its people scan and type there. What the record would know of each label stands
 * beside it. */
#ifndef BANDTALLY_TESTS_STORES_BENCH_H
#define BANDTALLY_TESTS_STORES_BENCH_H

#include "stock/bench.h"
#include "stock/stores-rule.h"

#define BENCH_TODAY 20280301
#define BENCH_ROOM 9
#define LABELS_KNOWN 32

struct stores {
	struct station st;
	struct stock stock;
	struct label_known labels[LABELS_KNOWN]; /* of each number */
	struct batch batches[LABELS_KNOWN];
	int64_t seq;
	struct bench_outcome out; /* of the last scan */
	struct next next;
};

/* Theatre 1 and 2 are rooms 1 and 2, the benches 9 and 10. GREEN-M: no label. PLAIN-M: labelled. Badges 1, 2, and 3, which
 * was withdrawn. */
void stores_init(struct stores *s);
void stores_deinit(struct stores *s);

/* Decides, applies, and looks at the rules: a broken one is told and is the end of the program. What was said. */
const char *stores_scan(struct stores *s, struct bench_input in);

/* As stores_scan(), of bench 9. */
const char *stores_card(struct stores *s, int card);
const char *stores_badge(struct stores *s, int32_t number);
const char *stores_type(struct stores *s, const char *text);
const char *stores_pack(struct stores *s, const char *line, const char *lot, int32_t expiry, int32_t packs);
const char *stores_label(struct stores *s, int32_t number);
const char *stores_slip(struct stores *s, int32_t case_no);

/* The inputs of those, for another bench or to be tried on a copy. */
struct bench_input stores_in(const struct stores *s, enum bench_act act);
struct bench_input stores_pack_in(const struct stores *s, const char *line, const char *lot, int32_t expiry,
                                  int32_t packs);
struct bench_input stores_label_in(const struct stores *s, int32_t number);

/* What a case of a room did, as its end tells it. */
void stores_took(struct stores *s, enum case_took what, int32_t case_no, int32_t room, const char *line,
                 const char *lot, int32_t expiry, int32_t packs);

const struct stock_lot *stores_lot(const struct stores *s, const char *line, const char *lot, int32_t expiry);

/* 0, or -EINVAL: an event did not apply, or a rule is broken: `why`. */
int stores_apply(struct stores *s, const struct event *events, int count, char *why, size_t size);

#endif
