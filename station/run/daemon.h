/* The parts of the living daemon and what they share. */
#ifndef BANDTALLY_RUN_DAEMON_H
#define BANDTALLY_RUN_DAEMON_H

#include "run/core.h"
#include "run/loop.h"
#include "run/supervise.h"

struct driver_child {
	struct daemon *daemon;
	char name[33];
	int32_t room;
	struct child *child;
	char device[256];       /* as its hello said */
	char fault[200];        /* what is wrong with it now, "" nothing */
	int64_t fault_ms;       /* when a fault of it was last recorded */
	int32_t turned_away;    /* bad lines since then */
};

struct daemon {
	struct core core;
	struct loop *loop;
	struct driver_child drivers[DRIVERS_MAX];
	int n_drivers;
	struct child *board, *print;
	uint64_t shown;   /* core.changes that the board has been sent */
	int64_t board_seq;
	int copying;      /* a copy of the record is being made */
	struct outbox_entry {
		int32_t slip, copy; /* waits for the printer's program, 0 free */
		int sent;           /* was handed to it */
	} outbox[UNSEEN_MAX];
};

/* socket.c: requests of the command. One JSON object a line, one answer a line:
 *   {"do":"scan","code":…,"room":1,"scanner":"keyed","late":true}   {"do":"type","room":1,"text":…}
 *   {"do":"sheet","room":1}  {"do":"status"}  {"do":"case","case":12}  {"do":"cases"}
 *   {"do":"catalogue","lines":[…]}  {"do":"staff","staff":{…}}  {"do":"withdraw","number":7}  {"do":"list-staff"}
 *   {"do":"quarantine"|"release","line":…,"lot":…,"why":…}  {"do":"label","line":…,"lot":…,"expiry":…,"count":n}
 *   {"do":"lines"}  {"do":"copy","file":…}  {"do":"retry","slip":n}
 * Answers: {"ok":true,…} or {"ok":false,"error":"what: why: what to do"}. Who may do what goes by the peer's user
 * (root, or the daemon's own: everything) and groups bandtally-count, bandtally-stores, bandtally-audit. */
int socket_open(struct daemon *d, struct error *e);

/* drivers.c: the children of [driver …] in station.ini. */
int drivers_start(struct daemon *d);
void drivers_stop(struct daemon *d);

/* outbox.c: slips on their way to paper. */
int outbox_start(struct daemon *d);
void outbox_stop(struct daemon *d);
void outbox_stored(struct daemon *d, const struct event *events, int count);
int outbox_retry(struct daemon *d, int32_t slip, struct error *e); /* prints a further copy */

/* board.c: what the board is shown. */
int board_start(struct daemon *d);
void board_stop(struct daemon *d);
void board_show(struct daemon *d); /* sends what changed */
void board_alive(struct daemon *d);

#endif
