/* Takes away from bandtally-print what paper does not need: a printer's answer is parsed in it.
 *
 * To be called before the fonts are opened, so that the threads that look for them are confined as well. Afterwards it
 * reads what fonts, names and CUPS need, writes beneath `folder` alone, and may connect; base/confine.h says what else is
 * gone. Nothing of the data folder is to be read but `folder`, unless that lies in /usr or /etc.
 */
#ifndef BANDTALLY_LABELS_PRINT_CONFINED_H
#define BANDTALLY_LABELS_PRINT_CONFINED_H

#include "base/error.h"

/* 0, or a negative errno with `e` filled: then the process must not go on. */
int confine_print(const char *folder, struct error *e);

#endif
