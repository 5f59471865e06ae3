/* What the tests of a bench have in common: a small stores for each, and what must be said there. */
#ifndef BANDTALLY_TESTS_AT_BENCH_H
#define BANDTALLY_TESTS_AT_BENCH_H

#include "tests/unit/code/cmocka-all.h"
#include "tests/unit/stock/bench.h"

#define FAR 20290331

extern struct stores s; /* of the test that runs */

int at_bench_setup(void **state);
int at_bench_teardown(void **state);

void must_say(const char *said, const char *words);
void refused(const char *said, const char *words);
void receive(const char *line, const char *lot, int32_t expiry, int packs);
void print(int n); /* labels of PLAIN-M */

#endif
