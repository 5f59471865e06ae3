/* The board's socket, where systemd opened it (bandtallyd.socket): a service that may open none to the network itself can
 * serve pages all the same. sd_listen_fds(3) says how it is handed over.
 */
#ifndef BANDTALLY_RUN_ACTIVATED_H
#define BANDTALLY_RUN_ACTIVATED_H

/* Its descriptor, which no program inherits by itself, and its port; or -1 where none was handed over. Once, at the start. */
int activated_socket(int *port);

#endif
