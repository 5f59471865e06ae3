#include "tell/entry.h"

#include <stdio.h>

#include "code/own-codes.h"

const char *entry_item(const struct event *e, const struct sheet *before, const struct sheet *after)
{
	const struct item *it = sheet_item_const(after, e->item);
	if (!it)
		it = sheet_item_const(before, e->item);
	return it && it->thing.name[0] ? it->thing.name : saying_text(SAY_ITEM_NO_NUMBER);
}

static const char *name_of(const struct story *s, int32_t number)
{
	for (int i = 0; i < s->n_people; i++)
		if (s->people[i].number == number)
			return s->people[i].name;
	return slip_text(SW_NOBODY);
}

static enum slip_word agreed_word(uint8_t kind)
{
	switch ((enum count_kind)kind) {
	case COUNT_INITIAL:
		return SW_E_AGREED_INITIAL;
	case COUNT_FINAL:
		return SW_E_AGREED_FINAL;
	case COUNT_HANDOVER:
		return SW_E_AGREED_HANDOVER;
	case COUNT_ADDED:
		return SW_E_AGREED_ADDED;
	}
	return SW_E_AGREED_ADDED;
}

/* SW_KINDS: none. */
static enum slip_word word_of(const struct event *e)
{
	switch (e->kind) {
	case EV_CASE_OPENED:
		return SW_E_OPENED;
	case EV_CASE_ENDED:
		return SW_E_ENDED;
	case EV_SUSPENDED:
		return SW_E_SUSPENDED;
	case EV_RESUMED:
		return SW_E_RESUMED;
	case EV_CANCELLED:
		return SW_E_CANCELLED;
	case EV_PATIENT_LEFT:
		return SW_E_PATIENT_LEFT;
	case EV_AWAKE:
		return SW_E_AWAKE;
	case EV_JOINED:
		return SW_E_JOINED;
	case EV_LEFT:
		return SW_E_LEFT;
	case EV_ITEM_IN:
		return SW_E_ITEM_IN;
	case EV_ITEM_LISTED:
		return SW_E_ITEM_LISTED;
	case EV_ITEM_ON:
	case EV_DIGIT_ON:
	case EV_DIGIT_STILL_ON:
		return SW_E_ON;
	case EV_ITEM_OFF:
		return e->digit ? SW_E_OFF : SW_E_ITEM_OFF;
	case EV_ITEM_SHOWN:
		return e->what == EVIDENCE_MARK ? SW_E_MARK_READ : SW_E_SHOWN;
	case EV_ITEM_NOT_SHOWN:
		return SW_E_NOT_SHOWN;
	case EV_ITEM_RETURNED:
		return SW_E_RETURNED;
	case EV_ITEM_ISOLATED:
		return SW_E_ISOLATED;
	case EV_ITEM_DROPPED:
		return SW_E_DROPPED;
	case EV_ITEM_STRUCK:
		return SW_STRUCK_ITEM;
	case EV_ITEM_MORE:
		return SW_E_MORE;
	case EV_FORCEPS_ON:
		return SW_E_FORCEPS_ON;
	case EV_FORCEPS_MOVED:
		return SW_E_FORCEPS_MOVED;
	case EV_EXTRA:
		return SW_E_EXTRA;
	case EV_DIGIT_MARKED:
		return SW_E_MARKED;
	case EV_DIGIT_MAYBE_ON:
	case EV_DIGIT_DOUBTED:
		return SW_E_MAYBE_ON;
	case EV_DIGIT_NOT_ON:
	case EV_DIGIT_NEVER_ON:
		return SW_E_NOT_ON;
	case EV_DIGIT_OFF:
		return SW_E_OFF;
	case EV_DIGIT_SEEN_BARE:
		return SW_E_BARE;
	case EV_DIGIT_SEEN_ON:
		return SW_E_SEEN_ON;
	case EV_DIGIT_EARLIER:
		return e->what == STRETCH_ON ? SW_ON_EARLIER : SW_OFF_EARLIER;
	case EV_DIGIT_MOVED:
		return SW_MOVED;
	case EV_SIZE_STATED:
		return SW_E_SIZE;
	case EV_WHO_LOOKED:
		return SW_E_WHO_LOOKED;
	case EV_COUNT_STARTED:
		return SW_E_COUNT_BEGUN;
	case EV_COUNT_AGREED:
		return agreed_word(e->what);
	case EV_COUNT_AGAIN:
		return SW_E_AGAIN;
	case EV_SEARCH_STEP:
		return SW_E_STEP;
	case EV_SEARCH_WHY:
		return SW_E_STEP_WHY;
	case EV_DRESSING_ON:
		return e->n ? SW_E_DRESSING : SW_E_DRESSING_DOWN;
	case EV_PAID:
		return SW_E_PAID;
	case EV_POINT:
		return SW_E_POINT;
	case EV_SIGNED_OUT:
		return SW_E_SIGNED;
	case EV_ACKNOWLEDGED:
		return SW_E_TOLD;
	case EV_STARTED:
	case EV_STOPPED:
	case EV_ALIVE:
	case EV_LINE_SET:
	case EV_STAFF_SET:
	case EV_STAFF_WITHDRAWN:
	case EV_QUARANTINED:
	case EV_RELEASED:
	case EV_LABELLED:
	case EV_BENCH_ASKED:
	case EV_BENCH_PERSON:
	case EV_RECEIVED:
	case EV_CONFIRMED:
	case EV_LABEL_FATE:
	case EV_LABELS_CLOSED:
	case EV_ISSUED:
	case EV_PUT_BACK:
	case EV_WRITTEN_OFF:
	case EV_STOCK_COUNTED:
	case EV_CASE_TOOK:
	case EV_SCANNER_FAULT:
	case EV_SETTING:
	case EV_SCANNER_ROOM:
	case EV_CLOCK_WRONG:
	case EV_AUDITED:
	case EV_BACKED_UP:
	case EV_SLIP_QUEUED:
	case EV_SLIP_STATE:
	case EV_DIGIT_NOT_SEEN:
	case EV_DISCREPANCY:
	case EV_OWED:
	case EV_ASKED:
	case EV_REMINDED:
	case EV_REFUSED:
	case EV_NEXT:
	case EV_UNDONE:
	case EV_ITEM_USED:
	case EV_CORRECTION:
	case EV_FOUND_AFTER:
	case EV_HELD:
	case EV_HELD_ANSWERED:
	case EV_KEY:
	case EV_SEALED:
	case EV_INCARNATION:
	case EV_KINDS:
		return SW_KINDS;
	}
	return SW_KINDS;
}

