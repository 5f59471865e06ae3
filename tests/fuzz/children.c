/* Fuzzing the pipes that end in the daemon: each line of the bytes is said by one of its children to a whole station
 * (station-rig.h). Its first letter is who says it: B the board, P the printer's program, H the hospital's, 1 a driver that
 * station.ini names, 2 one that was found and can learn; "!" behind the letter and the child ends and starts again, "-" and
 * its line was too long; 64 times 'h' stand for the hash of event 3. A line that begins with '{' is a request at the socket, so that there is something to speak of.
 *
 * Whatever comes: what the daemon says to a child is one line of JSON that fits the child's reader; the hospital's program is
 * told who the station is whenever it starts; and the station can follow what it stored.
 */
#include <errno.h>

#include "base/json.h"
#include "run/board-program.h"
#include "run/board.h"
#include "run/driver-children.h"
#include "run/hospital.h"
#include "run/outbox.h"
#include "run/practice-slips.h"
#include "run/practice.h"
#include "run/typing.h"
#include "tests/fuzz/fuzz.h"
#include "tests/fuzz/station-rig.h"

#define INPUT_MAX 8192
#define CHILDREN_MAX 16
#define TOLD_MAX (1u << 20) /* a line to the printer's program; the others' are shorter still */
#define COOKIE "cookiecookiecookiecookiecookiecookiecookieA"
#define STORES_COOKIE "STORESTORESTORESTORESTORESTORESTORESTORESTOR"
#define TICKET "ticket-ticket-ticket-ticket-ticket-ticketBB"

/* --- children that are none: in the place of run/supervise.c --- */

struct child {
	const struct child_calls *calls;
	void *context;
	char name[32];
	size_t line_max;
	int used, running;
	int told; /* lines since it started */
};

static struct child all_children[CHILDREN_MAX];

int child_start(struct child **out, struct children *all, char *const *argv, size_t line_max, int talks,
                int handed, const struct child_calls *calls, void *context)
{
	(void)all;
	(void)talks;
	(void)handed;
	struct child *c = all_children;
	while (c < all_children + CHILDREN_MAX && c->used)
		c++;
	rig_must(c < all_children + CHILDREN_MAX, "more children than anybody started");
	*c =
	    (struct child){.calls = calls, .context = context, .line_max = line_max, .used = 1, .running = 1};
	snprintf(c->name, sizeof c->name, "%s", argv[0]);
	*out = c;
	return 0;
}

void child_ask(struct child *c, int (*wanted)(void *context, struct child *c))
{
	(void)wanted;
	rig_must(c->used, "a child that is gone is asked about");
}

void child_free(struct child *c)
{
	if (c)
		c->used = 0;
}

/* What is said to it is of no matter: only what it says. */
void child_signal(const struct child *c, int signal_number)
{
	(void)c;
	(void)signal_number;
}

int child_running(const struct child *c)
{
	return c && c->used && c->running;
}

size_t child_unsent(const struct child *c)
{
	(void)c;
	return 0;
}

int child_send(struct child *c, const char *line, size_t size)
{
	struct error e = {0};
	if (!child_running(c))
		return -EPIPE;
	rig_must(size > 1 && size <= TOLD_MAX && memchr(line, '\n', size) == line + size - 1,
	         "a child is told half a line");
	_cleanup_(json_drop) json_t *o = json_read(line, size - 1, &e);
	rig_must(json_is_object(o), "a child is told what is no JSON");
	c->told++;
	return 0;
}

void children_wait(struct children *all)
{
	(void)all;
}

void children_bury(const struct children *all)
{
	(void)all;
}

/* --- one of them speaks --- */

static struct child *who(char letter)
{
	static const struct {
		char letter;
		const char *name;
	} names[] = {{'B', "bandtally-board"},
	             {'P', "bandtally-print"},
	             {'H', "bandtally-forward"},
	             {'1', "scan-named"},
	             {'2', "scan-found"}};
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		for (int k = 0; k < CHILDREN_MAX && names[i].letter == letter; k++)
			if (all_children[k].used && strcmp(all_children[k].name, names[i].name) == 0)
				return &all_children[k];
	return NULL;
}

static void begins(struct child *c)
{
	c->running = 1;
	c->told = 0;
	if (c->calls->started)
		c->calls->started(c->context, c);
	rig_must(c->told || strcmp(c->name, "bandtally-forward") != 0,
	         "the hospital's program is not told who the station is");
}

