/* The PEM files of the board elsewhere, as texts. Its program reads them as it starts; later, when that may open no file
 * any more, the daemon reads them for it. */
#ifndef BANDTALLY_BASE_PEM_H
#define BANDTALLY_BASE_PEM_H

#include "base/buf.h"
#include "base/error.h"

enum pem {
	PEM_CERTIFICATE, /* the server's own first, then what leads to its authority */
	PEM_KEY,         /* without a pass phrase, closed to other users */
	PEM_CLIENTS,     /* the authorities whose client certificates are admitted */
	PEM_REVOKED, /* lists of those that are not any more, one of each of these authorities; may be left out */
	PEM_COUNT
};

struct pem_files {
	const char *path[PEM_COUNT]; /* borrowed, NULL: none */
	struct buf text[PEM_COUNT];
};

#define PEM_WHERE "board elsewhere: "
#define PEM_MEND ", or correct [board elsewhere] in station.ini"

const char *pem_word(enum pem which); /* as station.ini calls it: "certificate" */

/* Reads the texts of all that have a path. 0, or a negative errno with `e` filled: which file, why, what to do. */
int pem_read(struct pem_files *files, struct error *e);
void pem_forget(struct pem_files *files); /* the texts; the memory is wiped */

#endif
