#include "tests/crash/vfs.h"

#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/statvfs.h>
#include <unistd.h>

#define IMAGES_MAX 8
#define SECTOR 512

struct op { /* done on the real file, not synced yet */
	struct op *next;
	int64_t at;
	int size; /* -1: truncate to `at` */
	unsigned char bytes[];
};

struct image { /* of one file: what is surely on the disk */
	char path[512];
	unsigned char *bytes;
	int64_t size, room;
	struct op *first, **last;
};

struct file {
	sqlite3_file base;
	struct image *image; /* NULL for a temporary file */
	sqlite3_file *real;
};

struct crash crash;
static struct image images[IMAGES_MAX];
static sqlite3_vfs *under, over;

static void must(int holds, const char *what)
{
	if (holds)
		return;
	fprintf(stderr, "crash vfs: %s\n", what);
	abort();
}

static uint32_t any(uint32_t below)
{
	crash.random ^= crash.random << 13;
	crash.random ^= crash.random >> 7;
	crash.random ^= crash.random << 17;
	return (uint32_t)(crash.random >> 11) % below;
}

static int planned(void)
{
	return crash.points >= crash.fail_from && crash.points < crash.fail_to;
}

static int is_read_only(void)
{
	return crash.fail_code == SQLITE_READONLY && planned();
}

int __real_fstatvfs(int fd, struct statvfs *fs);
int __wrap_fstatvfs(int fd, struct statvfs *fs);

int __wrap_fstatvfs(int fd, struct statvfs *fs)
{
	int n = __real_fstatvfs(fd, fs);
	if (n == 0 && is_read_only()) {
		fs->f_flag |= ST_RDONLY;
		crash.points++; /* else nothing that is left alone ever ends it */
	}
	return n;
}

/* SQLITE_OK where this point passes. Syncs fail where it is syncs that shall fail, everything else otherwise.
 */
static int point(int is_sync)
{
	if (crash.dead)
		return SQLITE_IOERR;
	crash.points++;
	if (crash.points == crash.die_at) {
		crash.dead = 1;
		return SQLITE_IOERR;
	}
	if (!planned() || crash.fail_code == SQLITE_READONLY)
		return SQLITE_OK;
	return is_sync == (crash.fail_code == SQLITE_IOERR_FSYNC) ? crash.fail_code : SQLITE_OK;
}

/* --- images ------------------------------------------------------------------------------------- */

static void drop_ops(struct image *im)
{
	for (struct op *o = im->first, *next; o; o = next) {
		next = o->next;
		free(o);
	}
	im->first = NULL;
	im->last = &im->first;
}

static void forget(struct image *im)
{
	drop_ops(im);
	free(im->bytes);
	memset(im, 0, sizeof *im);
}

static void read_whole(struct image *im)
{
	FILE *f = fopen(im->path, "re");
	if (!f)
		return;
	fseek(f, 0, SEEK_END);
	im->size = ftell(f);
	rewind(f);
	im->room = im->size + 1;
	im->bytes = malloc((size_t)im->room);
	must(im->bytes && fread(im->bytes, 1, (size_t)im->size, f) == (size_t)im->size, "read");
	fclose(f);
}

static struct image *image_of(const char *path)
{
	for (int i = 0; i < IMAGES_MAX; i++)
		if (strcmp(images[i].path, path) == 0)
			return &images[i];
	for (int i = 0; i < IMAGES_MAX; i++)
		if (!images[i].path[0]) {
			snprintf(images[i].path, sizeof images[i].path, "%s", path);
			images[i].last = &images[i].first;
			read_whole(&images[i]);
			return &images[i];
		}
	must(0, "more files than expected");
	return NULL;
}

static void resize(struct image *im, int64_t size)
{
	if (size > im->size) {
		if (size > im->room) {
			im->room = 2 * size;
			im->bytes = realloc(im->bytes, (size_t)im->room);
			must(im->bytes != NULL, "memory");
		}
		memset(im->bytes + im->size, 0, (size_t)(size - im->size));
	}
	im->size = size;
}

