/* What audit.c and audit-slip.c share. */
#ifndef BANDTALLY_TOOL_AUDIT_H
#define BANDTALLY_TOOL_AUDIT_H

#include <limits.h>

#include "base/json.h"
#include "record/keys.h"
#include "record/store.h"
#include "tool/words.h"

extern const char audit_options[], audit_usage[];

/* A record to read: the file that was given, a fresh copy from the station, which lives until `held` is closed, or the
 * record of a station that is down. */
int audit_record(struct record **out, const char *given, char path[PATH_MAX], int *held, struct error *e);
void audit_done(struct record *r, int held);

/* The station's public keys: --key, else those of the data folder, else those that lie beside the record. 1 and where they
 * are from, 0 where there are none, negative errno with `e`. */
int audit_keys_of(struct keys *keys, const char *key, const char *record, char from[PATH_MAX],
                  struct error *e);
int audit_keys(struct keys *keys, const struct words *w, const char *record, char from[PATH_MAX],
               struct error *e);

/* Each JWS of a file, one a line: prints those that are not held, or of "-", which is stdin, a row for each, and how many
 * there were. How many were not held, or a
 * negative errno. */
int audit_slips(struct record *r, const struct keys *keys, const char *file, struct error *e);

int audit_slip(const struct words *w); /* the command */

/* Commands with options of their own; argv[0] is their name. */
int audit_report(int argc, char **argv);
int audit_case(int argc, char **argv);
int audit_sample(int argc, char **argv);
int audit_export(int argc, char **argv);
int audit_trace(int argc, char **argv);

/* The summary of a record that is open from `path`, kept where `given` says ("none": nowhere; NULL: beneath ~/.cache); says
 * on stderr how long it took, and what was the matter with the one that was kept. 0 or a negative errno with `e`. */
struct summary;
int audit_summary(struct summary *s, struct record *r, const char *path, const char *given, struct error *e);

/* A document as JSON or CSV on stdout, or on paper where `pdf` names a file. An exit code. */
int audit_give(const json_t *doc, int json, const char *pdf);

#endif
