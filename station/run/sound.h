/* The settings that were sound last. A copy of both files is kept beside the record as soon as a start could use them, so
 * that a slip of the pen in one of them, or a file of a later version, never keeps the station from starting (rule 26). */
#ifndef BANDTALLY_RUN_SOUND_H
#define BANDTALLY_RUN_SOUND_H

#include "run/settings.h"

#define SOUND_FOLDER "settings-sound"
#define SOUND_FAULT_MAX 500

/* Reads the settings of a folder; where they cannot be used, those that were kept; and where there are none, what a
 * fresh folder has. SAY_NONE where the files of the folder are used; else what is used instead, a sentence whose {fault} is
 * `fault`: what is wrong with the files, with file and line. */
enum saying sound_read(struct settings *s, struct station *st, const char *folder,
                       char fault[SOUND_FAULT_MAX]);

/* Keeps the files of the folder as they are now. 0 or a negative errno with `e`. */
int sound_keep(const char *folder, struct error *e);

#endif
