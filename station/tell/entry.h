/* One step of a case in a few words, as a slip lists what was entered late, typed or taken back. */
#ifndef BANDTALLY_TELL_ENTRY_H
#define BANDTALLY_TELL_ENTRY_H

#include "tell/story.h"

/* 0 and nothing of what is no entry of its own: a question, a refusal, what the station does in time. The sheets are those
 * before and after the event. */
int entry_words(const struct event *e, const struct story *s, const struct sheet *before,
                const struct sheet *after, char *out, size_t size);

/* Who looked at the bare digit beside a lone operator; SAY_NONE where nobody was asked. */
enum saying entry_looked(uint8_t who);

/* The name of the item that the event is of; borrowed. */
const char *entry_item(const struct language *language, const struct event *e, const struct sheet *before,
                       const struct sheet *after);

#endif
