#include "labels/paper.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/canvas.h"
#include "labels/schema.h"
#include "labels/sheets.h"

#define REQUIRED true
#define OPTIONAL false

/* The tables say what paper.h says, field by field. */
#define TEXT(name, required, min, max)                                                                       \
	{                                                                                                    \
		name, FIELD_TEXT, required, min, max, 0, NULL, NULL                                          \
	}
#define INT(name, required, min, max)                                                                        \
	{                                                                                                    \
		name, FIELD_INT, required, min, max, 0, NULL, NULL                                           \
	}
#define BOOL(name, required)                                                                                 \
	{                                                                                                    \
		name, FIELD_BOOL, required, 0, 0, 0, NULL, NULL                                              \
	}
#define CODE(name, required, kind)                                                                           \
	{                                                                                                    \
		name, FIELD_CODE, required, 0, kind, 0, NULL, NULL                                           \
	}
#define WORD(name, required, words)                                                                          \
	{                                                                                                    \
		name, FIELD_WORD, required, 0, 0, 0, words, NULL                                             \
	}
#define OBJECT(name, required, fields)                                                                       \
	{                                                                                                    \
		name, FIELD_OBJECT, required, 0, 0, 0, NULL, fields                                          \
	}
#define TEXTS(name, required, min, max, each)                                                                \
	{                                                                                                    \
		name, FIELD_TEXTS, required, min, max, each, NULL, NULL                                      \
	}
#define OBJECTS(name, required, min, max, fields)                                                            \
	{                                                                                                    \
		name, FIELD_OBJECTS, required, min, max, 0, NULL, fields                                     \
	}
#define MOMENT(name, required) TEXT(name, required, 1, 40)
#define END                                                                                                  \
	{                                                                                                    \
		NULL, 0, false, 0, 0, 0, NULL, NULL                                                          \
	}

static const char *const kind_words[] = {"slip",        "discrepancy", "pack-labels",   "badges",
                                         "digit-cards", "cards",       "scanner-check", NULL};
static const char *const paper_words[] = {"roll80", "a6", "a5", "a4", NULL};
static const char *const a4_only[] = {"a4", NULL};
static const char *const heading_words[] = {"reconciled", "unresolved", "cancelled", "addendum", NULL};
static const char *const count_words[] = {"initial", "added", "handover", "final", NULL};
static const char *const answer_words[] = {"yes", "no", "open", NULL};
static const char *const how_words[] = {"late", "keyed", "overridden", "corrected", "burst", NULL};
static const char *const shape_words[] = {"square", "rectangle", NULL};

#define ALL_KINDS                                                                                            \
	INT("v", REQUIRED, 1, 1), WORD("kind", REQUIRED, kind_words),                                        \
	    {"time", FIELD_TIME, REQUIRED, 0, 0, 0, NULL, NULL}, TEXT("site", REQUIRED, 1, 60),              \
	    INT("dpi", OPTIONAL, 203, 600)

static const struct field item_fields[] = {
    TEXT("line", REQUIRED, 1, 60),      TEXT("identity", OPTIONAL, 1, 60),
    TEXT("lot", OPTIONAL, 1, 20),       TEXT("expiry", OPTIONAL, 1, 20),
    INT("in", REQUIRED, 0, 999),        INT("out", REQUIRED, 0, 999),
    TEXT("evidence", REQUIRED, 0, 160), TEXT("condition", OPTIONAL, 1, 80),
    TEXT("note", OPTIONAL, 1, 200),     END};
static const struct field stretch_fields[] = {MOMENT("on", REQUIRED), MOMENT("off", OPTIONAL),
                                              TEXT("minutes", REQUIRED, 1, 80), END};
static const struct field bare_fields[] = {TEXT("by", REQUIRED, 1, 60), MOMENT("when", REQUIRED),
                                           TEXT("witness", OPTIONAL, 1, 80), END};
static const struct field digit_fields[] = {TEXT("name", REQUIRED, 1, 60),
                                            TEXT("tourniquet", REQUIRED, 1, 100),
                                            TEXT("forceps", OPTIONAL, 1, 100),
                                            OBJECTS("stretches", REQUIRED, 1, 20, stretch_fields),
                                            TEXT("longest", REQUIRED, 1, 80),
                                            TEXT("total", OPTIONAL, 1, 80),
                                            TEXTS("reminders", OPTIONAL, 0, 60, 100),
                                            OBJECT("bare", OPTIONAL, bare_fields),
                                            TEXT("note", OPTIONAL, 1, 200),
                                            END};
