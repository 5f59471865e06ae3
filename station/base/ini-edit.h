/* Changes a settings file as a careful person would: one value, and all that stands around it stays as it is. Pure. */
#ifndef BANDTALLY_BASE_INI_EDIT_H
#define BANDTALLY_BASE_INI_EDIT_H

#include "base/buf.h"

/* Sets `name` of `[section]` in the text of a settings file that ini_read() takes. The line that has it is replaced; else it
 * comes below the line "#name =" that says how it would be written, else below the section's last value. A new section comes
 * behind the last one of its first word ("room" of "room 2"), else at the end. 0 or -ENOMEM, the text as it was. */
int ini_put(struct buf *text, const char *section, const char *name, const char *value);

/* Takes the line of that value out, where there is one. */
void ini_drop(struct buf *text, const char *section, const char *name);

#endif
