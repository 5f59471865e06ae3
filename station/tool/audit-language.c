#include "tool/audit-language.h"

#include <errno.h>
#include <string.h>

#include "base/json.h"
#include "tool/client.h"

int audit_language(struct audit_language *l, const char *given, const char *file, struct error *e)
{
	struct error none = {0};
	*l = (struct audit_language){0};
	languages_read(&l->all, languages_folder(), &none); /* what cannot be read is not there */
	if (given) {
		l->is = languages_find(&l->all, given);
		return l->is || strcmp(given, "en") == 0
		           ? 0
		           : error_set(e, -ENOENT,
		                       "language '%.20s' is not installed: see language in man 5 "
		                       "bandtally-station, or leave --language out",
		                       given);
	}
	_cleanup_(json_drop) json_t *status =
	    file ? NULL : client_ask(json_pack("{s:s}", "do", "status"), &none);
	l->is = languages_find(&l->all, json_text(status, "site_language"));
	return 0;
}

void audit_language_end(struct audit_language *l)
{
	languages_free(&l->all);
	l->is = NULL;
}
