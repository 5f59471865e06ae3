/* A room in which the tests of the rules scan, by the words that the walk gives its scans (tests/states/room.c). */
#ifndef BANDTALLY_TESTS_DECIDE_RULE_TABLE_H
#define BANDTALLY_TESTS_DECIDE_RULE_TABLE_H

#include "tests/states/walk.h"

struct table {
	struct world w;
	struct outcome out;
	int64_t seq;
};

extern const struct room_plan two_people;

void table_decide(struct table *t, const struct input *in);
enum verdict table_scan(struct table *t, const char *name);
void table_scans(struct table *t, const char *const *names);
struct table *table_lay(const struct room_plan *plan);
const struct sheet *table_sheet(const struct table *t);
int table_happened(const struct table *t, enum event_kind kind);
int table_says(const struct table *t, const char *words);

#define SCANS(t, ...) table_scans(t, (const char *const[]){__VA_ARGS__, NULL})
#define COUNTED "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "pack F F:1", "CIRC"
#define OFF COUNTED, "right index finger", "right index finger", "OFF"
#define AGREED OFF, "FINAL COUNT", "INTACT", "pack F F:1", "CIRC"
#define RULE(name) static void name(void **state)

#endif
