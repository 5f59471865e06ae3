/* Small files that are kept whole, and a file system that is made read-only under them. */
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
#include <sys/statvfs.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/file.h"

static char folder[64], path[80];
static int read_only, unknown; /* what fstatvfs() says */

int __real_fstatvfs(int fd, struct statvfs *fs);
int __wrap_fstatvfs(int fd, struct statvfs *fs);

int __wrap_fstatvfs(int fd, struct statvfs *fs)
{
	if (unknown) {
		errno = unknown;
		return -1;
	}
	int n = __real_fstatvfs(fd, fs);
	if (read_only)
		fs->f_flag |= ST_RDONLY;
	return n;
}

static void must_hold(const char *text)
{
	struct buf in = {0};
	assert_int_equal(file_read(path, &in), 0);
	assert_int_equal(in.size, strlen(text));
	assert_memory_equal(in.data, text, in.size);
	buf_free(&in);
}

static void what_is_put_in_place_is_there_whole(void **state)
{
	(void)state;
	assert_int_equal(file_replace(path, 0640, "first", 5), 0);
	must_hold("first");
	assert_int_equal(file_replace(path, 0640, "second one", 10), 0);
	must_hold("second one");
}

/* Who names the wrong file must not lose what lies there: a record, a key, a device. */
static void only_what_is_of_the_kind_is_written_over(void **state)
{
	char other[90];
	(void)state;
	unlink(path);
	assert_int_equal(file_replace_ours(path, 0640, "%PDF-1", 6, "%PDF-"), 0);
	assert_int_equal(file_replace_ours(path, 0640, "%PDF-2", 6, "%PDF-"), 0);
	must_hold("%PDF-2");
	assert_int_equal(file_replace(path, 0640, "%PD", 3), 0);
	assert_int_equal(file_replace_ours(path, 0640, "%PDF-3", 6, "%PDF-"), -EEXIST);
	must_hold("%PD");
	assert_non_null(strstr(file_words(-EEXIST), "another name"));
	assert_string_equal(file_words(-ENOSPC), strerror(ENOSPC));
	assert_int_equal(file_replace(path, 0640, "", 0), 0);
	assert_int_equal(file_replace_ours(path, 0640, "%PDF-4", 6, "%PDF-"), 0);
	snprintf(other, sizeof other, "%s/link", folder);
	assert_int_equal(symlink(path, other), 0);
	assert_int_equal(file_is_ours(other, "%PDF-"), -EEXIST);
	assert_int_equal(unlink(other), 0);
	assert_int_equal(mkfifo(other, 0600), 0);
	assert_int_equal(file_is_ours(other, "%PDF-"), -EEXIST);
	assert_int_equal(unlink(other), 0);
	assert_int_equal(file_is_ours(other, "%PDF-"), 0);
}

static void nothing_is_kept_on_a_disk_that_was_made_read_only(void **state)
{
	char fresh[90];
	(void)state;
	assert_int_equal(file_replace(path, 0640, "first", 5), 0);
	read_only = 1;
	int n = file_replace(path, 0640, "second", 6);
	read_only = 0;
	assert_int_equal(n, -EROFS);
	must_hold("first");
	snprintf(fresh, sizeof fresh, "%s.new", path);
	assert_int_equal(access(fresh, F_OK), -1);
}

static void where_nobody_knows_nothing_counts_as_kept(void **state)
{
	(void)state;
	int fd = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	assert_int_equal(file_force(fd), 0);
	unknown = EIO;
	int n = file_force(fd);
	unknown = 0;
	assert_int_equal(n, -EIO);
	close(fd);
	assert_int_equal(file_force(fd), -EBADF);
}

static int make_folder(void **state)
{
	(void)state;
	snprintf(folder, sizeof folder, "/tmp/bandtally-file-XXXXXX");
	if (!mkdtemp(folder))
		return -1;
	snprintf(path, sizeof path, "%s/kept", folder);
	return 0;
}

static int remove_folder(void **state)
{
	(void)state;
	unlink(path);
	return rmdir(folder);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(what_is_put_in_place_is_there_whole),
	    cmocka_unit_test(nothing_is_kept_on_a_disk_that_was_made_read_only),
	    cmocka_unit_test(where_nobody_knows_nothing_counts_as_kept),
	    cmocka_unit_test(only_what_is_of_the_kind_is_written_over),
	};
	return cmocka_run_group_tests(tests, make_folder, remove_folder);
}
