/* audit export: every event for whoever can read JSON or CSV, or one case as HL7 FHIR R4. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/ini.h"
#include "count/event-lists.h"
#include "record/event-json.h"
#include "tell/fhir.h"
#include "tool/audit-record.h"
#include "tool/audit.h"
#include "tool/client.h"
#include "tool/words.h"

#define JWS_MAX 40
#define JWS_BYTES_MAX 1600

static const char options[] = "file= key= json csv fhir= slips= systems=";
static const char usage[] =
    "usage: bandtally audit export (--json | --csv) [--file RECORD]\n"
    "       bandtally audit export --fhir CASE [--slips FILE] [--systems FILE] [--key FILE] [--file RECORD]\n"
    "Every event of the record, a line each: as the record holds it, or as CSV. People's names are in it as "
    "the\n"
    "record has them.\n"
    "  --fhir CASE     one case as an HL7 FHIR R4 Bundle: Procedure, Device, Observation, DocumentReference "
    "and\n"
    "                  Provenance. Its subject is a display alone, for the hospital's systems to fill in\n"
    "  --slips FILE    texts of slips' QR codes, one a line: those of this case, signed by this station, "
    "become\n"
    "                  documents with their signature, beside the seal at the end of the case\n"
    "  --systems FILE  [systems] record, station, case_number, item and slip: the URIs of identifier "
    "systems\n"
    "Exit codes: 0 made, 1 failed, 2 wrong usage.\n";

/* --- every event ---------------------------------------------------------------------------------------------- */

static int write_json(void *context, const struct event *e)
{
	struct buf *line = context;
	buf_clear(line);
	if (e->kind == EV_UNREADABLE) {
		printf("{\"kind\":\"unreadable\",\"seq\":%lld}\n", (long long)e->seq);
		return 0;
	}
	int n = event_write(e, line);
	if (n == 0)
		puts(line->data);
	return n;
}

static void put_field(const char *text, char end)
{
	int quoted = strpbrk(text, ",\"\r\n") != NULL;
	if (quoted)
		putchar('"');
	for (; *text; text++) {
		if (*text == '"')
			putchar('"');
		putchar(*text);
	}
	if (quoted)
		putchar('"');
	putchar(end);
}

static void put_number(int64_t n)
{
	if (n)
		printf("%lld", (long long)n);
	putchar(',');
}

static const char *list_name(const struct event *e, int shift, int64_t value)
{
	const char *name = event_list_name((enum event_list)(event_fields(e->kind) >> shift & 63), value);
	return name ? name : "";
}

/* A number that stands for a name is told by the name. */
static int write_csv(void *context, const struct event *e)
{
	char when[26];
	uint32_t f = event_fields(e->kind);
	const char *what = list_name(e, F_LIST_OF_WHAT, e->what),
	           *other = list_name(e, F_LIST_OF_OTHER, e->other);
	(void)context;
	clock_text_full(e->at.wall_ms, e->at.utc_min, when);
	put_number(e->seq);
	put_number(e->case_no);
	put_number(e->room);
	put_field(when, ',');
	put_number(e->at.boot);
	put_number(e->at.boot_ms);
	put_field(event_name(e->kind), ',');
	put_number(e->person);
	put_number(*other ? 0 : e->other);
	put_field(other, ',');
	put_field(what, ',');
	put_number(e->item);
	put_number(e->digit);
	put_number(e->n);
	put_field(f & F_THING ? e->thing.line : "", ',');
	put_field(f & F_THING ? e->thing.lot : "", ',');
	put_field(f & F_THING ? e->thing.identity : "", ',');
	put_field(e->flags & EVENT_KEYED ? "keyed" : "", ',');
	put_field(e->flags & EVENT_LATE ? "late" : "", ',');
	put_field(e->text, '\r');
	putchar('\n');
	return 0;
}

static int export_events(struct record *r, int json, struct error *e)
{
	_cleanup_(buf_free) struct buf line = {0};
	int n = record_read_through(r, e);
	if (n == 0 && !json)
		fputs("seq,case,room,when,boot,boot_ms,kind,person,other,how,what,item,digit,n,line,lot,"
		      "identity,"
		      "keyed,late,text\r\n",
		      stdout);
	return n == 0 ? record_each(r, 0, json ? write_json : write_csv, &line, e) : n;
}

/* --- one case ----------------------------------------------------------------------------------------------------- */

struct exported {
	struct case_events events;
	struct recorded settings;
	struct fhir_systems systems;
	char texts[JWS_MAX][JWS_BYTES_MAX + 1];
	const char *jws[JWS_MAX], *what[JWS_MAX];
	int n_jws;
};

