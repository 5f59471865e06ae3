#include "tell/fhir.h"

#include <ctype.h>
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/base64.h"
#include "base/clock.h"
#include "code/own-codes.h"
#include "count/wall.h"
#include "tell/amiss.h"
#include "words/said.h"

#define URN_MAX 46

struct writing {
	const struct fhir_source *from;
	const struct story *s;
	json_t *entries;
	int n;
	char procedure[URN_MAX], station[URN_MAX];
	char items[ITEMS_MAX + 1][URN_MAX]; /* "" none */
	int station_no;
	int failed;
};

/* The same case gives the same names: site, station, case, and which entry. */
static void name_entry(struct writing *w, char out[URN_MAX])
{
	const char *site = w->from->site;
	snprintf(out, URN_MAX, "urn:uuid:%02x%02x00%02u-0000-4000-8000-%08x%04x", (unsigned char)site[0],
	         site[0] ? (unsigned char)site[1] : 0, (unsigned)w->station_no % 100, (unsigned)w->s->case_no,
	         (unsigned)++w->n & 0xffff);
}

static void add_entry(struct writing *w, const char *urn, json_t *resource)
{
	w->failed |= json_array_append_new(w->entries,
	                                   json_pack("{s:s,s:o}", "fullUrl", urn, "resource", resource)) < 0;
}

static json_t *text_of(const char *words)
{
	return json_pack("{s:s}", "text", words);
}

static json_t *reference(const char *urn)
{
	return json_pack("{s:s}", "reference", urn);
}

static json_t *identifier(const char *system, const char *value)
{
	return json_pack("{s:s,s:s}", "system", system, "value", value);
}

/* FHIR has no empty strings. */
static void set_text(json_t *x, const char *key, const char *value)
{
	if (*value)
		json_object_set_new(x, key, json_string(value));
}

static void when(struct moment at, char out[26])
{
	clock_text_full(at.wall_ms, at.utc_min, out);
}

/* A wall clock may have been turned: times of day that contradict the clock that no one can set are no period. */
static json_t *period(struct moment from, struct moment to)
{
	char text[26];
	json_t *p = json_object();
	if (time_is_set(from)) {
		when(from, text);
		json_object_set_new(p, "start", json_string(text));
	}
	if (time_is_set(to) && to.wall_ms >= from.wall_ms && !wall_turned_ms(from, to)) {
		when(to, text);
		json_object_set_new(p, "end", json_string(text));
	}
	return p;
}

static json_t *subject(const struct writing *w)
{
	char text[80];
	snprintf(text, sizeof text,
	         w->s->last_slip ? "see the label on slip %07d" : "see the paper of case %d",
	         w->s->last_slip ? (int)w->s->last_slip : (int)w->s->case_no);
	return json_pack("{s:s,s:s}", "type", "Patient", "display", text);
}

/* --- things ---------------------------------------------------------------------------------------------------- */

/* 14 digits and a serial number, as a GS1 code of the maker's had them. */
static int is_gtin(const char *identity)
{
	size_t n = strspn(identity, "0123456789");
	return n == 14 && identity[n] == ':';
}

static int was_keyed(const struct writing *w, int item)
{
	for (int i = 0; i < w->from->count; i++)
		if (w->from->events[i].kind == EV_ITEM_IN && w->from->events[i].item == item)
			return (w->from->events[i].flags & EVENT_KEYED) != 0;
	return 0;
}

static void set_identity(const struct writing *w, json_t *device, const struct thing *th, int item)
{
	char gtin[15];
	if (is_gtin(th->identity)) {
		snprintf(gtin, sizeof gtin, "%.14s", th->identity);
		json_object_set_new(device, "udiCarrier",
		                    json_pack("[{s:s,s:s,s:s}]", "deviceIdentifier", gtin, "issuer",
		                              "http://hl7.org/fhir/NamingSystem/gs1-di", "entryType",
		                              was_keyed(w, item) ? "manual" : "barcode"));
		set_text(device, "serialNumber", th->identity + 15);
	} else if (*th->identity) {
		json_object_set_new(device, "identifier",
		                    json_pack("[o]", identifier(w->from->systems->item, th->identity)));
	}
}

static void add_item(struct writing *w, int number)
{
	const struct thing *th = &w->s->sheet.items[number - 1].thing;
	char day[11];
	json_t *x = json_pack("{s:s,s:s}", "resourceType", "Device", "status", "active");
	set_identity(w, x, th, number);
	set_text(x, "lotNumber", th->lot);
	if (th->expiry) {
		snprintf(day, sizeof day, "%04u-%02u-%02u", (unsigned)th->expiry / 10000 % 10000,
		         (unsigned)th->expiry / 100 % 100, (unsigned)th->expiry % 100);
		json_object_set_new(x, "expirationDate", json_string(day));
	}
	json_object_set_new(x, "type",
	                    text_of(*th->name    ? th->name
	                            : th->called ? saying_text(th->called)
	                                         : "digital tourniquet"));
	name_entry(w, w->items[number]);
	add_entry(w, w->items[number], x);
}

