/* HIBC strings with the fields that others read from them: github DacoTaco/BarcodeParserBuilder, unit tests,
 * commit 8aaa42fb (strings and fields as facts). Some rows are two or three symbols glued; they are read one
 * by one and joined, as a scanner sends them. The rows without fields are wrong on purpose. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/check-digit.h"
#include "shared.h"

static struct code_fault fault;

/* Where the next symbol begins: a '+' behind a right check character. */
static size_t one_symbol(const char *text, size_t size)
{
	for (size_t i = 4; i < size; i++)
		if (text[i] == '+' && check_mod43(text, i - 1) == text[i - 1])
			return i;
	return size;
}

static int read_glued(struct code *whole, const char *text)
{
	static struct code part;
	size_t size = strlen(text);
	char aim[4] = "";
	if (text[0] == ']') {
		memcpy(aim, text, 3);
		text += 3;
		size -= 3;
	}
	for (bool first = true; size; first = false) {
		size_t n = one_symbol(text, size);
		int r = code_read(first ? whole : &part, aim, text, n, TODAY, &fault);
		if (r == 0 && !first)
			r = code_join(whole, &part, &fault);
		if (r < 0)
			return r;
		text += n;
		size -= n;
	}
	return whole->wants[0] ? -ENOENT : 0;
}

/* "2020, 01, 15" or "2020, 02, 02, 16, 00, 00" */
static int32_t day_of(const json_t *date, int *hour)
{
	const char *text = json_string_value(json_object_get(date, "datetime"));
	int y = 0, m = 0, d = 0;
	*hour = 0;
	if (!text)
		return 0;
	y = atoi(text);
	m = atoi(text + 6);
	d = atoi(text + 10);
	if (strlen(text) > 12)
		*hour = atoi(text + 14);
	return y * 10000 + m * 100 + d;
}

static const char *field(const json_t *row, const char *key)
{
	const char *s = json_string_value(json_object_get(row, key));
	return s ? s : "";
}

static bool same_text(const char *is, const char *should, const char *what, const char *text)
{
	if (!strcmp(is, should))
		return true;
	tally_fail("'%s': %s '%s', should be '%s'", text, what, is, should);
	return false;
}

static bool same_fields(const struct code *c, const json_t *row, const char *text)
{
	char product[64];
	int hour;
	snprintf(product, sizeof product, "+%s%s%s", field(row, "LabelerIdentificationCode"),
	         field(row, "ProductCode"), field(row, "UnitOfMeasure"));
	bool same = same_text(c->product, product, "product", text) &&
	            same_text(c->lot, field(row, "BatchNumber"), "lot", text) &&
	            same_text(c->serial, field(row, "SerialNumber"), "serial", text);
	const json_t *expires = json_object_get(row, "ExpirationDate");
	int32_t day = day_of(expires, &hour);
	/* A month without a day: they take its first day, we its last, as GS1 has it for day 00. */
	bool month_only = !strcmp(field(expires, "format"), "MMyy");
	if (month_only ? c->expiry / 100 != day / 100 || c->expiry % 100 < 28 : c->expiry != day) {
		tally_fail("'%s': use by %d, should be %d", text, c->expiry, day);
		same = false;
	}
	if (day && c->expiry_hh != hour) {
		tally_fail("'%s': hour %d, should be %d", text, c->expiry_hh, hour);
		same = false;
	}
	if (c->made != (day = day_of(json_object_get(row, "ProductionDate"), &hour))) {
		tally_fail("'%s': made %d, should be %d", text, c->made, day);
		same = false;
	}
	if (c->quantity != atoll(field(row, "Quantity"))) {
		tally_fail("'%s': quantity %lld, should be %s", text, (long long)c->quantity,
		           field(row, "Quantity"));
		same = false;
	}
	return same;
}

int main(void)
{
	static struct code code;
	char *line = NULL;
	size_t room = 0;
	FILE *f = shared_open("hibc/barcodeparserbuilder_hibc.jsonl");
	while (getline(&line, &room, f) > 0) {
		json_t *row = json_loads(line, 0, NULL);
		const char *text = field(row, "barcode");
		bool should = json_object_get(row, "LabelerIdentificationCode") != NULL;
		int r = read_glued(&code, text);
		if (should != (r == 0))
			tally_fail("'%s': %s %s", text, r ? "refused" : "accepted", fault.why);
		else if (!should || same_fields(&code, row, text))
			tally_pass();
		json_decref(row);
	}
	free(line);
	fclose(f);
	return tally_end("HIBC strings");
}
