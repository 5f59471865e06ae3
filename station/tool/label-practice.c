/* label practice: three exercises, step by step, and the whole set that counts nothing. */
#include <stdio.h>
#include <string.h>

#include "base/log.h"
#include "tool/client.h"
#include "tool/label.h"
#include "words/languages.h"

#define COLUMN 6

enum of { OF_CARD = 1, OF_DIGIT, OF_FIELD, OF_CIRCULATING, OF_SURGEON, OF_ALONE, OF_TOURNIQUET, OF_FORCEPS };

struct step {
	enum of of;
	int n; /* card or digit */
	enum saying use;
};

#define CARD(name, use)                                                                                      \
	{                                                                                                    \
		OF_CARD, CARD_##name, SAY_PR_##use                                                           \
	}
#define STEP(of, use)                                                                                        \
	{                                                                                                    \
		OF_##of, 0, SAY_PR_##use                                                                     \
	}
#define FINGER(use)                                                                                          \
	{                                                                                                    \
		OF_DIGIT, 2, SAY_PR_##use                                                                    \
	}
#define UP_TO_FINAL                                                                                          \
	CARD(NEW_CASE, OPEN), STEP(FIELD, IS_FIELD), STEP(CIRCULATING, IS_CIRCULATING),                      \
	    STEP(TOURNIQUET, PACK), STEP(FORCEPS, FORCEPS), STEP(CIRCULATING, INITIAL), FINGER(ON),          \
	    FINGER(MINUTES), CARD(OFF, OFF), CARD(FINAL_COUNT, FINAL), CARD(INTACT, INTACT)
#define TO_THE_END STEP(CIRCULATING, AGREED), FINGER(BARE), STEP(SURGEON, SIGN)

static const struct exercise {
	enum saying title;
	struct step steps[20];
} exercises[] = {
    {SAY_PR_ORDINARY, {UP_TO_FINAL, CARD(YES, SHOWN), TO_THE_END}},
    {SAY_PR_DISCREPANCY,
     {UP_TO_FINAL, CARD(MISSING, MISSING), CARD(STEP_DONE, STEP), CARD(FOUND, FOUND), CARD(YES, FOUND_SHOWN),
      TO_THE_END}},
    {SAY_PR_LONE,
     {STEP(ALONE, BY_ONESELF), STEP(TOURNIQUET, PACK), FINGER(BEFORE_GLOVES), FINGER(WITHOUT_GLOVES),
      CARD(OFF, OFF), CARD(INTACT, INTACT), FINGER(BARE), CARD(LOOKED_NOBODY, WHO_LOOKED),
      STEP(ALONE, SIGN_ALONE)}},
};

/* What a document is made with. */
struct set {
	const json_t *status;
	const struct label_room *room;
	const struct language *language;
	bool list;
	json_t *pages;
};

static struct own_code code_of(const struct set *s, const struct step *step)
{
	struct own_code code = {.practice = true, .room = s->room->number};
	switch (step->of) {
	case OF_CARD:
		code.kind = OWN_CARD;
		code.meaning = step->n;
		break;
	case OF_DIGIT:
		code.kind = OWN_DIGIT;
		code.digit = step->n;
		break;
	case OF_FIELD:
	case OF_CIRCULATING:
	case OF_SURGEON:
	case OF_ALONE:
		code.kind = OWN_BADGE;
		code.number = (int32_t)step->of - OF_FIELD + 1; /* run/practice.h: enum practice_badge */
		break;
	case OF_TOURNIQUET:
	case OF_FORCEPS:
		code.kind = OWN_TRAY;
		code.number = (int32_t)step->of - OF_TOURNIQUET + 1; /* enum practice_pack */
		break;
	}
	return code;
}

static enum saying name_of(const struct step *step)
{
	static const enum saying names[] = {
	    [OF_FIELD] = SAY_PRACTICE_FIELD,           [OF_CIRCULATING] = SAY_PRACTICE_CIRCULATING,
	    [OF_SURGEON] = SAY_PRACTICE_SURGEON,       [OF_ALONE] = SAY_PRACTICE_ALONE,
	    [OF_TOURNIQUET] = SAY_PRACTICE_TOURNIQUET, [OF_FORCEPS] = SAY_PRACTICE_FORCEPS};
	return step->of == OF_CARD    ? saying_of_card(step->n)
	       : step->of == OF_DIGIT ? saying_of_digit(step->n)
	                              : names[step->of];
}

