/* audit: what an auditor needs. Works on a fresh copy of the record, or on any file that no station holds. */
#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "record/head.h"
#include "record/verify.h"
#include "tool/audit-record.h"
#include "tool/audit.h"
#include "tool/client.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char options[] = "file= key= slips= head= each-seal indexes";
static const char usage[] =
    "usage: bandtally audit verify [--file RECORD] [--slips FILE] [--head FILE] [--each-seal] [--indexes]\n"
    "                              every event, its number, its text and the chain of hashes; the file's "
    "pages,\n"
    "                              tables and triggers; the last seal of each key and incarnation; that each "
    "start, "
    "stop\n"
    "                              and end of a case has a seal\n"
    "       bandtally audit slip TEXT [--file RECORD]   whether the text of a slip's QR code was signed by "
    "this\n"
    "       bandtally audit slip --file SLIPS           station, and whether the record holds it; SLIPS and "
    "--slips:\n"
    "                                                   one text a line; '-' is stdin, and gives a row for "
    "each\n"
    "       bandtally audit report …                 what a month, quarter or year shows: see its --help\n"
    "       bandtally audit case CASE …              one case in time order: see its --help\n"
    "       bandtally audit trace …                  where a line, lot, item or badge was: see its --help\n"
    "       bandtally audit export …                 every event, or one case as HL7 FHIR R4: see its "
    "--help\n"
    "       bandtally audit sample COUNT …           slips or planned operations to look for: see its "
    "--help\n"
    "       bandtally audit archive …                what is old and over leaves the record: see its --help\n"
    "       bandtally audit keep CASE …              what must never leave it: see its --help\n"
    "       bandtally audit collect FOLDER …         copies of all stations' records from a hospital's "
    "store: "
    "see its --help\n"
    "       bandtally audit settle EVENT WHAT        somebody dealt with an event that stands on the board: "
    "one that\n"
    "                                                the station could not follow, another key, another "
    "record\n"
    "  --each-seal   looks at every seal, not only at the last ones, which vouch for those before them\n"
    "  --indexes     besides, whether the indexes, by which the station looks things up, agree with the "
    "events\n"
    "  --key FILE    the station's public keys, station.pub.json, kept elsewhere (default: that of the data "
    "folder, or\n"
    "                beside RECORD): it must be known whose record it is to be\n"
    "  --head FILE   the station's head.json: the record must have come as far, and hold what it names\n"
    "Without --file a running station is asked for a copy; otherwise the record in the data folder is read.\n"
    "Of each slip it says one of: signed and held; signed, but the record holds something else; not signed "
    "by any key\n"
    "of this station.\n"
    "Exit codes: 0 everything holds, each slip is signed and held; 1 something does not, or could not be "
    "looked at\n"
    "(the output says what); 2 wrong usage.\n"
    "example: bandtally audit verify --key /media/usb/station.pub.json\n"
    "         bandtally audit slip --file slips.txt | grep -v 'signed and held'\n";

/* What a start would do with it: each event may be as it was written, and yet not fit. It is followed while the chain is
 * looked at, by a handle of its own. */
struct following {
	struct record *r;
	pthread_t thread;
	int runs;
	int result;
	struct error e;
};

static void *follow(void *context)
{
	struct following *f = context;
	char words[300];
	struct station *st = calloc(1, sizeof *st);
	f->result = st ? record_load(f->r, st, &f->e)
	               : error_set(&f->e, -ENOMEM, "cannot follow the record: out of memory: try again");
	if (f->result == 0 &&
	    station_unfollowed_words(st, NULL, SAY_UNFOLLOWED, UNFOLLOWED_ALL, words, sizeof words))
		f->result =
		    error_set(&f->e, -EUCLEAN,
		              "%s: nothing was changed since it was written: make good what it was to do, "
		              "then 'bandtally "
		              "audit settle'",
		              words);
	if (st)
		station_deinit(st);
	free(st);
	return NULL;
}

static void follow_begin(struct following *f, const char *file)
{
	f->result = record_open_copy(&f->r, file, &f->e);
	if (f->result < 0)
		return;
	f->runs = pthread_create(&f->thread, NULL, follow, f) == 0;
	if (!f->runs)
		follow(f);
}

static void follow_end(struct following *f)
{
	if (f->runs)
		pthread_join(f->thread, NULL);
	record_close(f->r);
}

static void say_found(void *context, const char *what)
{
	(void)context;
	printf("%s\n", what);
}

static void say_verified(const struct verified *v, const char *keys_from)
{
	char hex[2 * CHAIN_BYTES + 1];
	chain_hex(&v->chain, hex);
	printf("%" PRId64
	       " events, numbered without a gap, each hash follows from the one before\nlast hash %s\n",
	       v->events, hex);
	if (!v->seals)
		printf("no seal: it was written by a version that made none\n");
	else
		printf("incarnation %d, %d seals, %d of them looked at with the keys of %s; sealed up to "
		       "event %" PRId64 ", with %" PRId64 " events after its seal\n",
		       (int)v->incarnation, v->seals, v->seals_checked,
		       keys_from ? keys_from : "the record itself (--key FILE would show whose it is)",
		       v->sealed_to, v->events - v->sealed_to - (v->sealed_to > 0));
}

/* Whoever could write to the file could cut off its end: that only something kept elsewhere shows. */
static void say_outcome(int bad, int compared)
{
	if (bad)
		printf("NOT whole: look at what is named above; keep this file as it is, and a copy of it\n");
	else if (compared)
		printf("The record is whole, and holds what was kept elsewhere.\n");
	else
		printf("The record is whole as far as it goes. Whether its end was cut off shows what is "
		       "kept elsewhere: "
		       "give it the slips (--slips), or a head that was noted (--head).\n");
}

