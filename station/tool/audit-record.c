#include "tool/audit-record.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/json.h"
#include "tool/client.h"

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

int audit_record(struct record **out, const char *given, char path[PATH_MAX], int *held, struct error *e)
{
	int n = find_record(given, path, held, e);
	return n == 0 ? record_open_copy(out, path, e) : n;
}

void audit_done(struct record *r, int held)
{
	record_close(r);
	if (held >= 0)
		close(held);
}

int audit_keys(struct keys *keys, const char *key, const char *record, char from[PATH_MAX], struct error *e)
{
	const char *name = strrchr(record, '/');
	snprintf(from, PATH_MAX, "%s", key ? key : "");
	if (!key)
		snprintf(from, PATH_MAX, "%s/" KEYS_FILE, client_folder);
	if (!key && access(from, F_OK) < 0)
		snprintf(from, PATH_MAX, "%.*s" KEYS_FILE, name ? (int)(name - record) + 1 : 0, record);
	if (!key && access(from, F_OK) < 0)
		return 0;
	int n = keys_read(keys, from, e);
	return n < 0 ? n : 1;
}

static int take_setting(void *context, const struct event *e)
{
	if (e->kind == EV_SETTING)
		recorded_apply(context, e);
	return 0;
}

int audit_settings(struct record *r, struct recorded *out, struct error *e)
{
	return record_each_setting(r, take_setting, out, e);
}

static void make_folders(const char *path)
{
	char folder[PATH_MAX];
	snprintf(folder, sizeof folder, "%s", path);
	for (char *slash = strchr(folder + 1, '/'); slash; slash = strchr(slash + 1, '/')) {
		*slash = 0;
		mkdir(folder, 0700);
		*slash = '/';
	}
}

void audit_place(struct record *r, const struct audit_folder *folder, const char *name, char out[PATH_MAX])
{
	const char *base = getenv(folder->variable), *home = getenv("HOME");
	struct chain first;
	char hex[2 * CHAIN_BYTES + 1];
	int given = base && *base == '/';
	out[0] = 0;
	if (record_hash_at(r, 1, &first) != RECORD_FOUND || (!given && !(home && *home == '/')))
		return;
	chain_hex(&first, hex);
	snprintf(out, PATH_MAX, "%.3800s%s%s/bandtally/%s-%.16s", given ? base : home, given ? "" : "/",
	         given ? "" : folder->of_home, name, hex);
	make_folders(out);
}

int audit_left(struct record *r, int *cases, struct event *archived, struct error *e)
{
	int n = record_left(r, cases, archived);
	return n < 0 ? error_set(e, n,
	                         "it cannot be read what left the record: %s: see 'bandtally audit verify'",
	                         strerror(-n))
	             : 0;
}

int audit_record_look(const char *what, int number, const char *why, struct error *e)
{
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:i,s:s}", "do", "audited", what, number, "why", why), e);
	return a ? 0 : e->code;
}
