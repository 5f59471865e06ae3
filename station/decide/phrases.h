/* Pieces of replies: times, and what a sheet holds, in words that people hear. Pure text. */
#ifndef BANDTALLY_DECIDE_PHRASES_H
#define BANDTALLY_DECIDE_PHRASES_H

#include "count/sheet.h"

void sentence_capital(char *sentence); /* its first letter, where that is one of a-z */
const char *moment_hm(struct moment at, char out[6]);
int32_t moment_minute_of_day(struct moment at); /* 0 to 1439, in the zone of that moment */

/* "1 finger tourniquet of 1 shown intact; 1 artery forceps of 1 shown": only what was seen (rule 15). How many. */
int sheet_accounted_words(const struct sheet *s, char *out, size_t size);
/* " A TOURNIQUET IS ON THE LEFT THUMB.", or "". */
const char *sheet_on_words(const struct sheet *s, char out[80]);
#define OPEN_WORDS_MAX 320
/* That, and " FORCEPS NOT ACCOUNTED FOR. LEFT THUMB NOT SEEN BARE.": what is not as it must be before the patient goes. */
const char *sheet_open_words(const struct sheet *s, char out[OPEN_WORDS_MAX]);

#endif
