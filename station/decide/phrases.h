/* What several kinds of scan say of a sheet, and times as sentences want them. */
#ifndef BANDTALLY_DECIDE_PHRASES_H
#define BANDTALLY_DECIDE_PHRASES_H

#include <stdbool.h>

#include "decide/turn.h"

int32_t moment_minute_of_day(struct moment at); /* 0 to 1439, in the zone of that moment */

/* Each of these adds to what was said. */
/* "Finger tourniquet: 1 of 1 shown intact. Artery forceps: 2 of 2 shown.": only what was seen (rule 15). */
void say_accounted(struct turn *t);
/* "Seen bare: left thumb.": a second piece of evidence, never merged with the count (rule 11). */
void say_seen_bare(struct turn *t);
/* "A TOURNIQUET IS ON: left thumb.": whether anything was said. */
bool say_on(struct turn *t);
/* That, and "NOT ACCOUNTED FOR: artery forceps. NOT SEEN BARE: left thumb.": what is not as it must be before the patient
 * goes. Whether anything was said. */
bool say_open(struct turn *t);

#endif
