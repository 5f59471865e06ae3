/* Who may type at the page, and until when. A connection to the loopback address says nothing of its user, so the page
 * must show what only a member of the group could get at the socket.
 *
 * A ticket goes into an address, works once and within a minute, and is changed for a cookie. A cookie works for its room
 * and its group's rights for a day from when a page was last open with it, through restarts of the board and of the
 * station, but not into the next boot. Of both only the hash is kept, so nothing that is written here lets anybody in.
 *
 * Times are of CLOCK_BOOTTIME: no one can set it, and it ends with the boot as cookies do. One table a station; a plain
 * value of its owner.
 */
#ifndef BANDTALLY_RUN_TICKET_H
#define BANDTALLY_RUN_TICKET_H

#include <stdint.h>

#include "base/error.h"
#include "base/json.h"
#include "base/secret.h"

#define TICKET_LASTS_MS 60000
#define COOKIE_LASTS_MS (24 * 3600 * 1000)
#define TICKETS_MAX 16
#define COOKIES_MAX 64
#define ROOM_DESK 0 /* every room, to be seen only */

enum ticket_group {
	TICKET_COUNT,  /* bandtally-count: sees, and types in a room */
	TICKET_AUDIT,  /* bandtally-audit: sees */
	TICKET_REPORTS /* bandtally-audit: sees, and reads the auditor's pages (ROOM_DESK) */
};

struct grant { /* a ticket or a cookie */
	struct secret_hash hash;
	int64_t until_ms; /* 0: this place is free */
	int32_t room;
	enum ticket_group group;
};

struct tickets {
	struct grant tickets[TICKETS_MAX], cookies[COOKIES_MAX];
	int64_t written_ms; /* when the file last said until when cookies last */
};

/* A new ticket; where all places are taken the oldest gives way. 0 or a negative errno: then there is none. */
int ticket_give(struct tickets *t, int32_t room, enum ticket_group group, int64_t now_ms,
                char ticket[SECRET_LETTERS + 1]);

struct ticket_taken {
	int32_t room;
	enum ticket_group group;
	char cookie[SECRET_LETTERS + 1];
};

/* Takes the ticket away and gives a cookie for it; where all places are taken the one that ends first gives way. 0, or
 * -ENOENT where there is no such ticket now: one that never was, was used or is too old is the same. */
int ticket_take(struct tickets *t, const char *ticket, int64_t now_ms, struct ticket_taken *out);

/* Whether codes may be typed with it in that room now. */
int cookie_types(const struct tickets *t, const char *cookie, int32_t room, int64_t now_ms);

/* A page is open with the cookie of this hash: it lasts a day from now. 1 where the file should say so too. */
int cookie_renew(struct tickets *t, const struct secret_hash *hash, int64_t now_ms);

/* Forgets what is over. How many that were. */
int tickets_forget(struct tickets *t, int64_t now_ms);

/* What the board needs to know of them (board/cookies.h). NULL: no memory. */
json_t *tickets_told(const struct tickets *t);

/* The cookies in FOLDER/cookies, of this boot alone. Where the file is damaged or of another boot there are none; that
 * says nothing but that new tickets are needed. */
void cookies_read(struct tickets *t, const char *folder, const char *boot_id, int64_t now_ms);
/* 0 or a negative errno. It does not wait for the disk, since after a power cut none of them counts. */
int cookies_write(struct tickets *t, const char *folder, const char *boot_id, int64_t now_ms);

/* How often codes may be typed in a room. */
#define TYPED_A_SECOND 5
struct pace {
	int64_t at_ms[TYPED_A_SECOND];
	int next;
};
int pace_allows(struct pace *p, int64_t now_ms); /* 1: one more may come now, and is counted */

#endif
