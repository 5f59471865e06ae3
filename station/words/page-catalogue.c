#include "words/page-catalogue.h"

#include <string.h>

#define PLURALS_TOLD 200

/* What the page says itself begins so; every other sentence reaches it said. */
static const char *const of_page[] = {"board-", "debt-", "digit-", "place-"};

static bool is_of_page(const char *key)
{
	for (size_t i = 0; i < sizeof of_page / sizeof *of_page; i++)
		if (strncmp(key, of_page[i], strlen(of_page[i])) == 0)
			return true;
	return false;
}

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

json_t *language_catalogue(const struct language *l)
{
	json_t *o = json_object(), *words = json_object();
	char plural[PLURALS_TOLD + 1] = "";
	for (int n = 0; n < PLURALS_TOLD; n++)
		plural[n] = (char)('0' + language_plural(l, n));
	for (int s = 1; s < SAYING_KINDS; s++)
		if (is_of_page(saying_key(s)))
			json_object_set_new(words, saying_key(s), forms_of(l, (enum saying)s));
	json_object_set_new(o, "code", json_string(language_code(l)));
	json_object_set_new(o, "direction", json_string(language_is_rtl(l) ? "rtl" : "ltr"));
	json_object_set_new(o, "plural", json_string(plural));
	json_object_set_new(o, "values", value_types());
	json_object_set_new(o, "words", words);
	return o;
}
