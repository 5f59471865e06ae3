/* Whoever holds the file can make a chain that holds. What they cannot make are the seals: each way to forge them, and the
 * sentence that tells it. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "record/verify.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/sealed.h"

static struct error e;
static struct seal *ours, *theirs;

/* What an event is, in one letter; each but the seals is appended alone.
 *   a a mark in time   c the end of a case   k our key   t their key   x a key whose name is another's   b one that is none
 *   i the second incarnation   s our seal   f their seal   o our seal of another incarnation   l a seal that lies behind more */
static struct event event_of(char what)
{
	struct event ev = {.at = {.boot = 1, .boot_ms = 1, .wall_ms = 1795600800000}, .kind = EV_ALIVE};
	switch (what) {
	case 'c':
		ev.kind = EV_CASE_ENDED;
		ev.case_no = ev.room = 1;
		ev.what = END_RECONCILED;
		break;
	case 'k':
	case 't':
	case 'x':
	case 'b':
		ev.kind = EV_KEY;
		ev.key = *seal_key(what == 't' ? theirs : ours);
		if (what == 'x')
			snprintf(ev.key.kid, sizeof ev.key.kid, "%s", seal_key(theirs)->kid);
		if (what == 'b')
			snprintf(ev.key.x, sizeof ev.key.x, "none");
		break;
	case 'i':
		ev.kind = EV_INCARNATION;
		ev.n = 2;
		ev.what = INCARNATION_BEHIND;
		break;
	default:
		break;
	}
	return ev;
}

/* A seal of what stood `before` events ago. */
static void append_seal(struct record *r, char what, int before)
{
	struct event ev = event_of('a');
	struct chain at = {0};
	struct sealer by = {what == 'f' ? theirs : ours, what == 'o' ? 7 : 1};
	ev.kind = EV_SEALED;
	ev.ref = record_last(r, NULL) - before;
	assert_int_equal(record_hash_at(r, ev.ref, &at), 1);
	assert_int_equal(sealed_sign(&by, ev.ref + (what == 'n'), &at, ev.seal.jws), 0);
	if (what == 'h') { /* the hash of another */
		assert_int_equal(record_hash_at(r, ev.ref - 1, &at), 1);
		assert_int_equal(sealed_sign(&by, ev.ref, &at, ev.seal.jws), 0);
	}
	if (what == 'g')
		snprintf(ev.seal.jws, sizeof ev.seal.jws, "no.seal.");
	assert_int_equal(record_append(r, &ev, 1, &e), 0);
}

static void append(struct record *r, const char *events)
{
	for (const char *at = events; *at; at++) {
		struct event ev = event_of(*at);
		if (strchr("sfohng", *at))
			append_seal(r, *at, 0);
		else if (*at == 'l')
			append_seal(r, 's', 1);
		else
			assert_int_equal(record_append(r, &ev, 1, &e), 0);
	}
}

static void keep(void *context, const char *what)
{
	char *words = context;
	snprintf(words + strlen(words), 1000 - strlen(words), "%s\n", what);
}

enum known { NO_KEYS, OURS, BOTH, OURS_SINGLE };

static const struct {
	const char *events;
	enum known known;
	int each;          /* seal is looked at */
	const char *words; /* that are told; "" nothing is */
	int sealed_to;
} forged[] = {
    {"kacs", OURS, 0, "", 3},
    {"kacs", NO_KEYS, 0, "", 3},
    {"acac", NO_KEYS, 0, "", 0}, /* as before there were keys */
    {"kac", OURS, 0, "event 3 (case-ended) has no seal behind it", 0},
    {"kacca", OURS, 0, "event 3 (case-ended) has no seal behind it", 0},
    {"kacf", OURS, 0, "event 4 (sealed) is not signed by any key of this station", 0},
    {"kacg", OURS, 0, "event 4 (sealed) is not signed by any key of this station", 0},
    {"kacf", BOTH, 0, "event 4 (sealed) is signed by another key than the record names", 0},
    {"kach", OURS, 0, "event 4 (sealed) signs something else than the record holds", 0},
    {"kacn", OURS, 0, "event 4 (sealed) signs something else than the record holds", 0},
    {"kaco", OURS, 0, "event 4 (sealed) is of another incarnation", 0},
    {"kacsics", OURS, 0, "event 7 (sealed) is of another incarnation", 3},
    {"kacsi", OURS, 0, "", 3},
    {"kacl", OURS, 0, "event 4 (sealed) does not stand behind what it seals", 2},
    {"tacf", OURS, 0, "is not among those of this station", 0},
    {"kacstacf", BOTH, 0, "", 7}, /* a station that got another key */
    {"kacskacs", OURS, 0, "", 7}, /* each start tells its key */
    {"kacfkacs", OURS, 0, "", 7}, /* the last of a stretch vouches for all before it */
    {"kacfkacs", OURS, 1, "event 4 (sealed) is not signed by any key", 7},
    {"kacftacf", BOTH, 0, "event 4 (sealed) is signed by another key than the record names", 7},
    {"xacs", BOTH, 0, "event 1 (key) names a key that is none", 0},
    {"bacs", OURS, 0, "event 1 (key) names a key that is none", 3},
    {"acs", OURS, 0, "the record names no key", 0},
    {"aca", OURS_SINGLE, 0, "", 0},
};

static void each_way_to_forge_a_seal_is_told(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof forged / sizeof *forged; i++) {
		char folder[FOLDER_MAX], words[1000] = "";
		struct record *r = NULL;
		struct keys keys = {.single = forged[i].known == OURS_SINGLE};
		struct verified v;
		struct verify_how how = {.keys = forged[i].known == NO_KEYS ? NULL : &keys,
		                         .each_seal = forged[i].each,
		                         .parts = 1,
		                         .found = keep,
		                         .context = words};
		keys_add(&keys, seal_key(ours));
		if (forged[i].known == BOTH)
			keys_add(&keys, seal_key(theirs));
		folder_make(folder);
		assert_int_equal(record_open(&r, folder, &e), 0);
		append(r, forged[i].events);
		assert_int_equal(record_verify_all(r, &how, &v, &e), 0);
		if (!strstr(words, forged[i].words) || !*words != !*forged[i].words ||
		    v.sealed_to != forged[i].sealed_to)
			fail_msg("%s (%d): sealed to %d, and '%s'", forged[i].events, (int)i,
			         (int)v.sealed_to, words);
		assert_int_equal(v.incarnation, strchr(forged[i].events, 'i') ? 2 : 1);
		record_close(r);
		folder_remove(folder);
	}
}

static int make_keys(void **state)
{
	char folder[FOLDER_MAX];
	(void)state;
	for (int i = 0; i < 2; i++) {
		folder_make(folder);
		if (seal_open(i ? &theirs : &ours, folder, &e) < 0)
			return -1;
		folder_remove(folder);
	}
	return 0;
}

static int drop_keys(void **state)
{
	(void)state;
	seal_close(ours);
	seal_close(theirs);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(each_way_to_forge_a_seal_is_told),
	};
	return cmocka_run_group_tests(tests, make_keys, drop_keys);
}
