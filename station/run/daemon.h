/* The parts of the living daemon and what they share. */
#ifndef BANDTALLY_RUN_DAEMON_H
#define BANDTALLY_RUN_DAEMON_H

#include "run/core.h"
#include "run/groups.h"
#include "run/loop.h"
#include "run/supervise.h"
#include "run/ticket.h"

struct late_scan { /* of a batch that may still grow */
	char aim[4];
	char data[512]; /* longer codes are no pack, card or badge; they are not held */
	size_t size;
	int64_t made_ms; /* CLOCK_BOOTTIME */
};

struct driver_child { /* a scanner; its place stays when it is unplugged, so that what was lost is told */
	struct daemon *daemon;
	char name[33], base[33]; /* "hand-1-2", and "hand-1" as the settings call it */
	char node[256];          /* of the device, "" for one that station.ini starts */
	char syspath[300];       /* the very device: a node's name is given again to another */
	char profile[300];       /* file of its profile, "" none */
	int32_t home, room;      /* the room that the settings give it, and that it works for now (rule 18) */
	int learning;            /* it is reading the scanner-check sheet, into PROFILE.new */
	int unplaced;            /* listed, but for no one room of ours: no program, only its fault */
	int lost;                /* this device was told to be lost: once is enough */
	int said_why;            /* its program's last words were why it ends */
	struct late_scan batch[STORED_MAX];
	int n_batch, too_long; /* too_long: 1 where one of the batch was */
	int64_t last_scan_ms;  /* when the last scan was made, CLOCK_BOOTTIME; 0 none yet */
	struct child *child;
	char device[256];    /* as its hello said */
	char uncertain[200]; /* what is not known of how it sends, "" nothing; stays until it is learned */
	char fault[200];     /* what is wrong with it now, "" nothing */
	int64_t fault_ms;    /* when a fault of it was last recorded */
	int32_t turned_away; /* bad lines since then */
};

struct daemon {
	struct core core;
	struct loop *loop;
	struct children children;
	struct driver_child drivers[DRIVERS_MAX];
	int n_drivers; /* those without a place are the last */
	struct child *board, *print;
	struct hospital *hospital;      /* NULL: the station works alone */
	int board_port, elsewhere_port; /* as the board said; 0 not yet */
	struct tickets tickets;
	struct pace typed[ROOMS_MAX]; /* by the room's place in the station */
	int board_socket;             /* that the board is handed, -1: it opens its own */
	struct hotplug *hotplug;
	uint64_t shown; /* core.changes that the board has been sent */
	int64_t board_seq;
	int snapping;           /* a turn of the snapshot is due */
	int copying;            /* a copy of the record is being made */
	struct client *clients; /* connections at the socket */
	struct groups groups;   /* whose members may ask for something there */
	struct outbox_entry {
		int32_t slip, copy; /* not seen yet, and not known to be on paper; 0 free */
		int32_t room;
		int sent;          /* the printer's program has it */
		int over;          /* that gave it up: not handed over again */
		char trouble[200]; /* why it does not come, "" nothing is known to be wrong */
	} outbox[UNSEEN_MAX];
	int32_t outbox_next; /* slips from this one down may wait without a place here; 0 none */
};

/* socket.c: requests of the command. One JSON object a line, one answer a line:
 *   {"do":"scan","code":…,"room":1,"scanner":"keyed","late":true}   {"do":"type","room":1,"text":…}
 *   {"do":"sheet","room":1}  {"do":"status"}  {"do":"case","case":12}
 *   {"do":"cases","after":n}: some of them, and in the answer the "after" of the next page where there is one
 *   {"do":"catalogue","lines":[…]}  {"do":"lines"}
 *   {"do":"staff","staff":{…}}  {"do":"withdraw","number":7}  {"do":"list-staff"}
 *   {"do":"quarantine"|"release","line":…,"lot":…,"why":…}
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
int socket_open(struct daemon *d, struct error *e);

/* drivers.c: the children of [driver …] in station.ini. */
int drivers_start(struct daemon *d);
void drivers_stop(struct daemon *d);
void drivers_look(struct daemon *d); /* each second: a scanner check gives way to a case */

/* Starts one scanner, or ends it because its device has gone. `words` is the command. A name that is known
 * keeps its place; one that another device has now gets "-2", "-3"… behind it. 0 or negative errno. */
struct driver_place {
	const char *name, *node, *syspath, *profile; /* the last three "" where it has none */
	int32_t room;
	int learning;
};
int driver_add(struct daemon *d, const struct driver_place *at, char *const *words);
/* A device that is listed as a scanner but cannot be given to one room, until it is removed or added: a
 * fault, which the record has once for each plugging in. Room 0: not known. 0, or -ENOSPC. */
int driver_unplaced(struct daemon *d, const struct driver_place *at, const char *why);
void driver_remove(struct daemon *d, const char *node);
struct driver_child *driver_by_node(struct daemon *d, const char *node);

/* hotplug.c: scanners that udev and scanners.ini know, as they come and go. */
int hotplug_start(struct daemon *d, struct error *e);
void hotplug_stop(struct daemon *d);
int hotplug_restart(struct daemon *d, struct driver_child *dc, int learn); /* with its profile as it is now */
int hotplug_has(struct daemon *d, const struct driver_child *dc); /* 1: its very device is still there */

/* outbox.c: slips on their way to paper. */
int outbox_start(struct daemon *d);
void outbox_stop(struct daemon *d);
void outbox_stored(struct daemon *d, const struct event *events, int count);
void outbox_look(struct daemon *d); /* each second: finds slips that had no place, a few at a time */
int outbox_retry(struct daemon *d, int32_t slip, struct error *e); /* prints a further copy */

/* board.c: what the board is shown. */
int board_start(struct daemon *d);
void board_stop(struct daemon *d);
void board_show(struct daemon *d); /* sends what changed */
void board_alive(struct daemon *d);
void board_renew(struct daemon *d); /* hands it the files of the board elsewhere, read again */
void board_say(struct daemon *d, const char *key, json_t *value); /* one line; `value` is taken */

#endif
