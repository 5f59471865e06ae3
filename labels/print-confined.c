#include "labels/print-confined.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/confine.h"
#include "labels/canvas.h"

int confine_print(const char *folder, struct error *e)
{
	const char *cache = getenv("XDG_CACHE_HOME"); /* of fonts, where that of the machine is not enough */
	/* As the libraries open them (strace). /etc whole: resolv.conf, hosts and certificates are replaced there, by files
	 * that a wall made of single files would not know. */
	const struct confine_place places[] = {
	    {"/etc", CONFINE_READ},
	    {"/usr", CONFINE_READ}, /* libraries for names, fonts, certificates, zones */
	    {"/lib", CONFINE_READ},
	    {"/lib64", CONFINE_READ},
	    {"/var/cache/fontconfig", CONFINE_READ},
	    {cache ? cache : "/var/cache/fontconfig", CONFINE_READ},
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