static json_t *card(const struct set *s, const struct step *step, const char *list_as)
{
	char code[OWN_CODE_MAX], words[120], use[200];
	label_code(code, json_text(s->status, "site"), code_of(s, step));
	say_part_in(s->language, &(const struct say){.saying = name_of(step), .n = own_card_says(step->n)},
	            words, sizeof words);
	say_part_in(s->language,
	            &(const struct say){.saying = step->use             ? step->use
	                                          : step->of == OF_CARD ? saying_of_use(step->n)
	                                                                : SAY_PR_PRACTICE},
	            use, sizeof use);
	if (s->list)
		printf("%s\t%d\t%s%s\n", code, s->room->number, list_as, words);
	return json_pack("{s:s,s:s,s:s,s:s}", "words", words, "use", use, "code", code, "then",
	                 saying_text_in(s->language, SAY_PR_PRACTICE));
}

/* `first`: of an exercise's steps, 0: they have no numbers. */
static void add_page(struct set *s, enum saying title, enum saying note, int first, const struct step *steps,
                     int n)
{
	json_t *page = json_pack("{s:s,s:s}", "title", saying_text_in(s->language, title), "note",
	                         saying_text_in(s->language, note));
	json_t *columns[] = {json_array(), json_array()};
	for (int i = 0; i < n; i++) {
		char as[40] = "";
		if (first)
			snprintf(as, sizeof as, "%d.%d ", (int)(title - SAY_PR_ORDINARY) + 1, first + i);
		json_array_append_new(columns[i / COLUMN], card(s, &steps[i], as));
	}
	if (first)
		json_object_set_new(page, "first", json_integer(first));
	json_object_set(page, "left", columns[0]);
	if (n > COLUMN)
		json_object_set(page, "right", columns[1]);
	json_decref(columns[0]);
	json_decref(columns[1]);
	json_array_append_new(s->pages, page);
}

static void add_exercise(struct set *s, const struct exercise *x)
{
	int n = 0;
	while (x->steps[n].of)
		n++;
	for (int at = 0; at < n; at += 2 * COLUMN) {
		int here = n - at < 2 * COLUMN ? n - at : 2 * COLUMN;
		add_page(s, x->title, at + here < n || !at ? SAY_PR_NOTE : SAY_PR_NOTE_LAST, at + 1,
		         &x->steps[at], here);
	}
}

static void add_set(struct set *s, enum saying title, const struct step *steps, int n)
{
	for (int at = 0; at < n; at += 2 * COLUMN)
		add_page(s, title, SAY_PR_SET_NOTE, 0, &steps[at], n - at < 2 * COLUMN ? n - at : 2 * COLUMN);
}

static void add_all(struct set *s)
{
	static const struct step packs[] = {{OF_TOURNIQUET, 0, 0},  {OF_FORCEPS, 0, 0}, {OF_FIELD, 0, 0},
	                                    {OF_CIRCULATING, 0, 0}, {OF_SURGEON, 0, 0}, {OF_ALONE, 0, 0}};
	struct step list[100];
	int n = 0;
	for (size_t i = 0; i < sizeof exercises / sizeof *exercises; i++)
		add_exercise(s, &exercises[i]);
	add_set(s, SAY_PR_PACKS, packs, sizeof packs / sizeof *packs);
	for (int d = 1; d <= OWN_DIGITS; d++)
		list[n++] = (struct step){OF_DIGIT, d, SAY_NONE};
	add_set(s, SAY_PR_DIGITS, list, n);
	n = 0;
	for (int m = own_card_next(0); m; m = own_card_next(m))
		if (m != CARD_THIS_ROOM && m != CARD_SPARE_SCANNER) /* they would move a real scanner */
			list[n++] = (struct step){OF_CARD, m, SAY_NONE};
	add_set(s, SAY_PR_CARDS, list, n);
}

int label_practice(const struct words *w, const json_t *status, const struct label_room *room)
{
	struct languages languages;
	struct error e = {0};
	if (languages_read(&languages, languages_folder(), &e) < 0)
		log_line("%s", e.text);
	struct set s = {.status = status,
	                .room = room,
	                .language = languages_find(&languages, room->language),
	                .list = words_given(w, LABEL_OPTIONS, "list"),
	                .pages = json_array()};
	json_t *doc = label_document("practice", json_text(status, "site_name"));
	add_all(&s);
	json_object_set_new(doc, "room", json_string(room->name));
	json_object_set_new(doc, "pages", s.pages);
	if (s.language)
		json_object_set_new(doc, "language", json_string(language_code(s.language)));
	languages_free(&languages);
	return label_print(w, doc);
}
