/* What a slip and a discrepancy slip may say: their fields, and what one field says of another. */
#include <errno.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/sheets.h"

static const char *const paper_words[] = {"roll80", "a6", "a5", "a4", NULL};
static const char *const heading_words[] = {"reconciled", "unresolved", "cancelled", "addendum", NULL};
static const char *const count_words[] = {"initial", "added", "handover", "final", NULL};
static const char *const answer_words[] = {"yes", "no", "open", NULL};
static const char *const how_words[] = {"late", "keyed", "overridden", "corrected", "burst", NULL};

/* clang-format off */
static const struct field item_fields[] = {
	TEXT("line", REQUIRED, 1, 60, ""),
	TEXT("identity", OPTIONAL, 1, 60, "as printed on it; left out: no identity of its own"),
	TEXT("lot", OPTIONAL, 1, 20, ""),
	TEXT("expiry", OPTIONAL, 1, 20, ""),
	INT("in", REQUIRED, 0, 999, ""),
	INT("out", REQUIRED, 0, 999, "accounted for, or returned unopened"),
	TEXT("evidence", REQUIRED, 0, 160, "'mark scanned', 'shown'; \"\" prints a space to be filled by hand"),
	TEXT("condition", OPTIONAL, 1, 80, "'intact', 'cut and complete', 'pieces missing'"),
	TEXT("note", OPTIONAL, 1, 200, "'added 10:12', 'dropped', 'off, not yet accounted for', 'returned unopened'"),
	END};
static const struct field stretch_fields[] = {
	MOMENT("on", REQUIRED, ""),
	MOMENT("off", OPTIONAL, "left out: it is still on; in brackets why it is no time, or stands before on"),
	TEXT("minutes", REQUIRED, 1, 80, ""),
	END};
static const struct field bare_fields[] = {
	TEXT("by", REQUIRED, 1, 60, ""),
	MOMENT("when", REQUIRED, ""),
	TEXT("witness", OPTIONAL, 1, 80, ""),
	END};
static const struct field digit_fields[] = {
	TEXT("name", REQUIRED, 1, 60, "in words"),
	TEXT("tourniquet", REQUIRED, 1, 100, ""),
	TEXT("forceps", OPTIONAL, 1, 100, ""),
	OBJECTS("stretches", REQUIRED, 1, 20, stretch_fields, ""),
	TEXT("longest", REQUIRED, 1, 80, "longest stretch: '32 min', 'at least 95 min; by wall clock 140 min'"),
	TEXT("total", OPTIONAL, 1, 80, ""),
	TEXTS("reminders", OPTIONAL, 0, 60, 100, "'20 min, 10:22, acknowledged by CIRC-1'"),
	OBJECT("bare", OPTIONAL, bare_fields, "seen bare; left out prints NOT SEEN BARE. Never merged with the count (rule 11)"),
	TEXT("note", OPTIONAL, 1, 200, ""),
	END};
static const struct field count_fields[] = {
	WORD("kind", REQUIRED, count_words, ""),
	MOMENT("when", REQUIRED, ""),
	TEXTS("agreed", REQUIRED, 1, 2, 60, "two names print 'agreed aloud by A and B, recorded by R'; one 'single-person count by A'"),
	TEXT("recorded_by", REQUIRED, 1, 60, ""),
	TEXT("note", OPTIONAL, 1, 200, "'without full sight', 'not agreed: 1 missing'"),
	END};
static const struct field point_fields[] = {
	TEXT("text", REQUIRED, 1, 200, ""),
	WORD("answer", REQUIRED, answer_words, ""),
	END};
static const struct field sign_out_fields[] = {
	TEXT("by", REQUIRED, 1, 60, ""),
	MOMENT("when", REQUIRED, ""),
	OBJECTS("points", REQUIRED, 0, 20, point_fields, ""),
	END};
static const struct field step_fields[] = {
	TEXT("text", REQUIRED, 1, 120, ""),
	TEXT("answer", REQUIRED, 0, 200, "\"\" prints boxes and a line to write on"),
	END};
static const struct field search_fields[] = {
	MOMENT("opened", REQUIRED, ""),
	MOMENT("closed", OPTIONAL, ""),
	TEXT("reason", REQUIRED, 1, 300, "what is missing, extra or in pieces"),
	OBJECTS("steps", REQUIRED, 0, 30, step_fields, ""),
	TEXT("incident", OPTIONAL, 1, 60, "left out with steps prints 'incident number: number owed' and a line"),
	END};
static const struct field debt_fields[] = {
	TEXT("text", REQUIRED, 1, 200, ""),
	TEXT("paid", OPTIONAL, 1, 200, "left out prints STILL OWED and a line"),
	END};
static const struct field person_fields[] = {
	TEXT("name", REQUIRED, 1, 60, ""),
	TEXT("place", REQUIRED, 1, 60, ""),
	MOMENT("from", REQUIRED, ""),
	MOMENT("to", OPTIONAL, ""),
	END};