static void ends(struct child *c)
{
	c->running = 0;
	if (c->calls->ended)
		c->calls->ended(c->context, c, 0);
	if (c->used)
		begins(c);
}

/* The hash of an event that is there, which no input could hold. */
static void put_hash(const struct daemon *d, char *line, size_t size)
{
	struct chain chain;
	char hex[2 * CHAIN_BYTES + 1], wanted[2 * CHAIN_BYTES];
	memset(wanted, 'h', sizeof wanted);
	char *at = memmem(line, size, wanted, sizeof wanted);
	if (!at || record_hash_at(d->core.record, 3, &chain) != RECORD_FOUND)
		return;
	chain_hex(&chain, hex);
	memcpy(at, hex, sizeof wanted);
}

static void says(const struct daemon *d, struct child *c, const char *line, size_t size)
{
	char *copy = malloc(size + 1); /* as a stream gives it: followed by a NUL, and no more */
	rig_must(copy != NULL, "no memory");
	memcpy(copy, line, size);
	copy[size] = 0;
	put_hash(d, copy, size);
	if (size <= c->line_max)
		c->calls->line(c->context, c, copy, size);
	free(copy);
}

static void each_line(struct daemon *d, int fd, const char *line, size_t size)
{
	struct child *c = size ? who(*line) : NULL;
	if (size && *line == '{')
		rig_ask(d, fd, line, size);
	if (!c)
		return;
	if (size == 2 && line[1] == '!')
		ends(c);
	else if (size == 2 && line[1] == '-')
		c->calls->line(c->context, c, NULL, 0);
	else
		says(d, c, line + 1, size - 1);
	rig_turn(d);
}

/* --- a station with all of them --- */

static int has_device(struct daemon *d, const struct driver_child *dc)
{
	(void)d;
	(void)dc;
	return 1;
}

static int start_found(struct daemon *d, struct driver_child *dc, int learn)
{
	char *words[] = {"scan-found", NULL};
	(void)dc;
	return driver_add(d,
	                  &(struct driver_place){.name = "found",
	                                         .node = "/dev/input/event7",
	                                         .syspath = "/sys/none",
	                                         .profile = "/nonexistent/found.profile",
	                                         .room = 2,
	                                         .learning = learn},
	                  words);
}

/* Always the same ones, so that an input can name them. */
static void let_in(struct tickets *t)
{
	t->tickets[0] = (struct grant){.hash = secret_hash(TICKET), .until_ms = INT64_MAX, .room = 2};
	t->cookies[0] = (struct grant){.hash = secret_hash(COOKIE), .until_ms = INT64_MAX, .room = 1};
	t->cookies[1] = (struct grant){.hash = secret_hash(STORES_COOKIE), .until_ms = INT64_MAX, .room = 3};
}

static void begin(struct daemon *d)
{
	static const struct finder finder = {has_device, start_found};
	memset(all_children, 0, sizeof all_children);
	d->board_socket = -1;
	d->finder = &finder;
	rig_must(board_start(d) == 0 && outbox_start(d) == 0 && hospital_start(d) == 0 &&
	             drivers_start(d) == 0 && start_found(d, NULL, 0) == 0,
	         "a child is not started");
	let_in(&d->tickets);
	for (int i = 0; i < CHILDREN_MAX; i++)
		if (all_children[i].used)
			begins(&all_children[i]);
}

static void end(struct daemon *d)
{
	drivers_stop(d);
	outbox_stop(d);
	board_stop(d);
	hospital_stop(d);
	for (int i = 0; i < CHILDREN_MAX; i++)
		rig_must(!all_children[i].used, "a child is left behind");
	buf_free(&d->file.bytes);
}

static void second(struct daemon *d)
{
	practice_tick(&d->core);
	practice_slips_look(d);
	drivers_look(d);
	typing_look(d);
	board_show(d);
	board_alive(d);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static const struct rig_parts parts = {
	    .settings = "[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n"
	                "[room 3]\nname = Stores\nkind = stores\n[board]\nstart = yes\n"
	                "[driver named]\ncommand = scan-named\nroom = 1\n"
	                "[hospital]\nstart = yes\nhosts = db\ncertificate = c\nkey = k\nauthority = a\n",
	    .second = second,
	    .begin = begin,
	    .end = end,
	    .may_be_doubted = 1};
	if (size <= INPUT_MAX)
		rig_run(&parts, each_line, (const char *)data, size);
	return 0;
}
