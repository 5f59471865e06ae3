/* A start with a snapshot knows what one without knows, and any file that is not the very one is none. */
#include <errno.h>
#include <fcntl.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>

#include "record/snapshot.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"
#include "tests/unit/record/same.h"

#define SEEDS 4
#define STEPS 500
#define WRITE_EVERY 90
#define LOOK_AFTER 35 /* steps, of which a start hears from the record */

/* Where things stand in the file: see struct head. */
#define AT_FOLD 16
#define AT_BUILD 24
#define AT_SEQ 56
#define HEAD_BYTES (64 + CHAIN_BYTES + 8 + 32)

struct scene {
	char folder[FOLDER_MAX], path[FOLDER_MAX + 16];
	struct record *record;
	struct seal *seal;
	struct history h;
	struct error e;
};

static void begin(struct scene *s, uint64_t seed)
{
	memset(s, 0, sizeof *s);
	folder_make(s->folder);
	snprintf(s->path, sizeof s->path, "%s/" SNAPSHOT_FILE, s->folder);
	assert_int_equal(record_open(&s->record, s->folder, &s->e), 0);
	assert_int_equal(seal_open(&s->seal, s->folder, &s->e), 0);
	assert_int_equal(history_init(&s->h, s->record, seed, 0), 0);
}

static void end(struct scene *s)
{
	history_deinit(&s->h);
	seal_close(s->seal);
	record_close(s->record);
	folder_remove(s->folder);
}

static void go_on(struct scene *s, int steps)
{
	for (int i = 0; i < steps; i++)
		if (history_step(&s->h) < 0)
			fail_msg("step %d: %s", i, s->h.error.text);
}

static void write_it(struct scene *s)
{
	struct snapshot_writer *w = NULL;
	int n, turns = 0;
	assert_int_equal(snapshot_begin(&w, s->record, s->seal, s->folder, &s->h.st, NULL), 0);
	while ((n = snapshot_step(w)) > 0)
		turns++;
	assert_int_equal(n, 0);
	assert_true(turns > 3);
	snapshot_free(w);
}

/* A station with the settings of the history, and nothing else. */
static void settings_of(const struct history *h, struct station *st)
{
	memset(st, 0, sizeof *st);
	memcpy(st->site, h->st.site, sizeof st->site);
	memcpy(st->rooms, h->st.rooms, sizeof st->rooms);
	st->n_rooms = h->st.n_rooms;
	st->policy = h->st.policy;
}

static struct station with, without;

static void starts_alike(struct scene *s)
{
	int64_t seq = 0;
	settings_of(&s->h, &with);
	settings_of(&s->h, &without);
	assert_int_equal(snapshot_load(s->record, s->seal, s->folder, &with, NULL, &seq), 1);
	assert_true(seq > 0 && seq <= record_last(s->record, NULL));
	assert_int_equal(record_load_from(s->record, seq, &with, &s->e), 0);
	assert_int_equal(record_load(s->record, &without, &s->e), 0);
	same_station(&without, &with);
	same_to_the_last(&s->h.st, &with);
	station_deinit(&with);
	station_deinit(&without);
}

static void a_start_with_it_knows_what_one_without_knows(void **state)
{
	static struct scene s;
	int looked = 0;
	(void)state;
	for (uint64_t seed = 11; seed < 11 + SEEDS; seed++) {
		begin(&s, seed);
		for (int i = 0; i < STEPS; i++) {
			if (i % WRITE_EVERY == 0)
				write_it(&s);
			go_on(&s, 1);
			if (i % WRITE_EVERY == LOOK_AFTER || i % WRITE_EVERY == 0) {
				starts_alike(&s);
				looked++;
			}
		}
		end(&s);
	}
	assert_true(looked > 40);
}

static void at_every_cut_the_state_comes_back_to_the_last_byte(void **state)
{
	static struct scene s;
	(void)state;
	begin(&s, 21);
	for (int i = 0; i < 2 * STEPS; i++) {
		_cleanup_(buf_free) struct buf once = {0}, again = {0};
		go_on(&s, 1);
		settings_of(&s.h, &with);
		assert_int_equal(snapshot_pack(&s.h.st, &once), 0);
		assert_int_equal(snapshot_unpack(&with, once.data, once.size), 0);
		same_to_the_last(&s.h.st, &with);
		assert_int_equal(snapshot_pack(&with, &again), 0);
		assert_int_equal(once.size, again.size);
		assert_memory_equal(once.data, again.data, once.size);
		station_deinit(&with);
	}
	end(&s);
}

static int is_empty(const struct station *st)
{
	size_t n;
	const struct snapshot_part *p = snapshot_parts(&n);
	for (size_t i = 0; i < n; i++)
		for (size_t k = 0; p[i].kind != PART_SETTING && p[i].kind != PART_LIST && k < p[i].size; k++)
			if (((const char *)st)[p[i].offset + k])
				return 0;
	return !st->catalogue.count && !st->staff.count && !st->n_quarantines;
}

