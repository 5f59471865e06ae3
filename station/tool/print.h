/* The way of the command's documents to paper: bandtally-print, which stands beside this program. */
#ifndef BANDTALLY_TOOL_PRINT_H
#define BANDTALLY_TOOL_PRINT_H

#include "base/json.h"

/* Hands the document over, `to` being an option of bandtally-print and `where` its value. Its exit code; why it failed is
 * said on stderr. */
int print_document(const json_t *doc, const char *to, const char *where);

/* Only whether it is right, fits, and can come there: the printer answers, the file may be written; NULL it is not asked. */
int print_check(const json_t *doc, const char *to, const char *where);

#endif
