/* One number a room for everything that the count decided and said there, so that a change of behaviour that
 * breaks no stated rule is noticed as well. Made of words and not of enums' numbers or structs' bytes: what is
 * renumbered or laid out anew gives the same number, what is decided or said otherwise another.
 *
 * The numbers that hold stand in digest.txt, one line a room: "189b8a9d230a97de the least room …".
 */
#ifndef BANDTALLY_TESTS_DIGEST_H
#define BANDTALLY_TESTS_DIGEST_H

#include <inttypes.h>

#include "base/buf.h"
#include "decide/decide.h"

#define DIGEST_START 14695981039346656037u /* FNV-1a, 64 bits */

/* Takes in what was decided on `in` (events as words, reply). `st` names the badges. */
void digest_outcome(uint64_t *digest, const struct station *st, const struct input *in,
                    const struct outcome *out);

/* Adds the room's line. */
void digest_line(struct buf *lines, uint64_t digest, const char *room);

/* Compares the lines with the file, or writes them there (update). Tells each room that differs. 0: all alike.
 */
int digest_compare(const char *file, int update, const struct buf *lines);

#endif
