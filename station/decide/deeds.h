/* What a question asks for: its deeds, the ordinary one first (count/deed.h). answer.c names them in the question's row; next.h
 * words them. Each adds to `n`, whose head is said. Pure.
 */
#ifndef BANDTALLY_DECIDE_DEEDS_H
#define BANDTALLY_DECIDE_DEEDS_H

#include "count/deed.h"
#include "count/sheet.h"

#define DEED_OF_CARD(card, what) ((struct deed){.kind = DEED_CARD, .n = CARD_##card, .truth = TRUTH_##what})
#define DEED_OF_BADGE(place, what)                                                                           \
	((struct deed){.kind = DEED_BADGE, .n = (int32_t)(place), .truth = TRUTH_##what})
#define DEED_OF_DIGIT(number, what)                                                                          \
	((struct deed){.kind = DEED_DIGIT, .digit = (uint8_t)(number), .truth = TRUTH_##what})
#define DEED_OF_ITEM(what_kind, number, what)                                                                \
	((struct deed){.kind = DEED_##what_kind, .item = (uint8_t)(number), .truth = TRUTH_##what})

/* --- a row's, of the question q on the sheet s (one without a case where the room asks) ----------- */

void deeds_off(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_is_on(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_which_off(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_move_to(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_pack(struct next *n, const struct sheet *s,
                const struct asked *q); /* the pack in the hand, or NO */
void deeds_mark(struct next *n, const struct sheet *s, const struct asked *q); /* the item itself, or NO */
void deeds_found(
    struct next *n, const struct sheet *s,
    const struct asked
        *q); /* which of the missing ones, asked one by one; behind the last, its mark or its slip */
void deeds_anybody(struct next *n, const struct sheet *s,
                   const struct asked *q); /* a badge, whoever it is, or NO */
void deeds_circulating(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_field(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_surgeon_ends(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_incident(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_who_looked(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_handover_seen(struct next *n, const struct sheet *s, const struct asked *q);
void deeds_handover_agree(struct next *n, const struct sheet *s,
                          const struct asked *q); /* begun, it is owed: no NO */
void deeds_yes_no(struct next *n, const struct sheet *s, const struct asked *q); /* YES and NO */

/* --- parts that other sentences need as well ------------------------------------------------------ */

struct deed deed_card_of_item(int card, int item, enum truth truth);
/* An item that is no tourniquet is shown: its mark where it bears one, YES, or NO. */
void deeds_shown(struct next *n, const struct sheet *s, int item, const struct item *it);
void deeds_digits_on(struct next *n, const struct sheet *s, enum truth truth); /* the card of each */
/* A visitor has no badge: the card stands for one where a surgeon is asked for. */
void deeds_surgeon(struct next *n, const struct sheet *s);

#endif
