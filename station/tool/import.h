/* Files that are taken as whole lists, and how what they change is told on paper and screen. */
#ifndef BANDTALLY_TOOL_IMPORT_H
#define BANDTALLY_TOOL_IMPORT_H

#include "base/buf.h"
#include "base/json.h"

/* The bytes of a file of at most 1 MiB. 0 or a negative errno with `e`. */
int import_read_file(const char *path, struct buf *out, struct error *e);

/* Sends the file to the station, which reads it: the request (taken) gets it as "csv". The answer, or NULL with `e`, whose
 * sentence begins with the path. */
json_t *import_send(json_t *request, const char *path, const struct buf *text, struct error *e);

/* Each change on a line, and then what they come to. */
void import_print_lines(const json_t *answer, int preview);
void import_print_people(const json_t *answer, int preview);

#endif
