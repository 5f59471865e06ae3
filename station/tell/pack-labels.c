#include "tell/pack-labels.h"

#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"

/* What comes behind the last comma is its size where it is short and reads as one. */
static void put_line(json_t *item, const char *name)
{
	const char *comma = strrchr(name, ','), *size = comma ? comma + 2 : "";
	size_t n = comma && comma[1] == ' ' ? strlen(size) : 0;
	int is_size = n >= 1 && n <= 3 && strspn(size, "XSML0123456789") == n;
	json_object_set_new(item, "line",
	                    is_size ? json_stringn(name, (size_t)(comma - name)) : json_string(name));
	if (is_size)
		json_object_set_new(item, "size", json_string(size));
}

static json_t *code_of(const struct pack_labels *p, char role, int32_t number)
{
	char text[OWN_CODE_MAX];
	struct own_code own = {.kind = OWN_ITEM, .role = role, .station = p->station, .number = number};
	snprintf(own.site, sizeof own.site, "%.2s", p->site);
	return json_string(own_code_write(&own, text) < 0 ? "" : text);
}

static json_t *item_of(const struct pack_labels *p, int32_t number)
{
	char shown[12];
	json_t *x = json_object();
	snprintf(shown, sizeof shown, "%d", (int)number);
	json_object_set_new(x, "number", json_string(shown));
	json_object_set_new(x, "pack", code_of(p, 'P', number));
	json_object_set_new(x, "bag", code_of(p, 'R', number));
	put_line(x, p->name);
	if (*p->lot)
		json_object_set_new(x, "lot", json_string(p->lot));
	if (p->expiry)
		json_object_set_new(x, "expiry", json_integer(p->expiry));
	return x;
}

json_t *pack_labels_document(const struct pack_labels *p)
{
	json_t *o = json_pack("{s:i,s:s,s:s,s:s}", "v", 1, "kind", "pack-labels", "time", p->time, "site",
	                      p->site_name),
	       *items = json_array();
	for (int32_t i = 0; i < p->count; i++)
		json_array_append_new(items, item_of(p, p->first + i));
	json_object_set_new(o, "items", items);
	if (*p->language && strcmp(p->language, "en") != 0)
		json_object_set_new(o, "language", json_string(p->language));
	return o;
}
