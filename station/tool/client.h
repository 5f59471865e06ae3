/* The command's side of the station's socket: one request, one answer. */
#ifndef BANDTALLY_TOOL_CLIENT_H
#define BANDTALLY_TOOL_CLIENT_H

#include "base/error.h"
#include "base/json.h"

extern const char *client_folder; /* the data folder, --data */

/* Sends the request (its reference is taken) and reads the answer, a new reference with "ok" true; NULL with
 * `e` where the station is not running, does not answer within 60 s, or says no (then e->code is -EPERM). */
json_t *client_ask(json_t *request, struct error *e);

/* The same, and the connection stays open for what lives as long as it (a copy of the record): *fd is the
 * caller's to close, -1 where NULL is returned. */
json_t *client_ask_holding(json_t *request, int *fd, struct error *e);

/* A further request on a connection that is held, with its answer as above; `fd` stays the caller's. */
json_t *client_ask_again(int fd, json_t *request, struct error *e);

/* Prints "bandtally: <sentence>" on stderr and returns EXIT_FAILED. */
int client_fail(const struct error *e);

/* One JSON value on a line, and a list of sentences behind their title. */
void print_json(const json_t *v);
void print_list(const char *title, const json_t *list);
void print_elsewhere(
    const json_t *view); /* of a room or of the station: reminders, and what is on in suspended cases */

/* What a slip of the status was made for: an end is called by no outcome, for its kind does not tell which. */
const char *slip_made_for(const json_t *slip);

/* A column of text: how many letters it has, not bytes, and the text with spaces up to so many and one more. */
int print_letters(const char *text);
void print_column(const char *text, int letters);

#endif
