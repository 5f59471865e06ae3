/* What a slip and a discrepancy slip may say: their fields, and what one field says of another. */
#include <errno.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/sheets.h"

static const char *const paper_words[] = {"roll80", "a6", "a5", "a4", NULL};
static const char *const heading_words[] = {"reconciled", "unresolved", "cancelled",
                                            "addendum",   "open",       NULL};
static const char *const state_words[] = {"open", "done", "not done", "found", NULL};

/* clang-format off */
static const struct field label_fields[] = {
	INT("width_mm", REQUIRED, 20, 180, ""),
	INT("height_mm", REQUIRED, 10, 120, ""),
	END};
static const struct field amiss_fields[] = {
	TEXT("label", REQUIRED, 1, 40, "'Not found', 'May be on', 'Now'"),
	TEXT("text", REQUIRED, 1, 300, ""),
	TEXT("note", OPTIONAL, 1, 300, "printed smaller beside it: '1 of 2 shown', 'not yet seen bare'"),
	END};
static const struct field item_fields[] = {
	TEXT("line", REQUIRED, 1, 60, ""),
	TEXTS("facts", REQUIRED, 0, 150, 200, "what tells it apart, as printed on it: 'no. 101', 'lot T26', 'expiry 31 Mar 2028'"),
	INT("in", REQUIRED, 0, 9999, "counted in"),
	INT("out", REQUIRED, 0, 9999, "accounted for, or returned unopened; in a black field where it is another number"),
	TEXT("evidence", REQUIRED, 0, 160, "'shown to both; intact', 'its mark read'"),
	TEXT("amiss", OPTIONAL, 1, 60, "printed white on black: '1 NOT FOUND'"),
	TEXTS("notes", REQUIRED, 0, 150, 240, "'added 10:12', 'dropped', 'found 10:13: bins and linen'"),
	END};
static const struct field digit_fields[] = {
	TEXT("name", REQUIRED, 1, 60, "in words"),
	TEXT("says", REQUIRED, 1, 160, "'Right index finger: 32 min': the largest on the paper where nothing is amiss"),
	TEXT("detail", REQUIRED, 1, 600, "when, and who saw it bare. Never merged with the count (rule 11)"),
	MOMENT("bare", OPTIONAL, "when it was seen bare; left out, it was not"),
	END};
static const struct field row_fields[] = {
	TEXT("label", REQUIRED, 1, 40, "'Counts', 'Sign-out', 'People'"),
	TEXT("says", REQUIRED, 1, 700, ""),
	TEXT("write", OPTIONAL, 1, 60, "a line to write on follows, with this before it"),
	END};
static const struct field step_fields[] = {
	TEXT("text", REQUIRED, 1, 120, ""),
	WORD("state", REQUIRED, state_words, "its box: empty, ticked, barred, ticked"),
	TEXT("says", OPTIONAL, 1, 220, "'done 10:13', 'not done 10:14, because'"),
	BOOL("write", OPTIONAL, "a line to write on follows"),
	END};
static const struct field search_fields[] = {
	TEXT("title", REQUIRED, 1, 120, ""),
	OBJECTS("steps", REQUIRED, 0, 60, step_fields, ""),
	TEXT("incident", OPTIONAL, 1, 120, "'Incident number INC-25'"),
	TEXT("write", OPTIONAL, 1, 60, "a line to write the number on follows, with this before it"),
	END};

#define SLIP_FIELDS \
	ALL_OF_FORM(2), \
	WORD("paper", OPTIONAL, paper_words, "left out: a5. roll80: 80 mm roll, 72 mm printed, one page as long as needed, at " \
	     "most 2,000 mm, then a second"), \
	OBJECT("patient_label", OPTIONAL, label_fields, "the space for the patient's label; left out, one that suits the paper"), \
	INT("slip", REQUIRED, 1, 9999999, "slip number"), \
	INT("copy", REQUIRED, 1, 99, ""), \
	INT("station", OPTIONAL, 1, 99, "which of the site's stations it is of; left out, it is 0, which is not printed"), \
	CODE("code", REQUIRED, OWN_SLIP, "the slip's own, of that slip, copy and station: Code 128 with its text at the foot of " \
	     "the last page"), \
	TEXT("shout", OPTIONAL, 1, 40, "'DISCREPANCY': printed white on black, with a frame round each page"), \
	TEXT("shout_note", OPTIONAL, 1, 80, "beside it"), \
	OBJECTS("amiss", REQUIRED, 0, 80, amiss_fields, "what, where, what to do: of a paper that shouts the last is printed largest"), \
	TEXT("heading_words", OPTIONAL, 1, 300, "one small word before the outcome: 'Reconciled.'"), \
	TEXT("outcome", OPTIONAL, 1, 600, "in words (rule 15)"), \
	TEXTS("after", REQUIRED, 0, 10, 400, "'After a discrepancy at 10:12: …': on page one"), \
	INT("adds_to", OPTIONAL, 1, 9999999, "the slip that this one adds to: required for heading addendum, else refused"), \
	TEXT("adds_words", OPTIONAL, 1, 80, "the same in words"), \
	TEXT("elsewhere", OPTIONAL, 1, 700, "on which slips stands what is not repeated"), \
	TEXT("version", OPTIONAL, 1, 20, "of the program in whose words it is"), \
	TEXT("room", REQUIRED, 1, 60, ""), \
	INT("case_number", REQUIRED, 1, 999999999, ""), \
	TEXT("case", REQUIRED, 1, 60, "the same in words; beside the patient's label, as room, day, hours and case_label"), \
	TEXT("case_label", OPTIONAL, 1, 60, ""), \
	TEXT("day", REQUIRED, 1, 40, ""), \
	TEXT("hours", REQUIRED, 1, 60, "'09:51 to 10:44'"), \
	TEXT("single", OPTIONAL, 1, 160, "that it was a single-person count throughout (rule 8): in a frame under the digits"), \
	OBJECTS("digits", REQUIRED, 0, 24, digit_fields, "the longest first; each has lines to write on for its skin and colour"), \
	OBJECTS("items", OPTIONAL, 0, 200, item_fields, "in the order of the sheet, those together that nobody can tell apart"), \
	TEXT("extra", OPTIONAL, 1, 60, "beside the sum: 'nothing extra'"), \
	OBJECTS("rows", REQUIRED, 0, 200, row_fields, "a word, and what is said of it"), \
	TEXTS("looked", OPTIONAL, 0, 24, 60, "digits that somebody is to look at now: lines to write on, and no lines for the skin"), \
	TEXTS("cautions", OPTIONAL, 0, 6, 200, "local ones, printed after the usual one"), \
	TEXT("record", OPTIONAL, 1, 60, "up to which event it says what was recorded: 'event 2345, hash 1a2b3c4d'"), \
	FIELD("jws", JWS, OPTIONAL, .min = 1, .max = 1600, .says = "compact JWS of A-Z a-z 0-9 - _ . printed as QR; left out, the " \
	      "paper says that it carries no signature")

static const struct field slip_fields[] = {
	SLIP_FIELDS,
	WORD("heading", REQUIRED, heading_words, "how the case ended; addendum: what came after its end"),
	OBJECT("search", OPTIONAL, search_fields, ""),
	END};
static const struct field discrepancy_fields[] = {
	SLIP_FIELDS,
	OBJECT("search", REQUIRED, search_fields, "with boxes to tick where the station is silent"),
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
