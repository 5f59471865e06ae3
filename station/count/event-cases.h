/* For a switch over the kinds of one group of events: the `case`s of the kinds of all other groups, which never get there.
 * With them the switch needs no default, and the compiler finds a kind of its group that was forgotten:
 *
 *     switch (e->kind) {
 *     case EV_ITEM_ON:
 *         …
 *     EVENTS(NOT_OF_ITEM)
 *     case EV_UNREADABLE:
 *         break;
 *     }
 */
#ifndef BANDTALLY_COUNT_EVENT_CASES_H
#define BANDTALLY_COUNT_EVENT_CASES_H

#include "count/event.h"

#define NOT_OF_CASE(kind, name, group, lasting, fields) EVENT_CASE(kind, SAME_CASE_##group)
#define NOT_OF_PEOPLE(kind, name, group, lasting, fields) EVENT_CASE(kind, SAME_PEOPLE_##group)
#define NOT_OF_ITEM(kind, name, group, lasting, fields) EVENT_CASE(kind, SAME_ITEM_##group)
#define NOT_OF_DIGIT(kind, name, group, lasting, fields) EVENT_CASE(kind, SAME_DIGIT_##group)
#define NOT_OF_COUNT(kind, name, group, lasting, fields) EVENT_CASE(kind, SAME_COUNT_##group)
#define NOT_OF_LEDGER(kind, name, group, lasting, fields) EVENT_CASE(kind, SAME_LEDGER_##group)

/* Where both are one group, `same` is two empty arguments and the second of all is nothing; else it is one, and the case is. */
#define SAME_CASE_CASE ,
#define SAME_PEOPLE_PEOPLE ,
#define SAME_ITEM_ITEM ,
#define SAME_DIGIT_DIGIT ,
#define SAME_COUNT_COUNT ,
#define SAME_LEDGER_LEDGER ,
#define EVENT_CASE(kind, ...) EVENT_CASE_SECOND(__VA_ARGS__, case EV_##kind:, )
#define EVENT_CASE_SECOND(first, second, ...) second

#endif