/* A state that ends anywhere else, or goes on, is none, and leaves a station that knows nothing. */
static void a_state_that_is_cut_or_goes_on_is_refused(void **state)
{
	static struct scene s;
	_cleanup_(buf_free) struct buf all = {0};
	(void)state;
	begin(&s, 31);
	go_on(&s, STEPS);
	assert_int_equal(snapshot_pack(&s.h.st, &all), 0);
	size_t whole = all.size;
	assert_int_equal(buf_add(&all, "", 1), 0);
	for (size_t size = 0; size <= whole + 1; size += size < 2000 || size + 200 > whole ? 1 : 97) {
		settings_of(&s.h, &with);
		int n = snapshot_unpack(&with, all.data, size);
		if (n != (size == whole ? 0 : -EINVAL) || (n < 0) != is_empty(&with))
			fail_msg("%zu bytes of %zu: %d", size, whole, n);
		station_deinit(&with);
	}
	end(&s);
}

static int is_there(const char *path)
{
	struct stat st;
	return lstat(path, &st) == 0;
}

/* It is no reason not to start, and it is not asked again. */
static void is_thrown_away(struct scene *s, const char *what)
{
	int64_t seq;
	settings_of(&s->h, &with);
	if (snapshot_load(s->record, s->seal, s->folder, &with, NULL, &seq) != 0)
		fail_msg("taken all the same: %s", what);
	if (!is_empty(&with) || is_there(s->path))
		fail_msg("something is left: %s", what);
	assert_int_equal(with.n_rooms, s->h.st.n_rooms);
	station_deinit(&with);
}

struct file {
	unsigned char bytes[1 << 20];
	size_t size;
};

static void read_file(const char *path, struct file *f)
{
	FILE *in = fopen(path, "re");
	assert_non_null(in);
	f->size = fread(f->bytes, 1, sizeof f->bytes, in);
	assert_true(f->size > HEAD_BYTES + SEAL_MAC_BYTES && f->size < sizeof f->bytes);
	fclose(in);
}

static void write_file(const char *path, const struct file *f)
{
	FILE *out = fopen(path, "we");
	assert_non_null(out);
	assert_int_equal(fwrite(f->bytes, 1, f->size, out), f->size);
	fclose(out);
}

static void any_that_was_changed_is_thrown_away(void **state)
{
	static struct scene s;
	static struct file good, bad;
	char what[64];
	(void)state;
	begin(&s, 31);
	go_on(&s, 200);
	write_it(&s);
	read_file(s.path, &good);
	for (size_t i = 0; i < good.size; i += i < HEAD_BYTES + SEAL_MAC_BYTES ? 1 : 97) {
		bad = good;
		bad.bytes[i] ^= 0x40;
		write_file(s.path, &bad);
		snprintf(what, sizeof what, "byte %zu is another", i);
		is_thrown_away(&s, what);
	}
	static const size_t sizes[] = {0, 1, HEAD_BYTES, HEAD_BYTES + SEAL_MAC_BYTES};
	for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
		bad = good;
		bad.size = sizes[i];
		write_file(s.path, &bad);
		is_thrown_away(&s, "it was cut off");
	}
	bad = good;
	bad.bytes[bad.size++] = 0;
	write_file(s.path, &bad);
	is_thrown_away(&s, "it is longer");
	write_file(s.path, &good);
	starts_alike(&s); /* the one that was not changed is still good */
	end(&s);
}

/* Signed by the right key, as an earlier version's is. */
static void one_of_another_version_is_thrown_away(void **state)
{
	static struct scene s;
	static struct file good, other;
	static const size_t at[] = {AT_FOLD, AT_BUILD, AT_SEQ, HEAD_BYTES - 33 - 7};
	(void)state;
	begin(&s, 41);
	go_on(&s, 100);
	write_it(&s);
	read_file(s.path, &good);
	for (size_t i = 0; i < sizeof at / sizeof *at; i++) {
		other = good;
		other.bytes[at[i]] ^= 1;
		seal_mac(s.seal, "snapshot", other.bytes, HEAD_BYTES, other.bytes + HEAD_BYTES);
		write_file(s.path, &other);
		is_thrown_away(&s, "another version's");
	}
	end(&s);
}

static void one_of_another_station_or_record_is_thrown_away(void **state)
{
	static struct scene s, t;
	static struct file theirs;
	(void)state;
	begin(&s, 51);
	begin(&t, 52);
	go_on(&s, 60);
	go_on(&t, 60);
	write_it(&t);
	read_file(t.path, &theirs);
	write_file(s.path, &theirs);
	is_thrown_away(&s, "another station's");
	struct seal *own = s.seal;
	s.seal = t.seal; /* the key went along, the record did not */
	write_file(s.path, &theirs);
	is_thrown_away(&s, "another record's");
	s.seal = own;
	assert_int_equal(symlink(t.path, s.path), 0);
	is_thrown_away(&s, "a link to one");
	assert_true(is_there(t.path));
	end(&s);
	end(&t);
}

