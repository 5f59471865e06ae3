/* A growing run of bytes, always followed by a NUL that is not counted.
 * An all-zero struct is an empty buffer. The bytes belong to the buffer. */
#ifndef BANDTALLY_BASE_BUF_H
#define BANDTALLY_BASE_BUF_H

#include <stddef.h>

struct buf {
	char *data; /* NULL while nothing was ever added */
	size_t size;
	size_t room;
};

int buf_add(struct buf *b, const void *bytes, size_t size); /* 0 or -ENOMEM; unchanged on failure */
int buf_add_text(struct buf *b, const char *text);
int buf_printf(struct buf *b, const char *format, ...) __attribute__((format(printf, 2, 3)));
void buf_drop(struct buf *b, size_t count); /* removes `count` bytes from the front, at most all */
void buf_clear(struct buf *b);              /* empty, memory kept */
void buf_free(struct buf *b);               /* empty, memory returned; fits _cleanup_ */

#endif
