/* Plays scripts (script.h) through the pure count and compares what it says.
 *
 * `replay FILE…` compares, `replay --update FILE…` writes what the station says now, for reading: each script with its
 * expectations, and NAME.slips beside NAME.t: what each slip says that the script prints, made at its event, and then
 * each case that is still open; in UTC, and what is otherwise where the clocks change in April and September. Both are
 * there whole, so a script is played twice.
 * `replay --spoken LANGUAGE FOLDER FILE…` writes papers and boards in a language.
 * `replay [--update] --samples FOLDER SCRIPTS` holds the slips among labels/samples to what the scripts print (samples.h).
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "play.h"
#include "samples.h"
#include "script.h"
#include "slips.h"
#include "words/languages.h"

/* New Zealand's rules (from memory), written out so that no file of zones is needed: UTC+13 until
 * the first Sunday of April at 3, UTC+12 until the last of September at 2. */
#define ELSEWHERE "NZST-12NZDT,M9.5.0,M4.1.0/3"

/* Adds the lines; one that comes several times running comes once, with how often. */
static void add_folded(struct buf *whole, const char *lines)
{
	while (*lines) {
		size_t size = strcspn(lines, "\n") + 1;
		int times = 1;
		while (strncmp(lines + size * (size_t)times, lines, size) == 0)
			times++;
		buf_add(whole, lines, size - 1);
		if (times > 1)
			buf_printf(whole, ", %d times", times);
		buf_add_text(whole, "\n");
		lines += size * (size_t)times;
	}
}

struct played {
	struct buf script; /* with what the station says now */
	json_t *printed;
	json_t *boards;
};

static const char *folder_of(const char *path, char *out, size_t size)
{
	const char *slash = strrchr(path, '/');
	snprintf(out, size, "%.*s", slash ? (int)(slash - path) : 1, slash ? path : ".");
	return out;
}

static void play_file(struct play *p, const char *path, struct buf *whole);

/* Whole, and in silence: what the station says to it stands in that script. */
static void begin_from(struct play *p, const char *path, const char *name)
{
	char folder[400], other[1500];
	snprintf(other, sizeof other, "%s/%s.t", folder_of(path, folder, sizeof folder), name);
	play_file(p, other, NULL);
	json_array_clear(p->printed);
}

/* `whole` gets the script with what the station says now; NULL: that is not wanted. */
static void play_file(struct play *p, const char *path, struct buf *whole)
{
	FILE *f = fopen(path, "re");
	if (!f)
		play_die(path, strerror(errno));
	char line[1024];
	int expecting = 0, began = 0;
	while (fgets(line, sizeof line, f)) {
		line[strcspn(line, "\n")] = 0;
		int input = line[0] == '>' || line[0] == '+';
		if (expecting && line[0] && !input)
			continue; /* an old expectation */
		expecting = input;
		if (whole)
			buf_printf(whole, "%s\n", line);
		if (strncmp(line, "begins from ", 12) == 0) {
			if (began)
				play_die(path, "only the first line of a script says what it begins from");
			begin_from(p, path, line + 12);
		} else {
			script_line(p, line);
		}
		began |= line[0] && line[0] != '#';
		if (whole && input && p->said.size)
			add_folded(whole, p->said.data);
	}
	fclose(f);
}

static struct played play(const char *path, const char *zone, const struct language *language)
{
	static struct play p;
	struct buf whole = {0};
	char folder[400];
	memset(&p, 0, sizeof p);
	p.language = language;
	setenv("TZ", zone, 1);
	tzset();
	p.printed = json_array();
	play_set_up(&p, folder_of(path, folder, sizeof folder));
	if (language)
		p.boards = json_array();
	play_file(&p, path, &whole);
	play_print_open_cases(&p);
	buf_free(&p.said);
	buf_free(&p.known);
	free(p.events);
	station_deinit(&p.st);
	return (struct played){whole, p.printed, p.boards};
}

static struct buf read_file(const char *path)
{
	struct buf b = {0};
	char part[4096];
	size_t n;
	FILE *f = fopen(path, "re");
	while (f && (n = fread(part, 1, sizeof part, f)) > 0)
		buf_add(&b, part, n);
	if (f)
		fclose(f);
	return b;
}

static void tell_difference(const char *path, const char *now, const char *then)
{
	int line = 1;
	while (*now && *now == *then) {
		line += *now == '\n';
		now++, then++;
	}
	fprintf(stderr, "%s line %d: the station says otherwise:\n  now:      …%.160s\n  expected: …%.160s\n",
	        path, line, now, then);
}