/* 0 it fits, 1 it does not, or a negative errno. */
static int verify_head(struct record *r, const char *file, struct error *e)
{
	struct noted noted;
	int n = file ? head_read(&noted, file, e) : 0;
	if (!file || n < 0)
		return n;
	n = head_compare(r, &noted.head);
	if (n < 0)
		return error_set(e, n, "the record could not be asked about its head: %s: try again",
		                 strerror(-n));
	if (n != HEAD_HELD)
		printf("the head that was noted is event %" PRId64
		       ": the record %s: it is older than that, or another\n",
		       noted.head.seq, n == HEAD_BEHIND ? "ends before it" : "has another there");
	return n != HEAD_HELD;
}

/* Everything that is looked at besides the chain; how many things are not as they should be, or negative errno. */
static int verify_rest(struct record *r, const struct words *w, const struct keys *keys,
                       const struct following *f, struct error *e)
{
	const char *slips = words_value(w, options, "slips");
	int n = verify_head(r, words_value(w, options, "head"), e), bad = n;
	if (n < 0)
		return n;
	if (f->result < 0 && client_fail(&f->e))
		bad++;
	if (!slips)
		return bad;
	n = keys ? audit_slips(r, keys, slips, e)
	         : error_set(e, -ENOENT,
	                     "this station's public key is not here: give --key FILE, its " KEYS_FILE);
	return n < 0 ? n : bad + n;
}

static int audit_verify(const struct words *w)
{
	struct error e = {0};
	struct record *r = NULL;
	char path[PATH_MAX], from[PATH_MAX];
	static struct keys keys;
	struct verified v = {0};
	struct following f = {0};
	struct verify_how how = {.each_seal = words_given(w, options, "each-seal"),
	                         .indexes = words_given(w, options, "indexes"),
	                         .found = say_found};
	int held, n = audit_record(&r, words_value(w, options, "file"), path, &held, &e);
	int known = n == 0 ? audit_keys(&keys, words_value(w, options, "key"), path, from, &e) : n;
	how.keys = known > 0 ? &keys : NULL;
	if (known >= 0)
		follow_begin(&f, path);
	n = known < 0 ? known : record_verify_all(r, &how, &v, &e);
	follow_end(&f);
	int bad = v.found + (n < 0);
	if (n == -EBADMSG) { /* everything else can be looked at */
		client_fail(&e);
		n = 0;
	}
	if (n == 0) {
		int more = verify_rest(r, w, how.keys, &f, &e);
		n = more < 0 ? more : 0;
		bad += more;
	}
	audit_done(r, held);
	if (n < 0)
		return client_fail(&e);
	say_verified(&v, how.keys ? from : NULL);
	say_outcome(bad, words_value(w, options, "slips") || words_value(w, options, "head"));
	return bad ? EXIT_FAILED : EXIT_OK;
}

static int audit_settle(const struct words *w)
{
	struct error e = {0};
	int event = 0;
	if (w->n_rest < 3)
		return words_missing(w->n_rest < 2 ? "EVENT, its number," : "WHAT, which was done about it,",
		                     usage);
	if (w->n_rest > 3)
		return words_beyond(w->rest[3], usage);
	if (words_number("EVENT", w->rest[1], 1, 999999999, &event, usage) < 0)
		return EXIT_USAGE;
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:i,s:s}", "do", "settle", "event", event, "what", w->rest[2]), &e);
	if (!a)
		return client_fail(&e);
	printf("event %d is settled: %s\n", event, w->rest[2]);
	return EXIT_OK;
}

static const struct {
	const char *name;
	int (*run)(int argc, char **argv);
} own[] = {{"report", audit_report}, {"case", audit_case},      {"sample", audit_sample},
           {"export", audit_export}, {"trace", audit_trace},    {"archive", audit_archive},
           {"keep", audit_keep},     {"collect", audit_collect}};

int tool_audit(int argc, char **argv)
{
	struct words w;
	for (size_t i = 0; argc > 1 && i < sizeof own / sizeof *own; i++)
		if (strcmp(argv[1], own[i].name) == 0)
			return own[i].run(argc - 1, argv + 1);
	int r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest && words_only(&w, options,
	                           strcmp(w.rest[0], "verify") == 0 ? "file key slips head each-seal indexes"
	                           : strcmp(w.rest[0], "slip") == 0 ? "file key"
	                                                            : "",
	                           usage))
		return EXIT_USAGE;
	if (w.n_rest == 1 && strcmp(w.rest[0], "verify") == 0)
		return audit_verify(&w);
	if (w.n_rest && strcmp(w.rest[0], "slip") == 0 &&
	    (w.n_rest == 2 || (w.n_rest == 1 && words_given(&w, options, "file"))))
		return audit_slip(w.n_rest == 2 ? w.rest[1] : NULL, words_value(&w, options, "file"),
		                  words_value(&w, options, "key"));
	if (w.n_rest && strcmp(w.rest[0], "settle") == 0)
		return audit_settle(&w);
	if (w.n_rest == 1 && strcmp(w.rest[0], "slip") == 0)
		return words_missing("TEXT, that of the slip's QR code,", usage);
	return w.n_rest ? words_beyond(w.rest[w.n_rest - 1], usage) : words_missing("verify or slip", usage);
}
