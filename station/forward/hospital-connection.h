/* The connection to a hospital's store: one statement at a time, and what is wrong with it. Only hospital-store.c and
 * hospital-connection.c include this and libpq.
 */
#ifndef BANDTALLY_FORWARD_HOSPITAL_CONNECTION_H
#define BANDTALLY_FORWARD_HOSPITAL_CONNECTION_H

#include <libpq-fe.h>
#include <stdint.h>

#include "forward/hospital-store.h"

struct store {
	PGconn *c;
	int warned;  /* the server had something to say of the statement that runs */
	int writing; /* not all of it is sent */
	char server[STORE_NAME];
	int32_t timeline;
};

struct statement { /* the arguments of a statement; numbers are written here */
	int n;
	Oid types[6];
	const char *values[6];
	int lengths[6], formats[6];
	char numbers[6][24];
};

/* The next argument of a statement: borrowed; `length` counts where it is `binary`. */
void statement_value(struct statement *w, Oid type, const char *value, int length, int binary);
void statement_number(struct statement *w, Oid type, int64_t n);

/* Fills the fault, of `why` the first line. Returns `code`. */
int store_fault_set(struct store_fault *f, enum forward_word word, int code, const char *why);

/* Sends it, or begins to (`writing`). 0, or a negative errno with `f`. */
int store_ask(struct store *s, const char *sql, const struct statement *w, struct store_fault *f);

/* Reads what came: an enum store_came, or a negative errno with `f`. */
int store_take(struct store *s, struct store_fault *f);

/* The answer that is there, or NULL with `f`. */
PGresult *store_result(struct store *s, struct store_fault *f);

/* Both, and waits for STORE_PATIENCE_MS at most. NULL with `f`. */
PGresult *store_ask_and_wait(struct store *s, const char *sql, const struct statement *w,
                             struct store_fault *f);

#endif
