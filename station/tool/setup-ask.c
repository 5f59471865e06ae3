#include "tool/setup-ask.h"

#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

static volatile sig_atomic_t stopped;

static void on_signal(int signal)
{
	(void)signal;
	stopped = 1;
}

void ask_begin(void)
{
	struct sigaction a = {.sa_handler = on_signal}; /* no SA_RESTART: reading ends with it */
	sigaction(SIGINT, &a, NULL);
	sigaction(SIGTERM, &a, NULL);
	sigaction(SIGHUP, &a, NULL);
}

bool ask_stopped(void)
{
	return stopped;
}

/* By the byte: what was typed ahead belongs to the next question, whoever reads it. */
static int read_line(char *out, size_t size)
{
	size_t n = 0;
	char c = 0;
	for (;;) {
		ssize_t got = stopped ? 0 : read(STDIN_FILENO, &c, 1);
		if (got < 0 && errno == EINTR && !stopped)
			continue;
		if (got <= 0) {
			putchar('\n');
			return -ECANCELED;
		}
		if (c == '\n')
			break;
		if (n + 1 < size)
			out[n] = c;
		n++;
	}
	if (n + 1 > size)
		return -EMSGSIZE;
	while (n && strchr(" \t\r", out[n - 1]))
		n--;
	out[n] = 0;
	memmove(out, out + strspn(out, " \t"), n + 1 - strspn(out, " \t"));
	return 0;
}

int ask_line(const char *question, const char *offered, char *out, size_t size)
{
	if (*offered)
		printf("%s [%s]: ", question, offered);
	else
		printf("%s: ", question);
	fflush(stdout);
	out[0] = 0;
	int n = read_line(out, size);
	if (n == 0 && !*out)
		snprintf(out, size, "%s", offered);
	return n;
}
