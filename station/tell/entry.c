#include "tell/entry.h"

const char *entry_item(const struct language *language, const struct event *e, const struct sheet *before,
                       const struct sheet *after)
{
	const struct item *it = sheet_item_const(after, e->item);
	if (!it)
		it = sheet_item_const(before, e->item);
	return it && it->thing.name[0] ? it->thing.name : saying_text_in(language, SAY_ITEM_NO_NUMBER);
}

static const char *name_of(const struct story *s, int32_t number)
{
	for (int i = 0; i < s->n_people; i++)
		if (s->people[i].number == number)
			return s->people[i].name;
	return saying_text_in(s->language, SAY_SLIP_NOBODY);
}

static enum saying agreed_word(uint8_t kind)
{
	switch ((enum count_kind)kind) {
	case COUNT_INITIAL:
		return SAY_SLIP_E_AGREED_INITIAL;
	case COUNT_FINAL:
		return SAY_SLIP_E_AGREED_FINAL;
	case COUNT_HANDOVER:
		return SAY_SLIP_E_AGREED_HANDOVER;
	case COUNT_ADDED:
		return SAY_SLIP_E_AGREED_ADDED;
	}
	return SAY_SLIP_E_AGREED_ADDED;
}

static enum saying word_of(const struct event *e)
{
	switch (e->kind) {
	case EV_CASE_OPENED:
		return SAY_SLIP_E_OPENED;
	case EV_CASE_ENDED:
		return SAY_SLIP_E_ENDED;
	case EV_SUSPENDED:
		return SAY_SLIP_E_SUSPENDED;
	case EV_RESUMED:
		return SAY_SLIP_E_RESUMED;
	case EV_CANCELLED:
		return SAY_SLIP_E_CANCELLED;
	case EV_PATIENT_LEFT:
		return SAY_SLIP_E_PATIENT_LEFT;
	case EV_AWAKE:
		return SAY_SLIP_E_AWAKE;
	case EV_JOINED:
		return SAY_SLIP_E_JOINED;
	case EV_LEFT:
		return SAY_SLIP_E_LEFT;
	case EV_ITEM_IN:
		return SAY_SLIP_E_ITEM_IN;
	case EV_ITEM_LISTED:
		return SAY_SLIP_E_ITEM_LISTED;
	case EV_ITEM_ON:
	case EV_DIGIT_ON:
	case EV_DIGIT_STILL_ON:
		return SAY_SLIP_E_ON;
	case EV_ITEM_OFF:
		return e->digit ? SAY_SLIP_E_OFF : SAY_SLIP_E_ITEM_OFF;
	case EV_ITEM_SHOWN:
		return e->what == EVIDENCE_MARK ? SAY_SLIP_E_MARK_READ : SAY_SLIP_E_SHOWN;
	case EV_ITEM_NOT_SHOWN:
		return SAY_SLIP_E_NOT_SHOWN;
	case EV_ITEM_RETURNED:
		return SAY_SLIP_E_RETURNED;
	case EV_ITEM_ISOLATED:
		return SAY_SLIP_E_ISOLATED;
	case EV_ITEM_DROPPED:
		return SAY_SLIP_E_DROPPED;
	case EV_ITEM_STRUCK:
		return SAY_SLIP_STRUCK_ITEM;
	case EV_ITEM_MORE:
		return SAY_SLIP_E_MORE;
	case EV_FORCEPS_ON:
		return SAY_SLIP_E_FORCEPS_ON;
	case EV_FORCEPS_MOVED:
		return SAY_SLIP_E_FORCEPS_MOVED;
	case EV_EXTRA:
		return SAY_SLIP_E_EXTRA;
	case EV_DIGIT_MARKED:
		return SAY_SLIP_E_MARKED;
	case EV_DIGIT_MAYBE_ON:
	case EV_DIGIT_DOUBTED:
		return SAY_SLIP_E_MAYBE_ON;
	case EV_DIGIT_NOT_ON:
	case EV_DIGIT_NEVER_ON:
		return SAY_SLIP_E_NOT_ON;
	case EV_DIGIT_OFF:
		return SAY_SLIP_E_OFF;
	case EV_DIGIT_SEEN_BARE:
		return SAY_SLIP_E_BARE;
	case EV_DIGIT_SEEN_ON:
		return e->n == SEEN_SAID ? SAY_SLIP_E_SAID_ON : SAY_SLIP_E_SEEN_ON;
	case EV_DIGIT_EARLIER:
		return e->what == STRETCH_ON ? SAY_SLIP_ON_EARLIER : SAY_SLIP_OFF_EARLIER;
	case EV_DIGIT_MOVED:
		return SAY_SLIP_MOVED;
	case EV_SIZE_STATED:
		return SAY_SLIP_E_SIZE;
	case EV_WHO_LOOKED:
		return SAY_SLIP_E_WHO_LOOKED;
	case EV_COUNT_STARTED:
		return SAY_SLIP_E_COUNT_BEGUN;
	case EV_COUNT_AGREED:
		return agreed_word(e->what);
	case EV_COUNT_AGAIN:
		return SAY_SLIP_E_AGAIN;
	case EV_SEARCH_STEP:
		return SAY_SLIP_E_STEP;
	case EV_SEARCH_WHY:
		return SAY_SLIP_E_STEP_WHY;
	case EV_DRESSING_ON:
		return e->n ? SAY_SLIP_E_DRESSING : SAY_SLIP_E_DRESSING_DOWN;
	case EV_PAID:
		return SAY_SLIP_E_PAID;
	case EV_POINT:
		return SAY_SLIP_E_POINT;
	case EV_SIGNED_OUT:
		return SAY_SLIP_E_SIGNED;
	case EV_ACKNOWLEDGED:
		return SAY_SLIP_E_TOLD;
	case EV_STARTED:
	case EV_STOPPED:
	case EV_ALIVE:
	case EV_LINE_SET:
	case EV_LINE_REMOVED:
	case EV_STAFF_SET:
	case EV_STAFF_WITHDRAWN:
	case EV_QUARANTINED:
	case EV_RELEASED:
	case EV_RECALLED:
	case EV_LABELLED:
	case EV_LABELS_TAKEN:
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
	case EV_ARCHIVED:
	case EV_KEPT_FOR:
	case EV_AWAY:
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
		return SAY_NONE;
	}
	return SAY_NONE;
}

