/* A language as JSON, for the board's page, which makes its own sentences from names and values (board/page/sentences.js).
 * What the station says comes to it as text, so only those whose key begins with "board-" are here, and the names of debts, digits and places:
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

/* Of a language, or NULL of English. A new reference; NULL without memory. */
json_t *language_catalogue(const struct language *language);

#endif
