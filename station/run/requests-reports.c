/* The auditor's pages on their way to the board: they go through here part by part, and are neither read nor kept. One at a
 * time hands them over; who begins takes the place of whoever did before, and so does a board that started anew. */
#include <string.h>

#include "run/board.h"
#include "run/request.h"
#include "run/typing.h"

#define REPORTS_BYTES_MAX ((size_t)16 * 1024 * 1024) /* as the board takes them (board/reports.h) */
#define WAITS_FROM ((size_t)256 * 1024)              /* bytes that the board has not read yet */

static json_t *give_address(struct client *c, const json_t *q)
{
	struct error e = {0};
	char address[ADDRESS_MAX];
	if (typing_address(c->d, ROOM_DESK, TICKET_REPORTS, json_truth(q, "elsewhere"), address, &e) < 0)
		return answer_no(e.text);
	json_t *o = answer_yes();
	json_object_set_new(o, "address", json_string(address));
	return o;
}

/* What of it is the board's to know, a new reference. */
static json_t *for_board(const json_t *q)
{
	static const char *const keys[] = {"begin", "page", "part", "show"};
	json_t *o = json_object();
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
		if (json_object_get(q, keys[i]))
			json_object_set(o, keys[i], json_object_get(q, keys[i]));
	return o;
}

static json_t *hand_on(struct client *c, const json_t *q)
{
	struct daemon *d = c->d;
	size_t size = strlen(json_text(q, "part"));
	json_t *o = answer_yes();
	bool taken = child_unsent(d->board) < WAITS_FROM;
	json_object_set_new(o, "taken", json_boolean(taken));
	if (!taken)
		return o;
	if (json_truth(q, "begin")) {
		d->reports.from = c;
		d->reports.bytes = 0;
	}
	d->reports.bytes += size;
	board_say(d, "report", for_board(q));
	if (json_truth(q, "show"))
		d->reports.from = NULL;
	return o;
}

json_t *request_report(struct client *c, const json_t *q)
{
	struct daemon *d = c->d;
	if (json_truth(q, "address"))
		return give_address(c, q);
	if (!child_running(d->board))
		return answer_no("the reports cannot be shown: the board does not run: see [board] in "
		                 "station.ini, and the station's messages");
	if (!json_truth(q, "begin") && d->reports.from != c)
		return answer_no(
		    "the reports were not taken whole: somebody else began to hand over others, or "
		    "the board started anew: ask for them again");
	if (d->reports.bytes + strlen(json_text(q, "part")) > REPORTS_BYTES_MAX) {
		d->reports.from = NULL;
		return answer_no("the reports are longer than the 16 MiB that the board keeps: ask for one "
		                 "room with --room");
	}
	return hand_on(c, q);
}
