/* The seal of a slip: any JOSE library can verify it with the station's public key, and one letter that is
 * changed makes it fail. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

#include "record/keys.h"
#include "record/seal.h"
#include "tests/unit/record/folder.h"

static char folder[FOLDER_MAX], public_file[FOLDER_MAX + 20];
static struct buf sealed;
static struct keys keys; /* those of the file */

static int check(const char *jws, json_t **payload, struct error *e)
{
	return keys_check(&keys, jws, payload, NULL, e);
}

static int publish(const struct seal *s)
{
	struct error e;
	struct keys own = {0};
	int n = keys_add(&own, seal_key(s));
	if (n == 0)
		n = keys_write(&own, public_file);
	return n < 0 ? n : keys_read(&keys, public_file, &e);
}

static json_t *summary(void)
{
	return json_pack("{s:i,s:s,s:i,s:s}", "case", 41, "site", "BC", "slip", 17, "outcome",
	                 "reconciled \xe2\x80\x93 1 of 1");
}

static int set_up(void **state)
{
	struct seal *s = NULL;
	struct error e;
	(void)state;
	folder_make(folder);
	snprintf(public_file, sizeof public_file, "%s/station.pub.json", folder);
	if (seal_open(&s, folder, &e) < 0)
		return -1;
	_cleanup_(json_drop) json_t *payload = summary();
	int n = publish(s);
	if (n == 0)
		n = seal_jws(s, payload, &sealed);
	seal_close(s);
	return n;
}

static int tear_down(void **state)
{
	(void)state;
	folder_remove(folder);
	buf_free(&sealed);
	return 0;
}

/* In place of the C library's, which it calls: whether a file was forced to the disk, and a disk that fails. */
static int synced, sync_fails;
int __real_fsync(int fd);
int __wrap_fsync(int fd);
int __wrap_fsync(int fd)
{
	synced++;
	errno = EIO;
	return sync_fails ? -1 : __real_fsync(fd);
}

/* A key that a power cut takes away leaves slips behind that nobody can verify. */
static void a_new_key_is_on_the_disk_before_it_is_used(void **state)
{
	char other[FOLDER_MAX];
	struct seal *s = NULL;
	struct error e = {0};
	(void)state;
	folder_make(other);
	synced = 0;
	assert_int_equal(seal_open(&s, other, &e), 0);
	assert_int_equal(synced, 2); /* the key, and its folder */
	seal_close(s);
	folder_remove(other);
	folder_make(other);
	sync_fails = 1;
	assert_int_equal(seal_open(&s, other, &e), -EIO);
	sync_fails = 0;
	folder_remove(other);
}

static void a_seal_holds_and_gives_back_what_was_sealed(void **state)
{
	(void)state;
	json_t *payload = NULL, *expected = summary();
	struct error e;
	assert_int_equal(check(sealed.data, &payload, &e), 1);
	assert_true(json_equal(payload, expected));
	json_decref(payload);
	json_decref(expected);
}

static void any_letter_that_is_changed_breaks_it(void **state)
{
	(void)state;
	int held = 0, tried = 0;
	for (size_t i = 0; i < sealed.size; i++)
		for (const char *to = "AZaz09-_."; *to; to++) {
			char was = sealed.data[i];
			json_t *payload = NULL;
			struct error e;
			if (was == *to)
				continue;
			sealed.data[i] = *to;
			held += check(sealed.data, &payload, &e) == 1;
			json_decref(payload);
			sealed.data[i] = was;
			tried++;
		}
	print_message("%d changes tried in %d letters\n", tried, (int)sealed.size);
	assert_int_equal(held, 0);
}

/* Against a value that Python's hmac (3.11) gives for hmac(hmac(seed, "slip"), text), of a seed 00 01 02 ... 1f. */
static void a_code_is_of_this_key_and_of_one_purpose(void **state)
{
	static const char text[] = "BC0 0000017 1",
	                  expected[] = "4e80b73739f4cc0c8e58245b0c1ff46682207189a1059e788dd28bb066ac4219";
	char other[FOLDER_MAX], path[FOLDER_MAX + 20], hex[2 * SEAL_MAC_BYTES + 1];
	uint8_t seed[32], code[SEAL_MAC_BYTES], another[SEAL_MAC_BYTES];
	struct seal *s = NULL;
	struct error e = {0};
	(void)state;
	folder_make(other);
	snprintf(path, sizeof path, "%s/station.key", other);
	for (size_t i = 0; i < sizeof seed; i++)
		seed[i] = (uint8_t)i;
	FILE *f = fopen(path, "w");
	assert_non_null(f);
	assert_int_equal(fwrite(seed, 1, sizeof seed, f), sizeof seed);
	fclose(f);
	assert_int_equal(seal_open(&s, other, &e), 0);
	seal_mac(s, "slip", text, strlen(text), code);
	seal_mac(s, "snapshot", text, strlen(text), another);
	for (size_t i = 0; i < sizeof code; i++)
		snprintf(hex + 2 * i, 3, "%02x", code[i]);
	assert_string_equal(hex, expected);
	assert_memory_not_equal(code, another, sizeof code);
	seal_close(s);
	folder_remove(other);
}

