/* What each event adds to the story of its case. Only story.c and story-event.c include this. */
#ifndef BANDTALLY_TELL_STORY_EVENT_H
#define BANDTALLY_TELL_STORY_EVENT_H

#include "tell/story.h"

/* One that was not taken back, with the sheet before and after it. */
void story_add_event(struct story *s, const struct event *e, const struct sheet *before,
                     const struct sheet *after);

/* A sentence of its own, and a note. What finds no place is counted. */
void story_add_entry(struct story *s, enum story_how how, const struct event *e, const char *text);
void story_add_note(struct story *s, const char *text);

/* Makes it where there is none. NULL where it finds no place, which is counted. */
struct story_digit *story_digit_of(struct story *s, int number);

void story_say(const struct story *s, const struct say *what, char *out, size_t size); /* in its language */

#endif
