/* What a view calls the states of a slip and of a case: for programs. */
#include "tell/view.h"

const char *slip_state_name(enum slip_state state)
{
	static const char *const names[] = {
	    "", "queued", "written as PDF", "sent", "reported done", "waiting", "failed", "seen"};
	return state <= SLIP_SEEN ? names[state] : "";
}

const char *slip_kind_name(enum slip_kind kind)
{
	static const char *const names[] = {"", "reconciliation", "discrepancy", "addendum"};
	return kind <= SLIP_ADDENDUM ? names[kind] : "";
}

const char *case_end_name(int end)
{
	static const char *const names[] = {"open", "reconciled", "unresolved", "cancelled"};
	return end >= 0 && end <= END_CANCELLED ? names[end] : "ended";
}