static void add_items(struct writing *w)
{
	for (int i = 1; i <= w->s->sheet.n_items; i++) {
		const struct item *it = &w->s->sheet.items[i - 1];
		if (role_has(it->thing.role, TRAIT_TIMED) && it->place != ITEM_STRUCK &&
		    it->place != ITEM_RETURNED)
			add_item(w, i);
	}
}

static void add_station(struct writing *w)
{
	char number[16], name[120];
	snprintf(number, sizeof number, "%s-%02d", w->from->site, w->station_no);
	snprintf(name, sizeof name, "count station %s%s%s", number, *w->from->site_name ? ", " : "",
	         w->from->site_name);
	name_entry(w, w->station);
	add_entry(w, w->station,
	          json_pack("{s:s,s:s,s:[o],s:[{s:s,s:s}]}", "resourceType", "Device", "status", "active",
	                    "identifier", identifier(w->from->systems->station, number), "deviceName", "name",
	                    name, "type", "user-friendly-name"));
}

/* --- the case ------------------------------------------------------------------------------------------------------ */

static const char *procedure_status(const struct story *s)
{
	switch ((enum case_end)s->ended) {
	case END_RECONCILED:
	case END_UNRESOLVED:
		return "completed";
	case END_CANCELLED:
		return "not-done";
	}
	return "in-progress";
}

/* How the count ended, with what was not found; and each digit that nobody has seen bare. */
static void put_outcome(const struct story *s, json_t *x)
{
	char text[600], missing[400];
	if (!s->ended || s->ended == END_CANCELLED)
		return;
	amiss_words(NULL, &s->sheet, missing, sizeof missing);
	snprintf(text, sizeof text, "%s",
	         saying_text(s->ended == END_RECONCILED ? SAY_SLIP_END_RECONCILED : SAY_SLIP_END_UNRESOLVED));
	if (*missing)
		said_join(text, sizeof text, "; ", missing);
	json_object_set_new(x, "outcome", text_of(text));
	json_t *notes = json_array();
	for (int i = 0; i < s->n_digits; i++) {
		if (!s->digits[i].n_stretches || time_is_set(s->digits[i].bare))
			continue;
		say_part(SAY(SLIP_NOTE_END_SOME_NOT_BARE, .list = own_digit_name(s->digits[i].number)), text,
		         sizeof text);
		json_array_append_new(notes, json_pack("{s:s}", "text", text));
	}
	if (json_array_size(notes))
		json_object_set(x, "note", notes);
	json_decref(notes);
}

static void add_procedure(struct writing *w)
{
	const struct story *s = w->s;
	char number[24];
	json_t *sites = json_array(), *used = json_array();
	snprintf(number, sizeof number, "%s-%02d-%07d", w->from->site, w->station_no, (int)s->case_no);
	json_t *x =
	    json_pack("{s:s,s:s,s:[o],s:o,s:o,s:o}", "resourceType", "Procedure", "status",
	              procedure_status(s), "identifier", identifier(w->from->systems->case_number, number),
	              "code", text_of("Procedure on a digit under a digital tourniquet"), "subject",
	              subject(w), "performedPeriod", period(s->opened, s->ended_at));
	if (s->paper_sheet) /* the record knows when it was entered, not when it was done */
		json_object_del(x, "performedPeriod");
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].n_stretches)
			json_array_append_new(sites, text_of(own_digit_name(s->digits[i].number)));
	for (int i = 1; i <= s->sheet.n_items; i++)
		if (*w->items[i])
			json_array_append_new(used, reference(w->items[i]));
	if (json_array_size(sites))
		json_object_set(x, "bodySite", sites);
	if (json_array_size(used))
		json_object_set(x, "usedReference", used);
	json_decref(sites);
	json_decref(used);
	put_outcome(s, x);
	name_entry(w, w->procedure);
	add_entry(w, w->procedure, x);
}

/* --- minutes --------------------------------------------------------------------------------------------------------- */

/* From when it went on to when it came off, by the clock that no one can set where both are of one boot. */
static json_t *minutes(const struct story_stretch *x)
{
	int64_t ms = moment_between_ms(x->on, x->off);
	json_t *q = json_pack("{s:f,s:s,s:s,s:s}", "value", (double)(ms / 6000) / 10, "unit", "min", "system",
	                      "http://unitsofmeasure.org", "code", "min");
	if (x->on.boot != x->off.boot)
		json_object_set_new(q, "comparator", json_string(">="));
	return q;
}

