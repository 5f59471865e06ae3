/* Where this program lies, and what was installed or built with it: found from the program's own file, so that no folder of
 * the machine that built it stands in it.
 */
#ifndef BANDTALLY_BASE_OWN_H
#define BANDTALLY_BASE_OWN_H

#include <stddef.h>

/* The path of `name` seen from the folder of this program's file: "bandtally-board", "../words". 0, or negative errno with
 * `out` empty. Whether anything is there is not looked at. Safe between fork() and exec(). */
int own_path(char *out, size_t size, const char *name);

/* A file or folder that comes with the program: what the environment's `variable` names, else `installed` where that can be
 * read, else `built` as own_path() takes it, written to `out`. Borrowed from one of the three. */
const char *own_file(const char *variable, const char *installed, const char *built, char *out, size_t size);

#endif
