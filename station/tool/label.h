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

int label_digits(const struct words *w, const json_t *status, const struct label_room *room);
int label_cards(const struct words *w, const json_t *status, const struct label_room *room);
/* The document of a stores bench's cards; with `list` each is printed as a line. A new reference. */
json_t *label_stores_cards(const json_t *status, const struct label_room *room, const struct language *l,
                           bool list);
/* One card of a room as the document has it; `then`: what is scanned beside it that is no card, or "". With `list` it is
 * printed as a line. */
json_t *label_card(const json_t *status, const struct label_room *room, const struct language *l, int meaning,
                   const char *then, bool list);
int label_badges(const struct words *w, const json_t *status);
int label_scanner_check(const struct words *w, const json_t *status);
/* Says in which language the paper speaks; English needs no word. */
void label_put_language(json_t *doc, const char *language);
int label_briefing(const struct words *w, const json_t *status, const struct label_room *room);
int label_leaflet(const struct words *w, const json_t *status);
int label_paper_sheet(const struct words *w, const json_t *status, const struct label_room *room, int first,
                      int count);

#endif
