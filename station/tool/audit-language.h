/* In which language the auditor's papers, tables and pages are: the one that is asked for, else that of the running station's
 * site, else English. */
#ifndef BANDTALLY_TOOL_AUDIT_LANGUAGE_H
#define BANDTALLY_TOOL_AUDIT_LANGUAGE_H

#include "base/error.h"
#include "words/languages.h"

struct audit_language {
	struct languages all;
	const struct language *is; /* NULL: English */
};

/* `given`: --language, NULL none; `file`: the record that is looked at, NULL where it is the running station's. 0, or -ENOENT
 * with `e` where there is no such language; the caller's through audit_language_end() whatever comes back. */
int audit_language(struct audit_language *l, const char *given, const char *file, struct error *e);
void audit_language_end(struct audit_language *l);

#endif
