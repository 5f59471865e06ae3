/* Lines on stderr for whoever runs the machine, never for the people at the table.
 *
 * News is "<program>: <text>". What somebody must hear of bears an id (log-ids.h): "<program>: bt-store: <text>". Where stderr
 * is the journal's, "<4>" or the like stands before it, which journald takes away and keeps as the priority
 * (sd-daemon(3)); programs that the station starts inherit both. */
#ifndef BANDTALLY_BASE_LOG_H
#define BANDTALLY_BASE_LOG_H

#include "base/error.h"
#include "base/log-ids.h"

void log_open(const char *program); /* the name is borrowed and must outlive the program */
void log_line(const char *format, ...) __attribute__((format(printf, 1, 2)));
/* Lines to be copied into a settings file: each as it is, without the program's name, and an empty one behind them. */
void log_block(const char *lines);

void log_warn(enum log_id id, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* The text ends in ": <strerror>". */
void log_warn_errno(enum log_id id, int negative_errno, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
/* The sentence, and where it was born: "… (EINVAL at sheet-apply.c:210)". */
void log_error(enum log_id id, const struct error *e);

#endif
