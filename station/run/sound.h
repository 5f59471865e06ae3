/* The settings that were sound last. A copy of each file is kept beside the record as soon as it could be used, so that a slip
 * of the pen, a file that is cut off, empty or gone, or one of a later version, never keeps the station from starting (rule 26)
 * and never makes another station of it. */
#ifndef BANDTALLY_RUN_SOUND_H
#define BANDTALLY_RUN_SOUND_H

#include "base/scanners.h"
#include "run/settings.h"

#define SOUND_FOLDER "settings-sound"
#define SOUND_FAULT_MAX 500

/* Whether the settings that were just read from the folder are those of the station that was sound last: a file that was there
 * is there and not empty, and letters and number are said where they are other ones. 0, also where none were kept; or a negative
 * errno with file, what is wrong and what to do. */
int sound_check(const struct settings *s, const struct station *st, const char *folder, struct error *e);

/* Reads the settings of a folder; where they cannot be used, those that were kept; and where there are none, what a
 * fresh folder has. SAY_NONE where the files of the folder are used; else what is used instead, a sentence whose {fault} is
 * `fault`: what is wrong with the files, with file and line. */
enum saying sound_read(struct settings *s, struct station *st, const char *folder,
                       char fault[SOUND_FAULT_MAX]);

/* The number of the station that was sound last; -1 none is known. */
int sound_number(const char *folder);

/* Whether the letters that the settings do not say are those that the record has: 0, or -EUCLEAN with `e`. */
int sound_site_check(const struct settings *s, const struct station *st, const char *folder, struct error *e);

/* The same as sound_read() of scanners.ini, which may be absent; the copy is renewed by what could be used. */
enum saying sound_scanners(struct scanners *out, const char *folder, char fault[SOUND_FAULT_MAX]);

/* Whether scanners.ini in `place` could be used, as a start on `folder` would: 0 or a negative errno with `e`. */
int sound_scanners_check(const char *folder, const char *place, struct error *e);

/* Keeps station.ini and policy.ini of the folder as they are now; one that is empty or gone replaces none. 0 or a negative errno
 * with `e`. */
int sound_keep(const char *folder, struct error *e);

#endif
