#include "decide/audit-desk.h"

#include "decide/slip-read.h"

static void say_signed(struct turn *t)
{
	const struct known *known = &t->in->known;
	if (known->unasked) {
		turn_refuse_unasked(t);
		return;
	}
	switch ((enum signature)known->signature) {
	case SIGNATURE_HELD:
		turn_say(t, SAY(R_SIGNED_HELD, .slip = known->slip.number, .copy = known->paper.copy,
		                .case_no = known->slip_case));
		return;
	case SIGNATURE_OTHER:
		turn_refuse(t, SAY(SIGNED_OTHER, .slip = known->slip.number));
		return;
	case SIGNATURE_OF_NOBODY:
	case SIGNATURE_NOT_ASKED:
		break;
	}
	turn_refuse(t, SAY(SIGNED_BY_NOBODY));
}

static void say_code(struct turn *t)
{
	const struct known *known = &t->in->known;
	if (!slip_is_proven(t))
		return;
	turn_say(t, SAY(R_CODE_FITS, .slip = known->slip.number, .copy = known->paper.copy,
	                .case_no = known->slip_case));
}

void audit_desk_take(struct turn *t)
{
	if (t->in->act == ACT_SIGNED)
		say_signed(t);
	else if (t->in->act == ACT_SLIP)
		say_code(t);
	else if (t->in->act == ACT_PATIENT)
		turn_refuse(t, SAY(PATIENTS_CODE));
	else
		turn_refuse(t, SAY(DESK_READS_SLIPS));
}