/* A later snapshot of the same station, with an older copy of the record: it has not got so far. */
static void one_that_is_ahead_of_the_record_is_thrown_away(void **state)
{
	static struct scene s, older;
	static struct file later;
	(void)state;
	begin(&s, 61);
	begin(&older, 61);
	go_on(&s, 80);
	write_it(&s);
	read_file(s.path, &later);
	go_on(&older, 20);
	write_file(older.path, &later);
	struct seal *own = older.seal;
	older.seal = s.seal;
	is_thrown_away(&older, "it is ahead");
	older.seal = own;
	end(&s);
	end(&older);
}

static void settings_are_the_files_and_a_further_room_begins_anew(void **state)
{
	static struct scene s;
	int64_t seq;
	(void)state;
	begin(&s, 71);
	go_on(&s, 150);
	for (int i = 0; i < 3; i++) { /* which a history may leave alike */
		s.h.st.heard[i].scan = (struct moment){.boot = 1, .boot_ms = 1000 + i};
		s.h.st.idle_last[i] = 40 + i;
	}
	write_it(&s);
	settings_of(&s.h, &with); /* the middle one is gone, and the others are the other way round */
	with.rooms[0] = s.h.st.rooms[2];
	with.rooms[1] = s.h.st.rooms[0];
	with.n_rooms = 2;
	with.policy.first_reminder_min = 77;
	memcpy(with.site, "XX", 3);
	assert_int_equal(snapshot_load(s.record, s.seal, s.folder, &with, NULL, &seq), 1);
	assert_int_equal(with.policy.first_reminder_min, 77);
	assert_string_equal(with.site, "XX");
	assert_int_equal(with.n_rooms, 2);
	assert_int_equal(with.heard[0].scan.boot_ms, s.h.st.heard[2].scan.boot_ms);
	assert_int_equal(with.heard[1].scan.boot_ms, s.h.st.heard[0].scan.boot_ms);
	assert_int_equal(with.heard[2].scan.boot, 0);
	assert_true(with.heard[0].scan.boot && with.heard[1].scan.boot);
	assert_int_equal(with.idle_last[0], s.h.st.idle_last[2]);
	station_deinit(&with);
	s.h.st.rooms[s.h.st.n_rooms++] = (struct room){.number = 9, .name = "Bay 9"};
	is_thrown_away(&s, "a room more");
	end(&s);
}

/* Who adds a field to the station says here what it is to a snapshot. */
static void each_byte_of_the_station_belongs_to_one_part(void **state)
{
	size_t n, at = 0;
	const struct snapshot_part *p = snapshot_parts(&n);
	(void)state;
	for (size_t i = 0; i < n; i++) {
		if (p[i].offset < at || p[i].offset - at >= sizeof(int64_t))
			fail_msg(
			    "before '%s' a field of struct station is missing in snapshot-state.c, or it "
			    "stands out of order",
			    p[i].name);
		at = p[i].offset + p[i].size;
	}
	if (sizeof(struct station) - at >= sizeof(int64_t))
		fail_msg("the last fields of struct station are missing in snapshot-state.c");
}

/* No turn does much: a whole catalogue takes many. */
static void a_large_one_is_written_in_many_turns(void **state)
{
	static struct scene s;
	struct snapshot_writer *w = NULL;
	struct line line = {.role = ROLE_OTHER, .per_pack = 1};
	int n, turns = 0;
	(void)state;
	begin(&s, 81);
	for (int i = 0; i < 3000; i++) {
		snprintf(line.key, sizeof line.key, "SWAB-%d", i);
		snprintf(line.name, sizeof line.name, "swab %d", i);
		assert_int_equal(catalogue_set(&s.h.st.catalogue, &line, &s.e), 0);
	}
	assert_int_equal(snapshot_begin(&w, s.record, s.seal, s.folder, &s.h.st, NULL), 0);
	while ((n = snapshot_step(w)) > 0)
		turns++;
	assert_int_equal(n, 0);
	assert_true(turns > 100);
	snapshot_free(w);
	assert_int_equal(snapshot_begin(&w, s.record, s.seal, s.folder, &s.h.st, NULL), 0);
	snapshot_step(w);
	snapshot_free(w); /* in the middle: the one before stays */
	int64_t seq;
	settings_of(&s.h, &with);
	assert_int_equal(snapshot_load(s.record, s.seal, s.folder, &with, NULL, &seq), 1);
	assert_int_equal(with.catalogue.count, s.h.st.catalogue.count);
	station_deinit(&with);
	end(&s);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_start_with_it_knows_what_one_without_knows),
	    cmocka_unit_test(at_every_cut_the_state_comes_back_to_the_last_byte),
	    cmocka_unit_test(a_state_that_is_cut_or_goes_on_is_refused),
	    cmocka_unit_test(any_that_was_changed_is_thrown_away),
	    cmocka_unit_test(one_of_another_version_is_thrown_away),
	    cmocka_unit_test(one_of_another_station_or_record_is_thrown_away),
	    cmocka_unit_test(one_that_is_ahead_of_the_record_is_thrown_away),
	    cmocka_unit_test(settings_are_the_files_and_a_further_room_begins_anew),
	    cmocka_unit_test(each_byte_of_the_station_belongs_to_one_part),
	    cmocka_unit_test(a_large_one_is_written_in_many_turns),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
