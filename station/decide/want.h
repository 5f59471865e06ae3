/* What a sheet waits for: the one place that says what comes next (rule 19). next.c words it, a badge answers
 * it, and nothing else is asked at that moment. Pure.
 */
#ifndef BANDTALLY_DECIDE_WANT_H
#define BANDTALLY_DECIDE_WANT_H

#include "count/station.h"

enum want_kind {
	WANT_NOTHING = 0, /* no case */
	WANT_RESUME,      /* suspended */
	WANT_ANSWER,      /* to sheet.asked */
	WANT_SEARCH,      /* the next step of it */
	WANT_SEARCH_END,  /* every step is answered */
	WANT_ITEM,        /* item: the first of those alike that are asked for together */
	WANT_TEAM,        /* place */
	WANT_FINAL_AGREED,
	WANT_LOOK, /* digit: at the bare digit */
	WANT_DEBT, /* debt */
	WANT_WHO_LOOKED,
	WANT_SIGN_OUT,
	WANT_REMINDER, /* digit: that a badge acknowledges it */
	WANT_COUNT_IN, /* packs, and the initial count */
	WANT_OFF,      /* a tourniquet is on */
	WANT_FINAL,    /* everything that went on is off */
	WANT_ON,       /* counted in, nothing has gone on yet */
};

struct want {
	enum want_kind kind;
	int item, digit;
	enum team_place place;
	struct debt debt;
};

struct want sheet_wants(const struct station *st, const struct sheet *s);

int sheet_is_counting(
    const struct sheet
        *s); /* what is missing or being counted is asked for, and a code that is read may be an answer */
int sheet_is_ready_to_agree(const struct sheet *s); /* final count: all answered, nothing missing */

/* The place whose badge pays a debt of this kind: PLACE_FIELD stands for a lone operator; 0 where no badge does. */
enum team_place debt_payer(const struct sheet *s, enum debt_kind kind);

#endif
