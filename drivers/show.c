#include "drivers/show.h"

#include <errno.h>
#include <signal.h>
#include <string.h>

#include "drivers/glimpse.h"

/* The last signal that came, 0 once it was heard: a handler has nothing else to write to. */
static volatile sig_atomic_t asked;

static void on_asked(int signal_number)
{
	asked = signal_number;
}

int show_listen(void)
{
	struct sigaction act = {.sa_handler = on_asked, .sa_flags = SA_RESTART};
	sigemptyset(&act.sa_mask);
	return sigaction(SIGUSR1, &act, NULL) < 0 || sigaction(SIGUSR2, &act, NULL) < 0 ? -errno : 0;
}

/* No pixel stays behind for somebody who looks into this process later. */
static void forget(struct show *s)
{
	if (s->small.pixels)
		memset(s->small.pixels, 0, (size_t)s->small.width * (size_t)s->small.height);
	s->until_ms = 0;
}

static void hear(struct show *s, int64_t now_ms)
{
	int heard = asked;
	if (heard) /* one that comes between the two is heard as this one, which is the older */
		asked = 0;
	if (heard == SIGUSR1)
		s->until_ms = now_ms + WIRE_SHOW_MS;
	if (heard == SIGUSR2 || now_ms >= s->until_ms)
		forget(s);
}

static size_t seen_now(const struct steady *steady, const struct plane *frame, int64_t now_ms,
                       struct wire_seen seen[WIRE_SEEN_MAX])
{
	size_t n = 0;
	for (size_t i = 0; i < steady->count && n < WIRE_SEEN_MAX; i++)
		if (steady->item[i].seen_ms == now_ms) {
			seen[n] = glimpse_place(&steady->item[i].code.box, frame);
			seen[n++].told = steady->item[i].told;
		}
	return n;
}

int show_frame(struct show *s, struct wire *out, const struct plane *frame, const struct steady *steady,
               int64_t now_ms)
{
	unsigned char jpeg[GLIMPSE_BYTES_MAX];
	struct wire_seen seen[WIRE_SEEN_MAX];
	size_t size;
	hear(s, now_ms);
	if (!s->until_ms || now_ms - s->last_ms < SHOW_EVERY_MS || !wire_has_room(out))
		return 0;
	s->last_ms = now_ms;
	if (glimpse_reduce(frame, &s->small) < 0 || glimpse_jpeg(&s->small, jpeg, &size) < 0)
		return 0;
	int r = wire_picture(out, jpeg, size, seen, seen_now(steady, frame, now_ms, seen));
	memset(jpeg, 0, sizeof jpeg);
	return r;
}

void show_free(struct show *s)
{
	forget(s);
	plane_free(&s->small);
}
