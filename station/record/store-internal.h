/* What store.c and verify.c share. Nobody else includes it. */
#ifndef BANDTALLY_RECORD_STORE_INTERNAL_H
#define BANDTALLY_RECORD_STORE_INTERNAL_H

#include <sqlite3.h>

#include "base/buf.h"
#include "record/store.h"

struct record {
	sqlite3 *db;
	sqlite3_stmt *insert, *by_key, *of_case, *batches, *slips_of, *begin, *commit;
	sqlite3 *copy_db;
	sqlite3_backup *copy;
	int lock;   /* of the data folder, -1 for a copy */
	int schema; /* of the file */
	int64_t last_seq;
	struct chain chain;
	struct buf text, again; /* of the event that is being stored, and what it reads back to */
};

int store_fault(struct record *r, int code, const char *doing, struct error *e);

#endif
