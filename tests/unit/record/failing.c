#include "tests/unit/record/failing.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <sqlite3.h>
#include <stdarg.h>
#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

static atomic_int left = -1; /* calls that still succeed; -1 all do */
static const char *failed;
static int code;            /* of SQLite */
static int no_text;         /* the column that was asked for last had no memory */
static sqlite3_stmt *stuck; /* that was refused a step */

void failing_begin(int after, int sqlite)
{
	failed = NULL;
	stuck = NULL;
	no_text = 0;
	code = sqlite;
	left = after;
}

const char *failing_end(void)
{
	left = -1;
	return failed;
}

static int fails(const char *call, int error)
{
	if (left < 0 || atomic_fetch_sub(&left, 1) > 0)
		return 0;
	failed = call;
	errno = error;
	return 1;
}

/* One that fails does nothing, and says `otherwise`. */
#define REFUSED(type, call, error, otherwise, parameters, arguments)                                         \
	type __real_##call parameters;                                                                       \
	type __wrap_##call parameters;                                                                       \
	type __wrap_##call parameters                                                                        \
	{                                                                                                    \
		return fails(#call, error) ? (otherwise) : __real_##call arguments;                          \
	}

/* clang-format off */
REFUSED(void *, malloc, ENOMEM, NULL, (size_t size), (size))
REFUSED(void *, calloc, ENOMEM, NULL, (size_t n, size_t size), (n, size))
REFUSED(void *, realloc, ENOMEM, NULL, (void *old, size_t size), (old, size))
REFUSED(char *, strndup, ENOMEM, NULL, (const char *text, size_t size), (text, size))

REFUSED(ssize_t, read, EIO, -1, (int fd, void *out, size_t size), (fd, out, size))
REFUSED(ssize_t, write, EIO, -1, (int fd, const void *bytes, size_t size), (fd, bytes, size))
REFUSED(int, fsync, EIO, -1, (int fd), (fd))
REFUSED(int, fdatasync, EIO, -1, (int fd), (fd))
REFUSED(int, ftruncate, EIO, -1, (int fd, off_t size), (fd, size))
REFUSED(int, fchmod, EIO, -1, (int fd, mode_t mode), (fd, mode))
REFUSED(int, flock, EIO, -1, (int fd, int how), (fd, how))
REFUSED(int, fstat, EIO, -1, (int fd, struct stat *out), (fd, out))
REFUSED(int, stat, EIO, -1, (const char *path, struct stat *out), (path, out))
REFUSED(int, lstat, EIO, -1, (const char *path, struct stat *out), (path, out))
REFUSED(int, access, EIO, -1, (const char *path, int how), (path, how))
REFUSED(int, mkdir, EIO, -1, (const char *path, mode_t mode), (path, mode))
REFUSED(char *, mkdtemp, EIO, NULL, (char *path), (path))
REFUSED(int, link, EIO, -1, (const char *from, const char *to), (from, to))
REFUSED(int, unlink, EIO, -1, (const char *path), (path))
REFUSED(int, rename, EIO, -1, (const char *from, const char *to), (from, to))
REFUSED(FILE *, fopen, EIO, NULL, (const char *path, const char *how), (path, how))
REFUSED(int, pthread_create, EAGAIN, EAGAIN,
        (pthread_t *t, const pthread_attr_t *how, void *(*run)(void *), void *context), (t, how, run, context))

REFUSED(int, sqlite3_open, 0, code, (const char *file, sqlite3 **db), (file, db))
REFUSED(int, sqlite3_open_v2, 0, code, (const char *file, sqlite3 **db, int flags, const char *vfs), (file, db, flags, vfs))
REFUSED(int, sqlite3_prepare_v2, 0, code,
        (sqlite3 *db, const char *sql, int size, sqlite3_stmt **s, const char **rest), (db, sql, size, s, rest))
REFUSED(int, sqlite3_prepare_v3, 0, code,
        (sqlite3 *db, const char *sql, int size, unsigned flags, sqlite3_stmt **s, const char **rest),
        (db, sql, size, flags, s, rest))
REFUSED(int, sqlite3_exec, 0, code,
        (sqlite3 *db, const char *sql, int (*each)(void *, int, char **, char **), void *context, char **words),
        (db, sql, each, context, words))
REFUSED(int, sqlite3_create_function, 0, code,
        (sqlite3 *db, const char *name, int n, int form, void *context, void (*f)(sqlite3_context *, int, sqlite3_value **),
         void (*step)(sqlite3_context *, int, sqlite3_value **), void (*end)(sqlite3_context *)),
        (db, name, n, form, context, f, step, end))
REFUSED(sqlite3_backup *, sqlite3_backup_init, 0, NULL,
        (sqlite3 *to, const char *its, sqlite3 *from, const char *name), (to, its, from, name))
REFUSED(int, sqlite3_backup_step, 0, code, (sqlite3_backup *b, int pages), (b, pages))
REFUSED(const unsigned char *, sqlite3_value_text, 0, NULL, (sqlite3_value *v), (v))
/* clang-format on */

int __real_open(const char *path, int flags, ...);
int __wrap_open(const char *path, int flags, ...);
int __wrap_open(const char *path, int flags, ...)
{
	va_list more;
	va_start(more, flags);
	mode_t mode = flags & O_CREAT ? va_arg(more, mode_t) : 0;
	va_end(more);
	return fails("open", EIO) ? -1 : __real_open(path, flags, mode);
}

int __real_sqlite3_step(sqlite3_stmt *s);
int __wrap_sqlite3_step(sqlite3_stmt *s);
int __wrap_sqlite3_step(sqlite3_stmt *s)
{
	if (!fails("sqlite3_step", 0))
		return __real_sqlite3_step(s);
	stuck = s;
	return code;
}

static int stuck_at(sqlite3_stmt *s, int said)
{
	if (!s || s != stuck)
		return said;
	stuck = NULL;
	return code;
}

int __real_sqlite3_reset(sqlite3_stmt *s);
int __wrap_sqlite3_reset(sqlite3_stmt *s);
int __wrap_sqlite3_reset(sqlite3_stmt *s)
{
	return stuck_at(s, __real_sqlite3_reset(s));
}

int __real_sqlite3_finalize(sqlite3_stmt *s);
int __wrap_sqlite3_finalize(sqlite3_stmt *s);
int __wrap_sqlite3_finalize(sqlite3_stmt *s)
{
	return stuck_at(s, __real_sqlite3_finalize(s));
}

const unsigned char *__real_sqlite3_column_text(sqlite3_stmt *s, int column);
const unsigned char *__wrap_sqlite3_column_text(sqlite3_stmt *s, int column);
const unsigned char *__wrap_sqlite3_column_text(sqlite3_stmt *s, int column)
{
	no_text = fails("sqlite3_column_text", 0);
	return no_text ? NULL : __real_sqlite3_column_text(s, column);
}

int __real_sqlite3_errcode(sqlite3 *db);
int __wrap_sqlite3_errcode(sqlite3 *db);
int __wrap_sqlite3_errcode(sqlite3 *db)
{
	return no_text ? SQLITE_NOMEM : __real_sqlite3_errcode(db);
}