static void put(struct image *im, int64_t at, const unsigned char *bytes, int size)
{
	if (at + size > im->size)
		resize(im, at + size);
	memcpy(im->bytes + at, bytes, (size_t)size);
}

/* Applies what was done since the last sync; `torn`: a sector of it at a time, or not. */
static void apply(struct image *im, int torn)
{
	for (const struct op *o = im->first; o; o = o->next) {
		if (o->size < 0) {
			if (!torn || any(2))
				resize(im, o->at);
			continue;
		}
		for (int from = 0; from < o->size; from += SECTOR) {
			int part = o->size - from < SECTOR ? o->size - from : SECTOR;
			if (!torn || any(2))
				put(im, o->at + from, o->bytes + from, part);
		}
	}
	drop_ops(im);
}

static void remember(struct image *im, int64_t at, const void *bytes, int size)
{
	struct op *o = malloc(sizeof *o + (size_t)(size > 0 ? size : 0));
	must(o != NULL, "memory");
	*o = (struct op){.at = at, .size = size};
	if (size > 0)
		memcpy(o->bytes, bytes, (size_t)size);
	*im->last = o;
	im->last = &o->next;
}

/* --- files -------------------------------------------------------------------------------------- */

#define REAL(f) (((struct file *)(f))->real)
#define IMAGE(f) (((struct file *)(f))->image)

static int f_close(sqlite3_file *f)
{
	return REAL(f)->pMethods ? REAL(f)->pMethods->xClose(REAL(f)) : SQLITE_OK;
}

static int f_read(sqlite3_file *f, void *to, int size, sqlite3_int64 at)
{
	return crash.dead ? SQLITE_IOERR_READ : REAL(f)->pMethods->xRead(REAL(f), to, size, at);
}

static int f_write(sqlite3_file *f, const void *bytes, int size, sqlite3_int64 at)
{
	if (!IMAGE(f))
		return crash.dead ? SQLITE_IOERR_WRITE : REAL(f)->pMethods->xWrite(REAL(f), bytes, size, at);
	int code = point(0);
	if (code != SQLITE_OK) {
		/* The write in which the machine dies may be there in part as well. */
		if (crash.dead && crash.points == crash.die_at && size > SECTOR) {
			crash.points++;
			int part = (int)any((uint32_t)size / SECTOR + 1) * SECTOR;
			if (part)
				remember(IMAGE(f), at, bytes, part < size ? part : size);
		}
		return code;
	}
	const char *path = IMAGE(f)->path;
	crash.written_back += strcmp(path + strlen(path) - 4, "-wal") != 0;
	code = REAL(f)->pMethods->xWrite(REAL(f), bytes, size, at);
	if (code == SQLITE_OK)
		remember(IMAGE(f), at, bytes, size);
	return code;
}

static int f_truncate(sqlite3_file *f, sqlite3_int64 size)
{
	int code = IMAGE(f) ? point(0) : SQLITE_OK;
	if (code != SQLITE_OK)
		return code;
	code = REAL(f)->pMethods->xTruncate(REAL(f), size);
	if (code == SQLITE_OK && IMAGE(f))
		remember(IMAGE(f), size, NULL, -1);
	return code;
}

static int f_sync(sqlite3_file *f, int flags)
{
	(void)flags; /* the disk under us is not asked: the images are what survives */
	int code = point(1);
	if (code == SQLITE_OK && IMAGE(f) && !crash.lies && !is_read_only())
		apply(IMAGE(f), 0);
	return code;
}

static int f_size(sqlite3_file *f, sqlite3_int64 *size)
{
	return crash.dead ? SQLITE_IOERR : REAL(f)->pMethods->xFileSize(REAL(f), size);
}

static int f_lock(sqlite3_file *f, int level)
{
	return REAL(f)->pMethods->xLock(REAL(f), level);
}

static int f_unlock(sqlite3_file *f, int level)
{
	return REAL(f)->pMethods->xUnlock(REAL(f), level);
}

