/* The pipe to the station, from the side of the program that sends. Lines are described in forward/line.h. */
#ifndef BANDTALLY_FORWARD_PIPE_H
#define BANDTALLY_FORWARD_PIPE_H

#include "base/buf.h"
#include "base/json.h"

struct pipe_lines { /* zeroed: nothing was read */
	struct buf in;
	size_t taken; /* of it, that was handed out */
	int ended;
};

enum { PIPE_TOOK = 0, PIPE_NOTHING = 1 };

/* Reads what is there, without waiting: PIPE_TOOK, PIPE_NOTHING, -EPIPE where the station is gone, or another negative errno. */
int pipe_read(struct pipe_lines *p, int fd);
/* The next whole line, valid until the next pipe_read(); NULL where there is none. */
const char *pipe_line(struct pipe_lines *p, size_t *size);
/* Waits at most `ms` for something to read. */
void pipe_wait(int fd, int ms);
/* A text that somebody wrote, as a value that a line can hold; {} where it is none, or has a fraction in it, say: what takes it then
 * says that it cannot, and nothing is lost without a word. */
json_t *pipe_value(const char *text);
/* Writes one line {"v":1,KEY:VALUE}; `value` is taken. 0 or negative errno. */
int pipe_say(int fd, const char *key, json_t *value);

#endif
