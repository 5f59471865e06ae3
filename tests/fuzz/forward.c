/* Fuzzing the program that goes to a hospital's store, between the station and a store that both say anything: each line of
 * the bytes comes down the station's pipe, but that one which begins with 's' says what the store will answer, a byte a
 * question. Time passes only where the program waits, by as much.
 *
 * Whatever comes: an event is told to the station as kept only where the store has just answered so; every entry of the
 * lists reaches it; every line is JSON of one word; no question comes while a batch is on its way; and the program ends with
 * the station.
 */
#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/json.h"
#include "forward/sender.h"
#include "tests/fuzz/fuzz.h"

#define ROUNDS_A_LINE 40 /* of waiting for nothing; then the next line comes all the same */
#define STEPS_MAX 4000   /* rounds after the last line, where it must have ended */

static struct {
	const uint8_t *at, *end; /* lines that are to come */
	const uint8_t *answers;  /* of the store, a byte each */
	size_t n_answers;
	int to_program, from_program;  /* pipes */
	int64_t now_ms, rounds, steps; /* rounds: of waiting; steps: those of them behind the last line */
	int on_its_way;                /* a batch is */
	struct store_at answered;      /* kept, as the store has said last */
	int given, passed_on;          /* entries of the lists */
	char open;
} rig;

/* --- what it says --- */

static void look_at_line(const char *line, size_t size)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *o = json_read(line, size, &e);
	must(json_is_object(o) && json_object_size(o) == 2 && json_number(o, "v", 0) == 1,
	     "a line that is none");
	const json_t *kept = json_object_get(o, "kept"), *want = json_object_get(o, "want");
	rig.passed_on += json_object_get(o, "list") != NULL;
	must(!kept || (rig.answered.seq == json_number(kept, "seq", -1) &&
	               strcmp(rig.answered.hash, json_text(kept, "hash")) == 0),
	     "an event is told as kept that the store did not say it keeps");
	must(!want || (json_number(want, "after", -1) >= 0 &&
	               json_number(want, "to", -1) > json_number(want, "after", 0)),
	     "events are wanted that cannot be");
}

static void hear(void)
{
	static struct buf said;
	char part[65536], *end;
	ssize_t n;
	while ((n = read(rig.from_program, part, sizeof part)) > 0)
		must(buf_add(&said, part, (size_t)n) == 0, "no memory");
	while (said.size && (end = memchr(said.data, '\n', said.size))) {
		look_at_line(said.data, (size_t)(end - said.data));
		buf_drop(&said, (size_t)(end - said.data) + 1);
	}
	must(said.size == 0, "half a line");
}

/* --- where it waits --- */

static void next_line(void)
{
	const uint8_t *stop = memchr(rig.at, '\n', (size_t)(rig.end - rig.at)), *line = rig.at;
	size_t size = (size_t)((stop ? stop : rig.end) - line);
	rig.at += size + (stop != NULL);
	if (size && *line == 's') {
		rig.answers = line + 1;
		rig.n_answers = size - 1;
	} else {
		must(write(rig.to_program, line, size) == (ssize_t)size &&
		         write(rig.to_program, "\n", 1) == 1,
		     "no pipe");
	}
}

int __wrap_poll(struct pollfd *fds, nfds_t count, int ms);
int __real_poll(struct pollfd *fds, nfds_t count, int ms);

int __wrap_poll(struct pollfd *fds, nfds_t count, int ms)
{
	hear();
	rig.now_ms += ms > 0 ? ms : ms < 0 ? 1000 : 0;
	rig.rounds++;
	if (rig.at < rig.end && (ms != 0 || rig.rounds % ROUNDS_A_LINE == 0))
		next_line();
	else if (rig.at == rig.end && ++rig.steps == ROUNDS_A_LINE)
		close(rig.to_program);
	must(rig.steps < STEPS_MAX, "it does not end with the station");
	return __real_poll(fds, count, 0);
}

struct instant __wrap_clock_now(void);
struct instant __wrap_clock_now(void)
{
	return (struct instant){.boot_ms = rig.now_ms, .wall_ms = rig.now_ms};
}

/* --- a store that is none --- */

static unsigned answer(void)
{
	if (!rig.n_answers)
		return 0;
	rig.n_answers--;
	return *rig.answers++;
}

/* 0, or what went wrong. */
static int may_fail(unsigned byte, struct store_fault *f)
{
	if (byte < 0xf0)
		return 0;
	*f = (struct store_fault){.word = FORWARD_OTHER};
	snprintf(f->why, sizeof f->why, "the store says %x", byte);
	return -EIO;
}

static void some_event(unsigned byte, struct store_at *at)
{
	*at = (struct store_at){.seq = byte >> 3, .timeline = (int32_t)(byte & 3)};
	snprintf(at->server, sizeof at->server, "%u", byte & 1);
	memset(at->hash, '0' + (int)(byte & 7), LINE_HASH);
}

static enum store_status some_status(unsigned byte)
{
	return (enum store_status)(STORE_OK + byte % STORE_BEHIND);
}

static void one_question(void)
{
	must(rig.open, "a store is asked that is closed");
	must(!rig.on_its_way, "a question while a batch is on its way");
}

int store_open(struct store **out, const struct store_place *place, struct store_fault *f)
{
	must(!rig.open && place->first < place->n_hosts, "a second connection");
	int n = may_fail(answer(), f);
	if (n < 0)
		return n;
	rig.open = 1;
	*out = (struct store *)&rig.open;
	return 0;
}

void store_close(struct store *s)
{
	if (s)
		rig.open = 0;
	rig.on_its_way = 0;
}