/* Compares what is said now with the file, or writes it there. 1 where it is otherwise. */
static int compare(const char *path, const struct buf *now, int update)
{
	struct buf then = read_file(path);
	int same = now->size == then.size && (!now->size || memcmp(now->data, then.data, now->size) == 0);
	if (!same && update) {
		FILE *f = fopen(path, "we");
		if (!f || fwrite(now->data, 1, now->size, f) != now->size || fclose(f) != 0)
			play_die(path, strerror(errno));
	} else if (!same) {
		tell_difference(path, now->data ? now->data : "", then.data ? then.data : "");
	}
	buf_free(&then);
	return !same && !update;
}

static int replay(const char *path, int update)
{
	char beside[512];
	struct played here = play(path, "UTC", NULL), there = play(path, ELSEWHERE, NULL);
	_cleanup_(buf_free) struct buf slips = {0};
	const char *dot = strrchr(path, '.');
	snprintf(beside, sizeof beside, "%.*s.slips", dot ? (int)(dot - path) : (int)strlen(path), path);
	slips_write(here.printed, there.printed, "in New Zealand", &slips);
	int bad = compare(path, &here.script, update) + compare(beside, &slips, update);
	json_decref(here.printed);
	json_decref(there.printed);
	buf_free(&here.script);
	buf_free(&there.script);
	return bad;
}

static int hold_samples(const char *folder, const char *scripts, int update)
{
	int bad = 0;
	for (const struct sample *s = samples; s->name; s++) {
		char path[512];
		snprintf(path, sizeof path, "%s/%s.t", scripts, s->script);
		struct played played = play(path, "UTC", NULL);
		json_t *document = sample_document(s, played.printed);
		char *text = json_dumps(document, JSON_INDENT(1));
		_cleanup_(buf_free) struct buf now = {0};
		buf_printf(&now, "%s\n", text);
		snprintf(path, sizeof path, "%s/%s.json", folder, s->name);
		bad += compare(path, &now, update);
		free(text);
		json_decref(document);
		json_decref(played.printed);
		buf_free(&played.script);
	}
	return bad;
}

/* In a language, for the tests of papers and of the board: each document that the script prints, FOLDER/SCRIPT-N.json, and
 * what the board shows behind each of its scans, FOLDER/SCRIPT.boards. */
static void put_spoken(const char *folder, const char *script, const struct language *language)
{
	struct played played = play(script, "UTC", language);
	const char *name = strrchr(script, '/');
	char boards[512];
	snprintf(boards, sizeof boards, "%s/%s.boards", folder, name ? name + 1 : script);
	if (json_dump_file(played.boards, boards, 0) < 0)
		play_die(boards, strerror(errno));
	json_decref(played.boards);
	for (size_t i = 0; i < json_array_size(played.printed); i++) {
		char path[512];
		json_t *document =
		    json_deep_copy(json_object_get(json_array_get(played.printed, i), "document"));
		json_object_set_new(document, "jws", json_string("e30.e30.AA")); /* of the right form */
		snprintf(path, sizeof path, "%s/%s-%zu.json", folder, name ? name + 1 : script, i + 1);
		if (json_object_get(document, "code") && json_dump_file(document, path, JSON_INDENT(1)) < 0)
			play_die(path, strerror(errno));
		json_decref(document);
	}
	json_decref(played.printed);
	buf_free(&played.script);
}

/* --spoken CODE FOLDER SCRIPT… */
static int speak(int count, char **argv)
{
	struct languages all;
	struct error e = {0};
	if (languages_read(&all, languages_folder(), &e) < 0)
		play_die("languages", e.text);
	const struct language *language = languages_find(&all, argv[0]);
	if (!language)
		play_die("no such language", argv[0]);
	for (int i = 2; i < count; i++)
		put_spoken(argv[1], argv[i], language);
	languages_free(&all);
	return 0;
}

int main(int argc, char **argv)
{
	int update = argc > 1 && strcmp(argv[1], "--update") == 0, bad = 0;
	if (argc > 4 && strcmp(argv[1], "--spoken") == 0)
		return speak(argc - 2, argv + 2);
	if (argc == 4 + update && strcmp(argv[1 + update], "--samples") == 0)
		return hold_samples(argv[2 + update], argv[3 + update], update) != 0;
	for (int i = 1 + update; i < argc; i++)
		bad += replay(argv[i], update);
	return bad != 0;
}
