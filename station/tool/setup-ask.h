/* Asking at a terminal. Ctrl-C, a hang-up and the end of input are one and the same: whoever was asked wants no more of it. */
#ifndef BANDTALLY_TOOL_SETUP_ASK_H
#define BANDTALLY_TOOL_SETUP_ASK_H

#include <stdbool.h>
#include <stddef.h>

/* From here on Ctrl-C ends a question, not the program: what was begun is taken back in order. */
void ask_begin(void);
bool ask_stopped(void);

/* Puts the question on standard output, with what an empty line means ("" nothing), and reads the answer's line without the
 * spaces round it. 0, `out` "" where nothing was said or offered; -ECANCELED; -EMSGSIZE where it is too long. */
int ask_line(const char *question, const char *offered, char *out, size_t size);

#endif
