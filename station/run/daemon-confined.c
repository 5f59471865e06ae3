#include "run/daemon-confined.h"

#include <errno.h>
#include <stdlib.h>
#include <sys/prctl.h>
#include <sys/resource.h>

#include "base/confine.h"
#include "base/log.h"

void confine_station(const char *folder, const char *head)
{
	const char *temporary = getenv("TMPDIR"), *cache = getenv("XDG_CACHE_HOME");
	const struct confine_place places[] = {
	    {"/", CONFINE_RUN},
	    {"/dev", CONFINE_OPEN}, /* whatever is plugged in later, for the drivers that start then */
	    {folder, CONFINE_WRITE},
	    {head, CONFINE_WRITE},
	    {"/tmp", CONFINE_WRITE},
	    {"/var/tmp", CONFINE_WRITE},
	    {"/dev/shm", CONFINE_WRITE},
	    {temporary ? temporary : "/tmp", CONFINE_WRITE},
	    {cache ? cache : "/tmp",
	     CONFINE_WRITE}, /* of fonts: bandtally-print, before it confines itself */
	};
	struct error e;
	if (prctl(PR_SET_DUMPABLE, 0, 0, 0, 0) < 0)
		log_warn_errno(LOG_RIGHTS, -errno,
		               "others of the same user may look into this program's memory");
	/* The drivers' and the board's as well, which inherit this: a picture of a patient goes through them. */
	if (setrlimit(RLIMIT_CORE, &(struct rlimit){0}) < 0)
		log_warn_errno(LOG_RIGHTS, -errno, "a program that fails may leave its memory in a file");
	if (!confine_has_landlock())
		log_warn(
		    LOG_RIGHTS,
		    "this kernel has no Landlock (version 2, since Linux 5.19): the files of this machine "
		    "are kept from the station's programs by their owners' rights alone: run a kernel "
		    "that has it; the count goes on");
	if (confine_parent(places, sizeof places / sizeof *places, &e) < 0)
		log_warn(LOG_RIGHTS, "%s; the count goes on, and keeps its rights", e.text);
}
