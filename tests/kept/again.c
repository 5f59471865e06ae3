#include "tests/kept/again.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "run/core.h"
#include "run/teller.h"

static struct core core; /* half a megabyte */

struct cut {
	struct event *events;
	int count;
	int64_t to;
};

static int take(void *context, const struct event *e)
{
	struct cut *cut = context;
	if (e->seq > cut->to)
		return 0;
	struct event *more = realloc(cut->events, sizeof *more * (size_t)(cut->count + 1));
	if (!more)
		return -ENOMEM;
	cut->events = more;
	cut->events[cut->count++] = *e;
	return 0;
}

static enum slip_kind kind_of(const json_t *document)
{
	if (strcmp(json_text(document, "kind"), "discrepancy") == 0)
		return SLIP_DISCREPANCY;
	return strcmp(json_text(document, "heading"), "addendum") == 0 ? SLIP_ADDENDUM : SLIP_RECONCILIATION;
}

/* As core_open() does, but for the start: that would be a further event. */
static int open_cut(struct core *c, const char *folder, struct cut *cut, struct error *e)
{
	snprintf(c->folder, sizeof c->folder, "%s", folder);
	int n = languages_read(&c->languages, languages_folder(), e);
	if (n == 0)
		n = settings_read(&c->settings, &c->station, folder, e);
	if (n == 0)
		n = record_open(&c->record, folder, e);
	if (n == 0)
		n = seal_open(&c->seal, folder, e);
	if (n == 0)
		n = record_append(c->record, cut->events, cut->count, e);
	for (int i = 0; n == 0 && i < cut->count; i++)
		if (station_apply(&c->station, &cut->events[i]) < 0)
			n = error_set(e, -EINVAL, "event %lld does not apply", (long long)cut->events[i].seq);
	return n;
}

json_t *document_again(const char *folder, struct record *kept, int64_t seq, const json_t *document,
                       struct chain *last, struct error *e)
{
	struct cut cut = {.to = seq};
	json_t *again = NULL;
	memset(&core, 0, sizeof core);
	if (record_each(kept, 0, take, &cut, e) == 0 && open_cut(&core, folder, &cut, e) == 0)
		again = teller_slip(&core, (int32_t)json_number(document, "case_number", 0),
		                    (int32_t)json_number(document, "slip", 0), kind_of(document),
		                    (int)json_number(document, "copy", 0), e);
	if (again)
		record_last(core.record, last);
	core_close(&core);
	free(cut.events);
	return again;
}

int station_open(const char *folder, struct error *e)
{
	return core_open(&core, folder, e);
}

void station_close(void)
{
	core_close(&core);
}

json_t *further_copy(const json_t *document, struct error *e)
{
	return teller_slip(&core, (int32_t)json_number(document, "case_number", 0),
	                   (int32_t)json_number(document, "slip", 0), kind_of(document), 99, e);
}
