#include "record/slip-check.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

static const char other[] = "signed, but the record holds something else";

/* What was signed names an event and its hash; where the record has another there, nothing of the paper is the record's. */
static int check_event(struct record *r, int64_t seq, const char *hash, char words[SLIP_CHECK_WORDS])
{
	char hex[2 * CHAIN_BYTES + 1];
	struct chain there;
	int n = record_hash_at(r, seq, &there);
	if (n < 0)
		return n;
	if (n == RECORD_HAS_NONE) {
		snprintf(words, SLIP_CHECK_WORDS,
		         "%s: it ends at event %lld, before event %lld that the slip names: an older record "
		         "was put "
		         "back, or its end was taken away",
		         other, (long long)record_end(r), (long long)seq);
		return SLIP_OTHER;
	}
	chain_hex(&there, hex);
	if (strcmp(hex, hash) == 0)
		return SLIP_HELD;
	snprintf(
	    words, SLIP_CHECK_WORDS,
	    "%s: event %lld is another than the slip names (hash %.8s, on the slip %.8s): the record was "
	    "changed, made anew or put back",
	    other, (long long)seq, hex, hash);
	return SLIP_OTHER;
}

static int check_slip(struct record *r, const json_t *payload, char words[SLIP_CHECK_WORDS])
{
	struct slip slip;
	struct paper paper = {0};
	int64_t number = json_number(payload, "slip", 0), copy = json_number(payload, "copy", 0),
	        case_no = json_number(payload, "case", 0);
	int fits = number > 0 && number <= INT32_MAX && copy > 0 && copy <= INT32_MAX;
	int n = fits ? record_slip_of(r, (int32_t)number, (int32_t)copy, &slip, &paper) : RECORD_HAS_NONE;
	if (n < 0)
		return n;
	if (n == RECORD_HAS_NONE || slip.case_no != case_no || !paper.queued) {
		snprintf(words, SLIP_CHECK_WORDS, "%s: it knows no copy %lld of slip %lld of case %lld",
		         other, (long long)copy, (long long)number, (long long)case_no);
		return SLIP_OTHER;
	}
	snprintf(words, SLIP_CHECK_WORDS, "signed and held: slip %lld, copy %lld, of case %lld",
	         (long long)number, (long long)copy, (long long)case_no);
	return SLIP_HELD;
}

int slip_check(struct record *r, const struct keys *keys, const char *jws, char words[SLIP_CHECK_WORDS],
               json_t **payload, struct error *e)
{
	*payload = NULL;
	int n = keys_check(keys, jws, payload, NULL, e);
	if (n == KEYS_SIGNED_NOT)
		snprintf(words, SLIP_CHECK_WORDS, "not signed by any key of this station");
	if (n != KEYS_SIGNED)
		return n == KEYS_SIGNED_NOT ? SLIP_UNSIGNED : n;
	n = check_event(r, json_number(*payload, "seq", 0), json_text(*payload, "chain"), words);
	if (n == SLIP_HELD)
		n = check_slip(r, *payload, words);
	return n < 0 ? error_set(e, n, "the record could not be asked about this slip: %s: try again",
	                         strerror(-n))
	             : n;
}
