/* Whole small files: a reader sees the old one or the new one, never a part. */
#ifndef BANDTALLY_BASE_FILE_H
#define BANDTALLY_BASE_FILE_H

#include <stddef.h>
#include <sys/types.h>

#include "base/buf.h"

/* Puts the bytes in place of `path`, with this mode whatever the umask takes away: written as PATH.new, forced to the
 * disk, renamed, and the folder forced to the disk. 0 or negative errno; `path` is then as it was. */
int file_replace(const char *path, mode_t mode, const void *bytes, size_t size);

/* The same, without waiting for the disk: after a power cut it may be the old one, or empty. */
int file_replace_soon(const char *path, mode_t mode, const void *bytes, size_t size);

/* Whether what stands at `path` may be written over: nothing does, or an empty file, or a regular one that begins with `mark`,
 * as each of that kind does. 0, or -EEXIST: somebody keeps something else under that name, and may have no other copy. */
int file_is_ours(const char *path, const char *mark);

/* The same of file_replace(), of -EEXIST and of any other negative errno, as part of a sentence: 'cannot be written: …'. */
int file_replace_ours(const char *path, mode_t mode, const void *bytes, size_t size, const char *mark);
const char *file_words(int error);

/* Opens a regular file for reading, without waiting for whoever writes into a pipe of that name. Its descriptor or negative
 * errno; -EISDIR a folder, -ENXIO whatever else is no regular file. */
int file_open(const char *path);

/* Appends what is in it. 0 or negative errno; a file of more than a megabyte is -EFBIG. */
int file_read(const char *path, struct buf *out);

/* The same of what file_open() opens. */
int file_read_regular(const char *path, struct buf *out);

/* Whether the file system that the file lies on can be written: 0, -EROFS where it cannot, or another negative errno where nobody
 * knows. */
int file_can_be_written(int fd);

/* Forces what was written to the disk. 0 or negative errno; -EROFS where the file system was made read-only under the file, to
 * which Linux answers as if everything were there (ext4: fsync() gives 0 after a forced remount, SysRq u). */
int file_force(int fd);

/* Whether somebody holds the file locked (flock(2)), as a station does its folder's `lock` as long as it works. 1 or 0, also where
 * nobody can tell. */
int file_is_locked(const char *path);

/* Forces the folder that `path` lies in to the disk, and so its name there. 0 or negative errno. */
int file_sync_folder(const char *path);

#endif
