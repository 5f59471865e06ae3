/* The life of the station as the service manager sees it (sd_notify(3), man systemd.service, WatchdogSec): where it asks to be told, a
 * station that hangs for WATCHDOG_S seconds is killed and started again, as one that died. It counts from the first word,
 * so that a start may take as long as a large record needs. Without a service manager nothing is said.
 */
#ifndef BANDTALLY_RUN_WATCHDOG_H
#define BANDTALLY_RUN_WATCHDOG_H

#define WATCHDOG_S 60

/* Before the station gives up what it does not need, and before its programs start: they are not told where. */
void watchdog_open(void);

/* Each second, by the loop that everything else goes through. */
void watchdog_alive(void);

#endif
