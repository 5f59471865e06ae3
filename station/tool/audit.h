/* The commands of an audit, a file each, and what they make together. */
#ifndef BANDTALLY_TOOL_AUDIT_H
#define BANDTALLY_TOOL_AUDIT_H

#include "base/error.h"
#include "record/keys.h"
#include "record/store.h"

/* Each JWS of a file, one a line: prints those that are not held, or of "-", which is stdin, a row for each, and how many
 * there were. How many were not held, or a negative errno. */
int audit_slips(struct record *r, const struct keys *keys, const char *file, struct error *e);

/* The command: one text, looked up in `file` or the station's record, or, where it is NULL, each of `file`. `key` may be
 * NULL. An exit code. */
int audit_slip(const char *jws, const char *file, const char *key);

/* Commands with options of their own; argv[0] is their name. */
int audit_report(int argc, char **argv);
int audit_case(int argc, char **argv);
int audit_sample(int argc, char **argv);
int audit_export(int argc, char **argv);
int audit_trace(int argc, char **argv);
int audit_archive(int argc, char **argv);
int audit_keep(int argc, char **argv);
int audit_collect(int argc, char **argv);

/* The summary of a record that is open from `path`, kept where `given` says ("none": nowhere; NULL: beneath ~/.cache); says
 * on stderr how long it took, and what was the matter with the one that was kept. 0 or a negative errno with `e`. */
struct summary;
int audit_summary(struct summary *s, struct record *r, const char *path, const char *given, struct error *e);

/* The theatre lists of a record: those that were kept, beneath ~/.local/share, with the file `given` laid over them and kept
 * from then on; nothing of a file that is refused. Where it cannot be kept that is said on stderr, and it is used all the
 * same. NULL: those that were kept; "none": none. 1, 0 where there are none, or a negative errno with `e`. The caller's
 * through plan_deinit() whatever comes back. */
struct plan;
struct recorded;
int audit_plan(struct plan *p, struct record *r, const char *given, struct recorded *settings,
               struct error *e);
/* One theatre list alone, of which nothing is kept. 0 or a negative errno with `e`; the caller's likewise. */
int audit_plan_read(struct plan *p, const char *file, struct recorded *settings, struct error *e);

#endif
