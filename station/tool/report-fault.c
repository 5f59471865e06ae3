/* report-fault: what a developer needs to mend a fault, as one text without a name or a code of a patient or a person. */
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <inttypes.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <sys/utsname.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/file.h"
#include "base/release.h"
#include "tool/client.h"
#include "tool/fault.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char options[] = "messages=";
static const char usage[] =
    "usage: bandtally report-fault [--messages FILE] FILE\n"
    "Writes into FILE, which must not be there yet and which its owner alone can read, what a developer "
    "needs to mend a "
    "fault: versions, the\n"
    "machine, what the station says of itself, settings, how many events of each kind the record has and "
    "whether it is "
    "whole, sizes of\n"
    "files, models of scanners, the station's last messages. It names nobody: of texts those words alone are "
    "kept that "
    "the programs' own\n"
    "sentences are made of, and no number of a case, badge, slip or code; names, addresses and paths of "
    "settings are "
    "withheld. It holds no\n"
    "part of the record, and is sent nowhere: read it, then send it.\n"
    "For root, the station's user and the group bandtally-audit; root sees most.\n"
    "  --messages FILE   the station's messages, where they are not in the journal of bandtallyd\n"
    "example: bandtally report-fault /root/fault.txt\n";

/* --- versions and machine -------------------------------------------------------------------------- */

static void print_release(struct fault *f)
{
	char line[200];
	FILE *in = fopen("/etc/os-release", "re");
	while (in && fgets(line, sizeof line, in))
		if (strncmp(line, "PRETTY_NAME=", 12) == 0)
			buf_printf(&f->out, "system: %s", line + 12);
	if (in)
		fclose(in);
}

static void print_space(struct fault *f)
{
	struct statvfs disk;
	if (statvfs(client_folder, &disk) == 0)
		buf_printf(&f->out, "disk of the data folder: %" PRIu64 " of %" PRIu64 " kB free%s\n",
		           (uint64_t)disk.f_bavail * disk.f_frsize / 1024,
		           (uint64_t)disk.f_blocks * disk.f_frsize / 1024,
		           disk.f_flag & ST_RDONLY ? ", read-only" : "");
}

static void fault_machine(struct fault *f)
{
	struct utsname u;
	fault_title(f, "versions and machine");
	buf_printf(&f->out, "bandtally %s, released after %d, compiler %s\n", BANDTALLY_VERSION, RELEASED,
	           __VERSION__);
	if (uname(&u) == 0)
		buf_printf(&f->out, "kernel: %s %s %s\n", u.sysname, u.release, u.machine);
	print_release(f);
	print_space(f);
}

/* --- scanners --------------------------------------------------------------------------------------- */

static int read_word(const char *device, const char *name, char out[16])
{
	char path[PATH_MAX];
	snprintf(path, sizeof path, "/sys/bus/usb/devices/%.200s/%s", device, name);
	FILE *in = fopen(path, "re");
	int n = in && fgets(out, 16, in);
	if (in)
		fclose(in);
	out[n ? strcspn(out, "\n") : 0] = 0;
	return n && strspn(out, "0123456789abcdef") == strlen(out);
}

/* Numbers alone: what a device calls itself may be its owner's name. */
static void fault_devices(struct fault *f)
{
	char vendor[16], product[16];
	fault_title(f, "devices on USB, vendor:product");
	DIR *all = opendir("/sys/bus/usb/devices");
	for (struct dirent *x = all ? readdir(all) : NULL; x; x = readdir(all))
		if (read_word(x->d_name, "idVendor", vendor) && read_word(x->d_name, "idProduct", product))
			buf_printf(&f->out, "%s:%s\n", vendor, product);
	if (all)
		closedir(all);
	else
		buf_add_text(&f->out, "none\n");
}

/* --- files ------------------------------------------------------------------------------------------ */

