/* Takes away from the daemon what neither it nor its programs need, before it starts the first of them: they inherit it,
 * and most confine themselves further.
 *
 * Afterwards it reads and starts what it could before, opens devices, and writes beneath the data folder, the folder of the
 * record's head, and those for temporary files. It looks into no other process and changes nothing of the system, and its
 * memory, which holds the station's key, is for nobody to look into. base/confine.h says how. What [driver …] in station.ini
 * starts has the same. A folder of the head that is made anew or mounted later needs a restart, and the board says that
 * nothing can be noted there meanwhile.
 */
#ifndef BANDTALLY_RUN_DAEMON_CONFINED_H
#define BANDTALLY_RUN_DAEMON_CONFINED_H

/* What could not be had is logged, once, and stops nothing: the count goes on. */
void confine_station(const char *folder, const char *head);

#endif
