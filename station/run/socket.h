/* The socket: requests of the command. One JSON object a line, one answer a line:
 *   {"do":"scan","code":…,"room":1,"scanner":"keyed","late":true}   {"do":"type","room":1,"text":…}
 *   {"do":"sheet","room":1}  {"do":"status"}  {"do":"case","case":12}
 *   {"do":"cases","after":n}: some of them, and in the answer the "after" of the next page where there is one
 *   {"do":"catalogue","lines":[…]}  {"do":"lines"}
 *   {"do":"staff","staff":{…}}  {"do":"withdraw","number":7}  {"do":"list-staff"}
 *   {"do":"quarantine","line":…,"lot":…,"why":…}  {"do":"release","line":…,"lot":…,"by":1,"and":2}: badges of two people
 *   {"do":"stock","line":…,"lot":…}  {"do":"recall","line":…,"lot":…}  {"do":"used","line":…,"lot":…,"since":20280331}
 *   {"do":"label","line":…,"lot":…,"expiry":…,"count":n}
 *   {"do":"board","room":1,"elsewhere":true} or "desk":true: an "address" with a ticket (run/typing.h)
 *    {"do":"copy"}, then perhaps {"do":"backed-up"} of it  {"do":"retry","slip":n}
 * A line has at most 64 KiB, of those who may send a catalogue 2 MiB; a user has at most eight connections at once.
 * Answers: {"ok":true,…} or {"ok":false,"error":"what: why: what to do"}. Who may do what goes by the peer's
 * user (root: everything) and groups bandtally-count, bandtally-stores, bandtally-audit: those that its process has, by the
 * numbers that the groups had at the start or at the last SIGHUP. A program that the station started, or that one of those
 * started, may ask for nothing, whatever its user (run/peer.h). Nor may the station's own user where it runs as a service; by
 * hand that is whoever started it, who may ask for everything.
 */
#ifndef BANDTALLY_RUN_SOCKET_H
#define BANDTALLY_RUN_SOCKET_H

#include "run/daemon.h"

int socket_open(struct daemon *d, struct error *e);

#endif
