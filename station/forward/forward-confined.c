#include "forward/forward-confined.h"

#include <stdlib.h>
#include <string.h>

#include "base/confine.h"

#define NAMES_PORT 53 /* of a name that is too long for one packet */
#define STORE_PORT 5432

/* Which hosts, no wall of a program's own can say: the service's addresses do (config/systemd/bandtallyd.service). */
static int to_their_ports(const struct store_place *const *places, int count, struct error *e)
{
	uint16_t ports[2 * STORE_HOSTS + 1] = {NAMES_PORT};
	size_t n = 1;
	for (int p = 0; p < count; p++)
		for (int i = 0; i < places[p]->n_hosts; i++) {
			const char *host = places[p]->hosts[i],
			           *end = host[0] == '[' ? strchr(host, ']') : host;
			const char *colon = end ? strchr(end, ':') : NULL;
			ports[n++] = colon ? (uint16_t)atoi(colon + 1) : STORE_PORT;
		}
	return confine_ports(ports, n, e);
}

int confine_forward(const struct store_place *place, const struct store_place *from, struct error *e)
{
	const struct store_place *const both[] = {place, from};
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
	int r = to_their_ports(both, 2, e);
	return r < 0 ? r : confine_loosely(places, sizeof places / sizeof *places, e);
}