static void count_folder(struct fault *f, int in, const char *name)
{
	struct stat file;
	int64_t count = 0, bytes = 0;
	int fd = openat(in, name, O_RDONLY | O_DIRECTORY | O_CLOEXEC | O_NOFOLLOW);
	DIR *all = fd < 0 ? NULL : fdopendir(fd);
	for (struct dirent *x = all ? readdir(all) : NULL; x; x = readdir(all))
		if (x->d_name[0] != '.' && fstatat(fd, x->d_name, &file, AT_SYMLINK_NOFOLLOW) == 0) {
			count++;
			bytes += file.st_size;
		}
	buf_printf(&f->out, "%" PRId64 " files, %" PRId64 " bytes: ", count, bytes);
	if (all)
		closedir(all);
	else if (fd >= 0)
		close(fd);
}

static void fault_files(struct fault *f)
{
	struct stat file;
	fault_title(f, "the data folder");
	DIR *all = opendir(client_folder);
	if (!all)
		fault_masked(f, "cannot be looked into: ", strerror(errno));
	for (struct dirent *x = all ? readdir(all) : NULL; x; x = readdir(all)) {
		if (x->d_name[0] == '.' || fstatat(dirfd(all), x->d_name, &file, AT_SYMLINK_NOFOLLOW) < 0)
			continue;
		if (S_ISDIR(file.st_mode))
			count_folder(f, dirfd(all), x->d_name);
		else
			buf_printf(&f->out, "%" PRId64 " bytes, mode %03o: ", (int64_t)file.st_size,
			           file.st_mode & 0777);
		fault_masked(f, "", x->d_name);
	}
	if (all)
		closedir(all);
}

/* --- the file ---------------------------------------------------------------------------------------- */

static int write_file(const char *path, const struct buf *text, struct error *e)
{
	int fd = open(path, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0600);
	if (fd < 0 && errno == EEXIST)
		return error_set(e, -EEXIST,
		                 "%.300s is there already, and is left as it is: give another name", path);
	if (fd < 0)
		return error_set(e, -errno, "%.300s cannot be made: %s: give a place where you may write",
		                 path, strerror(errno));
	int n =
	    fchmod(fd, 0600) < 0 || write(fd, text->data, text->size) != (ssize_t)text->size || fsync(fd) < 0
	        ? -(errno ? errno : ENOSPC)
	        : 0;
	if ((close(fd) < 0 || n < 0) && unlink(path) == 0)
		return error_set(e, n < 0 ? n : -EIO,
		                 "%.300s could not be written: %s: make room, and try again", path,
		                 strerror(n < 0 ? -n : EIO));
	return n;
}

static int make(struct fault *f, const char *messages, const char *path, struct error *e)
{
	char when[26];
	int64_t now = clock_now().wall_ms;
	int n = mask_init(&f->mask);
	if (n < 0)
		return error_set(e, n, "out of memory: end other programs");
	clock_text_full(now, clock_utc_min(now), when);
	buf_printf(&f->out,
	           "bandtally report of a fault, made %s\n"
	           "It names nobody: '…' stands for what does not leave the station.\n",
	           when);
	fault_machine(f);
	n = fault_record(f, e);
	if (n < 0)
		return n;
	fault_status(f);
	fault_settings(f);
	fault_files(f);
	fault_devices(f);
	fault_messages(f, messages);
	return write_file(path, &f->out, e);
}

int tool_report_fault(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	struct fault f = {0};
	int r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (!w.n_rest)
		return words_missing("FILE", usage);
	if (w.n_rest > 1)
		return words_beyond(w.rest[1], usage);
	int n = make(&f, words_value(&w, options, "messages"), w.rest[0], &e);
	mask_deinit(&f.mask);
	buf_free(&f.out);
	if (n < 0)
		return client_fail(&e);
	printf("%s: read it before you send it; '…' stands for what does not leave the station\n", w.rest[0]);
	return EXIT_OK;
}
