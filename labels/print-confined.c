#include "labels/print-confined.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/confine.h"
#include "labels/canvas.h"

/* Where the font library keeps what it has found, if that of the machine is not enough: made here, since it may write there and
 * not beside it. What a thread of that library did before would stay unconfined, so it cannot simply come first. */
static const char *cache_of_fonts(char *out, size_t size)
{
	const char *cache = getenv("XDG_CACHE_HOME");
	int n = cache ? snprintf(out, size, "%s/fontconfig", cache) : -1;
	if (n < 0 || (size_t)n >= size || (mkdir(out, 0755) < 0 && errno != EEXIST))
		return NULL;
	return out;
}

int confine_print(const char *folder, struct error *e)
{
	char own[PATH_MAX];
	const char *cache = cache_of_fonts(own, sizeof own);
	/* As the libraries open them (strace). /etc whole: resolv.conf, hosts and certificates are replaced there, by files
	 * that a wall made of single files would not know. */
	const struct confine_place places[] = {
	    {"/etc", CONFINE_READ},
	    {"/usr", CONFINE_READ}, /* libraries for names, fonts, certificates, zones */
	    {"/lib", CONFINE_READ},
	    {"/lib64", CONFINE_READ},
	    {"/var/cache/fontconfig", CONFINE_READ},
	    {cache ? cache : "/var/cache/fontconfig", cache ? CONFINE_WRITE : CONFINE_READ},
	    {"/run/systemd/resolve", CONFINE_READ}, /* where resolv.conf may lie */
	    {"/run/resolvconf", CONFINE_READ},
	    {"/run/NetworkManager", CONFINE_READ},
	    {"/sys/devices/system/cpu", CONFINE_READ},
	    {"/dev/null", CONFINE_READ},
	    {"/dev/urandom", CONFINE_READ},
	    {fonts_path(), CONFINE_READ},
	    {folder, CONFINE_WRITE},
	};
	if (access(folder, W_OK | X_OK) < 0)
		return error_set(e, -errno, "sandbox: the folder %s: %s: give one that may be written to",
		                 folder, strerror(errno));
	return confine_loosely(places, sizeof places / sizeof *places, e);
}
