/* bandtallyd --check: whether a start would find everything sound. Writes nothing anywhere: no folder, no record, no key. */
#ifndef BANDTALLY_RUN_CHECK_H
#define BANDTALLY_RUN_CHECK_H

#include "run/settings.h"

/* `head`: where the head is noted unless the settings say (run/core.h), or NULL. 0, with `settings` filled and `said` what there is to say; or a negative errno with the first thing that is not sound. */
int check_folder(const char *folder, const char *head, struct settings *settings, const char **said,
                 struct error *e);

/* Whether the settings files of the folder `place` would be taken by the station of `folder`; looks at nothing else. */
int check_settings(const char *folder, const char *place, struct settings *settings, struct error *e);

/* Of each language that is installed who has read it, a line each to standard output. */
void check_languages(void);

#endif
