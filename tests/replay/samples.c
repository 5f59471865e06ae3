#include "samples.h"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "record/seal.h"

const struct sample samples[] = {
    {"slip-a4", "ordinary", 1, "a4", 300},
    {"slip-a5", "ordinary", 1, "a5", 300},
    {"slip-a6", "ordinary", 1, "a6", 300},
    {"slip-roll80", "ordinary", 1, "roll80", 203},
    {"discrepancy-a5", "discrepancy", 1, "a5", 300},
    {"discrepancy-two-a5", "look-at-each", 1, "a5", 300},
    {"discrepancy-roll80", "discrepancy", 1, "roll80", 203},
    {"unresolved-a4", "unresolved", 2, "a4", 300},
    {"found-a5", "discrepancy", 2, "a5", 300},
    {"single-a6", "lone", 1, "a6", 300},
    {"addendum-a5", "used-before", 2, "a5", 300},
    {"late-a5", "late-and-keyed", 1, "a5", 300},
    {0},
};

/* RFC 8032 section 7.1, test 1: a secret key that is no secret. */
static const unsigned char seed[32] = {0x9d, 0x61, 0xb1, 0x9d, 0xef, 0xfd, 0x5a, 0x60, 0xba, 0x84, 0x4a,
                                       0xf4, 0x92, 0xec, 0x2c, 0xc4, 0x44, 0x49, 0xc5, 0x69, 0x7b, 0x32,
                                       0x69, 0x19, 0x70, 0x3b, 0xac, 0x03, 0x1c, 0xae, 0x7f, 0x60};

static void die(const char *what, const char *why)
{
	fprintf(stderr, "replay: %s: %s\n", what, why);
	exit(1);
}

static void sign(json_t *document, const json_t *summary)
{
	char folder[] = "/tmp/bandtally-sample-XXXXXX", key[64], record[60];
	struct error e;
	struct seal *seal;
	_cleanup_(buf_free) struct buf jws = {0};
	if (!mkdtemp(folder))
		die(folder, "cannot be made");
	snprintf(key, sizeof key, "%s/station.key", folder);
	int fd = open(key, O_WRONLY | O_CREAT | O_CLOEXEC, 0600);
	if (fd < 0 || write(fd, seed, sizeof seed) != sizeof seed || close(fd) < 0)
		die(key, "cannot be written");
	if (seal_open(&seal, folder, &e) < 0)
		die("the key of the samples", e.text);
	if (seal_jws(seal, summary, &jws) < 0)
		die("the summary of a sample", "cannot be signed");
	json_object_set_new(document, "jws", json_string(jws.data));
	snprintf(record, sizeof record, "event %d, hash %.8s", (int)json_number(summary, "seq", 0),
	         json_text(summary, "chain"));
	json_object_set_new(document, "record", json_string(record));
	seal_close(seal);
	unlink(key);
	rmdir(folder);
}

static const json_t *printed_slip(const json_t *printed, int number)
{
	for (size_t i = 0; i < json_array_size(printed); i++)
		if (json_number(json_object_get(json_array_get(printed, i), "document"), "slip", 0) == number)
			return json_array_get(printed, i);
	return NULL;
}

json_t *sample_document(const struct sample *s, const json_t *printed)
{
	const json_t *slip = printed_slip(printed, s->slip);
	if (!slip)
		die(s->script, "it does not print the slip of a sample");
	json_t *document = json_deep_copy(json_object_get(slip, "document"));
	_cleanup_(json_drop) json_t *summary = json_deep_copy(json_object_get(slip, "signed"));
	json_object_set_new(document, "paper", json_string(s->paper));
	json_object_set_new(document, "dpi", json_integer(s->dpi));
	json_object_set_new(summary, "chain", json_string(json_text(slip, "chain")));
	sign(document, summary);
	return document;
}
