#include "decide/unreadable.h"

struct say input_unknown_code(const struct input *in)
{
	if (in->what == SAY_CODE_OF_STORES)
		return *SAY(CODE_OF_STORES, .item_number = in->number);
	if (in->what == SAY_CODE_OF_TRAY)
		return *SAY(CODE_OF_TRAY, .tray_number = in->number);
	if (in->what == SAY_CODE_OF_CHECK)
		return *SAY(CODE_OF_CHECK);
	if (in->what == SAY_CODE_OF_BOX)
		return *SAY(CODE_OF_BOX);
	if (in->what == SAY_CODE_OF_NO_CARD)
		return *SAY(CODE_OF_NO_CARD, .n = in->card);
	return *SAY(CODE_AS_READ, .code = in->text);
}

static void refuse_unknown(struct turn *t)
{
	struct say say = input_unknown_code(t->in);
	if (say.saying == SAY_CODE_AS_READ && !t->in->text[0]) {
		turn_refuse(t, SAY(NOT_OUR_CODE));
		return;
	}
	say.what = say.saying;
	say.saying = SAY_NOT_IN_CATALOGUE;
	say.then = !turn_has_case(t)                                ? SAY_IF_ON_DIGIT_CARD
	           : t->s->final != FINAL_NONE || t->s->discrepancy ? SAY_KEEP_IN_ROOM
	                                                            : SAY_USE_LISTED;
	turn_refuse(t, &say);
}

static void refuse_foreign(struct turn *t)
{
	const struct input *in = t->in;
	if (in->text[0])
		turn_refuse(t, SAY(FOREIGN_CODE, .what = SAY_OTHER_SITE, .site = in->text));
	else if (in->what == SAY_SCAN_OF_PRACTICE && turn_has_case(t))
		turn_refuse(t, SAY(PRACTICE_IN_CASE, .case_no = t->s->case_no));
	else if (in->what == SAY_SCAN_OF_PRACTICE && station_room_is(t->station, in->room, ROOM_OF_CASES) &&
	         !station_may_practise(t->station, in->room))
		turn_refuse(t, SAY(PRACTICE_NOT_NOW));
	else if (in->what == SAY_SCAN_OF_PRACTICE)
		turn_refuse(t, SAY(PRACTICE_CODE));
	else if (in->what == SAY_CODE_OF_STORES)
		turn_refuse(t, SAY(LABEL_OTHER_STATION, .station = in->number));
	else
		turn_refuse(t, SAY(FOREIGN_CODE, .what = SAY_OTHER_STATION, .station = in->number));
}

void unreadable_take(struct turn *t)
{
	const char *text = t->in->text;
	if (t->in->known.unasked) {
		turn_refuse_unasked(t);
		return;
	}
	switch (t->in->act) {
	case ACT_UNKNOWN:
		refuse_unknown(t);
		return;
	case ACT_BROKEN:
		turn_refuse_fault(t, SAY(MISREAD_FOR, .fault = text), SAY(MISREAD));
		return;
	case ACT_FOREIGN:
		refuse_foreign(t);
		return;
	case ACT_PATIENT:
		turn_refuse(t, SAY(PATIENTS_CODE));
		return;
	case ACT_SIGNED:
		turn_refuse(t, SAY(SIGNED_FOR_AUDIT));
		return;
	case ACT_HALF:
		turn_refuse_fault(t, SAY(HALF_OF_PACK_FOR, .fault = text), SAY(HALF_OF_PACK));
		return;
	case ACT_TICK:
	case ACT_CARD:
	case ACT_DIGIT:
	case ACT_BADGE:
	case ACT_CASE_LABEL:
	case ACT_PAPER_SHEET:
	case ACT_SLIP:
	case ACT_THING:
	case ACT_TRAY:
	case ACT_TYPED:
	case ACT_STORED:
		break;
	}
	turn_refuse(t, SAY(CODE_OF_NO_USE));
}
