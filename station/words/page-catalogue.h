/* A language as JSON, for the board's page, which makes its own sentences from names and values (board/page/sentences.js).
 * What the station says comes to it as text, so only the sentences are here that a page says by itself (PAGES below):
 *
 *   { "code": "de", "direction": "ltr" or "rtl",
 *     "plural": which form is for 0, 1, … 199, a digit each; of more it is that of 100 and the last two digits,
 *     "values": {name: [type, size]} as values.h has them,
 *     "words": {key: text, or [text of each form]} }
 */
#ifndef BANDTALLY_WORDS_PAGE_CATALOGUE_H
#define BANDTALLY_WORDS_PAGE_CATALOGUE_H

#include "base/json.h"
#include "words/language.h"

/* The board's pages, each with the groups of sentences that it says by itself and that no page above it has: the wall's must stay
 * small. Whoever gives a page a further group adds it to its row. */
/* clang-format off */
#define WALL_PAGE(X, N) \
	BOARD_PAGE(X, N) \
	SAYINGS_DEBTS(X, N) \
	SAYINGS_PLACES(X, N) \
	OWN_DIGIT_NAMES(DIGIT_NAME_ROW)
#define PAGES(P) \
	P(WALL, WALL_PAGE) \
	P(STORES, STORES_PAGE)
/* clang-format on */

enum words_page {
#define P(name, groups) PAGE_##name,
	PAGES(P)
#undef P
	    PAGE_KINDS
};

/* Of a language, or NULL of English. A new reference; NULL without memory. */
json_t *language_catalogue(const struct language *language);

/* The words of one page alone, as the catalogue has them. */
json_t *language_page_words(const struct language *language, enum words_page page);

#endif
