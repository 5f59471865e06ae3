/* decide() as the daemon calls it, where no record is: what is known of a slip is what the station has of it, and of one
 * that it has no longer, that it was seen. Its digits are always right. */
#ifndef BANDTALLY_TESTS_STATES_KNOWN_H
#define BANDTALLY_TESTS_STATES_KNOWN_H

#include "decide/decide.h"

#define KNOWN_PROOF 123456

static inline void known_slip(const struct station *st, struct input *in, int32_t number, int32_t copy)
{
	const struct slip *kept = station_slip(st, number);
	in->known.paper = (struct paper){.copy = copy, .proof = KNOWN_PROOF, .queued = 1, .made = 1};
	if (kept) {
		in->known.slip = *kept;
		in->known.paper.queued = copy >= 1 && copy <= kept->copy;
		in->known.paper.made = copy < kept->copy || kept->state == SLIP_WRITTEN ||
		                       kept->state == SLIP_SENT || kept->state == SLIP_DONE;
	} else if (in->known.slip_case) {
		in->known.slip =
		    (struct slip){.number = number, .case_no = in->known.slip_case, .state = SLIP_SEEN};
		in->known.paper.seen = 1;
	} else {
		in->known.paper.queued = 0;
	}
	in->proof = KNOWN_PROOF;
}

static inline void decide_known(const struct station *st, const struct input *in, struct outcome *out)
{
	struct input known;
	int i = station_room_index(st, in->room);
	int yes = in->act == ACT_CARD && i >= 0 && st->idle_asked[i] == Q_SLIP_HERE;
	if (in->act != ACT_SLIP && !yes) {
		decide(st, in, out);
		return;
	}
	known = *in;
	known_slip(st, &known, yes ? st->idle_n[i] : in->number, yes ? st->idle_copy[i] : in->copy);
	decide(st, &known, out);
}

#endif
