/* audit: what an auditor needs. Works on a fresh copy of the record, or on any file that no station holds. */
#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "record/keys.h"
#include "record/store.h"
#include "tool/client.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char audit_options[] = "file= key=";
static const char audit_usage[] =
    "usage: bandtally audit verify [--file RECORD]   every event, its number, its text and the chain of "
    "hashes\n"
    "       bandtally audit slip [--key FILE] TEXT   whether the text of a slip's QR code was signed by this "
    "station\n"
    "       bandtally audit settle EVENT WHAT        somebody dealt with an event that the station could not "
    "follow\n"
    "Without --file a running station is asked for a copy; otherwise the record in the data folder is read.\n"
    "FILE is the station's station.pub.json (default: that of the data folder).\n";

/* A file to read: the one that was given, a fresh copy from the station, which lives until `held` is closed,
 * or the record of a station that is down. */
static int find_record(const char *given, char path[PATH_MAX], int *held, struct error *e)
{
	*held = -1;
	if (given) {
		snprintf(path, PATH_MAX, "%s", given);
		return 0;
	}
	_cleanup_(json_drop) json_t *a = client_ask_holding(json_pack("{s:s}", "do", "copy"), held, e);
	if (a) {
		snprintf(path, PATH_MAX, "%s", json_text(a, "file"));
		return 0;
	}
	if (e->code == -EPERM)
		return e->code;
	snprintf(path, PATH_MAX, "%s/" RECORD_FILE, client_folder);
	return access(path, R_OK) == 0 ? 0 : e->code;
}

/* What a start would do with it: each event may be as it was written, and yet not fit. */
static int follow(struct record *r, struct error *e)
{
	char words[300];
	struct station *st = calloc(1, sizeof *st);
	int n = st ? record_load(r, st, e)
	           : error_set(e, -ENOMEM, "cannot follow the record: out of memory: try again");
	if (n == 0 && station_unfollowed_words(st, UNFOLLOWED_ALL, words, sizeof words))
		n = error_set(e, -EUCLEAN,
		              "%s: nothing was changed since it was written: make good what it was to do, "
		              "then 'bandtally "
		              "audit settle'",
		              words);
	if (st)
		station_deinit(st);
	free(st);
	return n;
}

static int audit_verify(const struct words *w)
{
	struct error e = {0};
	struct record *r = NULL;
	struct chain chain;
	char path[PATH_MAX], hex[2 * CHAIN_BYTES + 1];
	int64_t events = 0;
	int held, n = find_record(words_value(w, audit_options, "file"), path, &held, &e);
	if (n < 0)
		return client_fail(&e);
	n = record_open_copy(&r, path, &e);
	if (n == 0)
		n = record_verify(r, &events, &chain, &e);
	int whole = n == 0 || n == -EBADMSG;
	struct error lost = {0};
	int followed = whole ? follow(r, &lost) : 0;
	record_close(r);
	if (held >= 0)
		close(held);
	if (n < 0 && client_fail(&e) && !whole)
		return EXIT_FAILED;
	if (followed < 0)
		client_fail(&lost);
	chain_hex(&chain, hex);
	printf("%" PRId64
	       " events, numbered without a gap, each hash follows from the one before\nlast hash %s\n",
	       events, hex);
	return n < 0 || followed < 0 ? EXIT_FAILED : EXIT_OK;
}

static int audit_slip(const struct words *w)
{
	struct error e = {0};
	char path[PATH_MAX];
	struct keys keys;
	const char *key = words_value(w, audit_options, "key");
	_cleanup_(json_drop) json_t *payload = NULL;
	_cleanup_(buf_free) struct buf text = {0};
	snprintf(path, sizeof path, "%s/" KEYS_FILE, client_folder);
	int n = keys_read(&keys, key ? key : path, &e);
	if (n == 0)
		n = keys_check(&keys, w->rest[1], &payload, NULL, &e);
	if (n < 0)
		return client_fail(&e);
	if (n == 0) {
		error_set(
		    &e, -EBADMSG,
		    "the signature does not hold: this text was not signed by this station, or was changed: "
		    "compare the slip with the record");
		return client_fail(&e);
	}
	if (json_write_canonical(payload, &text) == 0)
		printf("signed by this station: %s\n", text.data);
	return EXIT_OK;
}

static int audit_settle(const struct words *w)
{
	struct error e = {0};
	int event = 0;
	if (w->n_rest < 3)
		return words_missing(w->n_rest < 2 ? "EVENT, its number," : "WHAT, which was done about it,",
		                     audit_usage);
	if (w->n_rest > 3)
		return words_beyond(w->rest[3], audit_usage);
	if (words_number("EVENT", w->rest[1], 1, 999999999, &event, audit_usage) < 0)
		return EXIT_USAGE;
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:i,s:s}", "do", "settle", "event", event, "what", w->rest[2]), &e);
	if (!a)
		return client_fail(&e);
	printf("event %d is settled: %s\n", event, w->rest[2]);
	return EXIT_OK;
}

int tool_audit(int argc, char **argv)
{
	struct words w;
	int r = words_read(&w, argc, argv, audit_options, audit_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest == 1 && strcmp(w.rest[0], "verify") == 0)
		return audit_verify(&w);
	if (w.n_rest == 2 && strcmp(w.rest[0], "slip") == 0)
		return audit_slip(&w);
	if (w.n_rest && strcmp(w.rest[0], "settle") == 0)
		return audit_settle(&w);
	if (w.n_rest == 1 && strcmp(w.rest[0], "slip") == 0)
		return words_missing("TEXT, that of the slip's QR code,", audit_usage);
	return w.n_rest ? words_beyond(w.rest[w.n_rest - 1], audit_usage)
	                : words_missing("verify or slip", audit_usage);
}
