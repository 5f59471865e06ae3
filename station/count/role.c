#include "count/role.h"

#include <errno.h>
#include <string.h>

static const struct {
	const char *name;
	uint32_t traits;
} roles[ROLE_KINDS] = {[ROLE_NONE] = {"unknown", 0},
#define X(name, text, traits) [ROLE_##name] = {text, traits},
                       ROLES(X)
#undef X
};

int role_has(uint32_t role, uint32_t traits)
{
	return role > ROLE_NONE && role < ROLE_KINDS && (roles[role].traits & traits);
}

const char *role_name(enum role role)
{
	return roles[role < ROLE_KINDS ? role : ROLE_NONE].name;
}

int role_from_name(const char *name)
{
	for (int r = ROLE_NONE + 1; r < ROLE_KINDS; r++)
		if (strcmp(roles[r].name, name) == 0)
			return r;
	return -EINVAL;
}