static int f_reserved(sqlite3_file *f, int *is)
{
	return REAL(f)->pMethods->xCheckReservedLock(REAL(f), is);
}

static int f_control(sqlite3_file *f, int what, void *arg)
{
	return what == SQLITE_FCNTL_SIZE_HINT ? SQLITE_OK
	                                      : REAL(f)->pMethods->xFileControl(REAL(f), what, arg);
}

static int f_sector(sqlite3_file *f)
{
	(void)f;
	return SECTOR;
}

static int f_device(sqlite3_file *f)
{
	(void)f;
	return 0; /* promises nothing */
}

static int f_map(sqlite3_file *f, int page, int size, int extend, void volatile **out)
{
	return crash.dead ? SQLITE_IOERR : REAL(f)->pMethods->xShmMap(REAL(f), page, size, extend, out);
}

static int f_shm_lock(sqlite3_file *f, int offset, int n, int flags)
{
	return REAL(f)->pMethods->xShmLock(REAL(f), offset, n, flags);
}

static void f_barrier(sqlite3_file *f)
{
	REAL(f)->pMethods->xShmBarrier(REAL(f));
}

static int f_unmap(sqlite3_file *f, int remove)
{
	return REAL(f)->pMethods->xShmUnmap(REAL(f), remove);
}

static const sqlite3_io_methods methods = {
    2,         f_close,  f_read,   f_write, f_truncate, f_sync,    f_size,  f_lock, f_unlock, f_reserved,
    f_control, f_sector, f_device, f_map,   f_shm_lock, f_barrier, f_unmap, NULL,   NULL,
};

static int v_open(sqlite3_vfs *v, const char *name, sqlite3_file *f, int flags, int *out)
{
	struct file *file = (struct file *)f;
	(void)v;
	file->base.pMethods = NULL;
	file->real = (sqlite3_file *)(file + 1);
	file->image = NULL;
	if (crash.dead)
		return SQLITE_CANTOPEN;
	int code = under->xOpen(under, name, file->real, flags, out);
	if (code != SQLITE_OK)
		return code;
	file->image = name ? image_of(name) : NULL;
	file->base.pMethods = &methods;
	return SQLITE_OK;
}

static int v_delete(sqlite3_vfs *v, const char *name, int sync)
{
	(void)v;
	int code = point(0);
	if (code != SQLITE_OK)
		return code;
	code = under->xDelete(under, name, sync);
	if (code == SQLITE_OK)
		forget(image_of(name));
	return code;
}

static int v_access(sqlite3_vfs *v, const char *name, int flags, int *out)
{
	(void)v;
	return crash.dead ? SQLITE_IOERR : under->xAccess(under, name, flags, out);
}

void crash_install(void)
{
	under = sqlite3_vfs_find(NULL);
	over = *under;
	over.zName = "crash";
	over.pNext = NULL;
	over.szOsFile = (int)sizeof(struct file) + under->szOsFile;
	over.xOpen = v_open;
	over.xDelete = v_delete;
	over.xAccess = v_access;
	must(sqlite3_vfs_register(&over, 1) == SQLITE_OK, "register");
}

void crash_fresh(void)
{
	for (int i = 0; i < IMAGES_MAX; i++)
		if (images[i].path[0])
			forget(&images[i]);
	crash = (struct crash){.random = crash.random ? crash.random : 0x9e3779b97f4a7c15u};
}

void crash_after(enum death death)
{
	char path[600];
	for (int i = 0; i < IMAGES_MAX; i++) {
		struct image *im = &images[i];
		if (!im->path[0])
			continue;
		if (death != DEATH_POWER)
			apply(im, death == DEATH_TORN);
		FILE *f = fopen(im->path, "we");
		must(f && fwrite(im->bytes, 1, (size_t)im->size, f) == (size_t)im->size && fclose(f) == 0,
		     "write");
		snprintf(path, sizeof path, "%.511s-shm", im->path);
		unlink(path); /* shared memory does not outlive its machine */
	}
	crash_fresh();
}
