#include "count/event-lists.h"

#include <errno.h>
#include <string.h>

#include "count/held.h"
#include "count/recorded.h"
#include "count/station.h"
#include "count/stock-enums.h"
#include "words/said.h"

static const char *const bound[] = {[CARRIED_SPARE] = "spare"};
static const char *const slip_kinds[] = {[SLIP_RECONCILIATION] = "reconciliation",
                                         [SLIP_DISCREPANCY] = "discrepancy",
                                         [SLIP_ADDENDUM] = "addendum"};
static const char *const slip_states[] = {
    [SLIP_QUEUED] = "queued",   [SLIP_WRITTEN] = "written", [SLIP_SENT] = "sent", [SLIP_DONE] = "done",
    [SLIP_WAITING] = "waiting", [SLIP_FAILED] = "failed",   [SLIP_SEEN] = "seen"};
static const char *const case_ends[] = {
    [END_RECONCILED] = "reconciled", [END_UNRESOLVED] = "unresolved", [END_CANCELLED] = "cancelled"};
static const char *const places[] = {[PLACE_FIELD] = "field",
                                     [PLACE_CIRCULATING] = "circulating",
                                     [PLACE_SURGEON] = "surgeon",
                                     [PLACE_CHARGE] = "charge",
                                     [PLACE_VISITOR] = "visitor"};
static const char *const evidences[] = {[EVIDENCE_MARK] = "mark", [EVIDENCE_SHOWN] = "shown"};
static const char *const conditions[] = {[CONDITION_INTACT] = "intact",
                                         [CONDITION_CUT_COMPLETE] = "cut-complete",
                                         [CONDITION_PIECES_MISSING] = "pieces-missing"};
static const char *const on_off[] = {[STRETCH_ON] = "on", [STRETCH_OFF] = "off"};
static const char *const looked[] = {[LOOKED_TEAM] = "team",
                                     [LOOKED_PATIENT] = "patient",
                                     [LOOKED_CARER] = "carer",
                                     [LOOKED_COLLEAGUE] = "colleague",
                                     [LOOKED_NOBODY] = "nobody"};
static const char *const counts[] = {[COUNT_INITIAL] = "initial",
                                     [COUNT_FINAL] = "final",
                                     [COUNT_HANDOVER] = "handover",
                                     [COUNT_ADDED] = "added"};
static const char *const done[] = {[STEP_DONE] = "done", [STEP_NOT_DONE] = "not-done"};
static const char *const yes_no[] = {[POINT_YES] = "yes", [POINT_NO] = "no"};
static const char *const debts[] = {
#define X(name, text) [DEBT_##name] = (text),
    DEBTS(X)
#undef X
};
static const char *const questions[] = {
#define X(name, text, about) [Q_##name] = (text),
    QUESTIONS(X)
#undef X
};
static const char *const held[] = {
    [HELD_CARD] = "card", [HELD_DIGIT] = "digit", [HELD_BADGE] = "badge", [HELD_CASE_LABEL] = "case-label",
    [HELD_SLIP] = "slip", [HELD_THING] = "thing", [HELD_TRAY] = "tray"};
static const char *const held_answers[] = {
    [HELD_ENTERED] = "entered", [HELD_THROWN] = "thrown", [HELD_MEANT] = "meant"};
static const char *const roles[] = {
#define X(name, text, traits) [ROLE_##name] = (text),
    ROLES(X)
#undef X
};
static const char *const identities[] = {[IDENTITY_PACK] = "pack", [IDENTITY_MARK] = "mark"};
static const char *const staff[] = {
    [STAFF_PRACTITIONER] = "practitioner", [STAFF_SURGEON] = "surgeon", [STAFF_CHARGE] = "charge"};
