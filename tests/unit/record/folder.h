/* A data folder for one test. */
#ifndef BANDTALLY_TESTS_RECORD_FOLDER_H
#define BANDTALLY_TESTS_RECORD_FOLDER_H

#define FOLDER_MAX 64

void folder_make(
    char folder[FOLDER_MAX]); /* on disk where fsync costs something is not needed: in $TMPDIR or /tmp */
void folder_remove(const char *folder);             /* with all that is in it */
void folder_copy(const char *from, const char *to); /* every plain file; `to` must exist */

#endif