static const struct field entry_fields[] = {
	WORD("how", REQUIRED, how_words, ""),
	MOMENT("when", REQUIRED, ""),
	TEXT("text", REQUIRED, 1, 300, ""),
	END};

#define SLIP_FIELDS \
	ALL_KINDS, \
	WORD("paper", OPTIONAL, paper_words, "left out: a5. roll80: 80 mm roll, 72 mm printed, one page as long as needed, at " \
	     "most 2,000 mm, then a second"), \
	INT("slip", REQUIRED, 1, 9999999, "slip number"), \
	INT("copy", REQUIRED, 1, 99, ""), \
	INT("station", OPTIONAL, 1, 99, "which of the site's stations it is of; left out, it is 0, which is not printed"), \
	CODE("code", REQUIRED, OWN_SLIP, "the slip's own, of that slip, copy and station: Code 128 with its text at the foot of " \
	     "the last page"), \
	TEXT("outcome", REQUIRED, 1, 400, "in words (rule 15); printed largest"), \
	INT("adds_to", OPTIONAL, 1, 9999999, "the slip that this one adds to: required for heading addendum, else refused"), \
	TEXT("version", OPTIONAL, 1, 20, "of the program in whose words it is"), \
	TEXT("room", REQUIRED, 1, 60, ""), \
	INT("case_number", REQUIRED, 1, 999999999, ""), \
	TEXT("case_label", OPTIONAL, 1, 60, ""), \
	MOMENT("opened", REQUIRED, ""), \
	MOMENT("ended", OPTIONAL, ""), \
	BOOL("single", OPTIONAL, "single-person count throughout (rule 8): said under the outcome and at each count"), \
	OBJECTS("items", REQUIRED, 0, 200, item_fields, "in the order of the sheet; the first is item 1"), \
	OBJECTS("digits", REQUIRED, 0, 24, digit_fields, "each has lines to write on for skin before and after, and for colour " \
	        "returned"), \
	OBJECTS("counts", REQUIRED, 0, 40, count_fields, ""), \
	OBJECT("sign_out", OPTIONAL, sign_out_fields, ""), \
	OBJECTS("debts", OPTIONAL, 0, 60, debt_fields, ""), \
	OBJECTS("people", REQUIRED, 0, 40, person_fields, ""), \
	OBJECTS("entries", OPTIONAL, 0, 200, entry_fields, ""), \
	TEXTS("gaps", OPTIONAL, 0, 20, 200, "one sentence each: 'at least 95 min; by wall clock 140 min: no power 10:02-10:47'"), \
	TEXTS("notes", OPTIONAL, 0, 20, 300, "anything else that must be on paper: 'the patient left the room at 11:02'"), \
	TEXTS("cautions", OPTIONAL, 0, 6, 200, "local ones, printed after the usual ones"), \
	TEXT("record", OPTIONAL, 1, 60, "up to which event it says what was recorded: 'event 2345, hash 1a2b3c4d'"), \
	FIELD("jws", JWS, OPTIONAL, .min = 1, .max = 1600, .says = "compact JWS of A-Z a-z 0-9 - _ . printed as QR; left out, the " \
	      "paper says that it carries no signature")

static const struct field slip_fields[] = {
	SLIP_FIELDS,
	WORD("heading", REQUIRED, heading_words, "unresolved has the frame of a discrepancy too"),
	OBJECT("search", OPTIONAL, search_fields, ""),
	END};
static const struct field discrepancy_fields[] = {
	SLIP_FIELDS,
	OBJECT("search", REQUIRED, search_fields, ""),
	END};
/* clang-format on */

static int check_slip(const json_t *d, struct error *e)
{
	struct own_code code;
	struct code_fault fault;
	const char *text = json_text(d, "code");
	bool addendum = strcmp(json_text(d, "heading"), "addendum") == 0;
	if (own_code_read(text, strlen(text), &code, &fault) < 0 ||
	    code.number != json_number(d, "slip", 0) || code.copy != json_number(d, "copy", 0) ||
	    code.station != json_number(d, "station", 0))
		return error_set(
		    e, -EINVAL,
		    "document field 'code': it names another slip, copy or station than 'slip', 'copy' and "
		    "'station': make the code from the same numbers");
	if (addendum != (json_object_get(d, "adds_to") != NULL))
		return error_set(e, -EINVAL, "document field 'adds_to': %s",
		                 addendum ? "it is missing: say which slip this addendum adds to"
		                          : "only an addendum has it: leave it out");
	return 0;
}

const struct paper_kind paper_slip = {
    .kind = "slip",
    .what = "the paper of a case that has ended, and any addendum to it",
    .fields = slip_fields,
    .check = check_slip,
    .draw = slip_draw,
    .dpi = 300,
};
const struct paper_kind paper_discrepancy = {
    .kind = "discrepancy",
    .what = "the paper that prints at once when a count is not what it should be: its own shape, a thick "
            "frame and a reversed "
            "heading",
    .fields = discrepancy_fields,
    .check = check_slip,
    .draw = slip_draw,
    .dpi = 300,
};
