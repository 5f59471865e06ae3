/* Labels of a bench on their way to paper: what a bench numbers is printed at once, once. What does not come out is not
 * printed again by itself: nobody could tell which of two papers with one number is stuck where. The bench enters it as spoilt
 * and numbers others (PRINT LABELS, YES); what the printer
 * still has of a job of which no label is open is taken back (labels/serve.h). So nothing of a job outlives a restart but the
 * labels that are not read back; of those that nobody has seen yet it is said that they may not have come out.
 */
#ifndef BANDTALLY_RUN_LABEL_JOBS_H
#define BANDTALLY_RUN_LABEL_JOBS_H

#include "run/daemon.h"

void label_jobs_start(struct daemon *d);
void label_jobs_stored(struct daemon *d, const struct event *events, int count);
void label_job_word(struct daemon *d, const json_t *job); /* of the printer's program, whose id is below 0 */

/* One label of this lot, with the next number, as it would be printed on `medium` ("" as the bench prints): drawn by the
 * printer's program and answered under `id` (run/asked.h) when it is. 0; -EPIPE where that does not run; or -EINVAL and the
 * like with `e`. */
int label_preview(struct daemon *d, const struct batch *of, const char *medium, const char *id,
                  struct error *e);
void label_picture(struct daemon *d, const json_t *picture); /* of the printer's program */

#endif
