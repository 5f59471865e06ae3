#include "record/event-table.h"

#include <limits.h>

#include "base/clock.h"
#include "base/eight.h"
#include "base/json.h"
#include "record/event-text.h"

/* clang-format off */
#define NAME(text) \
	.name = (text), .key = "\"" text "\":", .length = sizeof(text) - 1, .head = EIGHT_OF(text "\":"), \
	.mask = EIGHT_MASK(text "\":")
#define LIES(type, member) .at = offsetof(type, member), .size = sizeof(((type *)0)->member)
#define NUMBER(type, text, member, least, most) \
	{NAME(text), .form = FORM_NUMBER, LIES(type, member), .low = (least), .high = (most)}
#define TEXT(type, text, member) {NAME(text), .form = FORM_TEXT, LIES(type, member)}
#define YES_NO(type, text, member) NUMBER(type, text, member, 0, 1)

#define ENUM(type, text, member, of) {NAME(text), .form = FORM_ENUM, LIES(type, member), .list = (of)}

#define ALL_HAVE(text, member, least, most) NUMBER(struct event, text, member, least, most)
#define SOME_HAVE(which, text, member, least, most) \
	{NAME(text), .form = FORM_NUMBER, LIES(struct event, member), .low = (least), .high = (most), .only = (which)}
#define KIND_SAYS(which, where, text, member, least, most) \
	{NAME(text), .form = FORM_ENUM, LIES(struct event, member), .low = (least), .high = (most), .only = (which), .list_at = (where)}
#define PART(which, text, member, table) \
	{NAME(text), .form = FORM_PART, LIES(struct event, member), .only = (which), .part = (table)}
#define FLAG(text, bit) {NAME(text), .form = FORM_FLAG, LIES(struct event, flags), .low = (bit)}

/* --- of every format ---------------------------------------------------------------------------------------- */

static const struct field line_table[] = {
	{NAME("codes"), .form = FORM_CODES, LIES(struct line, codes)},
	{NAME("contents"), .form = FORM_CONTENTS, LIES(struct line, contents), .low = 1, .high = 500},
	{NAME("identity"), .form = FORM_IDENTITY, LIES(struct line, identity)},
	TEXT(struct line, "instead", instead),
	TEXT(struct line, "key", key),
	YES_NO(struct line, "marked", marked),
	TEXT(struct line, "name", name),
	NUMBER(struct line, "per_pack", per_pack, 1, 500),
	{NAME("role"), .form = FORM_ROLE, LIES(struct line, role)},
	YES_NO(struct line, "rolls_on", rolls_on),
	YES_NO(struct line, "single_use", single_use),
	NUMBER(struct line, "size_max_mm", size_max_mm, 0, 9999),
	NUMBER(struct line, "size_min_mm", size_min_mm, 0, 9999),
	YES_NO(struct line, "visible", visible),
	YES_NO(struct line, "xray", shows_on_xray),
	{0},
};

static const struct field batch_table[] = {
	NUMBER(struct batch, "expiry", expiry, 0, 99999999),
	NUMBER(struct batch, "first", first, 0, 99999999),
	NUMBER(struct batch, "last", last, 0, 99999999),
	TEXT(struct batch, "line", line),
	TEXT(struct batch, "lot", lot),
	{0},
};

static const struct field key_table[] = {
	TEXT(struct public_key, "kid", kid),
	TEXT(struct public_key, "x", x),
	{0},
};

static const struct field seal_table[] = {
	TEXT(struct seal_text, "jws", jws),
	{0},
};

static const struct field head_table[] = {
	NUMBER(struct head, "case", case_no, 0, INT_MAX),
	TEXT(struct head, "hash", hash),
	NUMBER(struct head, "item", item, 0, 99999999),
	NUMBER(struct head, "seq", seq, 0, JSON_INTEGER_MAX),
	NUMBER(struct head, "slip", slip, 0, INT_MAX),
	{0},
};

/* --- format 1 ----------------------------------------------------------------------------------------------- */

static const struct field thing_1[] = {
	NUMBER(struct thing, "expiry", expiry, 0, 99999999),
	TEXT(struct thing, "identity", identity),
	NUMBER(struct thing, "identity_kind", identity_kind, 0, 2),
	TEXT(struct thing, "line", line),
	TEXT(struct thing, "lot", lot),
	TEXT(struct thing, "name", name),
	NUMBER(struct thing, "role", role, 0, 5),
	YES_NO(struct thing, "rolls_on", rolls_on),
	YES_NO(struct thing, "single_use", single_use),
	YES_NO(struct thing, "unlisted", unlisted),
	YES_NO(struct thing, "xray", shows_on_xray),
	{0},
};

static const struct field staff_1[] = {
	NUMBER(struct person, "kind", kind, 1, 3),
	TEXT(struct person, "name", name),
	NUMBER(struct person, "number", number, INT_MIN, INT_MAX),
	YES_NO(struct person, "registered", registered),
	{0},
};

