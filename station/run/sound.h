/* The settings that were sound last. A copy of both files is kept beside the record as soon as a start could use them, so
 * that a slip of the pen in one of them, or a file of a later version, never keeps the station from starting (rule 26). */
#ifndef BANDTALLY_RUN_SOUND_H
#define BANDTALLY_RUN_SOUND_H

#include "run/settings.h"

#define SOUND_FOLDER "settings-sound"
#define SOUND_FAULT_MAX 700

/* Reads the settings of a folder; where they cannot be used, those that were kept; and where there are none, what a
 * fresh folder has. `fault`: "" or what is wrong with the files, with file and line, and what is used instead. Which
 * are used. */
enum sound_from { SOUND_FROM_FOLDER = 0, SOUND_FROM_EARLIER, SOUND_FROM_DEFAULTS };
enum sound_from sound_read(struct settings *s, struct station *st, const char *folder,
                           char fault[SOUND_FAULT_MAX]);

/* Keeps the files of the folder as they are now. 0 or a negative errno with `e`. */
int sound_keep(const char *folder, struct error *e);

#endif
