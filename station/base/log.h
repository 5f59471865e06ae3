/* Lines on stderr for whoever runs the machine, never for the people at the table.
 * A line is "<program>: <text>"; with log_errno() the text ends in ": <strerror>". */
#ifndef BANDTALLY_BASE_LOG_H
#define BANDTALLY_BASE_LOG_H

#include "base/error.h"

void log_open(const char *program); /* the name is borrowed and must outlive the program */
void log_line(const char *format, ...) __attribute__((format(printf, 1, 2)));
/* Lines to be copied into a settings file: each as it is, without the program's name, and an empty one behind them. */
void log_block(const char *lines);
/* The sentence, and where it was born: "… (EINVAL at sheet-apply.c:210)". */
void log_error(const struct error *e);
void log_errno(int negative_errno, const char *format, ...) __attribute__((format(printf, 2, 3)));

#endif
