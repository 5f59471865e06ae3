/* What a text may hold that people give and read: the name of a line, person, room or site, a lot, a reason, an answer.
 *
 * UTF-8 (RFC 3629) of letters that can be seen. Refused are control characters and line breaks (Unicode category Cc, Zl, Zp),
 * what turns the direction of text (Unicode Standard Annex 9: a slip could read otherwise than the record) or shows nothing
 * (category Cf), and what has no meaning (noncharacters, private use). The joiners U+200C and U+200D pass: words of several
 * languages need them.
 *
 * What this program says itself may hold U+2068 … U+2069 around a name (station/words): in pairs they turn nothing behind
 * them, and name_told() lets them stand.
 *
 * name_check() stands at each entry. What an earlier version let in is told by name_told(), so that nothing that is stored
 * keeps a paper or a page back.
 */
#ifndef BANDTALLY_BASE_NAME_H
#define BANDTALLY_BASE_NAME_H

#include <jansson.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/error.h"

/* Takes the character at `*at`, which is before `end`, and moves behind it. A byte that begins none is taken alone: -1. */
int32_t name_next(const char **at, const char *end);

bool name_may_hold(int32_t character);

/* Whether each U+2068 (FIRST STRONG ISOLATE) in these bytes has its U+2069 behind it, and no U+2069 stands alone. */
bool name_isolates(const char *text, const char *end);
bool name_is_isolate(int32_t character); /* one of the two */

/* Whether `text` is such a name of 1 to `bytes_max` bytes with something to read in it. 0, or -EINVAL with one sentence that
 * begins with `what`, as in "name holds U+202E …: leave it out". */
int name_check(const char *what, const char *text, size_t bytes_max, struct error *e);

/* The whole characters of the first `bytes_max` bytes as a JSON text, with U+FFFD for each that may not stand there. A new
 * reference; NULL without memory. */
json_t *name_told(const char *text, size_t bytes_max);

/* The same for each text in a value. One for which there is no memory stays as it is. */
void name_tell_all(json_t *value);

/* Puts '?' in the place of each character that may not stand there: for what a program or a device says of itself, in the
 * record and in the log. */
void name_mend(char *text);

#endif
