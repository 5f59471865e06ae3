/* What stores have: packs by line, lot, expiry and place. Made from events alone, as the station is (count/station.h).
 *
 * It holds numbers of packs and no single one: what is known of one is asked of the record by the number on its label. Places
 * are the shelf and the rooms. What a room did with packs reaches it as one event for each line and lot at the end of a case
 * (EV_CASE_TOOK), so that no item of an ended case is read for it.
 *
 * For each lot, always: received = waiting + shelf + all rooms + opened + isolated + written off + unaccounted (rule 2). What
 * lies in a room may come out below nothing: a pack was opened there that stores had never given it.
 */
#ifndef BANDTALLY_STOCK_STOCK_H
#define BANDTALLY_STOCK_STOCK_H

#include "base/buf.h"
#include "count/station.h"
#include "count/stock-enums.h"

#define PRINT_MAX 500    /* labels of one printing */
#define PRINTINGS_MAX 16 /* that are not closed; how many the oldest benches can leave behind */

struct stock_lot {
	char line[LINE_KEY_MAX];
	char lot[LOT_MAX];
	int32_t expiry;   /* yyyymmdd, 0 it has none */
	int32_t waits;    /* received, and not confirmed: not issued */
	int32_t typed_by; /* whose badge stood there when something came to wait last */
	int32_t shelf;
	int32_t in_rooms;   /* in all of them */
	int32_t unanswered; /* that cases returned unopened, and no bench has read since */
	/* ever */
	int32_t received, issued, back, opened, returned, isolated, written_off, unaccounted;
	/* labels of it: printed and not read back, read back, spoilt or destroyed */
	int32_t printed, labelled, spoilt;
	uint32_t places; /* the first of its places + 1, 0 it has none */
};

struct stock_place { /* packs of a lot in a room */
	uint32_t lot;
	int32_t room, packs;
	uint32_t next; /* place of the same lot + 1, 0 the last */
};

struct stock_missing { /* packs of a line that a case did not account for, and nobody has found */
	char line[LINE_KEY_MAX];
	char lot[LOT_MAX];
	int32_t case_no, room, packs;
};

struct printing { /* labels that are to be read back */
	struct batch batch;
	int32_t room;
	uint8_t fate[PRINT_MAX]; /* enum label_fate of each, 0 not read back yet */
};

struct bench_asked {
	uint8_t what; /* enum bench_question */
	struct batch batch;
	int32_t n, other, person;
	char text[EVENT_TEXT_MAX];
};

struct bench {
	int32_t room;   /* 0: this place is free */
	int32_t person; /* whose badge was read here last; 0 nobody's */
	struct bench_asked asked;
};

struct stock {
	struct stock_lot *lots;
	size_t n_lots, lots_room;
	struct stock_place *places;
	size_t n_places, places_room;
	struct stock_missing *missing;
	size_t n_missing, missing_room;
	uint32_t *table; /* of lots: place + 1, by their hash; made anew when it is half full */
	size_t table_size;
	struct printing printings[PRINTINGS_MAX];
	int n_printings;
	struct bench benches[ROOMS_MAX];
};

void stock_deinit(struct stock *s);

/* Whether this kind of event changes a stock: what a start reads for it. */
int stock_has(enum event_kind kind);
const enum event_kind *stock_kinds(int *count); /* all of them */

/* Applies one event; others than those of stores change nothing. 0, -ENOMEM, or -ENOSPC where too many printings or benches
 * are open. Changes nothing then. */
int stock_apply(struct stock *s, const struct event *e);

/* Whether stock_apply() will take these events, one after the other, without memory that could fail it. 0, -ENOMEM or
 * -ENOSPC, with `e`. */
int stock_fits(struct stock *s, const struct event *events, int count, struct error *e);

/* Makes `to`, which holds nothing, another of the same. 0 or -ENOMEM. */
int stock_copy(struct stock *to, const struct stock *from);

/* As bytes, for this very program: appended to `out`; and read back into one that holds nothing, -EINVAL where the bytes
 * are others. */
int stock_pack(const struct stock *s, struct buf *out);
int stock_unpack(struct stock *s, const void *bytes, size_t size);

/* --- asking (reach.c) ------------------------------------------------------------------------------ */

const struct stock_lot *stock_lot_of(const struct stock *s,
                                     const struct batch *of); /* NULL where there is none */
/* The places of a lot, one after the other: of NULL the first; NULL there is none more. */
const struct stock_place *stock_place_next(const struct stock *s, const struct stock_lot *lot,
                                           const struct stock_place *before);
int32_t stock_in_room(const struct stock *s, const struct stock_lot *lot, int32_t room);
int32_t stock_at(const struct stock *s, const struct stock_lot *lot,
                 int32_t place); /* a room, or the shelf: 0 */
const struct bench *stock_bench(const struct stock *s,
                                int32_t room);                       /* of that room; one that asks nothing */
struct printing *stock_printing_of(struct stock *s, int64_t number); /* that has this label; NULL none */
const struct printing *stock_printing_with(const struct stock *s, int64_t number); /* the same */
int label_is_on_pack(enum label_fate fate);  /* somebody read it there */
int printing_open(const struct printing *p); /* labels that were not read back */
const struct printing *stock_printing_at(const struct stock *s,
                                         int32_t room); /* of this bench the first with open labels, else the
                                                           first; NULL none */
int32_t stock_missing_of(const struct stock *s, const char *line,
                         int32_t case_no); /* packs; case 0: of all cases */

/* Whether stores know a line by this key: of the catalogue, or of an earlier one where packs of it came, or it is in quarantine
 * or missed: they stay to be found and removed by it. */
int stock_knows(const struct stock *s, const struct station *st, const char *key);

/* Packs of a line that lie in stores or in rooms, confirmed or not. */
int32_t stock_lying(const struct stock *s, const char *key);

/* The lot of the same line on the shelf that expires before this one and may be used on `today`: the earliest; NULL none. */
const struct stock_lot *stock_earlier(const struct stock *s, const struct station *st, const char *line,
                                      int32_t expiry, int32_t today);

/* Whether packs of it may be given to a room on `today` (rule 3). 0, or why not: a sentence without values of its own but
 * {why}. */
enum saying stock_withheld(const struct station *st, const struct stock_lot *lot, int32_t today);

/* Packs of a line that may be given out: what stands against its minimum. */
int32_t stock_usable(const struct stock *s, const struct station *st, const char *line, int32_t today);

/* Whether two lots read alike, and are not the same text: in case, spaces, dashes or zeros in front. A person must judge. */
int lot_is_near(const char *a, const char *b);

/* The days from one yyyymmdd to another. */
int32_t stock_days(int32_t from, int32_t to);

#endif