static const struct field count_fields[] = {
    WORD("kind", REQUIRED, count_words),  MOMENT("when", REQUIRED),       TEXTS("agreed", REQUIRED, 1, 2, 60),
    TEXT("recorded_by", REQUIRED, 1, 60), TEXT("note", OPTIONAL, 1, 200), END};
static const struct field point_fields[] = {TEXT("text", REQUIRED, 1, 200),
                                            WORD("answer", REQUIRED, answer_words), END};
static const struct field sign_out_fields[] = {TEXT("by", REQUIRED, 1, 60), MOMENT("when", REQUIRED),
                                               OBJECTS("points", REQUIRED, 0, 20, point_fields), END};
static const struct field step_fields[] = {TEXT("text", REQUIRED, 1, 120), TEXT("answer", REQUIRED, 0, 200),
                                           END};
static const struct field search_fields[] = {
    MOMENT("opened", REQUIRED),        MOMENT("closed", OPTIONAL),
    TEXT("reason", REQUIRED, 1, 300),  OBJECTS("steps", REQUIRED, 0, 30, step_fields),
    TEXT("incident", OPTIONAL, 1, 60), END};
static const struct field debt_fields[] = {TEXT("text", REQUIRED, 1, 200), TEXT("paid", OPTIONAL, 1, 200),
                                           END};
static const struct field person_fields[] = {TEXT("name", REQUIRED, 1, 60), TEXT("place", REQUIRED, 1, 60),
                                             MOMENT("from", REQUIRED), MOMENT("to", OPTIONAL), END};
static const struct field entry_fields[] = {WORD("how", REQUIRED, how_words), MOMENT("when", REQUIRED),
                                            TEXT("text", REQUIRED, 1, 300), END};

#define SLIP_FIELDS                                                                                          \
	ALL_KINDS, WORD("paper", OPTIONAL, paper_words), INT("slip", REQUIRED, 1, 9999999),                  \
	    INT("copy", REQUIRED, 1, 99), INT("station", OPTIONAL, 1, 99), CODE("code", REQUIRED, OWN_SLIP), \
	    TEXT("outcome", REQUIRED, 1, 400), INT("adds_to", OPTIONAL, 1, 9999999),                         \
	    TEXT("version", OPTIONAL, 1, 20), TEXT("room", REQUIRED, 1, 60),                                 \
	    INT("case_number", REQUIRED, 1, 999999999), TEXT("case_label", OPTIONAL, 1, 60),                 \
	    MOMENT("opened", REQUIRED), MOMENT("ended", OPTIONAL), BOOL("single", OPTIONAL),                 \
	    OBJECTS("items", REQUIRED, 0, 200, item_fields),                                                 \
	    OBJECTS("digits", REQUIRED, 0, 24, digit_fields),                                                \
	    OBJECTS("counts", REQUIRED, 0, 40, count_fields), OBJECT("sign_out", OPTIONAL, sign_out_fields), \
	    OBJECTS("debts", OPTIONAL, 0, 60, debt_fields),                                                  \
	    OBJECTS("people", REQUIRED, 0, 40, person_fields),                                               \
	    OBJECTS("entries", OPTIONAL, 0, 200, entry_fields), TEXTS("gaps", OPTIONAL, 0, 20, 200),         \
	    TEXTS("notes", OPTIONAL, 0, 20, 300), TEXTS("cautions", OPTIONAL, 0, 6, 200),                    \
	    TEXT("record", OPTIONAL, 1, 60),                                                                 \
	{                                                                                                    \
		"jws", FIELD_JWS, OPTIONAL, 1, 1600, 0, NULL, NULL                                           \
	}

static const struct field slip_fields[] = {SLIP_FIELDS, WORD("heading", REQUIRED, heading_words),
                                           OBJECT("search", OPTIONAL, search_fields), END};
static const struct field discrepancy_fields[] = {SLIP_FIELDS, OBJECT("search", REQUIRED, search_fields),
                                                  END};

