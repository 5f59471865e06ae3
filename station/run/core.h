/* The heart of the daemon without its loop: a scan comes in, its events are durable, its reply goes out.
 *
 * Owns the station's state and the record. Everything that changes either goes through here.
 */
#ifndef BANDTALLY_RUN_CORE_H
#define BANDTALLY_RUN_CORE_H

#include "base/json.h"
#include "code/code.h"
#include "decide/decide.h"
#include "decide/halves.h"
#include "decide/reads.h"
#include "record/head.h"
#include "record/seal.h"
#include "record/store.h"
#include "run/settings.h"
#include "run/slip-proof.h"
#include "stock/bench.h"
#include "tell/day.h"
#include "words/languages.h"

#define RECENT_MAX 8
#define DISTRUST_MAX 2400

struct recent { /* the replies to the last scans of a room, for the board; a reminder is none */
	struct moment at;
	enum verdict verdict;
	char said[SAID_MAX]; /* in English */
	char told[SAID_MAX]; /* in the room's language, as it was then */
};

struct practice;

struct core {
	char folder[256];
	struct station station;
	struct languages languages; /* all that are installed, read at the start */
	struct stock stock;         /* of the same record */
	struct settings settings;
	struct record *record;
	struct seal *seal;
	struct outcome outcome;                      /* of the last scan */
	struct recent recent[ROOMS_MAX][RECENT_MAX]; /* newest first, by the room's place in the station */
	struct halves halves;
	struct reads reads; /* of the last seconds */
	struct event refused
	    [ROOMS_MAX]; /* the last refusal that was stored of each room, by its place in the station */
	struct guesses guesses;
	int silenced; /* how many of them the board was told of */
	struct day day;
	char boot_id[33];
	char head[HEAD_PLACE_MAX]; /* the folder where it is noted how far the record has come */
	struct noted noted;        /* what stands there; seq 0: nothing */
	int head_fault;            /* 0, or the negative errno for which it could not be noted */
	enum saying hospital_says; /* what is wrong on the way to the hospital's store; SAY_NONE nothing */
	char hospital_why[200];    /* what server or network said of it */
	struct elsewhere
	    *elsewhere;           /* what the hospital says was used at other stations; NULL: none is asked */
	enum saying lists_say;    /* that its lists are old, or never came; SAY_NONE they are fresh */
	int32_t lists_hours;      /* how old they are */
	char settings_fault[500]; /* "" or why other settings are used than those in the folder */
	enum saying settings_used; /* which, with that fault; SAY_NONE: those in the folder */
	char scanners_fault[500];  /* the same of scanners.ini */
	enum saying scanners_used;
	char labels_fault[500]; /* "" or what is wrong with labels.ini */
	char sense_fault[500];  /* "" or what of the settings cannot be meant */
	char site_was[3],
	    number_was[12]; /* "" or what they were, where the settings have other ones since this start */
	/* Why the station cannot be trusted now (rule 17); each "" or 0 when it can. Besides: the events that it could not
	 * follow when it started, until somebody dealt with them (station.h).
	 * stopped: it was told to stop while a case is open, and goes
	 * storage: why what was to be stored last could not be; over once something can
	 * damaged: a part of the record could not be read (record_damage()); until it is started again
	 * diverged: the event of its own record that it did not follow; until it is started again
	 * aside: where a record lies that could not be read; until it is taken away */
	struct {
		char storage[200], aside[320];
		int stopped, damaged;
		int64_t diverged;
		enum event_kind diverged_by;
	} doubt;
	unsigned waits;                       /* what of its machine waits (run/machine.c) */
	char distrust[DISTRUST_MAX];          /* all of them, in English (doubt.h) */
	uint64_t changes;                     /* counts what a viewer could see */
	struct snapshot_writer *snapshot;     /* that is being written, NULL none */
	int64_t snapshot_seq;                 /* of the last one that was begun */
	struct practice *practice[ROOMS_MAX]; /* by the room's place in the station (run/practice.h) */
	/* Called after events have become durable and were applied; may be NULL. */
	void (*stored)(void *context, const struct event *events, int count);
	void *context;
};

