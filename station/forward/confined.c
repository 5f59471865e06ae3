#include "forward/confined.h"

#include "base/confine.h"

int confine_forward(const struct store_place *place, struct error *e)
{
	/* As libpq and the C library open them (strace). /etc whole: resolv.conf and hosts are replaced there. */
	const struct confine_place places[] = {
	    {"/etc", CONFINE_READ},
	    {"/usr", CONFINE_READ}, /* libraries for names, zones */
	    {"/lib", CONFINE_READ},
	    {"/lib64", CONFINE_READ},
	    {"/run/systemd/resolve", CONFINE_READ}, /* where resolv.conf may lie */
	    {"/run/resolvconf", CONFINE_READ},
	    {"/run/NetworkManager", CONFINE_READ},
	    {"/dev/null", CONFINE_READ},
	    {"/dev/urandom", CONFINE_READ},
	    {place->certificate, CONFINE_READ},
	    {place->key, CONFINE_READ},
	    {place->authority, CONFINE_READ},
	};
	return confine_loosely(places, sizeof places / sizeof *places, e);
}