static const struct field event_1[] = {
	ALL_HAVE("answer", answer, INT_MIN, INT_MAX),
	PART(F_BATCH, "batch", batch, batch_table),
	ALL_HAVE("boot", at.boot, 0, INT_MAX),
	ALL_HAVE("boot_ms", at.boot_ms, -JSON_INTEGER_MAX, JSON_INTEGER_MAX),
	ALL_HAVE("case", case_no, 0, INT_MAX),
	SOME_HAVE(F_DIGIT, "digit", digit, 0, 24),
	FLAG("first", EVENT_FIRST),
	SOME_HAVE(F_ITEM, "item", item, 0, 255),
	FLAG("keyed", EVENT_KEYED),
	{NAME("kind"), .form = FORM_KIND, LIES(struct event, kind)},
	FLAG("late", EVENT_LATE),
	PART(F_LINE, "line", line, line_table),
	SOME_HAVE(F_N, "n", n, INT_MIN, INT_MAX),
	SOME_HAVE(F_OTHER, "other", other, INT_MIN, INT_MAX),
	SOME_HAVE(F_PERSON, "person", person, INT_MIN, INT_MAX),
	SOME_HAVE(F_REF, "ref", ref, 0, JSON_INTEGER_MAX),
	ALL_HAVE("room", room, 0, INT_MAX),
	ALL_HAVE("seq", seq, 1, JSON_INTEGER_MAX),
	PART(F_STAFF, "staff", staff, staff_1),
	{NAME("text"), .form = FORM_TEXT, LIES(struct event, text), .only = F_TEXT},
	PART(F_THING, "thing", thing, thing_1),
	{NAME("v"), .form = FORM_VERSION, .low = 1},
	ALL_HAVE("wall_ms", at.wall_ms, -JSON_INTEGER_MAX, JSON_INTEGER_MAX),
	SOME_HAVE(F_WHAT, "what", what, 0, 255),
	{0},
};

/* --- format 2: enums by name, and the minutes from UTC ------------------------------------------------------ */

static const struct field thing_2[] = {
	ENUM(struct thing, "called", called, LIST_SAYING),
	NUMBER(struct thing, "expiry", expiry, 0, 99999999),
	TEXT(struct thing, "identity", identity),
	ENUM(struct thing, "identity_kind", identity_kind, LIST_IDENTITY),
	TEXT(struct thing, "line", line),
	TEXT(struct thing, "lot", lot),
	TEXT(struct thing, "name", name),
	ENUM(struct thing, "role", role, LIST_ROLE),
	YES_NO(struct thing, "rolls_on", rolls_on),
	YES_NO(struct thing, "single_use", single_use),
	YES_NO(struct thing, "unlisted", unlisted),
	YES_NO(struct thing, "xray", shows_on_xray),
	{0},
};

static const struct field line_2[] = {
	{NAME("codes"), .form = FORM_CODES, LIES(struct line, codes)},
	{NAME("contents"), .form = FORM_CONTENTS, LIES(struct line, contents), .low = 1, .high = 500},
	{NAME("identity"), .form = FORM_IDENTITY, LIES(struct line, identity)},
	TEXT(struct line, "instead", instead),
	TEXT(struct line, "key", key),
	NUMBER(struct line, "label", label, 0, LABEL_AFTER_STERILISING),
	TEXT(struct line, "label_place", label_place),
	YES_NO(struct line, "marked", marked),
	NUMBER(struct line, "minimum", minimum, 0, LINE_MINIMUM_MAX),
	TEXT(struct line, "name", name),
	NUMBER(struct line, "per_pack", per_pack, 1, 500),
	{NAME("role"), .form = FORM_ROLE, LIES(struct line, role)},
	YES_NO(struct line, "rolls_on", rolls_on),
	YES_NO(struct line, "single_use", single_use),
	NUMBER(struct line, "size_max_mm", size_max_mm, 0, 9999),
	NUMBER(struct line, "size_min_mm", size_min_mm, 0, 9999),
	YES_NO(struct line, "visible", visible),
	YES_NO(struct line, "xray", shows_on_xray),
	{0},
};

static const struct field staff_2[] = {
	ENUM(struct person, "kind", kind, LIST_STAFF),
	TEXT(struct person, "name", name),
	NUMBER(struct person, "number", number, INT_MIN, INT_MAX),
	YES_NO(struct person, "registered", registered),
	{0},
};

