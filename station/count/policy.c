#include "count/policy.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/ini.h"
#include "base/name.h"

static const struct {
	const char *section, *name;
	int32_t low, high;
	size_t offset;
} numbers[] = {
#define NUMBER(section, name, low, high)                                                                     \
	{                                                                                                    \
#section, #name, low, high, offsetof(struct policy, name)                                    \
	}
    NUMBER(reminders, first_reminder_min, 0, 1440),
    NUMBER(reminders, next_reminder_min, 0, 1440),
    NUMBER(reminders, nobody_min, 0, 1440),
    NUMBER(scans, repeat_ms, 0, 60000),
    NUMBER(scans, room_hold_min, 1, 1440),
    NUMBER(scans, gap_s, 1, 3600),
    NUMBER(scans, burst_ms, 0, 5000),
    NUMBER(record, alive_s, 1, 3600),
    NUMBER(search, look_step, 0, POLICY_LIST_MAX),
#undef NUMBER
};

void policy_default(struct policy *p)
{
	static const char *const points[] = {
	    "The name of the procedure is recorded.",
	    "Tourniquets, forceps and all other items are accounted for, or not applicable.",
	    "Each specimen is labelled with the patient's name, or there is none.",
	    "Equipment problems have been reported, or there are none.",
	    "Concerns for recovery have been handed over, colour and warmth of the digit among them.",
	};
	static const char *const search[] = {
	    "say it aloud and stop closing",
	    "count again, both together",
	    "look at and feel the digit, under the dressing too",
	    "drapes, floor, shoes",
	    "bins and linen",
	    "under the patient",
	    "tell the surgeon, who looks as well",
	    "imaging, if the missing item shows on it: steel does, a tourniquet may not",
	    "tell the nurse in charge",
	    "incident report begun",
	    "patient told, or who will tell",
	};
	*p = (struct policy){
	    .first_reminder_min = 20,
	    .next_reminder_min = 10,
	    .nobody_min = 5,
	    .repeat_ms = 2000,
	    .room_hold_min = 120,
	    .gap_s = 60,
	    .burst_ms = 300,
	    .alive_s = 60,
	    .look_step = 3,
	    .n_points = sizeof points / sizeof *points,
	    .n_search = sizeof search / sizeof *search,
	};
	for (int i = 0; i < p->n_points; i++)
		snprintf(p->points[i], POLICY_TEXT_MAX, "%s", points[i]);
	for (int i = 0; i < p->n_search; i++)
		snprintf(p->search[i], POLICY_TEXT_MAX, "%s", search[i]);
}

struct reading {
	struct policy *p;
	int points_seen, search_seen, look_seen;
};

static int set_number(struct policy *p, size_t i, const char *value, struct error *e)
{
	char *end;
	errno = 0;
	long n = strtol(value, &end, 10);
	if (!*value || *end || errno || n < numbers[i].low || n > numbers[i].high)
		return error_set(e, -EINVAL, "%s is '%.60s': it must be a whole number from %d to %d",
		                 numbers[i].name, value, (int)numbers[i].low, (int)numbers[i].high);
	memcpy((char *)p + numbers[i].offset, &(int32_t){(int32_t)n}, sizeof(int32_t));
	return 0;
}

static int set_yes_no(uint8_t *flag, const char *name, const char *value, struct error *e)
{
	if (strcmp(value, "yes") != 0 && strcmp(value, "no") != 0)
		return error_set(e, -EINVAL, "%s is '%.60s': it must be yes or no", name, value);
	*flag = value[0] == 'y';
	return 0;
}

/* Lists are numbered 1, 2, 3 …; the first entry of a file replaces the whole default list. */
static int set_list(char list[][POLICY_TEXT_MAX], uint8_t *count, int *seen, const char *name,
                    const char *value, struct error *e)
{
	char *end;
	long n = strtol(name, &end, 10);
	if (*end || n != *seen + 1 || n > POLICY_LIST_MAX)
		return error_set(e, -EINVAL, "'%.40s' is out of order: number the lines 1, 2, 3, at most %d",
		                 name, POLICY_LIST_MAX);
	char what[32];
	snprintf(what, sizeof what, "the text of %ld", n);
	if (name_check(what, value, POLICY_TEXT_MAX - 1, e) < 0)
		return -EINVAL;
	snprintf(list[n - 1], POLICY_TEXT_MAX, "%s", value);
	*count = (uint8_t)n;
	*seen = (int)n;
	return 0;
}

static int set(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	struct reading *r = context;
	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++)
		if (strcmp(section, numbers[i].section) == 0 && strcmp(name, numbers[i].name) == 0) {
			r->look_seen |= strcmp(name, "look_step") == 0;
			return set_number(r->p, i, value, e);
		}
	if (strcmp(section, "count") == 0 && strcmp(name, "both_badges") == 0)
		return set_yes_no(&r->p->both_badges, name, value, e);
	if (strcmp(section, "sign-out") == 0 && strcmp(name, "one_by_one") == 0)
		return set_yes_no(&r->p->points_one_by_one, name, value, e);
	if (strcmp(section, "sign-out points") == 0)
		return set_list(r->p->points, &r->p->n_points, &r->points_seen, name, value, e);
	if (strcmp(section, "search") == 0)
		return set_list(r->p->search, &r->p->n_search, &r->search_seen, name, value, e);
	return error_set(e, -EINVAL, "[%.40s] %.40s is not a setting: see the comments in config/policy.ini",
	                 section, name);
}

int policy_read(struct policy *p, const char *path, struct error *e)
{
	struct reading r = {.p = p};
	policy_default(p);
	int n = ini_read(path, set, &r, e);
	if (n == 0 && r.search_seen && !r.look_seen)
		p->look_step = 0; /* a list of the site's own: which step is the look, only the site knows */
	return n;
}
