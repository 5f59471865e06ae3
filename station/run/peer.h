/* Whether the program at the other end of a Unix socket is one of the station's own: a child of this process, or whatever
 * a child started, however many are between them.
 *
 * A process keeps its ancestors: whoever loses its parent gets this process for one (children_adopt()), and not init. So the
 * way up from one of ours ends here, from anybody else's at the top. The way is read from /proc twice and must be the same
 * both times, start times included: then no number on it was given to another process meanwhile. That the number at its
 * beginning is still the peer's own is told by a pidfd of the peer, which must not have ended afterwards.
 *
 * What is left:
 * - Before Linux 6.5 (no SO_PEERPIDFD) that pidfd is made of the number. One of ours that connected and ended before it was
 *   let in is taken for whoever has its number since; for that all numbers must have been given out in between.
 * - Whoever hands a connection on hands on what it may do: one that somebody else made, and gave to one of ours, is theirs.
 * - A program that one of ours has started by somebody else (systemd, at, cron) is not found so: those start it as the
 *   station's own user, who may ask for nothing where the station is a service (socket.c).
 */
#ifndef BANDTALLY_RUN_PEER_H
#define BANDTALLY_RUN_PEER_H

#include <sys/types.h>

/* 1 where the peer of the connection `fd`, which is `pid` by its credentials, is one of ours or nobody can tell any more;
 * else 0, as for a process of another namespace, whose number is 0. */
int peer_is_ours(int fd, pid_t pid);

#endif