static const struct field said_2[] = {
#define KEPT_NUMBER(member, text, bytes) NUMBER(struct said, text, member, INT_MIN, INT_MAX),
#define KEPT_DIGITS(member, text, bytes) KEPT_NUMBER(member, text, bytes)
#define KEPT_DIGIT(member, text, bytes) KEPT_NUMBER(member, text, bytes)
#define KEPT_CARD(member, text, bytes) KEPT_NUMBER(member, text, bytes)
#define KEPT_DATE(member, text, bytes) KEPT_NUMBER(member, text, bytes)
#define KEPT_TIME(member, text, bytes) KEPT_NUMBER(member, text, bytes)
#define KEPT_SAYING(member, text, bytes) ENUM(struct said, text, member, LIST_SAYING),
#define KEPT_TEXT(member, text, bytes) TEXT(struct said, text, member),
#define KEPT_PERSON(member, text, bytes) KEPT_TEXT(member, text, bytes)
#define KEPT_SHIPPED(member, text, bytes) KEPT_TEXT(member, text, bytes)
#define KEPT_THING(member, text, bytes) KEPT_TEXT(member, text, bytes)
#define X(type, member, text, bytes) KEPT_##type(member, text, bytes)
	VALUES(X)
#undef X
	{0},
};

static const struct field event_2[] = {
	ALL_HAVE("answer", answer, INT_MIN, INT_MAX),
	PART(F_BATCH, "batch", batch, batch_table),
	ALL_HAVE("boot", at.boot, 0, INT_MAX),
	ALL_HAVE("boot_ms", at.boot_ms, -JSON_INTEGER_MAX, JSON_INTEGER_MAX),
	ALL_HAVE("case", case_no, 0, INT_MAX),
	SOME_HAVE(F_DIGIT, "digit", digit, 0, DIGIT_NUMBER_MAX),
	FLAG("first", EVENT_FIRST),
	PART(F_HEAD, "head", head, head_table),
	SOME_HAVE(F_ITEM, "item", item, 0, 255),
	PART(F_KEY, "key", key, key_table),
	FLAG("keyed", EVENT_KEYED),
	{NAME("kind"), .form = FORM_KIND, LIES(struct event, kind)},
	FLAG("late", EVENT_LATE),
	PART(F_LINE, "line", line, line_2),
	SOME_HAVE(F_N, "n", n, INT_MIN, INT_MAX),
	{NAME("notice"), .form = FORM_TEXT, LIES(struct event, notice), .only = F_NOTICE},
	KIND_SAYS(F_OTHER, F_LIST_OF_OTHER, "other", other, INT_MIN, INT_MAX),
	SOME_HAVE(F_PERSON, "person", person, INT_MIN, INT_MAX),
	SOME_HAVE(F_PROOF, "proof", proof, 0, 999999),
	SOME_HAVE(F_REF, "ref", ref, 0, JSON_INTEGER_MAX),
	ALL_HAVE("room", room, 0, INT_MAX),
	{NAME("said"), .form = FORM_SAID, LIES(struct event, said), .only = F_SAID, .part = said_2},
	PART(F_SEAL, "seal", seal, seal_table),
	ALL_HAVE("seq", seq, 1, JSON_INTEGER_MAX),
	PART(F_STAFF, "staff", staff, staff_2),
	ALL_HAVE("station", station, 0, 99),
	{NAME("text"), .form = FORM_TEXT, LIES(struct event, text), .only = F_TEXT},
	PART(F_THING, "thing", thing, thing_2),
	ALL_HAVE("utc", at.utc_min, -CLOCK_UTC_MIN_MAX, CLOCK_UTC_MIN_MAX),
	{NAME("v"), .form = FORM_VERSION, .low = 2},
	ALL_HAVE("wall_ms", at.wall_ms, -JSON_INTEGER_MAX, JSON_INTEGER_MAX),
	KIND_SAYS(F_WHAT, F_LIST_OF_WHAT, "what", what, 0, 255),
	{0},
};
/* clang-format on */

const struct field *event_table(int format)
{
	static const struct field *const tables[] = {[1] = event_1, [2] = event_2};
	return tables[format];
}

/* Fields that a kind did not have in format 1. */
static const struct {
	enum event_kind kind;
	uint32_t fields;
} since_2[] = {
    {EV_SLIP_QUEUED, F_PROOF | F_TEXT},
    {EV_HELD, F_PROOF},
    {EV_POINT, F_TEXT},
    {EV_CORRECTION, F_REF},
    {EV_PAID, F_OTHER},
    {EV_CASE_ENDED, F_OTHER},
    {EV_KEY, F_KEY},
    {EV_SEALED, F_SEAL},
    {EV_INCARNATION, F_HEAD},
    {EV_ARCHIVED, F_HEAD},
    {EV_REFUSED, F_SAID},
    {EV_OWED, F_SAID},
    {EV_ITEM_SHOWN, F_SAID},
    {EV_SCANNER_FAULT, F_SAID},
    {EV_QUARANTINED, F_NOTICE | F_PERSON},
    {EV_RELEASED, F_PERSON | F_OTHER},
    {EV_LABELLED, F_N},
};

uint32_t event_fields_in(int format, enum event_kind kind)
{
	uint32_t fields = event_fields(kind);
	for (size_t i = 0; format == 1 && i < sizeof since_2 / sizeof *since_2; i++)
		if (since_2[i].kind == kind)
			fields &= ~since_2[i].fields;
	return fields;
}
