#include "tests/unit/record/sealed.h"

#include <errno.h>
#include <stdio.h>

static int sign(const struct seal *seal, const json_t *payload, char jws[SEAL_JWS_MAX])
{
	_cleanup_(buf_free) struct buf out = {0};
	int n = payload ? seal_jws(seal, payload, &out) : -ENOMEM;
	if (n == 0)
		snprintf(jws, SEAL_JWS_MAX, "%s", out.data);
	return n;
}

int sealed_sign(void *context, int64_t seq, const struct chain *head, char *jws)
{
	const struct sealer *by = context;
	char hex[2 * CHAIN_BYTES + 1];
	chain_hex(head, hex);
	_cleanup_(json_drop) json_t *payload = json_pack("{s:s,s:i,s:I}", "chain", hex, "incarnation",
	                                                 (int)by->incarnation, "seq", (json_int_t)seq);
	return sign(by->seal, payload, jws);
}

int sealed_slip(const struct seal *seal, struct record *r, int case_no, int slip, char jws[SEAL_JWS_MAX])
{
	char hex[2 * CHAIN_BYTES + 1];
	struct chain at;
	int64_t seq = record_last(r, &at);
	chain_hex(&at, hex);
	_cleanup_(json_drop) json_t *payload =
	    json_pack("{s:s,s:i,s:i,s:i,s:I}", "chain", hex, "case", case_no, "slip", slip, "copy", 1, "seq",
	              (json_int_t)seq);
	return sign(seal, payload, jws);
}