static void what_is_no_seal_is_told(void **state)
{
	static const char *const bad[] = {"", ".", "..", "...", "a.b", "a.b.c", "a.b.c.d", "e30.e30.e30"};
	(void)state;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		json_t *payload = NULL;
		struct error e = {0};
		int n = check(bad[i], &payload, &e);
		assert_true(n == 0 || (n < 0 && strstr(e.text, ": ")));
		assert_null(payload);
	}
	/* The header that says 'no signature at all' (RFC 7519 section 6.1). */
	json_t *payload = NULL;
	struct error e = {0};
	assert_int_equal(check("eyJhbGciOiJub25lIn0.e30.", &payload, &e), 0);
	assert_int_equal(keys_read(&(struct keys){0}, "/nowhere/station.pub.json", &e), -ENOENT);
	assert_non_null(strstr(e.text, "station.pub.json"));
}

static void the_key_stays_and_only_its_owner_reads_it(void **state)
{
	char path[FOLDER_MAX + 20];
	struct seal *s = NULL;
	struct error e = {0};
	struct stat st;
	struct buf again = {0};
	(void)state;
	snprintf(path, sizeof path, "%s/station.key", folder);
	assert_int_equal(stat(path, &st), 0);
	assert_int_equal(st.st_mode & 0777, 0600);
	assert_int_equal(seal_open(&s, folder, &e), 0);
	json_t *payload = summary();
	assert_int_equal(seal_jws(s, payload, &again), 0);
	assert_string_equal(again.data, sealed.data);
	json_decref(payload);
	buf_free(&again);
	seal_close(s);
}

/* RFC 8037 appendix A.2 and A.3. */
static void a_thumbprint_is_that_of_the_standard(void **state)
{
	struct public_key k;
	(void)state;
	assert_int_equal(key_make(&k, "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo"), 0);
	assert_string_equal(k.kid, "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k");
	assert_int_equal(key_make(&k, "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHUR"), -EINVAL);
	assert_int_equal(key_make(&k, ""), -EINVAL);
}

static void a_seal_of_an_earlier_version_names_no_key_and_holds(void **state)
{
	/* As it was signed before headers named a key, with the seed 00 01 02 … 1f by Python's cryptography 48, and its public file of then. */
	static const char jwk[] =
	    "{\"crv\":\"Ed25519\",\"kty\":\"OKP\",\"x\":\"A6EHv_POEL4dcN0Y50vAmWfk1jCbpQ1fHdyGZBJVMbg\"}\n";
	static const char jws[] =
	    "eyJhbGciOiJFZERTQSIsInR5cCI6IkpXVCJ9.eyJjYXNlIjo0MSwic2l0ZSI6IkJDIiwic2xpcCI6MTd9.EJjBTVQP"
	    "aq-Rh1J8iZgXsNyvAunBaXsarjHhrEcahfbnU00AQUpF6gEWIgiOs3gYiiwrXxIlbLSzq-clBFsLCQ";
	char other[FOLDER_MAX], path[FOLDER_MAX + 24];
	struct keys old;
	struct error e = {0};
	json_t *payload = NULL;
	(void)state;
	folder_make(other);
	snprintf(path, sizeof path, "%s/" KEYS_FILE, other);
	FILE *f = fopen(path, "w");
	assert_non_null(f);
	fputs(jwk, f);
	fclose(f);
	assert_int_equal(keys_read(&old, path, &e), 0);
	assert_int_equal(old.count, 1);
	assert_true(old.single);
	assert_int_equal(keys_check(&old, jws, &payload, NULL, &e), 1);
	assert_int_equal(json_number(payload, "slip", 0), 17);
	json_decref(payload);
	folder_remove(other);
}

/* The key that signs stands first, the earlier one behind it; a file that is right is left as it is. */
static void earlier_keys_stay_and_a_right_file_is_not_written_anew(void **state)
{
	char other[FOLDER_MAX], path[FOLDER_MAX + 24];
	struct seal *s = NULL;
	struct keys all = {0}, back;
	struct error e = {0};
	struct stat first, second;
	json_t *payload = NULL;
	int which = -1;
	(void)state;
	folder_make(other);
	snprintf(path, sizeof path, "%s/" KEYS_FILE, other);
	assert_int_equal(seal_open(&s, other, &e), 0);
	assert_int_equal(keys_add(&all, seal_key(s)), 0);
	assert_int_equal(keys_add(&all, &keys.list[0]), 0);
	assert_int_equal(keys_add(&all, seal_key(s)), 0);
	assert_int_equal(all.count, 2);
	assert_int_equal(keys_write(&all, path), 0);
	assert_int_equal(stat(path, &first), 0);
	assert_int_equal(first.st_mode & 0777, 0644);
	assert_int_equal(keys_write(&all, path), 0);
	assert_int_equal(stat(path, &second), 0);
	assert_int_equal(first.st_ino, second.st_ino);
	assert_int_equal(keys_read(&back, path, &e), 0);
	assert_memory_equal(&all, &back, sizeof all);
	assert_int_equal(keys_check(&back, sealed.data, &payload, &which, &e), 1);
	assert_int_equal(which, 1);
	json_decref(payload);
	back.count = 1;
	assert_int_equal(keys_check(&back, sealed.data, &payload, NULL, &e), 0);
	seal_close(s);
	folder_remove(other);
}

