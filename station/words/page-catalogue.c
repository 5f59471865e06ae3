#include "words/page-catalogue.h"

#define PLURALS_TOLD 200

#define X(name, ...) SAY_##name,
#define P(name, groups) static const enum saying words_of_##name[] = {groups(X, X)};
PAGES(P)
#undef P
#undef X

static const struct {
	const enum saying *list;
	size_t count;
} pages[PAGE_KINDS] = {
#define P(name, groups) {words_of_##name, sizeof words_of_##name / sizeof *words_of_##name},
    PAGES(P)
#undef P
};

static json_t *value_types(void)
{
	json_t *o = json_object();
#define X(type, member, name, size) json_object_set_new(o, name, json_pack("[si]", #type, size));
	VALUES(X)
	LOOSE_VALUES(X)
#undef X
	return o;
}

static json_t *forms_of(const struct language *l, enum saying s)
{
	json_t *forms = json_array();
	const char *form;
	if (!saying_counts(s)) {
		json_decref(forms);
		return json_string(language_form(l, s, 0));
	}
	for (int i = 0; (form = language_form_at(l, s, i)); i++)
		json_array_append_new(forms, json_string(form));
	return forms;
}

json_t *language_page_words(const struct language *l, enum words_page page)
{
	json_t *words = json_object();
	for (size_t i = 0; i < pages[page].count; i++)
		json_object_set_new(words, saying_key(pages[page].list[i]), forms_of(l, pages[page].list[i]));
	return words;
}

json_t *language_catalogue(const struct language *l)
{
	json_t *o = json_object(), *words = json_object();
	char plural[PLURALS_TOLD + 1] = "";
	for (int n = 0; n < PLURALS_TOLD; n++)
		plural[n] = (char)('0' + language_plural(l, n));
	for (int page = 0; page < PAGE_KINDS; page++) {
		_cleanup_(json_drop) json_t *its = language_page_words(l, (enum words_page)page);
		json_object_update(words, its);
	}
	json_object_set_new(o, "code", json_string(language_code(l)));
	json_object_set_new(o, "direction", json_string(language_is_rtl(l) ? "rtl" : "ltr"));
	json_object_set_new(o, "plural", json_string(plural));
	json_object_set_new(o, "values", value_types());
	json_object_set_new(o, "words", words);
	return o;
}