static void add_stretch(struct writing *w, const struct story_digit *d, const struct story_stretch *x)
{
	char urn[URN_MAX];
	int off = time_is_set(x->off);
	json_t *o = json_pack(
	    "{s:s,s:s,s:o,s:o,s:[o],s:o,s:o,s:o}", "resourceType", "Observation", "status",
	    off ? "final" : "preliminary", "code", text_of("minutes the tourniquet was on the digit"),
	    "subject", subject(w), "partOf", reference(w->procedure), "device", reference(w->station),
	    "effectivePeriod", period(x->on, x->off), "bodySite", text_of(own_digit_name(d->number)));
	/* Across a power cut the wall clock may have been anything, and of what was entered from a paper sheet the times stand
	 * on the sheet: then there is no number to give. */
	if (w->s->paper_sheet) {
		json_object_del(o, "effectivePeriod");
		char words[60];
		say_part(SAY(SLIP_MINUTES_ON_PAPER, .n = w->s->paper_sheet), words, sizeof words);
		json_object_set_new(o, "dataAbsentReason", text_of(words));
	} else if (off && (x->on.boot == x->off.boot || x->off.wall_ms >= x->on.wall_ms))
		json_object_set_new(o, "valueQuantity", minutes(x));
	else
		json_object_set_new(
		    o, "dataAbsentReason",
		    text_of(off ? "no clock spans the power cut" : "still on when this was made"));
	if (d->tourniquet && d->tourniquet <= ITEMS_MAX && *w->items[d->tourniquet])
		json_object_set_new(o, "focus", json_pack("[o]", reference(w->items[d->tourniquet])));
	name_entry(w, urn);
	add_entry(w, urn, o);
}

/* --- what was signed --------------------------------------------------------------------------------------------------- */

static json_t *base64_text(const void *bytes, size_t size)
{
	struct buf b _cleanup_(buf_free) = {0};
	return base64_write(&b, bytes, size) == 0 ? json_stringn(b.data ? b.data : "", b.size) : NULL;
}

static void add_document(struct writing *w, const char *what, const struct buf *bytes, char urn[URN_MAX])
{
	char text[26];
	when(w->from->made, text);
	json_t *attachment =
	    json_pack("{s:s,s:s,s:o,s:i}", "contentType", "application/json", "title", what, "data",
	              base64_text(bytes->data, bytes->size), "size", (int)bytes->size);
	name_entry(w, urn);
	add_entry(w, urn,
	          json_pack("{s:s,s:s,s:s,s:o,s:s,s:o,s:[{s:o}]}", "resourceType", "DocumentReference",
	                    "status", "current", "docStatus", "final", "type", text_of(what), "date", text,
	                    "subject", subject(w), "content", "attachment", attachment));
}

/* Signature.data is base64 of the signature as it is, and that is a compact JWS: so it is base64 twice. */
static void add_provenance(struct writing *w, const char *jws, const char *document)
{
	char urn[URN_MAX], text[26];
	when(w->from->made, text);
	json_t *signature = json_pack("{s:[{s:s,s:s,s:s}],s:s,s:o,s:s,s:s,s:o}", "type", "system",
	                              "urn:iso-astm:E1762-95:2013", "code", "1.2.840.10065.1.12.1.14",
	                              "display", "Source Signature", "when", text, "who",
	                              reference(w->station), "targetFormat", "application/json", "sigFormat",
	                              "application/jose", "data", base64_text(jws, strlen(jws)));
	json_t *agent = json_pack("{s:{s:[{s:s,s:s}]},s:o}", "type", "coding", "system",
	                          "http://terminology.hl7.org/CodeSystem/provenance-participant-type", "code",
	                          "assembler", "who", reference(w->station));
	name_entry(w, urn);
	add_entry(w, urn,
	          json_pack("{s:s,s:s,s:[o],s:[o],s:[o]}", "resourceType", "Provenance", "recorded", text,
	                    "target", reference(document), "agent", agent, "signature", signature));
}

static void add_signed(struct writing *w, const char *jws, const char *what)
{
	struct buf bytes _cleanup_(buf_free) = {0};
	char urn[URN_MAX];
	const char *from = strchr(jws, '.'), *to = from ? strchr(from + 1, '.') : NULL;
	if (!to || base64url_read(&bytes, from + 1, (size_t)(to - from - 1)) < 0 || !bytes.size) {
		w->failed = 1;
		return;
	}
	add_document(w, what, &bytes, urn);
	add_provenance(w, jws, urn);
}

json_t *fhir_bundle(const struct fhir_source *from)
{
	struct writing w = {.from = from, .s = from->story, .entries = json_array()};
	char text[26], number[24];
	w.station_no = from->count ? from->events[0].station : 0;
	when(from->made, text);
	snprintf(number, sizeof number, "%s-%02d-%07d", from->site, w.station_no, (int)from->story->case_no);
	add_station(&w);
	add_items(&w);
	add_procedure(&w);
	for (int i = 0; i < w.s->n_digits; i++)
		for (int k = 0; k < w.s->digits[i].n_stretches; k++)
			add_stretch(&w, &w.s->digits[i], &w.s->digits[i].stretches[k]);
	for (int i = 0; i < from->n_jws; i++)
		add_signed(&w, from->jws[i], from->what[i]);
	json_t *bundle =
	    json_pack("{s:s,s:s,s:s,s:o,s:o}", "resourceType", "Bundle", "type", "collection", "timestamp",
	              text, "identifier", identifier(from->systems->record, number), "entry", w.entries);
	if (bundle && !w.failed)
		return bundle;
	json_decref(bundle);
	return NULL;
}
