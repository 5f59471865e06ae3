/* The way to a hospital's store: what bandtally-forward is told and says (forward/line.h). The count never waits for it. */
#ifndef BANDTALLY_RUN_HOSPITAL_H
#define BANDTALLY_RUN_HOSPITAL_H

#include "run/daemon.h"

struct hospital;

/* Starts the program where station.ini has a [hospital]. 0, or a negative errno. */
int hospital_start(struct daemon *d);
void hospital_stop(struct daemon *d);
void hospital_stored(struct daemon *d); /* events were stored: they are sent in a later turn of the loop */
void hospital_look(struct daemon *d);   /* each second */

#endif
