#include "count/policy.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/ini.h"
#include "base/name.h"
#include "words/policy-words.h"

enum form { WHOLE, YES_NO };

static const struct {
	uint32_t setting;
	const char *section, *name;
	enum form form;
	int32_t low, high, unset;
	size_t offset;
} numbers[] = {
#define X(number, name, text, section, key, member, form, low, high, unset)                                  \
	{number, section, key, form, low, high, unset, offsetof(struct policy, member)},
    POLICY_NUMBERS(X)
#undef X
};
#define NUMBERS (sizeof numbers / sizeof *numbers)

static int32_t *number_at(struct policy *p, size_t i)
{
	return (int32_t *)(void *)((char *)p + numbers[i].offset);
}

const int32_t *policy_number(const struct policy *p, uint32_t setting)
{
	for (size_t i = 0; i < NUMBERS; i++)
		if (numbers[i].setting == setting)
			return number_at((struct policy *)p, i);
	return NULL;
}

void policy_default(struct policy *p)
{
#define X(name, key, text) text,
	static const char *const points[] = {SHIPPED_POINTS(X)};
	static const char *const search[] = {SHIPPED_STEPS(X)};
#undef X
	*p = (struct policy){.n_points = sizeof points / sizeof *points,
	                     .n_search = sizeof search / sizeof *search};
	for (size_t i = 0; i < NUMBERS; i++)
		*number_at(p, i) = numbers[i].unset;
	for (int i = 0; i < p->n_points; i++)
		snprintf(p->points[i], POLICY_TEXT_MAX, "%s", points[i]);
	for (int i = 0; i < p->n_search; i++)
		snprintf(p->search[i], POLICY_TEXT_MAX, "%s", search[i]);
}

struct reading {
	struct policy *p;
	int look_seen;
#define X(number, name, text, section, member) int member##_seen;
	POLICY_LISTS(X)
#undef X
};

static int set_whole(struct policy *p, size_t i, const char *value, struct error *e)
{
	char *end;
	errno = 0;
	long n = strtol(value, &end, 10);
	if (!*value || *end || errno || n < numbers[i].low || n > numbers[i].high)
		return error_set(e, -EINVAL, "%s is '%.60s': it must be a whole number from %d to %d",
		                 numbers[i].name, value, (int)numbers[i].low, (int)numbers[i].high);
	*number_at(p, i) = (int32_t)n;
	return 0;
}

static int set_yes_no(struct policy *p, size_t i, const char *value, struct error *e)
{
	if (strcmp(value, "yes") != 0 && strcmp(value, "no") != 0)
		return error_set(e, -EINVAL, "%s is '%.60s': it must be yes or no", numbers[i].name, value);
	*number_at(p, i) = value[0] == 'y';
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
	for (size_t i = 0; i < NUMBERS; i++)
		if (strcmp(section, numbers[i].section) == 0 && strcmp(name, numbers[i].name) == 0) {
			r->look_seen |= strcmp(name, "look_step") == 0;
			return numbers[i].form == YES_NO ? set_yes_no(r->p, i, value, e)
			                                 : set_whole(r->p, i, value, e);
		}
#define X(number, called, text, of, member)                                                                  \
	if (strcmp(section, of) == 0)                                                                        \
		return set_list(r->p->member, &r->p->n_##member, &r->member##_seen, name, value, e);
	POLICY_LISTS(X)
#undef X
	return error_set(e, -EINVAL, "[%.40s] %.40s is not a setting: 'man bandtally-policy' tells each",
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
