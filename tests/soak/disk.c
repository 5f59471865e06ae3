/* Loaded before the C library: a disk that is full, or was made read-only by force, for as long as the file that SOAK_DISK names
 * says so, a number that whoever holds it changes at any time. Full: nothing is written to a file, and none is made longer.
 * Read-only as Linux has it after a forced remount: what is open is written and synced as ever, none of which reaches the disk, and
 * only who asks is told.
 */
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <stdint.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

enum { IS_WELL, IS_FULL, IS_READ_ONLY };

static const volatile int64_t *disk;

__attribute__((constructor)) static void begin(void)
{
	const char *path = getenv("SOAK_DISK");
	int fd = path ? open(path, O_RDONLY | O_CLOEXEC) : -1;
	void *at = fd < 0 ? MAP_FAILED : mmap(NULL, sizeof *disk, PROT_READ, MAP_SHARED, fd, 0);
	disk = at == MAP_FAILED ? NULL : at;
	if (fd >= 0)
		close(fd);
}

/* What was open before the program is its caller's. */
static int is_full(int fd)
{
	struct stat is;
	return disk && *disk == IS_FULL && fd > 2 && fstat(fd, &is) == 0 && S_ISREG(is.st_mode);
}

#define REAL(name) ((__typeof__(&(name)))(uintptr_t)dlsym(RTLD_NEXT, #name))

ssize_t write(int fd, const void *bytes, size_t size)
{
	static __typeof__(&write) real;
	if (!real)
		real = REAL(write);
	if (!is_full(fd))
		return real(fd, bytes, size);
	errno = ENOSPC;
	return -1;
}

ssize_t pwrite64(int fd, const void *bytes, size_t size, off64_t at)
{
	static __typeof__(&pwrite64) real;
	if (!real)
		real = REAL(pwrite64);
	if (!is_full(fd))
		return real(fd, bytes, size, at);
	errno = ENOSPC;
	return -1;
}

int fstatvfs(int fd, struct statvfs *fs)
{
	static __typeof__(&fstatvfs) real;
	if (!real)
		real = REAL(fstatvfs);
	int n = real(fd, fs);
	if (n == 0 && disk && *disk == IS_READ_ONLY)
		fs->f_flag |= ST_RDONLY;
	return n;
}
