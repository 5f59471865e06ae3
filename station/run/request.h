/* A request at the socket (run/socket.h has their forms): who asks, what is taken from it, and how it is answered.
 *
 * socket.c lets programs in, says who may ask for what, and hands each request to the function of its name; those are grouped
 * by whom they serve, a file a group. Such a function gives the answer, a new reference, or NULL where it answers later
 * itself (request_answer). What a request holds is looked at here, before anything is done.
 */
#ifndef BANDTALLY_RUN_REQUEST_H
#define BANDTALLY_RUN_REQUEST_H

#include <limits.h>

#include "decide/outcome.h"
#include "run/daemon.h"

enum right { RIGHT_COUNT = 1, RIGHT_STORES = 2, RIGHT_AUDIT = 4, RIGHT_ALL = 8 };

struct client {
	struct client *next;
	struct daemon *d;
	uid_t uid;
	struct stream *stream;
	unsigned rights;
	int copying;              /* this one asked for the copy that is being made */
	char copy_file[PATH_MAX]; /* "", or its copy, which lives as long as its connection */
	int64_t copy_events;      /* in that copy, once it is made */
};

#define ROOM_MAX 99              /* as on its cards */
#define NUMBER_MAX INT32_MAX     /* of cases and slips */
#define ITEM_NUMBER_MAX 99999999 /* eight */

/* --- answers: each a new reference ----------------------------------------------------------------- */

json_t *answer_yes(void);
json_t *answer_no(const char *why);
json_t *answer_yes_or_no(int n, const struct error *e);   /* of a function that gave n */
json_t *answer_with_ok(json_t *o, const struct error *e); /* `o`, which is taken; NULL: why there is none */
json_t *answer_reply(const struct reply *r);

/* Ends a connection: `c` is no more, and what was made for it alone goes with it. */
void request_leave(struct client *c);

/* Sends one that comes later, and takes it. Who does not take it is left: then a negative errno, and `c` is no more. */
int request_answer(struct client *c, json_t *o);

/* --- what a request holds -------------------------------------------------------------------------- */

/* Takes a number of it. 0, where it is absent as well: then `out` stays as it was. Else -EINVAL, and `why` names it. */
int request_number(const json_t *q, const char *key, int64_t low, int64_t high, int32_t *out,
                   struct error *why);
/* A day, yyyymmdd; 0 none. */
int request_day(const json_t *q, const char *key, int32_t *out, struct error *why);
int request_text(const json_t *q, const char *key, char *out, size_t size, struct error *why);
/* One that people read; it may be left out. */
int request_name(const json_t *q, const char *key, char *out, size_t size, struct error *why);

/* --- requests, a file a group ---------------------------------------------------------------------- */

typedef json_t *request(struct client *c, const json_t *q);

/* What a page of stores may ask as well, by its name (run/asked.h); NULL: not that. */
request *request_at_page(const char *name);

/* requests-count.c: what happens in a room, and what is shown of it */
request request_scan, request_type, request_sheet, request_status, request_case, request_cases, request_retry,
    request_board;
/* requests-lists.c: the catalogue and the staff */
request request_lines, request_catalogue, request_staff_file, request_staff, request_list_staff,
    request_withdraw;
/* requests-stores.c: what stores have */
request request_quarantine, request_stock, request_recall, request_used, request_shortfalls, request_bench,
    request_labels_write, request_labels_take, request_label;
/* requests-record.c: the record, and copies of it */
request request_settle, request_audited, request_keep, request_copy, request_backed_up;

/* requests-reports.c: the auditor's pages */
request request_report;

/* Copies that an earlier start left. */
void request_copies_clear(const struct daemon *d);

#endif
