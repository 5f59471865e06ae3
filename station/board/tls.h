/* TLS for the board elsewhere: who shows no certificate of its own is not spoken to.
 *
 * TLS 1.2 or 1.3. A client must show a certificate that one of the certificates in `clients` has signed, for
 * the use as a client, within its time, and that is on no list of revoked ones. Nothing of a connection is kept for a later one (no tickets, no
 * session cache), so that each is checked anew; nothing is negotiated a second time. Keys and certificates
 * are read before the sandbox closes; later the daemon hands them in.
 *
 * Who has shown no certificate yet has little time for it, and others of the same address (of the same network of
 * 64 bits, where it is IPv6) take his place: so a machine that opens connections and says nothing keeps nobody out but
 * itself.
 */
#ifndef BANDTALLY_BOARD_TLS_H
#define BANDTALLY_BOARD_TLS_H

#include <stdbool.h>

#include "base/error.h"
#include "base/pem.h"

struct bufferevent;
struct event_base;
struct evconnlistener;
struct tls;

#define TLS_CONNECTIONS_MAX 64  /* at one time; the others wait at the door, and cost the board nothing */
#define TLS_UNFINISHED_MAX 32   /* of them without a certificate yet; all walls come at once after a start */
#define TLS_UNFINISHED_OF_ONE 8 /* the same for one address */
#define TLS_HANDSHAKE_MS 3000   /* from its coming to the certificate */

/* Of the files' texts. NULL with `e` filled: which file, why, what to do. */
struct tls *tls_new(const struct pem_files *files, struct error *e);
/* The same with other texts. Connections whose client is not admitted any more are closed, and so are unfinished
 * handshakes. 0, or a negative errno with `e` filled; then all stays as it was. */
int tls_renew(struct tls *tls, const struct pem_files *files, struct error *e);
void tls_free(struct tls *tls); /* NULL is fine; connections that are still open keep what they need */

/* One connection that has been taken but says nothing yet; evhttp_set_bevcb() has this form, `tls` the
 * context. NULL where there is no memory: then the library speaks plain HTTP there, so tls_knows() must be
 * asked. */
struct bufferevent *tls_connection(struct event_base *base, void *tls);
/* True where this is a connection of ours whose client has shown its certificate. */
bool tls_knows(struct bufferevent *b);

/* From now on this door is closed while TLS_CONNECTIONS_MAX connections are open. NULL: not any more.
 * Borrowed. */
void tls_door(struct tls *tls, struct evconnlistener *door);

#endif
