/* The character sets of element strings (GS1 General Specifications, section 7.11). Pure. */
#ifndef BANDTALLY_CODE_GS1_SETS_H
#define BANDTALLY_CODE_GS1_SETS_H

#include <stddef.h>

#include "code/fault.h"

#define GS1_LETTERS "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
#define GS1_LETTERS_SMALL "abcdefghijklmnopqrstuvwxyz"
#define GS1_DIGITS "0123456789"

/* 0, or -EINVAL with what is wrong: fault->at within the value, fault->why the reason alone. Sets 'N', 'X', 'Y', 'Z'. */
int gs1_set_check(char set, const char *value, size_t size, struct code_fault *fault);

/* The same where each character must be one of `set`, which people know as `of`. */
int gs1_only(const char *value, size_t size, const char *set, const char *of, struct code_fault *fault);

#endif