static void what_is_wrong_with_a_key_is_found(void **state)
{
	char other[FOLDER_MAX], path[FOLDER_MAX + 24], aside[FOLDER_MAX + 40], elsewhere[FOLDER_MAX + 24];
	struct seal *s = NULL;
	struct error e = {0};
	struct stat st;
	char kid[KEY_TEXT_MAX];
	(void)state;
	folder_make(other);
	snprintf(path, sizeof path, "%s/" SEAL_FILE, other);
	snprintf(aside, sizeof aside, "%s-damaged", path);
	snprintf(elsewhere, sizeof elsewhere, "%s/elsewhere", other);
	assert_int_equal(seal_open(&s, other, &e), 0);
	assert_int_equal(seal_state(s), KEY_MADE);
	snprintf(kid, sizeof kid, "%s", seal_key(s)->kid);
	seal_close(s);
	assert_int_equal(chmod(path, 0640), 0);
	assert_int_equal(seal_open(&s, other, &e), 0);
	assert_int_equal(seal_state(s), KEY_OTHERS);
	seal_close(s);
	assert_int_equal(chmod(path, 0600), 0);
	assert_int_equal(rename(path, elsewhere), 0);
	assert_int_equal(symlink(elsewhere, path), 0);
	assert_int_equal(seal_open(&s, other, &e), 0);
	assert_int_equal(seal_state(s), KEY_LINK);
	assert_string_equal(seal_key(s)->kid, kid);
	seal_close(s);
	assert_int_equal(truncate(elsewhere, 31), 0); /* a link to what is no key */
	assert_int_equal(seal_open(&s, other, &e), 0);
	assert_int_equal(seal_state(s), KEY_MADE | KEY_DAMAGED);
	assert_string_not_equal(seal_key(s)->kid, kid);
	assert_int_equal(lstat(aside, &st), 0);
	assert_true(S_ISLNK(st.st_mode));
	assert_int_equal(lstat(path, &st), 0);
	assert_true(S_ISREG(st.st_mode));
	seal_close(s);
	folder_remove(other);
}

/* Runs the witness; its exit code, and what it printed. */
static int witness(const char *jws, char *said, size_t size)
{
	const char *source = getenv("BANDTALLY_SOURCE");
	char command[8192];
	snprintf(command, sizeof command, "node '%s/tests/unit/record/jws.mjs' '%s' '%s' 2>&1",
	         source ? source : ".", public_file, jws);
	FILE *p = popen(command, "re");
	assert_non_null(p);
	size_t n = fread(said, 1, size - 1, p);
	said[n] = 0;
	int status = pclose(p);
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

static void an_outside_library_verifies_it(void **state)
{
	char said[2048];
	(void)state;
	int n = witness(sealed.data, said, sizeof said);
	if (n == 77 || n == 127) {
		print_message("skipped: node or npm's jose is not here: %s\n", said);
		skip();
	}
	assert_int_equal(n, 0);
	assert_string_equal(
	    said, "{\"case\":41,\"outcome\":\"reconciled \xe2\x80\x93 1 of 1\",\"site\":\"BC\",\"slip\":17}");
	char *middle = strchr(sealed.data, '.') + 5;
	char was = *middle;
	*middle = was == 'A' ? 'B' : 'A';
	assert_int_equal(witness(sealed.data, said, sizeof said), 3);
	*middle = was;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_new_key_is_on_the_disk_before_it_is_used),
	    cmocka_unit_test(a_seal_holds_and_gives_back_what_was_sealed),
	    cmocka_unit_test(any_letter_that_is_changed_breaks_it),
	    cmocka_unit_test(a_code_is_of_this_key_and_of_one_purpose),
	    cmocka_unit_test(what_is_no_seal_is_told),
	    cmocka_unit_test(an_outside_library_verifies_it),
	    cmocka_unit_test(the_key_stays_and_only_its_owner_reads_it),
	    cmocka_unit_test(a_thumbprint_is_that_of_the_standard),
	    cmocka_unit_test(a_seal_of_an_earlier_version_names_no_key_and_holds),
	    cmocka_unit_test(earlier_keys_stay_and_a_right_file_is_not_written_anew),
	    cmocka_unit_test(what_is_wrong_with_a_key_is_found),
	};
	return cmocka_run_group_tests(tests, set_up, tear_down);
}
