#include "run/day-load.h"

static int take(void *context, const struct event *e)
{
	day_take(context, e);
	return 0;
}

int day_load(struct day *d, struct record *r, int32_t last_case, struct error *e)
{
	int n = 0;
	int32_t first = last_case > DAY_CASES ? last_case - DAY_CASES + 1 : 1;
	*d = (struct day){0};
	for (int32_t i = first; n == 0 && i <= last_case; i++)
		n = record_each(r, i, take, d, e);
	return n;
}
