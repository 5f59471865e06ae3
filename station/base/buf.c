#include "base/buf.h"

#include <errno.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int buf_reserve(struct buf *b, size_t more)
{
	if (more > (size_t)-1 / 2 - b->size - 1)
		return -ENOMEM;
	size_t need = b->size + more + 1;
	if (need <= b->room)
		return 0;
	size_t room = b->room ? b->room : 256;
	while (room < need)
		room *= 2;
	char *data = realloc(b->data, room);
	if (!data)
		return -ENOMEM;
	b->data = data;
	b->room = room;
	return 0;
}

int buf_add(struct buf *b, const void *bytes, size_t size)
{
	int r = buf_reserve(b, size);
	if (r < 0)
		return r;
	if (size)
		memcpy(b->data + b->size, bytes, size);
	b->size += size;
	b->data[b->size] = 0;
	return 0;
}

int buf_add_text(struct buf *b, const char *text)
{
	return buf_add(b, text, strlen(text));
}

int buf_printf(struct buf *b, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	va_list again;
	va_copy(again, args);
	size_t left = b->room - b->size;
	char *at = b->data ? b->data + b->size : NULL;
	int n = vsnprintf(at, left, format, args), r = n < 0 ? -EINVAL : 0;
	va_end(args);
	if (r == 0 && (size_t)n >= left) { /* seldom: most of what is printed is short */
		r = buf_reserve(b, (size_t)n);
		if (r == 0)
			vsnprintf(b->data + b->size, (size_t)n + 1, format, again);
	}
	if (r == 0)
		b->size += (size_t)n;
	if (b->data)
		b->data[b->size] = 0;
	va_end(again);
	return r;
}

void buf_drop(struct buf *b, size_t count)
{
	if (count >= b->size) {
		buf_clear(b);
		return;
	}
	memmove(b->data, b->data + count, b->size - count + 1);
	b->size -= count;
}

void buf_clear(struct buf *b)
{
	b->size = 0;
	if (b->data)
		b->data[0] = 0;
}

void buf_free(struct buf *b)
{
	free(b->data);
	*b = (struct buf){0};
}
