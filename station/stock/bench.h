/* A stores bench: state + what was scanned + time -> what happened, and a reply. As decide() does it for a room with cases.
 *
 * Pure: the caller reads the code, looks up what the record knows of it, and passes both in. bench_decide() changes nothing;
 * it returns events, which the caller stores and then applies with stock_apply() and station_apply().
 *
 * What a scan means where nothing is asked: a box or pack came in; a label that was printed is read back; a label that is in
 * a room comes back; a badge says who works here; a card asks what it is about. DONE, and NO where the question is not one of
 * yes and no, leave any question.
 */
#ifndef BANDTALLY_STOCK_BENCH_H
#define BANDTALLY_STOCK_BENCH_H

#include "count/deed.h"
#include "stock/stock.h"

#define BENCH_EVENTS_MAX 128
#define BENCH_SAID_MAX 401
#define BENCH_LABELS_MAX 100   /* that are spoilt at once */
#define BENCH_PACKS_MAX 100000 /* at once */
#define BENCH_PACKS_ASKED 1000 /* from here on it is asked whether that is right */

enum bench_act {
	BENCH_CARD,  /* card */
	BENCH_BADGE, /* number */
	BENCH_PACK,  /* line, batch, packs; thing; used_in, used_back */
	BENCH_LABEL, /* the same of one pack, by its number: batch.first; label */
	BENCH_SLIP,  /* number: its case, 0 none */
	BENCH_TYPED, /* text */
	BENCH_OTHER, /* anything else that has no use here */
};

/* Where a label and its pack are, as the record has it. */
enum label_state {
	LABEL_NOT_KNOWN = 0, /* no such number was given out */
	LABEL_PRINTED,       /* and not read back */
	LABEL_ON_SHELF,
	LABEL_GONE, /* spoilt or destroyed: fate says which */
	LABEL_ISSUED_TO,
	LABEL_THROWN, /* its pack was written off */
};

struct label_known {
	enum label_state state;
	enum label_fate fate; /* LABEL_GONE */
	int32_t room;         /* LABEL_ISSUED_TO */
};

/* What the record's last event of a label comes to; NULL none: it is printed. */
struct label_known label_known_by(const struct event *last);

struct bench_input {
	enum bench_act act;
	struct moment at;
	int32_t today; /* yyyymmdd */
	int32_t room;
	uint32_t flags; /* EVENT_KEYED */
	int card;
	int32_t number;
	const struct line *line;
	struct batch batch; /* of a pack: without numbers */
	int32_t packs;      /* that the code stands for */
	struct thing thing;
	struct label_known label;
	int32_t used_in; /* ended case in which this very item was used, 0 none */
	uint8_t used_back;
	uint8_t again; /* read a moment ago */
	const char *text;
};

enum bench_verdict { BENCH_ACCEPTED = 0, BENCH_REFUSED, BENCH_ASKS };

struct bench_outcome {
	struct event *events; /* the caller's, of at least BENCH_EVENTS_MAX */
	int count;
	enum bench_verdict verdict;
	char said[BENCH_SAID_MAX]; /* in English */
	struct said what;          /* the same as a sentence: in any language */
};

/* Always fills `out`. */
void bench_decide(const struct stock *s, const struct station *st, const struct bench_input *in,
                  struct bench_outcome *out);

/* What comes next at this bench, as it stands now. */
void bench_next(const struct stock *s, const struct station *st, int32_t room, struct next *out);

/* Whether nothing is asked there, and labels that are all accounted for wait for their box. */
int bench_waits_for_box(const struct stock *s, int32_t room);

/* Whether what is asked there now is answered by typing. */
int bench_wants_text(const struct stock *s, int32_t room);

/* A question with what it speaks of, as the board shows it above its deeds. */
struct say bench_question_say(const struct station *st, const struct bench_asked *asked);

#endif
