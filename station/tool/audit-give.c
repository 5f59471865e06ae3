#include "tool/audit-give.h"

#include <stdio.h>
#include <string.h>

#include "base/buf.h"
#include "base/error.h"
#include "tool/client.h"
#include "tool/document.h"
#include "tool/print.h"

int audit_give_read(const struct words *w, const char *options, const char *usage)
{
	int ways =
	    words_given(w, options, "json") + words_given(w, options, "csv") + words_given(w, options, "pdf");
	return ways == 1 ? 0 : words_choose("give one of --json, --csv and --pdf", usage);
}

int audit_give(const json_t *doc, const struct words *w, const char *options)
{
	_cleanup_(buf_free) struct buf text = {0};
	struct error e;
	const char *pdf = words_value(w, options, "pdf");
	int json = words_given(w, options, "json");
	if (pdf)
		return print_document(doc, "--pdf", pdf);
	int n = json ? json_write_canonical(doc, &text) : document_csv(doc, &text);
	if (n == 0 && json)
		n = buf_add_text(&text, "\n");
	if (n < 0) {
		error_set(&e, n, "cannot write it: %s: close other programs", strerror(-n));
		return client_fail(&e);
	}
	fputs(text.data, stdout);
	return EXIT_OK;
}
