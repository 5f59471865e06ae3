/* One request to a printer, and its whole answer or none. libcups speaks HTTP and TLS here and writes the request; what comes
 * back is read by printer-answer.h.
 *
 * Every wait has an end, also where bytes go on coming: connecting 3 s (8 s with TLS), then 4 s without a byte, 60 s until all
 * is sent, 8 s until all is answered. An answer has at most ANSWER_BYTES_MAX. Nobody is asked for a password, and no other address is
 * gone to than the settings'. One exchange at a time in a process: its end is told by SIGALRM.
 */
#ifndef BANDTALLY_LABELS_EXCHANGE_H
#define BANDTALLY_LABELS_EXCHANGE_H

#include <cups/cups.h>

#include "labels/printer-answer.h"
#include "labels/send.h"

http_t *exchange_open(const struct printer *p); /* the caller closes it; NULL where nothing answers there */

/* Sends `request`, which is freed, and `document` behind it where that is not NULL. The answer's status, of which up to 0xff
 * is good; of an answer that HTTP itself refuses, the status nearest to it. -EIO where none came in time, -EPROTO where it
 * cannot be read: then nothing is known of what the printer did. `answer` is empty before, and then the caller's. */
int exchange(http_t *h, const struct printer *p, ipp_t *request, const struct buf *document,
             struct buf *answer);

#endif
