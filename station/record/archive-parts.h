/* What leaves the record, and the record that goes on without it: what the files of archive.c share. Nobody else includes this. */
#ifndef BANDTALLY_RECORD_ARCHIVE_PARTS_H
#define BANDTALLY_RECORD_ARCHIVE_PARTS_H

#include "record/archive.h"
#include "record/gone.h"

#define ARCHIVE_NO_MEMORY "cannot choose what leaves the record: out of memory: close other programs"

/* What stays of a case that leaves, as SQL. */
#define ARCHIVE_CASE_STAYS "('case-opened', 'case-ended', 'sealed', 'slip-queued', 'slip-state', 'item-used')"

/* All numbers that are missing once it left: those that left before and those that leave now, in `out`, which the caller
 * frees (list). 0 or a negative errno with `e`. */
int archive_stretches(struct stretches *out, const struct archive *a, struct record *r, struct error *e);
/* The hash over both tables, as they will be once the event of number `seq` says so. 0 or a negative errno. */
int archive_hash_to_be(const struct stretches *all, const struct archive *a, struct record *r, int64_t seq,
                       char hex[2 * CHAIN_BYTES + 1]);

/* Writes the record that goes on to `path`, for the owner of `folder`, from the archive in `file`, of which `of` is known, and
 * reads it back: it ends as the archive does, and everything in it holds. 0 or a negative errno with `e`. */
int archive_goes_on(const char *path, const char *folder, const char *file, const struct archive *a,
                    const struct stretches *gone, const struct backup *of, struct error *e);

#endif
