/* Where a code is wrong, and what to do about it: the answer to a person who holds the pack. */
#ifndef BANDTALLY_CODE_FAULT_H
#define BANDTALLY_CODE_FAULT_H

#include <stddef.h>

#define CODE_WHY_MAX 160

struct code_fault {
	size_t at; /* byte offset in the data that was given to the reader; its length: at the end */
	char why[CODE_WHY_MAX]; /* "why: what to do", printable UTF-8 whatever the code contains */
};

/* Fills the fault (NULL is allowed) and returns -EINVAL, so that a reader can `return fault_set(f, at, …)`.
 */
int fault_set(struct code_fault *fault, size_t at, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

#endif
