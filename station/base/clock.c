#include "base/clock.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

static int64_t read_ms(clockid_t id)
{
	struct timespec t;
	clock_gettime(id, &t);
	return (int64_t)t.tv_sec * 1000 + t.tv_nsec / 1000000;
}

struct instant clock_now(void)
{
	return (struct instant){.boot_ms = read_ms(CLOCK_BOOTTIME), .wall_ms = read_ms(CLOCK_REALTIME)};
}

int clock_boot_id(char out[33])
{
	char text[40];
	int fd = open("/proc/sys/kernel/random/boot_id", O_RDONLY | O_CLOEXEC);
	if (fd < 0)
		return -errno;
	ssize_t n = read(fd, text, sizeof text);
	close(fd);
	size_t used = 0;
	for (ssize_t i = 0; i < n && used < 32; i++)
		if (strchr("0123456789abcdef", text[i]))
			out[used++] = text[i];
	out[used] = 0;
	return used == 32 ? 0 : -EIO;
}

int16_t clock_utc_min(int64_t wall_ms)
{
	time_t s = (time_t)(wall_ms / 1000);
	struct tm t = {0};
	localtime_r(&s, &t);
	long min = t.tm_gmtoff / 60;
	return (int16_t)(min > CLOCK_UTC_MIN_MAX    ? CLOCK_UTC_MIN_MAX
	                 : min < -CLOCK_UTC_MIN_MAX ? -CLOCK_UTC_MIN_MAX
	                                            : min);
}

void clock_zone_name(char *out, size_t size)
{
	static const char folder[] = "zoneinfo/";
	char path[256];
	const char *tz = getenv("TZ");
	out[0] = 0;
	if (tz && *tz) {
		snprintf(out, size, "%s", *tz == ':' ? tz + 1 : tz);
		return;
	}
	ssize_t n = readlink("/etc/localtime", path, sizeof path - 1);
	path[n > 0 ? n : 0] = 0;
	const char *name = strstr(path, folder);
	if (name)
		snprintf(out, size, "%s", name + strlen(folder));
}

/* "CET-1CEST", "<+0330>-3:30": a zone that is written out. */
static int is_written_zone(const char *name)
{
	static const char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";
	const char *behind = *name == '<' ? strchr(name, '>') : name + strspn(name, letters);
	if (!behind || behind - name < 3)
		return 0;
	behind += *behind == '>';
	behind += *behind == '+' || *behind == '-';
	return *behind >= '0' && *behind <= '9';
}

static int is_file(const char *path)
{
	struct stat st;
	return stat(path, &st) == 0 && S_ISREG(st.st_mode);
}

int clock_zone_is_known(void)
{
	char path[400];
	const char *name = getenv("TZ"), *folder = getenv("TZDIR");
	if (!name || !*name)
		return 1;
	name += *name == ':';
	snprintf(path, sizeof path, "%s%s%.200s",
	         *name == '/' ? ""
	         : folder     ? folder
	                      : "/usr/share/zoneinfo",
	         *name == '/' ? "" : "/", name);
	return is_file(path) || is_written_zone(name) || !strcmp(name, "UTC") || !strcmp(name, "GMT");
}

static struct tm civil(int64_t wall_ms, int16_t utc_min)
{
	time_t s = (time_t)(wall_ms / 1000) + utc_min * 60;
	struct tm t = {0};
	gmtime_r(&s, &t);
	return t;
}

void clock_text_hm(int64_t wall_ms, int16_t utc_min, char out[6])
{
	struct tm t = civil(wall_ms, utc_min);
	strftime(out, 6, "%H:%M", &t);
}

void clock_text_date(int64_t wall_ms, int16_t utc_min, char out[11])
{
	struct tm t = civil(wall_ms, utc_min);
	strftime(out, 11, "%Y-%m-%d", &t);
}

void clock_text_full(int64_t wall_ms, int16_t utc_min, char out[26])
{
	struct tm t = civil(wall_ms, utc_min);
	int off = utc_min < 0 ? -utc_min : utc_min;
	strftime(out, 26, "%Y-%m-%dT%H:%M:%S", &t);
	snprintf(out + 19, 7, "%c%02d:%02d", utc_min < 0 ? '-' : '+', off / 60 % 24, off % 60);
}

int32_t clock_date_number(int64_t wall_ms, int16_t utc_min)
{
	struct tm t = civil(wall_ms, utc_min);
	return (t.tm_year + 1900) * 10000 + (t.tm_mon + 1) * 100 + t.tm_mday;
}

int32_t clock_minute_of_day(int64_t wall_ms, int16_t utc_min)
{
	int64_t minutes = wall_ms / 60000 + utc_min;
	return (int32_t)((minutes % 1440 + 1440) % 1440);
}