static const struct field label_fields[] = {INT("width_mm", REQUIRED, 20, 120),
                                            INT("height_mm", REQUIRED, 12, 120), END};
static const struct field label_item_fields[] = {TEXT("line", REQUIRED, 1, 60),
                                                 TEXT("lot", OPTIONAL, 1, 20),
                                                 TEXT("expiry", OPTIONAL, 1, 20),
                                                 TEXT("number", REQUIRED, 1, 20),
                                                 CODE("pack", OPTIONAL, OWN_ITEM),
                                                 CODE("bag", OPTIONAL, OWN_ITEM),
                                                 END};
static const struct field pack_labels_fields[] = {
    ALL_KINDS, OBJECT("label", OPTIONAL, label_fields), WORD("shape", OPTIONAL, shape_words),
    OBJECTS("items", REQUIRED, 1, 1000, label_item_fields), END};

static const struct field badge_fields[] = {TEXT("name", REQUIRED, 1, 40), TEXT("role", REQUIRED, 1, 60),
                                            BOOL("registered", REQUIRED), CODE("code", REQUIRED, OWN_BADGE),
                                            END};
static const struct field badges_fields[] = {ALL_KINDS, WORD("paper", OPTIONAL, a4_only),
                                             OBJECTS("badges", REQUIRED, 1, 200, badge_fields), END};

static const struct field digit_card_fields[] = {INT("digit", REQUIRED, 1, 24), TEXT("name", REQUIRED, 1, 60),
                                                 CODE("code", REQUIRED, OWN_DIGIT), END};
static const struct field digit_cards_fields[] = {ALL_KINDS, WORD("paper", OPTIONAL, a4_only),
                                                  TEXT("room", REQUIRED, 1, 60),
                                                  OBJECTS("cards", REQUIRED, 1, 24, digit_card_fields), END};

static const struct field card_fields[] = {TEXT("words", REQUIRED, 1, 40), TEXT("use", OPTIONAL, 1, 100),
                                           CODE("code", REQUIRED, OWN_CARD), END};
static const struct field group_fields[] = {TEXT("title", REQUIRED, 1, 60),
                                            OBJECTS("cards", REQUIRED, 1, 60, card_fields), END};
static const struct field cards_fields[] = {ALL_KINDS, WORD("paper", OPTIONAL, a4_only),
                                            TEXT("room", REQUIRED, 1, 60),
                                            OBJECTS("groups", REQUIRED, 1, 20, group_fields), END};

static const struct field scanner_check_fields[] = {ALL_KINDS, WORD("paper", OPTIONAL, a4_only),
                                                    CODE("start", REQUIRED, OWN_SCANNER_CHECK),
                                                    CODE("end", REQUIRED, OWN_SCANNER_CHECK), END};

static const struct kind {
	const struct field *fields;
	int (*draw)(struct canvas *c, const json_t *document, struct error *e);
} kinds[] = {
    [PAPER_SLIP] = {slip_fields, slip_draw},
    [PAPER_DISCREPANCY] = {discrepancy_fields, slip_draw},
    [PAPER_PACK_LABELS] = {pack_labels_fields, pack_labels_draw},
    [PAPER_BADGES] = {badges_fields, badges_draw},
    [PAPER_DIGIT_CARDS] = {digit_cards_fields, digit_cards_draw},
    [PAPER_CARDS] = {cards_fields, cards_draw},
    [PAPER_SCANNER_CHECK] = {scanner_check_fields, scanner_check_draw},
};

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

static int check_label_items(const json_t *d, struct error *e)
{
	size_t i;
	json_t *item;
	json_array_foreach(json_object_get(d, "items"), i, item)
	{
		const char *pack = json_text(item, "pack"), *bag = json_text(item, "bag");
		if (!*pack && !*bag)
			return error_set(
			    e, -EINVAL,
			    "document field 'items[%zu]': it has no code: give 'pack', 'bag' or both", i);
		if ((*pack && *pack != 'P') || (*bag && *bag != 'R'))
			return error_set(
			    e, -EINVAL,
			    "document field 'items[%zu]': the role letter of a code is not that of its "
			    "label: give P for 'pack' and R for 'bag'",
			    i);
	}
	return 0;
}

