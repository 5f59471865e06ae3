#include <inttypes.h>
#include <string.h>

#include "tool/client.h"
#include "tool/fault.h"

/* Numbers that count, and none that name a case, a badge or a slip. */
static int may_tell(const char *key)
{
	static const char *const keys[] = {"v",          "at_ms",       "utc_min",  "events",
	                                   "open_cases", "lines",       "staff",    "ms",
	                                   "board_port", "slips_older", "owed_more"};
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
		if (strcmp(keys[i], key) == 0)
			return 1;
	return 0;
}

/* Lists that are gone through; of the others, cases and slips among them, their length is told. */
static int is_open(const char *key)
{
	return strcmp(key, "rooms") == 0 || strcmp(key, "drivers") == 0 || strcmp(key, "faults") == 0;
}

static void print_value(struct fault *f, const char *key, const json_t *v, int depth);

static void print_inside(struct fault *f, const json_t *v, int depth)
{
	const char *inner;
	json_t *x;
	size_t i;
	buf_add_text(&f->out, "\n");
	json_object_foreach((json_t *)v, inner, x) print_value(f, inner, x, depth + 1);
	json_array_foreach((json_t *)v, i, x) print_value(f, "-", x, depth + 1);
}

/* `key` is the station's own. */
static void print_value(struct fault *f, const char *key, const json_t *v, int depth)
{
	buf_printf(&f->out, "%*s%s: ", 2 * depth, "", key);
	if (json_is_string(v))
		fault_masked(f, "", *json_string_value(v) ? json_string_value(v) : "''");
	else if (json_is_boolean(v))
		buf_add_text(&f->out, json_is_true(v) ? "yes\n" : "no\n");
	else if (json_is_array(v) && !is_open(key))
		buf_printf(&f->out, "%zu of them\n", json_array_size(v));
	else if (json_is_object(v) || json_is_array(v))
		print_inside(f, v, depth);
	else if (json_is_integer(v) && may_tell(key))
		buf_printf(&f->out, "%" PRId64 "\n", (int64_t)json_integer_value(v));
	else
		buf_add_text(&f->out, json_is_null(v) ? "none\n" : "…\n");
}

void fault_status(struct fault *f)
{
	struct error e = {0};
	fault_title(f, "what the station says (status --json)");
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "status"), &e);
	if (a)
		print_inside(f, json_object_get(a, "status"), -1);
	else
		fault_masked(f, "it does not answer: ", e.text);
}
