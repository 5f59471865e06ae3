/* audit slip: whether a paper is the station's, and says what the record says. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "record/slip-check.h"
#include "tool/audit-record.h"
#include "tool/audit.h"
#include "tool/client.h"

static int tell(struct record *r, const struct keys *keys, const char *jws)
{
	struct error e;
	char words[SLIP_CHECK_WORDS];
	_cleanup_(json_drop) json_t *payload = NULL;
	_cleanup_(buf_free) struct buf text = {0};
	int n = slip_check(r, keys, jws, words, &payload, &e);
	if (n < 0)
		return client_fail(&e);
	puts(words);
	if (payload && json_write_canonical(payload, &text) == 0)
		printf("what was signed: %s\n", text.data);
	return n == SLIP_HELD ? EXIT_OK : EXIT_FAILED;
}

/* Without the end of the line and spaces around it; 0 where nothing is left. */
static size_t trim(char *line)
{
	size_t from = strspn(line, " \t\r\n"), n = strlen(line + from);
	while (n && strchr(" \t\r\n", line[from + n - 1]))
		n--;
	memmove(line, line + from, n);
	line[n] = 0;
	return n;
}

/* A row a slip: its line, its number where it was signed, and what is to be said of it. */
static void tell_row(int line, const json_t *payload, const char *words)
{
	int64_t slip = json_number(payload, "slip", 0);
	printf("%5d  ", line);
	printf(slip ? "%07lld" : "      ?", (long long)slip);
	printf("  %s\n", words);
}

int audit_slips(struct record *r, const struct keys *keys, const char *file, struct error *e)
{
	int table = strcmp(file, "-") == 0;
	char *line = NULL, words[SLIP_CHECK_WORDS];
	size_t room = 0;
	int number = 0, all = 0, bad = 0;
	FILE *f = table ? stdin : fopen(file, "re");
	if (!f)
		return error_set(e, -errno, "cannot read the slips %.300s: %s: check the path", file,
		                 strerror(errno));
	while (getline(&line, &room, f) >= 0) {
		struct error why;
		_cleanup_(json_drop) json_t *payload = NULL;
		number++;
		if (!trim(line))
			continue;
		int n = slip_check(r, keys, line, words, &payload, &why);
		all++;
		bad += n != SLIP_HELD;
		if (table)
			tell_row(number, payload, n < 0 ? why.text : words);
		else if (n != SLIP_HELD)
			printf("%.200s line %d: slip %lld: %s\n", file, number,
			       (long long)json_number(payload, "slip", 0), n < 0 ? why.text : words);
	}
	free(line);
	if (!table)
		fclose(f);
	if (!all)
		return error_set(
		    e, -ENODATA,
		    "no slip is in %.300s: nothing was compared: give the text of each slip's QR code "
		    "on a line of its own",
		    table ? "what was given" : file);
	printf("%d of %d slips signed and held\n", all - bad, all);
	return bad;
}

int audit_slip(const char *jws, const char *file, const char *key)
{
	struct error e = {0};
	static struct keys keys;
	struct record *r = NULL;
	char path[PATH_MAX], from[PATH_MAX];
	int held = -1, bad = 0;
	int n = audit_record(&r, jws ? file : NULL, path, &held, &e);
	if (n == 0)
		n = audit_keys(&keys, key, path, from, &e);
	if (n == 0)
		n = error_set(&e, -ENOENT,
		              "this station's public key is not here: give --key FILE, its " KEYS_FILE);
	if (n > 0)
		bad = jws ? tell(r, &keys, jws) : audit_slips(r, &keys, file, &e);
	audit_done(r, held);
	if (n < 0 || bad < 0)
		return client_fail(&e);
	return bad ? EXIT_FAILED : EXIT_OK;
}
