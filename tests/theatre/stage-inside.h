/* What the files of the stage share. Only stage*.c include this. */
#ifndef BANDTALLY_TESTS_THEATRE_STAGE_INSIDE_H
#define BANDTALLY_TESTS_THEATRE_STAGE_INSIDE_H

#include "stage.h"

/* stage-learn.c: an event is kept: the station applies it, and the world learns what it tells. */
void stage_keep(struct stage *g, const struct event *decided, const struct entry *e);
/* What is counted in now, as the sheet has it. */
void stage_learn_items(struct stage *g);

/* stage-read.c: entries that come from scanners. */
void stage_read(struct stage *g, const struct entry *e);
void stage_store(struct stage *g, const struct entry *e); /* read, and not sent yet */
void stage_send(struct stage *g, const struct entry *e);

#endif
