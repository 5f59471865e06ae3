#include "drivers/serial-line.h"

#include <string.h>

void serial_line_begin(struct serial_line *l, int64_t now_ms)
{
	l->size = 0;
	l->marked = 0;
	l->last_ms = now_ms;
	l->skipping = l->opening = true;
}

void serial_line_clear(struct serial_line *l)
{
	l->size = 0;
}

static enum serial_result throw_away(struct serial_line *l, enum serial_result why)
{
	l->skipping = true;
	l->opening = false;
	return why;
}

static bool ends(const struct serial_line *l)
{
	size_t n = l->suffix_size;
	char last = l->code[l->size - 1];
	if (n == 0)
		return last == '\r' || last == '\n';
	return l->size >= n && memcmp(l->code + l->size - n, l->suffix, n) == 0;
}

/* The code is whole; its ending is `end` bytes long. */
static enum serial_result whole(struct serial_line *l, size_t end)
{
	l->size -= end;
	if (l->size == 0)
		return SERIAL_NOTHING; /* the line feed behind a carriage return */
	if (l->size <= l->prefix_size || memcmp(l->code, l->prefix, l->prefix_size) != 0)
		return SERIAL_BARE;
	l->size -= l->prefix_size;
	memmove(l->code, l->code + l->prefix_size, l->size);
	return SERIAL_CODE;
}

static enum serial_result end_of_skipping(struct serial_line *l)
{
	bool tell = l->opening && l->size > 0;
	l->skipping = l->opening = false;
	if (tell)
		return SERIAL_SKIPPED;
	l->size = 0;
	return SERIAL_NOTHING;
}

static enum serial_result plain_byte(struct serial_line *l, unsigned char byte)
{
	if (l->size == SERIAL_CODE_MAX) {
		if (!l->skipping)
			return throw_away(l, SERIAL_LONG);
		l->size = 0;
	}
	l->code[l->size++] = (char)byte;
	bool end = !l->silence && ends(l);
	if (l->skipping)
		return end ? end_of_skipping(l) : SERIAL_NOTHING;
	return end ? whole(l, l->suffix_size ? l->suffix_size : 1) : SERIAL_NOTHING;
}

enum serial_result serial_line_byte(struct serial_line *l, unsigned char byte, int64_t at_ms)
{
	l->last_ms = at_ms;
	switch (l->marked) {
	case 0:
		l->marked = byte == 0xff;
		return l->marked ? SERIAL_NOTHING : plain_byte(l, byte);
	case 1:
		l->marked = byte == 0 ? 2 : 0;
		return l->marked ? SERIAL_NOTHING : plain_byte(l, byte);
	default:
		l->marked = 0;
		/* One fault a code: what follows is noise of the same one. */
		if (l->skipping && !l->opening)
			return SERIAL_NOTHING;
		return throw_away(l, byte == 0 ? SERIAL_BREAK : SERIAL_ERROR);
	}
}

int64_t serial_line_due_ms(const struct serial_line *l)
{
	if (l->skipping)
		return l->last_ms + SERIAL_SETTLE_MS;
	if (l->size == 0)
		return -1;
	return l->last_ms + (l->silence ? SERIAL_SILENCE_MS : SERIAL_UNFINISHED_MS);
}

enum serial_result serial_line_tick(struct serial_line *l, int64_t now_ms)
{
	int64_t due_ms = serial_line_due_ms(l);
	if (due_ms < 0 || now_ms < due_ms)
		return SERIAL_NOTHING;
	if (l->skipping)
		return end_of_skipping(l);
	return l->silence ? whole(l, 0) : SERIAL_PARTIAL;
}
