/* The labels of packs as a document of bandtally-print (labels/paper.h: pack-labels), for the command and for the bench. */
#ifndef BANDTALLY_TELL_PACK_LABELS_H
#define BANDTALLY_TELL_PACK_LABELS_H

#include "base/json.h"

struct pack_labels {      /* texts are borrowed */
	const char *time; /* as in "2026-11-25T10:41:07+00:00" */
	const char *site; /* its letters */
	const char *site_name;
	int station;
	const char *name;     /* of the line, which may end in its size: "finger tourniquet, green, M" */
	const char *lot;      /* "" none */
	const char *language; /* in which they speak; "" English */
	int32_t expiry;       /* yyyymmdd; 0 none */
	int32_t first, count;
};

/* Two labels an item. A new reference. */
json_t *pack_labels_document(const struct pack_labels *p);

#endif
