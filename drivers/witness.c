#include "drivers/witness.h"

#include <string.h>

static bool corrects_itself(enum symbology s)
{
	return s == SYMBOLOGY_QR || s == SYMBOLOGY_DATAMATRIX;
}

/* FNC4 adds 128 to the letters after it; libzbar reads the letters and passes over the FNC4. */
static bool same_but_fnc4(const struct reading *zxing, const struct reading *zbar)
{
	if (zxing->symbology != SYMBOLOGY_CODE128 || zxing->size != zbar->size)
		return false;
	for (size_t i = 0; i < zxing->size; i++)
		if ((zxing->data[i] & 0x7f) != zbar->data[i])
			return false;
	return true;
}

/* Do two witnesses mean the same code? AIM's third character tells GS1 from plain in Code 128, so it must be
 * the same there; for the others it is only how much a reader says about a check character. */
static bool agree(const struct reading *a, const struct reading *b)
{
	if (a->symbology != b->symbology || a->in_part || b->in_part)
		return false;
	if (a->symbology == SYMBOLOGY_CODE128 && strcmp(a->aim, b->aim) != 0)
		return false;
	if (a->size == b->size && memcmp(a->data, b->data, a->size) == 0)
		return true;
	return a->witness == WITNESS_ZXING ? same_but_fnc4(a, b) : same_but_fnc4(b, a);
}

/* Two that stand in one place and cannot both be there. */
static bool rivals(const struct reading *a, const struct reading *b)
{
	return !agree(a, b) && corrects_itself(a->symbology) == corrects_itself(b->symbology) &&
	       boxes_meet(&a->box, &b->box);
}

/* No rival that its own witness read as often, and none that says that it is only a part. */
static bool uncontested(const struct readings *seen, const struct reading *r)
{
	for (size_t i = 0; i < seen->count; i++) {
		const struct reading *other = &seen->item[i];
		if (!rivals(r, other))
			continue;
		if (other->in_part)
			return false;
		bool comparable = other->witness == r->witness || corrects_itself(r->symbology);
		if (comparable && other->times >= r->times)
			return false;
	}
	return true;
}

static const struct reading *confirmed_by(const struct readings *seen, const struct reading *r)
{
	for (size_t i = 0; i < seen->count; i++) {
		const struct reading *other = &seen->item[i];
		if (other->witness != r->witness && agree(r, other) && uncontested(seen, other))
			return other;
	}
	return NULL;
}

static bool counts(const struct readings *seen, const struct witness_rules *rules, const struct reading *r)
{
	if (r->in_part || r->size == 0 || r->size < rules->least[r->symbology] || !uncontested(seen, r))
		return false;
	return corrects_itself(r->symbology) || confirmed_by(seen, r);
}

static bool have(const struct codes *out, const struct reading *r)
{
	for (size_t i = 0; i < out->count; i++)
		if (agree(out->item[i], r))
			return true;
	return false;
}

void witness_judge(const struct readings *seen, const struct witness_rules *rules, struct codes *out)
{
	/* The second witness first: where they agree but for FNC4, its reading is the whole one. */
	static const enum witness order[] = {WITNESS_ZXING, WITNESS_ZBAR};
	out->count = 0;
	for (size_t w = 0; w < 2; w++) {
		for (size_t i = 0; i < seen->count && out->count < CODES_MAX; i++) {
			const struct reading *r = &seen->item[i];
			if (r->witness == order[w] && counts(seen, rules, r) && !have(out, r))
				out->item[out->count++] = r;
		}
	}
}
