#include "record/disk.h"

#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdbool.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/file.h"

/* Behind the part of a file that is the VFS's below. */
struct watched {
	sqlite3_io_methods methods; /* as they are below, but for ours */
	const sqlite3_io_methods *real;
	int fd;         /* names the file, and no more: to close it gives up none of SQLite's locks */
	bool looked_at; /* since it was synced last */
};

static sqlite3_vfs over, *under;
static pthread_once_t once = PTHREAD_ONCE_INIT;

static int size_below(void)
{
	int unit = (int)_Alignof(struct watched);
	return (under->szOsFile + unit - 1) / unit * unit;
}

static struct watched *watched_of(sqlite3_file *f)
{
	return (struct watched *)(void *)((char *)f + size_below());
}

static bool is_deleted(const struct watched *w)
{
	struct stat st;
	return fstat(w->fd, &st) == 0 && !st.st_nlink;
}

static int can_be_written(const struct watched *w)
{
	if (is_deleted(w))
		return DISK_LOST_THE_FILE;
	int n = file_can_be_written(w->fd);
	return n == 0 ? SQLITE_OK : n == -EROFS ? DISK_IS_READ_ONLY : SQLITE_IOERR_FSTAT;
}

static int watched_write(sqlite3_file *f, const void *bytes, int size, sqlite3_int64 at)
{
	struct watched *w = watched_of(f);
	int code = w->looked_at ? SQLITE_OK : can_be_written(w);
	w->looked_at = code == SQLITE_OK;
	return code == SQLITE_OK ? w->real->xWrite(f, bytes, size, at) : code;
}

static int watched_sync(sqlite3_file *f, int flags)
{
	struct watched *w = watched_of(f);
	w->looked_at = false;
	int code = w->real->xSync(f, flags);
	return code == SQLITE_OK ? can_be_written(w) : code;
}

static int watched_close(sqlite3_file *f)
{
	struct watched w = *watched_of(f);
	int code = w.real->xClose(f);
	close(w.fd);
	return code;
}

static int open_watched(sqlite3_vfs *vfs, const char *name, sqlite3_file *f, int flags, int *out)
{
	struct watched *w = watched_of(f);
	(void)vfs;
	int code = under->xOpen(under, name, f, flags, out);
	if (code != SQLITE_OK || !name) /* a temporary file keeps nothing */
		return code;
	w->fd = open(name, O_PATH | O_CLOEXEC);
	if (w->fd < 0) {
		f->pMethods->xClose(f);
		f->pMethods = NULL;
		return SQLITE_CANTOPEN;
	}
	w->looked_at = false;
	w->real = f->pMethods;
	w->methods = *w->real;
	w->methods.xWrite = watched_write;
	w->methods.xSync = watched_sync;
	w->methods.xClose = watched_close;
	f->pMethods = &w->methods;
	return SQLITE_OK;
}

static void put_over(void)
{
	under = sqlite3_vfs_find(NULL);
	if (!under)
		return;
	over = *under;
	over.zName = "bandtally";
	over.pNext = NULL;
	over.szOsFile = size_below() + (int)sizeof(struct watched);
	over.xOpen = open_watched;
	sqlite3_vfs_register(&over, 0);
}

int disk_look(sqlite3 *db)
{
	sqlite3_file *f = NULL;
	int code = sqlite3_file_control(db, "main", SQLITE_FCNTL_FILE_POINTER, &f);
	return code == SQLITE_OK && f && is_deleted(watched_of(f)) ? DISK_LOST_THE_FILE : SQLITE_OK;
}

const char *disk_vfs(void)
{
	pthread_once(&once, put_over);
	return "bandtally";
}
