/* station.ini: which site this is, its rooms, its printer and its scanners. A fresh data folder runs on the
 * defaults: site BC, one room. Every setting has its comment in config/station.ini. */
#ifndef BANDTALLY_RUN_SETTINGS_H
#define BANDTALLY_RUN_SETTINGS_H

#include "base/error.h"
#include "count/station.h"

#define DRIVERS_MAX 16
#define HOSTS_MAX 8

struct driver_setting { /* [driver NAME]: a child that is started with the station */
	char name[33];
	char command[256]; /* program and arguments, separated by spaces */
	int32_t room;
};

struct elsewhere_setting { /* [board elsewhere]: the board on another machine, by TLS */
	int start;
	char address[46]; /* of this machine, in numbers */
	int port;
	char hosts[HOSTS_MAX][64]; /* names and addresses by which browsers call it */
	int n_hosts;
	char certificate[512], key[512], clients[512], revoked[512]; /* whole paths; revoked "": no list */
	int typing;                                                  /* 1: codes may be typed there */
};

struct hospital_setting { /* [hospital]: the store of all its stations */
	int start;
	char hosts[HOSTS_MAX][64]; /* name, name:port, [address]:port */
	int n_hosts;
	char database[64];
	char certificate[512], key[512], authority[512]; /* whole paths */
	int lists_hours;                                 /* older lists are said to be old */
};

struct sound_setting {
	int volume;               /* 0 to 100 */
	int quiet_from, quiet_to; /* minutes of the local day, both -1: never quiet */
	int speech;               /* 1: replies are spoken, where the browser has a voice */
};

struct settings {
	int site_said, number_said; /* 1: [site] letters, [station] number stand in the file */
	char printer[200]; /* queue name or ipp:// address; "" writes slips as PDF into the data folder */
	char paper[8];     /* roll80, a6, a5, a4 */
	int dpi;
	char labels_printer[200]; /* of the stores bench; "" writes its labels as PDF into the data folder */
	char labels_medium[40];   /* of labels.ini; "" a roll, 57 x 32 */
	int label_width_mm, label_height_mm; /* of the patient's label; 0 not said */
	int board;                           /* 1: start bandtally-board */
	int board_port;
	int board_typing;   /* 1: codes may be typed on its page, with a ticket */
	int board_open;     /* 1: it shows the count to all who reach it, 0: with a ticket */
	char telephone[64]; /* whom a patient calls, as it stands on the leaflet; "" none is named */
	char head[256];     /* folder of the record's head (record/head.h), a whole path; "" none is named */
	struct elsewhere_setting elsewhere;
	struct hospital_setting hospital;
	struct sound_setting sound;
	struct driver_setting drivers[DRIVERS_MAX];
	int n_drivers;
};

/* Fills settings and the station's site, rooms and policy from FOLDER/station.ini and FOLDER/policy.ini;
 * either may be absent. 0 or a negative errno with file, line and reason. */
int settings_read(struct settings *s, struct station *st, const char *folder, struct error *e);

/* The same from the files in `place`; paths in them that do not begin at the root lie in `folder` all the same. */
int settings_read_from(struct settings *s, struct station *st, const char *folder, const char *place,
                       struct error *e);

void settings_default(struct settings *s, struct station *st); /* as without any file */

/* 1 within the quiet hours, by the station's local clock at `wall_ms`; from the first minute, up to the last.
 */
int settings_quiet(const struct sound_setting *sound, int64_t wall_ms);

#endif