enum saying entry_looked(uint8_t who)
{
	switch ((enum who_looked)who) {
	case LOOKED_TEAM:
		return SAY_NONE;
	case LOOKED_PATIENT:
		return SAY_SLIP_PATIENT_LOOKED;
	case LOOKED_CARER:
		return SAY_SLIP_CARER_LOOKED;
	case LOOKED_COLLEAGUE:
		return SAY_SLIP_COLLEAGUE_LOOKED;
	case LOOKED_NOBODY:
		return SAY_SLIP_NOBODY_LOOKED;
	}
	return SAY_NONE;
}

int entry_words(const struct event *e, const struct story *s, const struct sheet *before,
                const struct sheet *after, char *out, size_t size)
{
	const struct say say = {.saying = word_of(e),
	                        .item = entry_item(s->language, e, before, after),
	                        .digit = e->digit,
	                        .other_digit = e->kind == EV_DIGIT_MOVED ? e->other : 0,
	                        .person = e->kind == EV_JOINED ? e->text : name_of(s, e->person),
	                        .place =
	                            e->kind == EV_JOINED ? place_saying((enum team_place)e->what) : SAY_NONE,
	                        .step = e->text,
	                        .reason = e->text,
	                        .what = e->kind == EV_PAID         ? debt_saying((enum debt_kind)e->what)
	                                : e->kind == EV_WHO_LOOKED ? entry_looked(e->what)
	                                                           : SAY_NONE,
	                        .n = e->n};
	out[0] = 0;
	if (!say.saying)
		return 0;
	say_part_in(s->language, &say, out, size);
	return 1;
}
