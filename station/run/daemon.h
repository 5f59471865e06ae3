/* What the parts of the living daemon share: one struct, which main.c owns. Each part has its own header. */
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
	char device[256];       /* as its hello said */
	char uncertain[200];    /* what is not known of how it sends, "" nothing; stays until it is learned */
	char fault[200];        /* what is wrong with it now, "" nothing: in English */
	enum saying fault_says; /* the same as a sentence; SAY_NONE where there is none for it */
	int32_t fault_minute;   /* of the day, when it was told */
	int64_t fault_ms;       /* when a fault of it was last recorded */
	int32_t turned_away;    /* bad lines since then */
	int pictures;           /* as its hello said: it sends pictures when it is asked */
	struct {
		int64_t until_ms, asked_ms, last_ms; /* CLOCK_BOOTTIME; until: 0 not */
		int32_t room;
	} shown; /* on the station's own screen (run/shown.h) */
};

struct daemon;

/* How a device that was found is looked for again; hotplug.c gives it (run/hotplug.h). */
struct finder {
	int (*has)(struct daemon *d, const struct driver_child *dc); /* 1: its very device is still there */
	/* With its profile as it is now, or to learn one. 0, or -ENODEV where it is there no more. */
	int (*restart)(struct daemon *d, struct driver_child *dc, int learn);
};

struct daemon {
	struct core core;
	struct loop *loop;
	struct children children;
	struct driver_child drivers[DRIVERS_MAX];
	int n_drivers; /* those without a place are the last */
	struct child *board, *print;
	struct hospital *hospital;        /* NULL: the station works alone */
	int board_port, elsewhere_port;   /* as the board said; 0 not yet */
	char board_amiss[ERROR_TEXT_MAX]; /* what is wrong with it elsewhere, as it said; "" nothing */
	struct tickets tickets;
	struct pace typed[ROOMS_MAX]; /* by the room's place in the station */
	struct {
		struct buf bytes;       /* of a file that comes in parts */
		struct secret_hash who; /* of the cookie of the page that sends it */
	} file;
	struct {
		struct client *from; /* who hands the auditor's pages over now; NULL nobody */
		size_t bytes;        /* so far */
	} reports;
	int board_socket; /* that the board is handed, -1: it opens its own */
	struct hotplug *hotplug;
	const struct finder *finder; /* NULL: no device is found by itself */
	uint64_t shown;              /* core.changes that the board has been sent */
	int64_t board_seq;
	int snapping;           /* a turn of the snapshot is due */
	int copying;            /* a copy of the record is being made */
	struct client *clients; /* connections at the socket */
	struct groups groups;   /* whose members may ask for something there */
	struct outbox_entry {
		int32_t slip, copy; /* not seen yet, and not known to be on paper; 0 free */
		int32_t room;
		int sent;        /* the printer's program has it */
		int over;        /* that gave it up: not handed over again */
		enum saying why; /* it does not come, SAY_NONE nothing is known to be wrong */
		struct {
			int is; /* what the printer's program said last could not be kept: it is said again */
			enum slip_state state;
			int64_t cups;
		} unkept;
	} outbox[UNSEEN_MAX];
	struct label_job {
		int64_t first, last; /* of a printing of a bench, also of one before this start; 0 free */
		int32_t room;
		int unwanted;    /* none of them is open any more: the printer's program takes the job back */
		enum saying why; /* they do not come, SAY_NONE nothing is known to be wrong */
	} labels[PRINTINGS_MAX];
	int numbers_only;    /* whoever numbers labels now prints them as well */
	int32_t outbox_next; /* slips from this one down may wait without a place here; 0 none */
};

#endif
