/* A station of two theatres and a stores bench (room 9) on a real record, for the tests of what lies between them. What is scanned
 * is typed, since one who types means each code; a reply is valid until the next. */
#ifndef BANDTALLY_TESTS_STORES_STATION_H
#define BANDTALLY_TESTS_STORES_STATION_H

#include "code/own-codes.h"
#include "run/core.h"
#include "run/stock-steps.h"

#define GREEN "(01)09506000134352(17)330331(10)"
#define BOX "(01)09506000134369(17)330331(10)"

extern struct core core;

int stores_setup(void **state);
int stores_teardown(void **state);

void again(void);
const char *scan(int32_t room, const char *text);
const char *own(int32_t room, struct own_code code);
const char *card(int32_t room, int meaning);
const char *badge(int32_t room, int number);
const char *label_text(int number);
const char *label(int32_t room, int number);
void must_say(const char *said, const char *words);
const struct stock_lot *lot(const char *line, const char *text, int32_t expiry);
void print_labels(void);
void operate_in(int32_t room, const char *pack);
void operate(const char *pack);
json_t *steps(const char *list, int code);
void must_end(json_t *o, const char *verdict, const char *said, const char *asked);

#endif
