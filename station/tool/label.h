/* What the files of `bandtally label` share. A document goes to bandtally-print, which stands beside this program. */
#ifndef BANDTALLY_TOOL_LABEL_H
#define BANDTALLY_TOOL_LABEL_H

#include "base/error.h"
#include "base/json.h"
#include "code/own-codes.h"
#include "tool/words.h"
#include "words/language.h"

#define LABEL_OPTIONS "pdf= printer= room= line= lot= expiry= count= list dpi= first= media="
extern const char label_usage[];

struct label_room {
	int number;
	const char *name;                 /* borrowed from the status */
	bool alone;                       /* a room of a single operator */
	bool camera;                      /* a camera scans for it */
	bool stores;                      /* a stores bench */
	char language[LANGUAGE_CODE_MAX]; /* of its papers */
};

/* The station's status: its site, rooms, scanners. A new reference, NULL with `e`. */
json_t *label_status(struct error *e);
/* The room of that number, 0 the first: 0 or -ENOENT with `e`. */
int label_room_of(const json_t *status, int number, struct label_room *room, struct error *e);

json_t *label_document(const char *kind, const char *site);
/* `code` with the site's letters; "" where its fields do not fit. */
void label_code(char out[OWN_CODE_MAX], const char *site, struct own_code code);
/* Prints the document, whose reference is taken, where --pdf or --printer say; with --list drops it. The exit code. */
int label_print(const struct words *w, json_t *document);

/* What `label` prints beside pack labels: its function, its name, whether it is of a room, and its line in the usage. A
 * further paper is its function in a file of this folder and a row here. */
/* clang-format off */
#define LABEL_PAPERS(X) \
	X(label_digits, "digits", true, "room list pdf printer", \
	  "digits       a hand or foot a page, each digit's code under its picture\n") \
	X(label_cards, "cards", true, "room list pdf printer", \
	  "cards        the answer cards that this room's kind needs, a page an occasion\n") \
	X(label_badges, "badges", false, "list pdf printer", \
	  "badges       of all staff\n") \
	X(label_paper_sheets, "paper-sheet", true, "room first count list pdf printer", \
	  "paper-sheet  numbered count sheets to fall back on: ten in each room, where the team finds them in the dark.\n" \
	  "             Afterwards the code on a sheet opens its entry; one that was not used is entered as cancelled\n") \
	X(label_briefing, "briefing", true, "room pdf printer", \
	  "briefing     the room's teaching sheet, to hang where patients cannot read it\n") \
	X(label_practice, "practice", true, "room list pdf printer", \
	  "practice     three exercises, and the set of codes that count nothing: keep it out of a room with a patient\n") \
	X(label_leaflet, "leaflet", false, "pdf printer", \
	  "leaflet      what a patient takes home, with the telephone number of station.ini\n") \
	X(label_scanner_check, "scanner-check", false, "pdf printer", \
	  "scanner-check  the sheet from which the station learns how a scanner sends\n")
/* clang-format on */

/* Each prints its paper where the words say. `room`: NULL where the paper is of none. The exit code. */
#define X(print, name, of_room, options, line)                                                               \
	int print(const struct words *w, const json_t *status, const struct label_room *room);
LABEL_PAPERS(X)
#undef X

/* The document of a stores bench's cards; with `list` each is printed as a line. A new reference. */
json_t *label_stores_cards(const json_t *status, const struct label_room *room, const struct language *l,
                           bool list);
/* One card of a room as the document has it; `then`: what is scanned beside it that is no card, or "". With `list` it is
 * printed as a line. */
json_t *label_card(const json_t *status, const struct label_room *room, const struct language *l, int meaning,
                   const char *then, bool list);
/* Says in which language the paper speaks; English needs no word. */
void label_put_language(json_t *doc, const char *language);

#endif
