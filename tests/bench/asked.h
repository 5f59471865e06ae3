/* How a bench asks the living station, and what it says of the answers. What cannot be done ends the bench, with a sentence. */
#ifndef BANDTALLY_TESTS_BENCH_ASKED_H
#define BANDTALLY_TESTS_BENCH_ASKED_H

#include <stddef.h>
#include <stdint.h>
#include <sys/types.h>

#include "code/own-codes.h"

_Noreturn void die(const char *what); /* and errno's sentence */

/* A stream to the Unix socket at `path`, as soon as somebody listens there. */
int reach(const char *path);
/* One line there, one line back, kept with a NUL behind it; the ns between. */
int64_t round_trip(int fd, const char *line, size_t size, char *answer, size_t room);
/* The request that scans a code of ours of site BC, room 1, with its newline; its size. */
size_t scan_line(char *out, size_t room, struct own_code code);

/* `what`: "VmRSS" now, "VmHWM" at the most so far. */
int64_t memory_kib(pid_t pid, const char *what);
/* Of `n` times in ns, which it sorts: that within which so many of a hundred were, in ms. */
double at_ms(int64_t *all, int n, int percent);

/* One figure. It is met where `ratio` is at most `goal`. */
void print_item(const char *name, double value, const char *unit, const char *reference, double ratio,
                double goal, int json, int last);

#endif
