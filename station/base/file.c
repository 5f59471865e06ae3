#include "base/file.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

#define READ_MAX (1u << 20)

int file_can_be_written(int fd)
{
	struct statvfs fs;
	if (fstatvfs(fd, &fs) < 0)
		return -errno;
	return fs.f_flag & ST_RDONLY ? -EROFS : 0;
}

/* Looked at behind the sync: what was read-only before it, or became so meanwhile, is then found. */
int file_force(int fd)
{
	return fsync(fd) < 0 ? -errno : file_can_be_written(fd);
}

int file_sync_folder(const char *path)
{
	char folder[PATH_MAX];
	const char *end = strrchr(path, '/');
	snprintf(folder, sizeof folder, "%.*s", end ? (int)(end - path) + 1 : 1, end ? path : ".");
	int fd = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	if (fd < 0)
		return -errno;
	int n = file_force(fd);
	close(fd);
	return n;
}

static int write_new(const char *path, mode_t mode, const void *bytes, size_t size, int durable)
{
	int fd = open(path, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC | O_NOFOLLOW, mode);
	if (fd < 0)
		return -errno;
	int n = fchmod(fd, mode) < 0 ? -errno : 0;
	if (n == 0 && size) {
		ssize_t written = write(fd, bytes, size);
		n = written < 0 ? -errno : written != (ssize_t)size ? -ENOSPC : 0;
	}
	if (n == 0 && durable)
		n = file_force(fd);
	close(fd);
	return n;
}

static int replace(const char *path, mode_t mode, const void *bytes, size_t size, int durable)
{
	char fresh[PATH_MAX];
	if (snprintf(fresh, sizeof fresh, "%s.new", path) >= (int)sizeof fresh)
		return -ENAMETOOLONG;
	int n = write_new(fresh, mode, bytes, size, durable);
	if (n == 0 && rename(fresh, path) < 0)
		n = -errno;
	if (n < 0) {
		unlink(fresh);
		return n;
	}
	return durable ? file_sync_folder(path) : 0;
}

int file_replace(const char *path, mode_t mode, const void *bytes, size_t size)
{
	return replace(path, mode, bytes, size, 1);
}

int file_is_locked(const char *path)
{
	int fd = open(path, O_RDONLY | O_CLOEXEC);
	int held = fd >= 0 && flock(fd, LOCK_SH | LOCK_NB) < 0 && errno == EWOULDBLOCK;
	if (fd >= 0)
		close(fd);
	return held;
}

int file_is_ours(const char *path, const char *mark)
{
	char head[64] = "";
	size_t size = strlen(mark);
	struct stat st;
	if (lstat(path, &st) < 0)
		return 0; /* who writes there is told why not */
	if (!S_ISREG(st.st_mode))
		return -EEXIST;
	if (!st.st_size)
		return 0;
	int fd = open(path, O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
	if (fd < 0)
		return -EEXIST;
	int is = size < sizeof head && read(fd, head, size) == (ssize_t)size && memcmp(head, mark, size) == 0;
	close(fd);
	return is ? 0 : -EEXIST;
}

int file_replace_ours(const char *path, mode_t mode, const void *bytes, size_t size, const char *mark)
{
	int n = file_is_ours(path, mark);
	return n < 0 ? n : replace(path, mode, bytes, size, 1);
}

const char *file_words(int error)
{
	return error == -EEXIST ? "something else stands there, which it would destroy: give another name"
	                        : strerror(-error);
}

int file_replace_soon(const char *path, mode_t mode, const void *bytes, size_t size)
{
	return replace(path, mode, bytes, size, 0);
}

int file_open(const char *path)
{
	struct stat is;
	int fd = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
	if (fd < 0)
		return -errno;
	int n = fstat(fd, &is) < 0    ? -errno
	        : S_ISREG(is.st_mode) ? 0
	        : S_ISDIR(is.st_mode) ? -EISDIR
	                              : -ENXIO;
	if (n == 0)
		return fd;
	close(fd);
	return n;
}

/* Takes over the descriptor, or the negative errno for which there is none. */
static int read_all(int fd, struct buf *out)
{
	char part[4096];
	size_t before = out->size;
	ssize_t n = 0;
	int r = fd < 0 ? fd : 0;
	while (r == 0 && (n = read(fd, part, sizeof part)) > 0)
		r = out->size - before > READ_MAX ? -EFBIG : buf_add(out, part, (size_t)n);
	if (r == 0 && n < 0)
		r = -errno;
	if (fd >= 0)
		close(fd);
	return r;
}

int file_read(const char *path, struct buf *out)
{
	int fd = open(path, O_RDONLY | O_CLOEXEC);
	return read_all(fd < 0 ? -errno : fd, out);
}

int file_read_regular(const char *path, struct buf *out)
{
	return read_all(file_open(path), out);
}
