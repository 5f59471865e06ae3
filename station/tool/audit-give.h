/* The way of an auditor's document out of the command: --json, --csv, or --pdf FILE. */
#ifndef BANDTALLY_TOOL_AUDIT_GIVE_H
#define BANDTALLY_TOOL_AUDIT_GIVE_H

#include "base/json.h"
#include "tool/words.h"

/* Whether exactly one of the three is given: 0, or EXIT_USAGE after a sentence on stderr. */
int audit_give_read(const struct words *w, const char *options, const char *usage);

/* The document as JSON or CSV on stdout, or on paper where --pdf names a file. An exit code. */
int audit_give(const json_t *doc, const struct words *w, const char *options);

#endif
