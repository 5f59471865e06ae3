/* Fuzzing the small files that a station keeps for itself, and what is signed. The first letter says which one the rest is:
 * h head.json, o hospital.json, k the public keys, j a compact JWS, b text in base64, p certificates and keys in PEM, t
 * cookies, s the state in a snapshot.
 *
 * Whatever comes: a fault is a sentence; numbers are in the range that their names promise; what nobody signed is not said
 * to be signed; what is taken reads back as the same when it is written.
 */
#include <errno.h>

#include "base/base64.h"
#include "base/json.h"
#include "base/pem.h"
#include "count/station.h"
#include "record/head.h"
#include "record/hospital-file.h"
#include "record/keys.h"
#include "record/snapshot.h"
#include "run/ticket.h"
#include "tests/fuzz/folder.h"

/* Its secret half is nowhere: RFC 8037, appendix A, has both, and no input is signed with that. */
#define PUBLIC_X "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo"

static void read_head(const uint8_t *data, size_t size)
{
	struct noted noted, again;
	struct error e = {0};
	if (head_read(&noted, folder_write(HEAD_FILE, data, size), &e) < 0) {
		must(strstr(e.text, ": ") != NULL, "the fault is no sentence");
		return;
	}
	must(noted.head.seq >= 1 && noted.head.case_no >= 0 && noted.head.slip >= 0 && noted.head.item >= 0 &&
	         noted.incarnation >= 1,
	     "a number of a head");
	const char *path = folder_write(HEAD_FILE, "", 0);
	must(head_write(&noted, path, 0) == 0 && head_read(&again, path, &e) == 0,
	     "a head cannot be written");
	must(again.head.seq == noted.head.seq && strcmp(again.head.hash, noted.head.hash) == 0,
	     "a head changes");
}

static void read_hospital(const uint8_t *data, size_t size)
{
	struct hospital_noted noted, again;
	folder_write("hospital.json", data, size);
	if (hospital_read(&noted, folder) < 0)
		return;
	must(memchr(noted.hash, 0, sizeof noted.hash) && memchr(noted.server, 0, sizeof noted.server),
	     "a text");
	must(hospital_write(&noted, folder) == 0 && hospital_read(&again, folder) == 0,
	     "what is noted cannot be written");
	must(again.kept == noted.kept && again.lists == noted.lists && again.contact_ms == noted.contact_ms,
	     "what is noted changes");
}

static void read_keys(const uint8_t *data, size_t size)
{
	static struct keys all, again;
	struct error e = {0};
	if (keys_read(&all, folder_write(KEYS_FILE, data, size), &e) < 0) {
		must(strstr(e.text, ": ") != NULL, "the fault is no sentence");
		return;
	}
	must(all.count >= 1 && all.count <= KEYS_MAX, "no key");
	for (int i = 0; i < all.count; i++)
		must(keys_find(&all, all.list[i].kid) >= 0, "a key that is not found by its name");
	const char *path = folder_write(KEYS_FILE, "", 0);
	must(keys_write(&all, path) == 0 && keys_read(&again, path, &e) == 0, "keys cannot be written");
	must(again.count == all.count, "keys change");
}

static void read_jws(const uint8_t *data, size_t size)
{
	static struct keys all;
	struct public_key k;
	struct error e = {0};
	json_t *payload = NULL;
	int which = -1;
	char *text = malloc(size + 1);
	must(text && key_make(&k, PUBLIC_X) == 0, "no key");
	memcpy(text, data, size);
	text[size] = 0;
	all.count = 0;
	must(keys_add(&all, &k) == 0, "no key");
	int n = keys_check(&all, text, &payload, &which, &e);
	must(n >= 0 || strstr(e.text, ": ") != NULL, "the fault is no sentence");
	must(n != KEYS_SIGNED, "it is said to be signed, and nobody could have");
	json_decref(payload);
	free(text);
}

static void read_base64(const uint8_t *data, size_t size)
{
	struct buf out = {0};
	if (base64url_read(&out, (const char *)data, size) == 0)
		must(out.size <= size, "more than there was");
	buf_free(&out);
}

static void read_pem(const uint8_t *data, size_t size)
{
	char path[160];
	struct error e = {0};
	snprintf(path, sizeof path, "%s", folder_write("some.pem", data, size));
	struct pem_files files = {.path = {path, path, path, path}};
	if (pem_read(&files, &e) < 0)
		must(strstr(e.text, ": ") != NULL, "the fault is no sentence");
	pem_forget(&files);
}

static void read_cookies(const uint8_t *data, size_t size)
{
	static struct tickets t;
	memset(&t, 0, sizeof t);
	folder_write("cookies", data, size);
	cookies_read(&t, folder, "0123456789abcdef0123456789abcdef", 1000);
	for (int i = 0; i < COOKIES_MAX; i++)
		must(t.cookies[i].until_ms >= 0 && t.cookies[i].until_ms <= 1000 + COOKIE_LASTS_MS &&
		         t.cookies[i].room >= 0,
		     "a cookie that nobody gave");
}

static void read_state(const uint8_t *data, size_t size)
{
	static struct station st;
	struct buf again = {0};
	memset(&st, 0, sizeof st);
	st.n_rooms = 1;
	st.rooms[0].number = 1;
	int n = snapshot_unpack(&st, data, size);
	must(n == 0 || n == -EINVAL || n == -ESTALE || n == -ENOMEM,
	     "a state that is neither taken nor refused");
	if (n == 0)
		must(snapshot_pack(&st, &again) == 0 && again.size == size &&
		         memcmp(again.data, data, size) == 0,
		     "a state changes when it is written");
	buf_free(&again);
	station_deinit(&st);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static const struct {
		char letter;
		void (*read)(const uint8_t *data, size_t size);
	} kinds[] = {{'h', read_head},   {'o', read_hospital}, {'k', read_keys},    {'j', read_jws},
	             {'b', read_base64}, {'p', read_pem},      {'t', read_cookies}, {'s', read_state}};
	fuzz_quiet();
	for (size_t i = 0; size && i < sizeof kinds / sizeof *kinds; i++)
		if (data[0] == kinds[i].letter)
			kinds[i].read(data + 1, size - 1);
	fuzz_aloud();
	return 0;
}
