#include "asked.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <time.h>
#include <unistd.h>

void die(const char *what)
{
	fprintf(stderr, "%s: %s: %s\n", program_invocation_short_name, what, strerror(errno));
	exit(1);
}

static int64_t now_ns(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return (int64_t)t.tv_sec * 1000000000 + t.tv_nsec;
}

int reach(const char *path)
{
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	int fd = socket(AF_UNIX, SOCK_STREAM, 0);
	snprintf(a.sun_path, sizeof a.sun_path, "%.100s", path);
	for (int i = 0; i < 200; i++) {
		if (connect(fd, (struct sockaddr *)&a, sizeof a) == 0)
			return fd;
		usleep(20000);
	}
	die(path);
}

int64_t round_trip(int fd, const char *line, size_t size, char *answer, size_t room)
{
	int64_t from = now_ns();
	size_t got = 0;
	if (write(fd, line, size) != (ssize_t)size)
		die("write");
	do {
		ssize_t n = read(fd, answer + got, room - 1 - got);
		if (n <= 0)
			die("read");
		got += (size_t)n;
	} while (answer[got - 1] != '\n');
	answer[got] = 0;
	return now_ns() - from;
}

static int by_size(const void *a, const void *b)
{
	int64_t x = *(const int64_t *)a, y = *(const int64_t *)b;
	return (x > y) - (x < y);
}

int64_t memory_kib(pid_t pid, const char *what)
{
	char path[64], line[256];
	long long kib = 0;
	size_t n = strlen(what);
	snprintf(path, sizeof path, "/proc/%d/status", (int)pid);
	FILE *f = fopen(path, "re");
	while (f && fgets(line, sizeof line, f))
		if (strncmp(line, what, n) == 0 && sscanf(line + n, ": %lld kB", &kib) == 1)
			break;
	if (f)
		fclose(f);
	return kib;
}

size_t scan_line(char *out, size_t room, struct own_code code)
{
	char text[OWN_CODE_MAX];
	snprintf(code.site, sizeof code.site, "BC");
	code.room = 1;
	if (own_code_write(&code, text) < 0)
		die("code");
	return (size_t)snprintf(out, room, "{\"do\":\"scan\",\"room\":1,\"code\":\"%s\"}\n", text);
}

void print_item(const char *name, double value, const char *unit, const char *reference, double ratio,
                double goal, int json, int last)
{
	int met = ratio <= goal;
	if (json)
		printf("{\"name\":\"%s\",\"value\":%.4g,\"unit\":\"%s\",\"reference\":\"%s\",\"ratio\":%.4g,"
		       "\"goal\":%.4g,"
		       "\"met\":%s}%s\n",
		       name, value, unit, reference, ratio, goal, met ? "true" : "false", last ? "" : ",");
	else
		printf("%-52s %9.4g %-6s ratio %6.3f (goal %.4g, %s) to %s\n", name, value, unit, ratio, goal,
		       met ? "met" : "NOT met", reference);
}

double at_ms(int64_t *all, int n, int percent)
{
	qsort(all, (size_t)n, sizeof *all, by_size);
	int i = n - 1 - n * (100 - percent) / 100;
	return (double)all[i < 0 ? 0 : i] / 1e6;
}
