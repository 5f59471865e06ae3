#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "record/store-internal.h"

/* `name`: the file as SQLite is told it, with flags. */
static int open_readable(struct record **out, const char *file, const char *name, int flags, struct error *e)
{
	struct record *r = calloc(1, sizeof *r);
	if (!r)
		return error_set(e, -ENOMEM, "out of memory: try again");
	r->lock = -1;
	int n = 0;
	if (access(file, R_OK) < 0)
		n = error_set(e, -errno, "cannot read the record %s: %s: check the path", file,
		              strerror(errno));
	if (n == 0)
		n = store_open_db(r, name, flags, e);
	if (n ==
	    0) /* else each case that is asked for has its statement planned anew, which takes longer than its events */
		sqlite3_db_config(r->db, SQLITE_DBCONFIG_ENABLE_QPSG, 1, NULL);
	if (n == 0)
		n = store_version(r, &r->schema, e);
	if (n == 0 && r->schema > RECORD_SCHEMA)
		n = error_set(e, -EPROTO,
		              "%s has schema %d, this program reads 1 to %d: use the version that wrote it",
		              file, r->schema, RECORD_SCHEMA);
	if (n == 0 && r->schema < 1)
		n = error_set(e, -EUCLEAN, "%s holds no record: keep the file, restore a backup", file);
	if (n == 0)
		n = store_prepare_all(r, e);
	if (n < 0) {
		record_close(r);
		return n;
	}
	*out = r;
	return 0;
}

int record_open_copy(struct record **out, const char *file, struct error *e)
{
	return open_readable(out, file, file, SQLITE_OPEN_READONLY, e);
}

/* SQLite writes nothing beside a file that it is told does not change. */
static void unchanging(const char *file, char name[8192])
{
	int n = snprintf(name, 8192, "file:");
	for (const char *p = file; *p && n < 8000; p++)
		n += snprintf(name + n, 8192 - (size_t)n, strchr("%?#", *p) ? "%%%02X" : "%c",
		              (unsigned char)*p);
	snprintf(name + n, 8192 - (size_t)n, "?immutable=1");
}

static int copy_file(const char *from, const char *to)
{
	char part[65536];
	ssize_t got = 0;
	int in = open(from, O_RDONLY | O_CLOEXEC);
	int out = in < 0 ? -1 : open(to, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
	int n = in < 0 || out < 0 ? -errno : 0;
	while (n == 0 && (got = read(in, part, sizeof part)) > 0)
		n = write(out, part, (size_t)got) == got ? 0 : -ENOSPC;
	if (n == 0 && got < 0)
		n = -errno;
	if (in >= 0)
		close(in);
	if (out >= 0)
		close(out);
	return n;
}

/* What a kill left in the log belongs to the record, and only a copy of both can be read without a change. */
static int open_with_log(struct record **out, const char *file, const char *log, struct error *e)
{
	const char *tmp = getenv("TMPDIR");
	char folder[512], copy[600], copy_log[700];
	snprintf(folder, sizeof folder, "%.400s/bandtally-check-XXXXXX", tmp && *tmp ? tmp : "/tmp");
	if (!mkdtemp(folder))
		return error_set(e, -errno, "cannot make a folder like %s: %s: check $TMPDIR", folder,
		                 strerror(errno));
	snprintf(copy, sizeof copy, "%s/" RECORD_FILE, folder);
	snprintf(copy_log, sizeof copy_log, "%s-wal", copy);
	int n = copy_file(file, copy);
	if (n == 0)
		n = copy_file(log, copy_log);
	if (n < 0)
		error_set(e, n, "cannot read the record %s by a copy in %s: %s: check the space there", file,
		          folder, strerror(-n));
	else
		n = open_readable(out, file, copy, SQLITE_OPEN_READWRITE, e);
	unlink(copy_log);
	unlink(copy);
	snprintf(copy_log, sizeof copy_log, "%s-shm", copy);
	unlink(copy_log);
	rmdir(folder);
	return n;
}

int store_open_again(struct record **out, struct record *r)
{
	char name[8192];
	const char *file = sqlite3_db_filename(r->db, "main");
	if (!sqlite3_uri_boolean(file, "immutable", 0))
		return record_open_copy(out, file, NULL);
	unchanging(file, name);
	return open_readable(out, file, name, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, NULL);
}

int record_open_still(struct record **out, const char *file, struct error *e)
{
	char log[4200], name[8192];
	struct stat st;
	snprintf(log, sizeof log, "%.4090s-wal", file);
	unchanging(file, name);
	int n = stat(log, &st) == 0 && st.st_size
	            ? open_with_log(out, file, log, e)
	            : open_readable(out, file, name, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, e);
	if (n == 0 && (n = store_check_tail(*out, e)) < 0) {
		record_close(*out);
		*out = NULL;
	}
	return n;
}