static const char *const settings[] = {
#define X(number, name, text, ...) [SETTING_##name] = (text),
    SITE_SETTINGS(X) POLICY_LISTS(X) POLICY_NUMBERS(X)
#undef X
};
static const char *const hows[] = {
#define X(name, text) [PAID_##name] = (text),
    PAID_HOWS(X)
#undef X
};
static const char *const end_whys[] = {
#define X(name, text) [END_##name] = (text),
    END_WHYS(X)
#undef X
};

static const char *const incarnations[] = {[INCARNATION_BEHIND] = "behind",
                                           [INCARNATION_OTHER] = "other",
                                           [INCARNATION_NO_HEAD] = "no-head",
                                           [INCARNATION_ASIDE] = "aside",
                                           [INCARNATION_PAPER] = "paper"};

static const char *const received[] = {[RECEIVED_CODED] = "coded",
                                       [RECEIVED_CONFIRMED] = "confirmed",
                                       [RECEIVED_NOT_CONFIRMED] = "not-confirmed"};
static const char *const labels[] = {[LABEL_READ] = "read",
                                     [LABEL_SPOILT] = "spoilt",
                                     [LABEL_DESTROYED] = "destroyed",
                                     [LABEL_OPENED] = "opened"};
static const char *const took[] = {[TOOK_OPENED] = "opened",
                                   [TOOK_RETURNED] = "returned",
                                   [TOOK_ISOLATED] = "isolated",
                                   [TOOK_MISSING] = "missing",
                                   [TOOK_FOUND] = "found"};
static const char *const written[] = {[WRITTEN_SAID] = "said", [WRITTEN_NOT_SEALED] = "not-sealed"};
static const char *const counted[] = {[COUNTED_WITH_WAITING] = "with-waiting"};
static const char *const bench[] = {
#define X(name, text) [BENCH_##name] = (text),
    BENCH_QUESTIONS(X)
#undef X
};

static const char *const away[] = {[AWAY_STOPPED] = "stopped",
                                   [AWAY_FORCED] = "forced",
                                   [AWAY_BACK] = "back",
                                   [AWAY_UNSTOPPED] = "back-unstopped"};

static const struct {
	const char *const *names;
	int count;
} lists[EVENT_LISTS] = {
#define LIST(list, names) [LIST_##list] = {names, sizeof(names) / sizeof *(names)}
    LIST(BOUND, bound),
    LIST(SLIP_KIND, slip_kinds),
    LIST(SLIP_STATE, slip_states),
    LIST(CASE_END, case_ends),
    LIST(PLACE, places),
    LIST(EVIDENCE, evidences),
    LIST(CONDITION, conditions),
    LIST(ON_OFF, on_off),
    LIST(LOOKED, looked),
    LIST(COUNT, counts),
    LIST(DONE, done),
    LIST(YES_NO, yes_no),
    LIST(DEBT, debts),
    LIST(QUESTION, questions),
    LIST(HELD, held),
    LIST(HELD_ANSWER, held_answers),
    LIST(ROLE, roles),
    LIST(IDENTITY, identities),
    LIST(STAFF, staff),
    LIST(SETTING, settings),
    LIST(HOW, hows),
    LIST(END_WHY, end_whys),
    LIST(INCARNATION, incarnations),
    LIST(RECEIVED, received),
    LIST(LABEL, labels),
    LIST(TOOK, took),
    LIST(WRITTEN, written),
    LIST(BENCH, bench),
    LIST(AWAY, away),
    LIST(COUNTED, counted),
#undef LIST
};

const char *event_list_name(enum event_list list, int64_t number)
{
	if (list == LIST_SAYING)
		return saying_name(number);
	return number > 0 && number < lists[list].count ? lists[list].names[number] : NULL;
}

int event_list_number(enum event_list list, const char *name)
{
	if (list == LIST_SAYING)
		return saying_from_name(name);
	const char *const *names = lists[list].names;
	for (int i = 1; i < lists[list].count; i++)
		if (names[i][0] == name[0] && strcmp(names[i], name) == 0)
			return i;
	return -EINVAL;
}