/* Opens folder, settings and record, rebuilds the state, and records the start. `head`: where it is noted how far the record
 * has come, unless the settings say where; NULL: head/ in the data folder. */
int core_open(struct core *c, const char *folder, struct error *e);
int core_open_noting(struct core *c, const char *folder, const char *head, struct error *e);
void core_close(struct core *c);

/* At the end, when nobody waits any more: the whole snapshot at once. */
void core_snapshot_last(struct core *c);

/* A snapshot, where so much was stored since the last that a start would take long: begins it, or does a turn of it. How
 * many ms until the next turn; 0 nothing is to be done. */
int32_t core_snapshot(struct core *c);

/* What is to be said of the settings, one after the other: from i = 0 on, how to go on, 0 none is left. Texts are the core's. */
int core_settings_say(const struct core *c, int i, struct say *out);

/* Looks whether labels.ini is sound now, and whether the settings can be meant (run/sense.h). */
void core_settings_look(struct core *c);

/* Whether somebody has dealt with a record that was kept aside, and whether this one is damaged. */
void core_look_aside(struct core *c);

struct scan {
	const char *scanner; /* whose it is; the daemon's name for it */
	int32_t room;        /* where that scanner belongs */
	const char *aim;     /* "" where it sends none */
	const char *data;
	size_t size;
	uint32_t flags;  /* EVENT_KEYED, EVENT_LATE */
	int64_t made_ms; /* CLOCK_BOOTTIME when it was made, for core_stored() */
};

/* One scan from beginning to end. The reply is valid until the next call. Where the record cannot be written,
 * nothing is taken, and the reply says so and says: count by hand (rules 12, 17). The same refusal again within a second
 * is replied to, and stored once: who scans or types without end must not fill the record. */
const struct reply *core_scan(struct core *c, const struct scan *scan);

/* Scans of one scanner that were stored somewhere before they came, in order, 1 to STORED_MAX: they are held until
 * the room has said whose they are (rule 17). lost: one more came that was too long. */
#define STORED_MAX 24
void core_stored(struct core *c, const struct scan *scans, int n, int lost);

/* Asks where scans are held and nothing is asked: a crash came between a YES and its last entry. */
void core_ask_stored(struct core *c);

/* Typed text that answers a question. */
const struct reply *core_typed(struct core *c, int32_t room, const char *text);

/* Something the room must read that no scan of it was decided on; it stands with the last scans. */
void core_tell(struct core *c, int32_t room, enum verdict verdict, const struct say *what);
/* The same of a reply to a scan of another room. */
void core_pass_on(struct core *c, int32_t room, struct moment at, const struct reply *reply);

/* Time passes. Returns the room to which a reminder was given, 0 when nothing was due. */
int32_t core_tick(struct core *c);

/* Stores events that no scan made: stores, staff, slips, faults. Time is filled in where it is zero, and the proof of a
 * slip's copy always. 0, or a negative
 * errno: -EINVAL and what station_fits() gives where they would not fit or not read back, and that is no reason to
 * distrust the station; else the record cannot be written, and the board says so. */
int core_store(struct core *c, struct event *events, int count, struct error *e);

/* Whether the room is a stores bench; and what comes next there. */
int core_is_bench(const struct core *c, int32_t room);
int32_t core_bench_room(const struct core *c); /* the first bench; 0 there is none */
void core_bench_next(const struct core *c, int32_t room, struct next *out);
/* yyyymmdd, of the station's day. */
int32_t core_today(const struct core *c);

struct moment core_now(const struct core *c);
const struct language *core_language(const struct core *c, int32_t room); /* NULL English */

const char *verdict_name(enum verdict verdict); /* as replies and views call it */
/* 1 within the quiet hours; never while the wall clock is known to be wrong. */
int core_quiet(const struct core *c);

/* The room whose place in the station is `index`; and the place of a room, -1 none. */
int core_room_index(const struct core *c, int32_t room);

#endif
