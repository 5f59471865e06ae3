/* audit: what an auditor needs. Works on a fresh copy of the record, or on any file that no station holds. */
#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "record/seal.h"
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

static int audit_verify(const struct words *w)
{
	struct error e;
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
	record_close(r);
	if (held >= 0)
		close(held);
	if (n < 0)
		return client_fail(&e);
	chain_hex(&chain, hex);
	printf("%" PRId64
	       " events, numbered without a gap, each hash follows from the one before\nlast hash %s\n",
	       events, hex);
	return EXIT_OK;
}

static int audit_slip(const struct words *w)
{
	struct error e;
	char path[PATH_MAX];
	const char *key = words_value(w, audit_options, "key");
	_cleanup_(json_drop) json_t *payload = NULL;
	_cleanup_(buf_free) struct buf text = {0};
	snprintf(path, sizeof path, "%s/station.pub.json", client_folder);
	int n = seal_check(key ? key : path, w->rest[1], &payload, &e);
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
	if (w.n_rest == 1 && strcmp(w.rest[0], "slip") == 0)
		return words_missing("TEXT, that of the slip's QR code,", audit_usage);
	return w.n_rest ? words_beyond(w.rest[w.n_rest - 1], audit_usage)
	                : words_missing("verify or slip", audit_usage);
}