enum slip_word entry_looked(uint8_t who)
{
	switch ((enum who_looked)who) {
	case LOOKED_TEAM:
		return SW_KINDS;
	case LOOKED_PATIENT:
		return SW_PATIENT_LOOKED;
	case LOOKED_CARER:
		return SW_CARER_LOOKED;
	case LOOKED_COLLEAGUE:
		return SW_COLLEAGUE_LOOKED;
	case LOOKED_NOBODY:
		return SW_NOBODY_LOOKED;
	}
	return SW_KINDS;
}

int entry_words(const struct event *e, const struct story *s, const struct sheet *before,
                const struct sheet *after, char *out, size_t size)
{
	enum slip_word word = word_of(e), looked = entry_looked(e->kind == EV_WHO_LOOKED ? e->what : 0);
	char n[12];
	out[0] = 0;
	if (word == SW_KINDS)
		return 0;
	snprintf(n, sizeof n, "%d", (int)e->n);
	const char *const values[] = {
	    "item",   entry_item(e, before, after),
	    "digit",  own_digit_name(e->digit),
	    "other",  e->kind == EV_DIGIT_MOVED ? own_digit_name(e->other) : "",
	    "person", e->kind == EV_JOINED ? e->text : name_of(s, e->person),
	    "place",  e->kind == EV_JOINED ? place_words((enum team_place)e->what) : "",
	    "step",   e->text,
	    "why",    e->text,
	    "what",   e->kind == EV_PAID ? debt_words((enum debt_kind)e->what) : "",
	    "also",   looked == SW_KINDS ? "" : slip_text(looked),
	    "n",      n,
	    NULL};
	slip_part(out, size, word, values);
	return 1;
}
