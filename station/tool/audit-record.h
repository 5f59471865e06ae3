/* What the commands of an audit look at: a record that no station writes meanwhile, the keys that its seals and slips are held
 * against, and its settings. */
#ifndef BANDTALLY_TOOL_AUDIT_RECORD_H
#define BANDTALLY_TOOL_AUDIT_RECORD_H

#include <limits.h>

#include "base/error.h"
#include "count/recorded.h"
#include "record/case-events.h"
#include "record/keys.h"
#include "record/store.h"

/* A record to read: the file that was given, a fresh copy from the station, which lives until `held` is closed, or the
 * record of a station that is down. 0, or a negative errno with `e`. Either way audit_done() ends it. */
int audit_record(struct record **out, const char *given, char path[PATH_MAX], int *held, struct error *e);
void audit_done(struct record *r, int held);

/* The station's public keys: `key`, else those of the data folder, else those that lie beside the record. 1 and where they
 * are from, 0 where there are none, negative errno with `e`. */
int audit_keys(struct keys *keys, const char *key, const char *record, char from[PATH_MAX], struct error *e);

/* What the record says last of each setting: site, rooms, policy. 0 or a negative errno with `e`. */
int audit_settings(struct record *r, struct recorded *out, struct error *e);

/* Where the user of a command keeps what belongs to that record: one file a record, by the hash of its first event, beneath
 * the folder that the variable names or else that of the home. Folders that are not there are made. "" where there is no
 * place. */
struct audit_folder {
	const char *variable, *of_home; /* "XDG_CACHE_HOME", ".cache" */
};
void audit_place(struct record *r, const struct audit_folder *folder, const char *name, char out[PATH_MAX]);

/* How many cases left the record, and the last event that says so. 0 or a negative errno with `e`. */
int audit_left(struct record *r, int *cases, struct event *archived, struct error *e);

/* Somebody looks at what names people: the running station records it, and why, before anything is shown. `what`: "case" or
 * "person", and its number. 0 or a negative errno with `e`. */
int audit_record_look(const char *what, int number, const char *why, struct error *e);

#endif