static int check_digit_cards(const json_t *d, struct error *e)
{
	unsigned seen = 0;
	size_t i;
	json_t *card;
	json_array_foreach(json_object_get(d, "cards"), i, card)
	{
		struct own_code code;
		struct code_fault fault;
		const char *text = json_text(card, "code");
		int digit = (int)json_number(card, "digit", 0);
		if (own_code_read(text, strlen(text), &code, &fault) < 0 || code.digit != digit)
			return error_set(
			    e, -EINVAL,
			    "document field 'cards[%zu].code': it is the code of another digit: give the "
			    "code of digit %d",
			    i, digit);
		if (seen & 1u << digit)
			return error_set(
			    e, -EINVAL,
			    "document field 'cards[%zu].digit': digit %d is there twice: give each once", i,
			    digit);
		seen |= 1u << digit;
	}
	return 0;
}

static int check_more(const json_t *d, enum paper_kind kind, struct error *e)
{
	json_int_t dpi = json_number(d, "dpi", 300);
	if (dpi != 203 && dpi != 300 && dpi != 600)
		return error_set(e, -EINVAL,
		                 "document field 'dpi': it is none that is known here: give 203, 300 or 600");
	switch (kind) {
	case PAPER_SLIP:
	case PAPER_DISCREPANCY:
		return check_slip(d, e);
	case PAPER_PACK_LABELS:
		return check_label_items(d, e);
	case PAPER_DIGIT_CARDS:
		return check_digit_cards(d, e);
	case PAPER_BADGES:
	case PAPER_CARDS:
	case PAPER_SCANNER_CHECK:
		return 0;
	}
	return 0;
}

int paper_check(const json_t *d, enum paper_kind *kind, struct error *e)
{
	const char *name = json_text(d, "kind");
	if (!json_is_object(d) || !*name)
		return error_set(
		    e, -EINVAL, "document: it has no field 'kind': give one JSON object with 'v' and 'kind'");
	for (size_t i = 0; kind_words[i]; i++)
		if (strcmp(kind_words[i], name) == 0) {
			*kind = (enum paper_kind)(i + 1);
			int r = schema_check(d, kinds[*kind].fields, e);
			return r < 0 ? r : check_more(d, *kind, e);
		}
	return error_set(
	    e, -EINVAL,
	    "document field 'kind': '%.40s' is no kind of document: give slip, discrepancy, pack-labels, "
	    "badges, digit-cards, cards or scanner-check",
	    name);
}

void paper_title(const json_t *d, char out[PAPER_TITLE_MAX])
{
	if (json_object_get(d, "slip"))
		snprintf(out, PAPER_TITLE_MAX, "bandtally slip %06lld copy %lld",
		         (long long)json_number(d, "slip", 0), (long long)json_number(d, "copy", 0));
	else
		snprintf(out, PAPER_TITLE_MAX, "bandtally %.20s %.25s", json_text(d, "kind"),
		         json_text(d, "time"));
}

static int dpi_of(const json_t *d, enum paper_kind kind)
{
	bool roll = kind == PAPER_PACK_LABELS || strcmp(json_text(d, "paper"), "roll80") == 0;
	return (int)json_number(d, "dpi", roll ? 203 : 300);
}

int paper_pdf_traced(const json_t *d, struct buf *pdf, int *pages, struct trace *trace, struct error *e)
{
	enum paper_kind kind;
	char title[PAPER_TITLE_MAX];
	struct canvas c;
	size_t before = pdf->size;
	int r = paper_check(d, &kind, e);
	if (r < 0)
		return r;
	paper_title(d, title);
	r = canvas_init(&c, pdf, dpi_of(d, kind), title, json_text(d, "time"), trace, e);
	if (r < 0)
		return r;
	r = kinds[kind].draw(&c, d, e);
	int finished = canvas_finish(&c, r < 0 ? NULL : e);
	*pages = c.page;
	canvas_deinit(&c);
	if (r < 0 || finished < 0) {
		pdf->size = before;
		if (pdf->data)
			pdf->data[before] = '\0';
	}
	return r < 0 ? r : finished;
}

int paper_pdf(const json_t *d, struct buf *pdf, int *pages, struct error *e)
{
	return paper_pdf_traced(d, pdf, pages, NULL, e);
}
