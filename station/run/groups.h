/* The groups whose members may ask for something at the socket, as numbers. They are looked up by processes of their own,
 * one for each: a directory service that does not answer holds up neither the start nor the count, and no group that is
 * known without it. */
#ifndef BANDTALLY_RUN_GROUPS_H
#define BANDTALLY_RUN_GROUPS_H

#include <sys/types.h>

#include "run/loop.h"

enum asking { GROUP_COUNT, GROUP_STORES, GROUP_AUDIT, GROUPS }; /* bandtally-count … */

#define GROUP_NONE ((gid_t)-1)

struct groups {
	gid_t gid[GROUPS]; /* GROUP_NONE: there is no such group, or it is not known yet */
	struct loop *loop;
	int fd;            /* where their numbers come, -1 while nobody is asked */
	int asked[GROUPS]; /* 1: its number is still to come */
};

/* Before anything else. */
void groups_init(struct groups *g, struct loop *loop);
/* Asks for them (again): what comes within `patience_ms` is there when it returns, what comes later is taken from the
 * loop. A number that cannot be had stays what it was, and the log says so. 0 or a negative errno. */
int groups_ask(struct groups *g, int patience_ms);
void groups_deinit(struct groups *g); /* one that was never begun is fine */

#endif
