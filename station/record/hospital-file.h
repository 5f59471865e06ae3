/* hospital.json in the data folder: what is to be known after a start of how far the hospital's store had come. Nothing is
 * lost with the file: the store says at each connection what it has. */
#ifndef BANDTALLY_RECORD_HOSPITAL_FILE_H
#define BANDTALLY_RECORD_HOSPITAL_FILE_H

#include <stdint.h>

#include "record/chain.h"

struct hospital_noted {
	int64_t kept;                   /* the last event that the store said it keeps, 0 none */
	char hash[2 * CHAIN_BYTES + 1]; /* of that, in hex */
	char server[24];                /* which server said so */
	int32_t timeline;               /* and on which of its timelines */
	int64_t lists;                  /* up to which version its lists were taken over */
	int64_t contact_ms;             /* wall clock: when the lists were last heard to be whole; 0 never */
};

/* 0; -ENOENT where there is none, or another negative errno. */
int hospital_read(struct hospital_noted *out, const char *folder);
int hospital_write(const struct hospital_noted *n, const char *folder);

#endif
