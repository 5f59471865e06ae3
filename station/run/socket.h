/* The socket: requests of the command. One JSON object a line, one answer a line:
 *   {"do":"scan","code":…,"room":1,"scanner":"keyed","late":true}   {"do":"type","room":1,"text":…}
 *   {"do":"sheet","room":1}  {"do":"status"}  {"do":"case","case":12}
 *   {"do":"cases","after":n}: some of them, and in the answer the "after" of the next page where there is one
 *   {"do":"catalogue","csv":…,"preview":true,"whole":true}  {"do":"lines"}  {"do":"staff-file","csv":…,"preview":true}
 *   {"do":"staff","name":…,"kind":1,"registered":true,"number":7}: count/team.h; no number: the next  {"do":"withdraw","number":7}
 *   {"do":"list-staff"}
 *   {"do":"quarantine","line":…,"lot":…,"why":…}  {"do":"release","line":…,"lot":…,"by":1,"and":2}: badges of two people
 *   {"do":"stock","line":…,"lot":…} or, of all, "text":…,"only":… (stock/bench-view.h): at most 200, and how many "more"
 *   {"do":"recall","line":…,"lot":…}  {"do":"used","line":…,"lot":…,"since":20280331}
 *   {"do":"shortfalls","since":20280331}: what trays lack, and what was found (run/stock-lists.h)
 *   {"do":"bench","room":9,"steps":[…]}: what is scanned and typed there (run/stock-steps.h); no room: the first bench
 *   {"do":"label","line":…,"lot":…,"expiry":…,"count":n,"medium":…,"try":true: nothing is numbered}
 *   {"do":"labels-write"}: the numbers that were given out as a signed list; {"do":"labels-take","list":…,"key":…}: another
 *   station's (run/labels-list.h)
 *   {"do":"board","room":1,"elsewhere":true} or "desk":true or "stores":true: an "address" with a ticket (run/typing.h)
 *   {"do":"report","begin":true}, then {"do":"report","page":…,"part":…} each, then {"do":"report","show":true}: the auditor's
 *   pages, for the board (board/reports.h), at most 16 MiB: {"taken":false} where it has too much to read, then the same
 *   again in a moment; {"do":"report","address":true,"elsewhere":true}: an "address" with a ticket for them
 *   {"do":"copy"}: of the record, a "file"; then perhaps {"do":"backed-up"} of it  {"do":"retry","slip":n}
 *   {"do":"settle","event":n,"what":…}: what was done about an event that somebody must deal with
 *   {"do":"audited","why":…,"case":n,"person":7}: somebody is to see people's names, or what a badge did, and why
 *   {"do":"keep","case":n,"on":true,"what":…}: the case must not leave the record, and what for; false: it may again, and why
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
