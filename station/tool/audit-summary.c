/* The summary that reports and traces stand on, and where it is kept. */
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "record/summary.h"
#include "tell/outline.h"
#include "tool/audit-record.h"
#include "tool/audit.h"

static void *fold_begin(void)
{
	return outline_new();
}

static void fold_end(void *own)
{
	outline_free(own);
}

static int fold_row(void *own, const struct event *events, int count, struct moment now,
                    int first_reminder_min, struct case_row *row)
{
	return outline_make(own, events, count, now, first_reminder_min, row);
}

static const struct summary_fold fold = {OUTLINE_FOLD, fold_begin, fold_end, fold_row};

/* "" where it is not to be kept, or there is no place for it. */
static void find_cache(const char *given, struct record *r, char out[PATH_MAX])
{
	if (given)
		snprintf(out, PATH_MAX, "%s", strcmp(given, "none") == 0 ? "" : given);
	else
		audit_place(r, &(struct audit_folder){"XDG_CACHE_HOME", ".cache"}, "summary", out);
}

static double seconds_since(int64_t boot_ms)
{
	return (double)(clock_now().boot_ms - boot_ms) / 1000;
}

int audit_summary(struct summary *s, struct record *r, const char *path, const char *given, struct error *e)
{
	char cache[PATH_MAX];
	int64_t from = clock_now().boot_ms;
	find_cache(given, r, cache);
	int n = summary_get(s, r, path, cache, &fold, e);
	if (n < 0)
		return n;
	if (s->anew)
		fprintf(stderr, "bandtally: the summary in %s was not used: %s: it is made anew\n", cache,
		        s->anew);
	if (n == 1)
		fprintf(stderr, "bandtally: %s\n", e->text);
	fprintf(stderr, "summary: %zu cases, %d of them as they were, %lld events told in %.2f s\n", s->count,
	        s->kept, (long long)s->told, seconds_since(from));
	return 0;
}
