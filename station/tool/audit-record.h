/* What the commands of an audit look at: a record that no station writes meanwhile, and the keys that its seals and slips
 * are held against. */
#ifndef BANDTALLY_TOOL_AUDIT_RECORD_H
#define BANDTALLY_TOOL_AUDIT_RECORD_H

#include <limits.h>

#include "base/error.h"
#include "record/keys.h"
#include "record/store.h"

/* A record to read: the file that was given, a fresh copy from the station, which lives until `held` is closed, or the
 * record of a station that is down. 0, or a negative errno with `e`. Either way audit_done() ends it. */
int audit_record(struct record **out, const char *given, char path[PATH_MAX], int *held, struct error *e);
void audit_done(struct record *r, int held);

/* The station's public keys: `key`, else those of the data folder, else those that lie beside the record. 1 and where they
 * are from, 0 where there are none, negative errno with `e`. */
int audit_keys(struct keys *keys, const char *key, const char *record, char from[PATH_MAX], struct error *e);

#endif
