#include "tests/unit/stock/at-bench.h"

#include <stdio.h>

#include "code/own-codes.h"

struct stores s;

int at_bench_setup(void **state)
{
	(void)state;
	stores_init(&s);
	return 0;
}

int at_bench_teardown(void **state)
{
	(void)state;
	stores_deinit(&s);
	return 0;
}

void must_say(const char *said, const char *words)
{
	if (!strstr(said, words))
		fail_msg("'%s' does not say '%s'", said, words);
}

void refused(const char *said, const char *words)
{
	must_say(said, words);
	assert_int_equal(s.out.verdict, BENCH_REFUSED);
}

void receive(const char *line, const char *lot, int32_t expiry, int packs)
{
	stores_pack(&s, line, lot, expiry, 1);
	char text[12];
	snprintf(text, sizeof text, "%d", packs);
	stores_type(&s, text);
}

void print(int n)
{
	char text[12];
	stores_card(&s, CARD_PRINT_LABELS);
	stores_type(&s, "PLAIN-M");
	snprintf(text, sizeof text, "%d", n);
	stores_type(&s, text);
}
