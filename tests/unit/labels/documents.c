#include "documents.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/own-codes.h"

static const char *samples_folder(char *out, size_t size)
{
	const char *source = getenv("BANDTALLY_SOURCE");
	snprintf(out, size, "%s/labels/samples", source ? source : "../..");
	return out;
}

static int is_sample(const struct dirent *entry)
{
	const char *dot = strrchr(entry->d_name, '.');
	return dot && strcmp(dot, ".json") == 0;
}

char **sample_names(void)
{
	static char **names;
	struct dirent **all;
	char folder[512];
	if (names)
		return names;
	int n = scandir(samples_folder(folder, sizeof folder), &all, is_sample, alphasort);
	names = n > 0 ? calloc((size_t)n + 1, sizeof *names) : NULL;
	if (!names) {
		fprintf(stderr, "%s: no samples\n", folder);
		exit(1);
	}
	for (int i = 0; i < n; i++) {
		names[i] = strndup(all[i]->d_name, strlen(all[i]->d_name) - strlen(".json"));
		free(all[i]);
	}
	free(all);
	return names;
}

json_t *sample(const char *name)
{
	char folder[512], path[600];
	snprintf(path, sizeof path, "%s/%s.json", samples_folder(folder, sizeof folder), name);
	json_error_t e;
	json_t *d = json_load_file(path, JSON_REJECT_DUPLICATES, &e);
	if (!d) {
		fprintf(stderr, "%s: %s\n", path, e.text);
		exit(1);
	}
	return d;
}

/* `n` characters: words of the widest letters, broken at times, or one word that cannot be broken nicely. */
static json_t *text(size_t n)
{
	static const char words[] = "Wound WWWWWWWWWWWWWWWW Mömöm 88888888 ";
	char out[4096];
	size_t size = 0;
	for (size_t i = 0, k = 0; i < n; i++) {
		if (i == n - 1) {
			out[size++] = 'X';
			break;
		}
		size_t more = (unsigned char)words[k] >= 0xc0 ? 2 : 1;
		memcpy(out + size, words + k, more);
		size += more;
		k = (k + more) % (sizeof words - 1);
	}
	return json_stringn(out, size);
}

static json_t *repeat(json_t *one, int n)
{
	json_t *all = json_array();
	for (int i = 0; i < n; i++)
		json_array_append_new(all, json_deep_copy(one));
	json_decref(one);
	return all;
}

json_t *fullest_slip(const char *kind, const char *paper)
{
	json_t *item = json_pack("{s:o,s:o,s:i,s:i,s:o,s:o,s:o}", "line", text(60), "facts",
	                         repeat(text(60), 6), "in", 999, "out", 998, "evidence", text(160), "amiss",
	                         text(60), "notes", repeat(text(200), 3));
	json_t *digit = json_pack("{s:o,s:o,s:o,s:o}", "name", text(60), "says", text(160), "detail",
	                          text(600), "bare", text(40));
	json_t *amiss = json_pack("{s:o,s:o,s:o}", "label", text(40), "text", text(300), "note", text(120));
	json_t *row = json_pack("{s:o,s:o,s:o}", "label", text(40), "says", text(700), "write", text(60));
	json_t *step = json_pack("{s:o,s:s,s:o,s:b}", "text", text(120), "state", "not done", "says",
	                         text(220), "write", 1);
	json_t *d = sample("slip-a5");
	char jws[1601];
	for (size_t i = 0; i < 1600; i++)
		jws[i] = "aZ0-_.bQ7"[(i * 7 + i / 11) % 9];
	jws[1600] = '\0';
	json_object_set_new(d, "kind", json_string(kind));
	json_object_set_new(d, "paper", json_string(paper));
	json_object_del(d, "dpi"); /* the paper's own */
	if (strcmp(kind, "discrepancy") == 0) {
		json_object_del(d, "heading");
		json_object_set_new(d, "shout", text(40));
		json_object_set_new(d, "shout_note", text(80));
	} else {
		json_object_set_new(d, "looked", repeat(text(60), 24));
	}
	json_object_set_new(d, "copy", json_integer(2));
	char code[OWN_CODE_MAX];
	own_code_write(
	    &(const struct own_code){.kind = OWN_SLIP, .site = "BC", .number = 1, .copy = 2, .proof = 1},
	    code);
	json_object_set_new(d, "code", json_string(code));
	json_object_set_new(d, "site", text(60));
	json_object_set_new(d, "room", text(60));
	json_object_set_new(d, "case_number", json_integer(999999999));
	json_object_set_new(d, "case", text(60));
	json_object_set_new(d, "case_label", text(60));
	json_object_set_new(d, "day", text(40));
	json_object_set_new(d, "hours", text(60));
	json_object_set_new(d, "heading_words", text(300));
	json_object_set_new(d, "outcome", text(600));
	json_object_set_new(d, "after", repeat(text(400), 10));
	json_object_set_new(d, "elsewhere", text(700));
	json_object_set_new(d, "single", text(160));
	json_object_set_new(d, "amiss", repeat(amiss, 5));
	json_object_set_new(d, "items", repeat(item, 12));
	json_object_set_new(d, "extra", text(60));
	json_object_set_new(d, "digits", repeat(digit, 6));
	json_object_set_new(d, "rows", repeat(row, 20));
	json_object_set_new(d, "search",
	                    json_pack("{s:o,s:o,s:o,s:o}", "title", text(120), "steps", repeat(step, 30),
	                              "incident", text(120), "write", text(60)));
	json_object_set_new(d, "cautions", repeat(text(200), 6));
	json_object_set_new(d, "jws", json_string(jws));
	return d;
}
