/* A closed record of one ordinary case, and what somebody can do to it. */
#ifndef BANDTALLY_TESTS_RECORD_ONE_CASE_H
#define BANDTALLY_TESTS_RECORD_ONE_CASE_H

#include <sqlite3.h>
#include <stdint.h>

#include "base/buf.h"
#include "base/error.h"
#include "tests/unit/record/folder.h"

int64_t one_case_make(char folder[FOLDER_MAX]);
void one_case_file(const char *folder, char path[FOLDER_MAX + 16]);
int one_case_sql(const char *folder, const char *text);
int one_case_verify_counting(const char *folder, int64_t *events, struct error *e);
int one_case_verify(const char *folder, struct error *e);
void one_case_opening_says(const char *folder, int code, const char *words);
void one_case_column(sqlite3 *db, const char *text, struct buf *out);

#endif