static int set_system(void *context, const char *section, const char *name, const char *value,
                      struct error *e)
{
	struct fhir_systems *s = context;
	if (strcmp(section, "systems") != 0)
		return error_set(e, -EINVAL, "section [%.40s] is not known here: give [systems]", section);
#define X(member)                                                                                            \
	if (strcmp(name, #member) == 0) {                                                                    \
		snprintf(s->member, sizeof s->member, "%s", value);                                          \
		return strpbrk(value, " \t<>\"") || !strchr(value, ':')                                      \
		           ? error_set(e, -EINVAL, "%.40s is no URI: give one, as urn:oid:…", name)          \
		           : 0;                                                                              \
	}
	FHIR_SYSTEMS(X)
#undef X
	return error_set(e, -EINVAL,
	                 "'%.40s' is no identifier system: give one of record, station, case_number, item "
	                 "and slip",
	                 name);
}

/* What a hospital has not named is told apart by the site. */
static void default_systems(struct fhir_systems *s, const char *site)
{
#define X(member) snprintf(s->member, sizeof s->member, "urn:bandtally:%.2s:" #member, site);
	FHIR_SYSTEMS(X)
#undef X
}

static void add_jws(struct exported *x, const char *jws, const char *what)
{
	if (x->n_jws == JWS_MAX || strlen(jws) > JWS_BYTES_MAX)
		return;
	snprintf(x->texts[x->n_jws], sizeof x->texts[0], "%s", jws);
	x->jws[x->n_jws] = x->texts[x->n_jws];
	x->what[x->n_jws++] = what;
}

/* Those of this case that this station signed; what else stands in the file is not exported. */
static int read_slips(struct exported *x, const struct keys *keys, const char *file, int32_t case_no,
                      struct error *e)
{
	char line[JWS_BYTES_MAX + 3];
	FILE *f = fopen(file, "re");
	if (!f)
		return error_set(e, -errno, "cannot read the slips %.300s: %s: check the path", file,
		                 strerror(errno));
	while (fgets(line, sizeof line, f)) {
		_cleanup_(json_drop) json_t *payload = NULL;
		line[strcspn(line, " \r\n")] = 0;
		if (*line && keys_check(keys, line, &payload, NULL, NULL) == KEYS_SIGNED &&
		    json_number(payload, "case", 0) == case_no)
			add_jws(x, line, "signed summary of the slip");
	}
	fclose(f);
	return 0;
}

static int find_signed(struct exported *x, const struct words *w, const char *path, int32_t case_no,
                       struct error *e)
{
	static struct keys keys;
	char from[PATH_MAX];
	const char *slips = words_value(w, options, "slips");
	for (int i = 0; i < x->events.count; i++)
		if (x->events.list[i].kind == EV_SEALED)
			add_jws(x, x->events.list[i].seal.jws,
			        "signed head of the record at the end of the case");
	if (!slips)
		return 0;
	int n = audit_keys(&keys, words_value(w, options, "key"), path, from, e);
	if (n == 0)
		n = error_set(e, -ENOENT,
		              "this station's public key is not here: give --key FILE, its " KEYS_FILE);
	return n < 0 ? n : read_slips(x, &keys, slips, case_no, e);
}

static int print_bundle(const struct exported *x, const struct story *story, struct error *e)
{
	json_t *bundle = fhir_bundle(&(struct fhir_source){.story = story,
	                                                   .events = x->events.list,
	                                                   .count = x->events.count,
	                                                   .systems = &x->systems,
	                                                   .site = x->settings.site,
	                                                   .site_name = x->settings.site_name,
	                                                   .made = x->events.list[x->events.count - 1].at,
	                                                   .jws = x->jws,
	                                                   .what = x->what,
	                                                   .n_jws = x->n_jws});
	char *text = bundle ? json_dumps(bundle, JSON_COMPACT | JSON_REAL_PRECISION(10)) : NULL;
	int n =
	    text ? 0 : error_set(e, -ENOMEM, "cannot make the Bundle: out of memory: close other programs");
	if (text)
		puts(text);
	free(text);
	json_decref(bundle);
	return n;
}

static int export_case(struct record *r, const struct words *w, const char *path, int32_t case_no,
                       struct error *e)
{
	struct exported *x = calloc(1, sizeof *x);
	struct story *story = NULL;
	const char *systems = words_value(w, options, "systems");
	if (!x)
		return error_set(e, -ENOMEM, "cannot export: out of memory: close other programs");
	int n = audit_settings(r, &x->settings, e);
	default_systems(&x->systems, *x->settings.site ? x->settings.site : "xx");
	if (n == 0 && systems)
		n = ini_read(systems, set_system, &x->systems, e);
	if (n == 0)
		n = case_events_read(&x->events, r, case_no, e);
	if (n == 0 && !x->events.count)
		n = error_set(e, -ENOENT,
		              "case %d: the record has none of that number: see 'bandtally case list'",
		              (int)case_no);
	if (n == 0)
		n = find_signed(x, w, path, case_no, e);
	if (n == 0)
		n = story_make(&story, NULL, x->events.list, x->events.count,
		               x->events.list[x->events.count - 1].at);
	if (n == 0)
		n = print_bundle(x, story, e);
	free(story);
	case_events_deinit(&x->events);
	free(x);
	return n;
}

int audit_export(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	struct record *record = NULL;
	char path[PATH_MAX];
	int held = -1, case_no = 0, r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest)
		return words_beyond(w.rest[0], usage);
	const char *fhir = words_value(&w, options, "fhir");
	int json = words_given(&w, options, "json");
	if (json + words_given(&w, options, "csv") + (fhir != NULL) != 1)
		return words_choose("give one of --json, --csv and --fhir", usage);
	if (words_number("--fhir", fhir, 1, SLIP_NUMBER_MAX, &case_no, usage) < 0)
		return EXIT_USAGE;
	int n = audit_record(&record, words_value(&w, options, "file"), path, &held, &e);
	if (n == 0)
		n = fhir ? export_case(record, &w, path, case_no, &e) : export_events(record, json, &e);
	audit_done(record, held);
	return n < 0 ? client_fail(&e) : EXIT_OK;
}
