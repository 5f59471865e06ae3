/* The hospital's store, over libpq: only here is it seen. One connection, one question at a time.
 *
 * Each function that asks waits at most STORE_PATIENCE_MS for the answer; only an append may take longer, and is asked about
 * with store_answer(). A negative result comes with what went wrong in `f`: its word, and what server or network said. Whoever gets one closes the
 * store.
 */
#ifndef BANDTALLY_FORWARD_HOSPITAL_STORE_H
#define BANDTALLY_FORWARD_HOSPITAL_STORE_H

#include <stdint.h>

#include "forward/queue.h"
#include "words/forward-words.h"

#define STORE_PATIENCE_MS 10000
#define STORE_HOSTS 8
#define STORE_NAME 24 /* of a server, with its NUL */

struct store;

struct store_place {                    /* all borrowed */
	const char *hosts[STORE_HOSTS]; /* "name", "name:port" or "[address]:port" */
	int n_hosts, first;             /* which is tried first */
	const char *database, *user, *certificate, *key, *authority;
};

struct store_fault {
	enum forward_word word; /* 0 none */
	char why[200];
};

struct store_at { /* an event, and which server has it */
	int64_t seq;
	char hash[LINE_HASH + 1]; /* hex, "" none */
	char server[STORE_NAME];
	int32_t timeline; /* rises with each promotion of a standby */
};

enum store_status { STORE_OK = 1, STORE_GAP, STORE_FORK, STORE_CHANGED, STORE_BEGIN, STORE_BEHIND };

struct store_hello {
	enum store_status status;
	struct store_at last; /* how far this incarnation is kept */
	int64_t clock_off_ms; /* how far the station's clock is ahead of the server's */
	char incident[120];   /* what is still to be settled about this station, "" nothing */
};

struct store_append {
	enum store_status status;
	struct store_at last;
};

/* Tries each host, at most a few seconds each, for one that takes writes. 0 or a negative errno with `f`. */
int store_open(struct store **out, const struct store_place *place, struct store_fault *f);
void store_close(struct store *s);        /* NULL is fine */
int store_socket(const struct store *s);  /* to wait for until it is readable … */
int store_writing(const struct store *s); /* … and, where this is 1, writable */

struct store_station { /* who asks */
	int32_t number, incarnation;
	int64_t seq; /* the last event of its record */
	const char *rooms;
};

int store_say_hello(struct store *s, const struct store_station *who, struct store_hello *out,
                    struct store_fault *f);
/* The greatest of these events that is kept under any incarnation, 0 none. `hashes` are in hex. */
int store_common(struct store *s, int32_t number, const int64_t *seqs, const char (*hashes)[LINE_HASH + 1],
                 int count, int64_t *found, struct store_fault *f);
int store_begin(struct store *s, const struct store_station *who, int64_t seq, const char *hash,
                enum store_status *status, struct store_fault *f);
/* That this event was said to be kept, and is not there. */
int store_tell_lost(struct store *s, const struct store_station *who, const struct store_at *kept,
                    struct store_fault *f);

/* Sends the first `count` events of the queue, which take so much room there. */
int store_append(struct store *s, const struct store_station *who, const struct queue *q, size_t count,
                 size_t texts, size_t hashes, struct store_fault *f);
/* An enum store_came; negative errno: it is not known whether they are kept. */
enum store_came { STORE_NOT_YET = 0, STORE_CAME };
int store_answer(struct store *s, struct store_append *out, struct store_fault *f);
/* That the events after `after` up to `to`, whose hash is `hash`, left the station's record. */
int store_skip(struct store *s, const struct store_station *who, int64_t after, const struct store_at *to,
               struct store_append *out, struct store_fault *f);
/* Why an answer takes so long: FORWARD_STANDBY where the server waits for its standby, else FORWARD_SLOW. Asked on a
 * connection of its own. */
enum forward_word store_why_slow(struct store *s, const struct store_place *place);

/* The lists: entries behind `after`, each told with its body as JSON text. Returns how many, or a negative errno. */
struct store_entry {
	int64_t version;
	const char *origin, *kind, *body; /* valid in the callback */
};
typedef void (*store_entry_fn)(void *context, const struct store_entry *e);
int store_lists(struct store *s, int32_t number, int64_t after, store_entry_fn each, void *context,
                int64_t *last, struct store_fault *f);
int store_took(struct store *s, int32_t number, int64_t version, struct store_fault *f);
/* 1 where the server said since the last call that there is something new in this station's lists; negative where it is gone. */
int store_has_news(struct store *s, struct store_fault *f);

/* --- from a store that is read: a hospital that forwards to its region --- */

struct store_head {   /* an incarnation of a station, and how far it is kept */
	int32_t id;   /* the store's own number of the station */
	char site[3]; /* its letters */
	int32_t number, incarnation;
	int64_t base_seq, last_seq;
	char base_hash[LINE_HASH + 1], last_hash[LINE_HASH + 1]; /* of 0: zeros */
};
/* All that the role may read, in the order of stations and incarnations: at most `most`. How many, or a negative errno. */
int store_heads(struct store *s, struct store_head *out, int most, struct store_fault *f);
/* Puts the events behind the queue's end into it, at most `most`. How many, or a negative errno. */
int store_read(struct store *s, const struct store_head *of, struct queue *q, int most,
               struct store_fault *f);
/* Each event behind `*at` up to `to`, at most `most`; `*at` goes on. How many, or a negative errno: -EBADMSG where one is
 * missing. */
typedef void (*store_event_fn)(void *context, const struct line_event *e);
int store_each(struct store *s, const struct store_head *of, int64_t *at, int64_t to, int most,
               store_event_fn each, void *context, struct store_fault *f);
/* 1 and up to where they go, with the hash of the last, where the events behind `after` had left the station's record; else 0,
 * or a negative errno. */
int store_gone(struct store *s, const struct store_head *of, int64_t after, struct store_at *to,
               struct store_fault *f);

#endif
