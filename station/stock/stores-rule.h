/* The rules of stores, by number: the code and the tests cite them as 'stores rule N'. They hold in every state that can be
 * reached; rule_stock_broken() looks at one. Those of the count (count/rule.h) hold as well: facts first, one question, one
 * read is one answer, no dead end, no message says 'safe'.
 */
#ifndef BANDTALLY_STOCK_STORES_RULE_H
#define BANDTALLY_STOCK_STORES_RULE_H

#include "stock/stock.h"

/* X(number, NAME, "the rule") */
/* clang-format off */
#define STOCK_RULES(X) \
	X(1, FACTS_FIRST, "What came, was opened, came back or was found is entered, whatever was missing for it; what is missing stands beside it.") \
	X(2, IN_ONE_PLACE, "A pack is in one place: received = waiting + shelf + rooms + opened + isolated + written off + unaccounted, for each line, lot and expiry.") \
	X(3, NOT_GIVEN_OUT, "Nothing is given to a room that is not confirmed, whose label was not read back, that has expired, or is in quarantine.") \
	X(4, EACH_LABEL_ONCE, "Labels: printed = read back + spoilt + destroyed, each number once; what is left stays open by its number.") \
	X(5, TWO_PEOPLE, "Who confirms what was typed, or releases what was in quarantine, is another than who began it.") \
	X(6, READ_BEFORE_REUSE, "A pack that comes back unopened goes to a room only after somebody said that it is sealed, dry and clean.") \
	X(7, ONE_QUESTION, "A bench asks one thing at a time, and names what may answer it; it leaves no question without an end.") \
	X(8, NEVER_BELOW, "The shelf and what waits are never less than nothing: nobody takes there what does not lie there.") \
	X(9, NOBODY_CHARGED, "What is found acts on the case that misses one of its kind; where none does, no case is charged.")
/* clang-format on */

enum stores_rule {
	STORES_RULE_NONE = 0,
#define X(number, name, text) STORES_RULE_##name = number,
	STOCK_RULES(X)
#undef X
};
/* Numbered from 1 without a gap. */
#define X(number, name, text) +1
enum { STOCK_RULE_MAX = 0 STOCK_RULES(X) };
#undef X

/* The first rule that is broken in this state, with where in `e`. */
enum stores_rule rule_stock_broken(const struct stock *s, struct error *e);

const char *rule_stock_text(int number); /* "" where there is no such rule */

#endif
