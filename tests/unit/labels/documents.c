#include "documents.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const char *const sample_names[] = {"slip-a4",
                                    "slip-a5",
                                    "slip-a6",
                                    "slip-roll80",
                                    "discrepancy-a5",
                                    "discrepancy-roll80",
                                    "unresolved-a4",
                                    "found-a5",
                                    "single-a6",
                                    "addendum-a5",
                                    "late-a5",
                                    "pack-labels",
                                    "limits-rectangle-labels",
                                    "badges",
                                    "digit-cards",
                                    "digit-cards-camera",
                                    "cards",
                                    "cards-alone",
                                    "cards-camera",
                                    "scanner-check",
                                    "count-sheet",
                                    "briefing",
                                    "leaflet",
                                    NULL};

json_t *sample(const char *name)
{
	char path[512];
	const char *source = getenv("BANDTALLY_SOURCE");
	snprintf(path, sizeof path, "%s/labels/samples/%s.json", source ? source : "../..", name);
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
	json_t *item = json_pack("{s:o,s:o,s:o,s:o,s:i,s:i,s:o,s:o,s:o}", "line", text(60), "identity",
	                         text(60), "lot", text(20), "expiry", text(20), "in", 999, "out", 998,
	                         "evidence", text(160), "condition", text(80), "note", text(200));
	json_t *stretch = json_pack("{s:o,s:o,s:o}", "on", text(40), "off", text(40), "minutes", text(80));
	json_t *digit =
	    json_pack("{s:o,s:o,s:o,s:o,s:o,s:o,s:o,s:{s:o,s:o,s:o},s:o}", "name", text(60), "tourniquet",
	              text(100), "forceps", text(100), "stretches", repeat(stretch, 20), "longest", text(80),
	              "total", text(80), "reminders", repeat(text(100), 60), "bare", "by", text(60), "when",
	              text(40), "witness", text(80), "note", text(200));
	json_t *count = json_pack("{s:s,s:o,s:o,s:o,s:o}", "kind", "handover", "when", text(40), "agreed",
	                          repeat(text(60), 2), "recorded_by", text(60), "note", text(200));
	json_t *point = json_pack("{s:o,s:s}", "text", text(200), "answer", "open");
	json_t *step = json_pack("{s:o,s:s}", "text", text(120), "answer", "");
	json_t *debt = json_pack("{s:o}", "text", text(200));
	json_t *person = json_pack("{s:o,s:o,s:o,s:o}", "name", text(60), "place", text(60), "from", text(40),
	                           "to", text(40));
	json_t *entry = json_pack("{s:s,s:o,s:o}", "how", "overridden", "when", text(40), "text", text(300));
	json_t *d = sample("slip-a5");
	char jws[1601];
	for (size_t i = 0; i < 1600; i++)
		jws[i] = "aZ0-_.bQ7"[(i * 7 + i / 11) % 9];
	jws[1600] = '\0';
	json_object_set_new(d, "kind", json_string(kind));
	json_object_set_new(d, "paper", json_string(paper));
	json_object_del(d, "dpi"); /* the paper's own */
	if (strcmp(kind, "discrepancy") == 0)
		json_object_del(d, "heading");
	json_object_set_new(d, "site", text(60));
	json_object_set_new(d, "room", text(60));
	json_object_set_new(d, "case_number", json_integer(999999999));
	json_object_set_new(d, "case_label", text(60));
	json_object_set_new(d, "outcome", text(400));
	json_object_set_new(d, "opened", text(40));
	json_object_set_new(d, "ended", text(40));
	json_object_set_new(d, "single", json_true());
	json_object_set_new(d, "items", repeat(item, 40));
	json_object_set_new(d, "digits", repeat(digit, 6));
	json_object_set_new(d, "counts", repeat(count, 40));
	json_object_set_new(
	    d, "sign_out",
	    json_pack("{s:o,s:o,s:o}", "by", text(60), "when", text(40), "points", repeat(point, 20)));
	json_object_set_new(d, "search",
	                    json_pack("{s:o,s:o,s:o,s:o}", "opened", text(40), "closed", text(40), "reason",
	                              text(300), "steps", repeat(step, 30)));
	json_object_set_new(d, "debts", repeat(debt, 60));
	json_object_set_new(d, "people", repeat(person, 40));
	json_object_set_new(d, "entries", repeat(entry, 200));
	json_object_set_new(d, "gaps", repeat(text(200), 20));
	json_object_set_new(d, "notes", repeat(text(300), 20));
	json_object_set_new(d, "cautions", repeat(text(200), 6));
	json_object_set_new(d, "jws", json_string(jws));
	return d;
}
