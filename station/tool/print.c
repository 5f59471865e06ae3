/* print: the slips that no scanner has read back yet. */
#include <stdio.h>
#include <string.h>

#include "tool/client.h"
#include "tool/label.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char print_usage[] =
    "usage: bandtally print list\n"
    "       bandtally print retry SLIP      prints a further copy of a slip that was not seen\n"
    "example: bandtally print retry 127\n";

int tool_print(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	size_t i;
	json_t *x;
	int r = words_read(&w, argc, argv, "", print_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest && strcmp(w.rest[0], "retry") == 0) {
		int slip = 0;
		if (w.n_rest < 2)
			return words_missing("SLIP, its number,", print_usage);
		if (w.n_rest > 2)
			return words_beyond(w.rest[2], print_usage);
		if (words_number("SLIP", w.rest[1], 1, SLIP_NUMBER_MAX, &slip, print_usage) < 0)
			return EXIT_USAGE;
		_cleanup_(json_drop) json_t *a =
		    client_ask(json_pack("{s:s,s:i}", "do", "retry", "slip", slip), &e);
		return a ? EXIT_OK : client_fail(&e);
	}
	if (!w.n_rest || strcmp(w.rest[0], "list") != 0)
		return w.n_rest ? words_beyond(w.rest[0], print_usage)
		                : words_missing("list or retry", print_usage);
	if (w.n_rest > 1)
		return words_beyond(w.rest[1], print_usage);
	_cleanup_(json_drop) json_t *status = label_status(&e);
	if (!status)
		return client_fail(&e);
	json_array_foreach(json_object_get(status, "slips"), i, x)
	    printf("slip %07d copy %d, case %d, %s: %s, not seen yet%s%s\n", (int)json_number(x, "number", 0),
	           (int)json_number(x, "copy", 1), (int)json_number(x, "case", 0), slip_made_for(x),
	           json_text(x, "state"), *json_text(x, "why") ? ": " : "", json_text(x, "why"));
	if (json_number(status, "slips_older", 0))
		printf("and %d older, not seen yet\n", (int)json_number(status, "slips_older", 0));
	return EXIT_OK;
}