int store_socket(const struct store *s)
{
	(void)s;
	return -1;
}

int store_writing(const struct store *s)
{
	(void)s;
	return 0;
}

int store_say_hello(struct store *s, const struct store_station *who, struct store_hello *out,
                    struct store_fault *f)
{
	unsigned byte = answer();
	(void)s;
	(void)who;
	one_question();
	*out =
	    (struct store_hello){.status = some_status(byte), .clock_off_ms = (int64_t)(byte & 0x10) * 10000};
	some_event(answer(), &out->last);
	snprintf(out->incident, sizeof out->incident, "%s", byte & 0x20 ? "two stations" : "");
	return may_fail(byte, f);
}

int store_common(struct store *s, int32_t number, const int64_t *seqs, const char (*hashes)[LINE_HASH + 1],
                 int count, int64_t *found, struct store_fault *f)
{
	unsigned byte = answer();
	(void)s;
	(void)number;
	one_question();
	for (int i = 0; i < count; i++)
		must(strlen(hashes[i]) == LINE_HASH, "a hash that is none");
	must(count >= 0 && count <= HASHES_MAX, "too many hashes");
	*found = count ? seqs[byte % (unsigned)count] : 0;
	return may_fail(byte, f);
}

int store_begin(struct store *s, const struct store_station *who, int64_t seq, const char *hash,
                enum store_status *status, struct store_fault *f)
{
	unsigned byte = answer();
	(void)s;
	(void)who;
	one_question();
	must(seq >= 0 && strlen(hash) == LINE_HASH, "an incarnation that begins nowhere");
	*status = some_status(byte);
	return may_fail(byte, f);
}

int store_tell_lost(struct store *s, const struct store_station *who, const struct store_at *kept,
                    struct store_fault *f)
{
	(void)s;
	(void)who;
	(void)kept;
	one_question();
	return may_fail(answer(), f);
}

int store_append(struct store *s, const struct store_station *who, const struct queue *q, size_t count,
                 size_t texts, size_t hashes, struct store_fault *f)
{
	(void)s;
	(void)who;
	one_question();
	must(count > 0 && count <= q->count && texts <= q->texts.size && hashes <= q->hashes.size,
	     "more is sent than there is");
	int n = may_fail(answer(), f);
	rig.on_its_way = n == 0;
	return n;
}

static int an_append(struct store_append *out, struct store_fault *f)
{
	unsigned byte = answer();
	*out = (struct store_append){.status = some_status(byte)};
	some_event(answer(), &out->last);
	if (byte < 0xf0 && out->status == STORE_OK)
		rig.answered = out->last;
	return may_fail(byte, f);
}

int store_answer(struct store *s, struct store_append *out, struct store_fault *f)
{
	(void)s;
	must(rig.on_its_way, "an answer to nothing");
	if (rig.n_answers && *rig.answers == 's') { /* not yet */
		answer();
		return STORE_NOT_YET;
	}
	rig.on_its_way = 0;
	int n = an_append(out, f);
	return n < 0 ? n : STORE_CAME;
}

int store_skip(struct store *s, const struct store_station *who, int64_t after, const struct store_at *to,
               struct store_append *out, struct store_fault *f)
{
	(void)s;
	(void)who;
	(void)to;
	one_question();
	must(after >= 0, "a stretch that begins nowhere");
	return an_append(out, f);
}

enum forward_word store_why_slow(struct store *s, const struct store_place *place)
{
	(void)s;
	(void)place;
	return answer() & 1 ? FORWARD_SLOW : FORWARD_STANDBY;
}

int store_lists(struct store *s, int32_t number, int64_t after, store_entry_fn each, void *context,
                int64_t *last, struct store_fault *f)
{
	static const char *const bodies[] = {"{\"line\":\"BAND\"}", "{", "", "[1]", "{\"number\":7.5}"};
	unsigned byte = answer();
	(void)s;
	(void)number;
	one_question();
	*last = byte >> 2;
	for (unsigned i = 0; i < byte % 4; i++, rig.given++)
		each(context, &(struct store_entry){.version = after + 1 + i,
		                                    .origin = "store",
		                                    .kind = "recall",
		                                    .body = bodies[answer() % 5]});
	int n = may_fail(byte, f);
	return n < 0 ? n : (int)(byte % 4);
}

int store_took(struct store *s, int32_t number, int64_t version, struct store_fault *f)
{
	(void)s;
	(void)number;
	(void)version;
	one_question();
	return may_fail(answer(), f);
}

int store_has_news(struct store *s, struct store_fault *f)
{
	unsigned byte = answer();
	(void)s;
	one_question();
	int n = may_fail(byte, f);
	return n < 0 ? n : (int)(byte >> 2 & 1);
}

/* --- a run --- */

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static const struct store_place place = {.hosts = {"a", "b"}, .n_hosts = 2};
	int in[2], out[2];
	if (size > 16384)
		return 0;
	must(pipe(in) == 0 && pipe2(out, O_NONBLOCK) == 0, "no pipes");
	memset(&rig, 0, sizeof rig);
	rig.at = data;
	rig.end = data + size;
	rig.to_program = in[1];
	rig.from_program = out[0];
	rig.now_ms = 1000000;
	fuzz_quiet();
	int n = sender_run(&place, in[0], out[1]);
	fuzz_aloud();
	hear();
	must(n == 0 && !rig.open, "it did not end in order");
	must(rig.given == rig.passed_on, "an entry of the lists was lost");
	close(in[0]);
	close(out[0]);
	close(out[1]);
	return 0;
}
