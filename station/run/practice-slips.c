#include "run/practice-slips.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "base/log.h"
#include "run/board.h"
#include "run/practice.h"
#include "run/teller.h"

#define UNFINISHED "slips/.unfinished" /* where the printer's program may write, and nowhere else */
#define OF_A_ROOM INT64_C(1000000000)  /* ids of one room: slip * 100 + copy */
#define COPIES 100
#define FILE_NAME_MAX 64

static void file_name(int32_t room, int32_t slip, char out[FILE_NAME_MAX])
{
	snprintf(out, FILE_NAME_MAX, "practice-%d-slip-%07d.pdf", (int)room, (int)slip);
}

static json_t *destination(const struct daemon *d, int32_t room, int32_t slip)
{
	char path[PATH_MAX + FILE_NAME_MAX], name[FILE_NAME_MAX];
	if (d->core.settings.printer[0])
		return json_pack("{s:s}", "printer", d->core.settings.printer);
	file_name(room, slip, name);
	snprintf(path, sizeof path, "%s/" UNFINISHED "/%s", d->core.folder, name);
	return json_pack("{s:s}", "pdf", path);
}

static int hand_over(struct daemon *d, struct practice *p, const struct slip *s)
{
	struct error e = {0};
	_cleanup_(buf_free) struct buf line = {0};
	_cleanup_(json_drop) json_t *o = json_object();
	json_t *job = json_object();
	json_t *document = teller_slip(&p->core, s->case_no, s->number, (enum slip_kind)s->kind, s->copy, &e);
	json_object_set_new(o, "v", json_integer(1));
	json_object_set_new(o, "job", job);
	if (!document) {
		log_warn(LOG_PAPER, "a slip of practice cannot be made: %s", e.text);
		return -EINVAL;
	}
	json_object_set_new(
	    job, "id",
	    json_integer(PRACTICE_JOBS + s->room * OF_A_ROOM + (json_int_t)s->number * COPIES + s->copy));
	json_object_set_new(job, "to", destination(d, s->room, s->number));
	json_object_set_new(job, "document", document);
	int n = json_write_canonical(o, &line);
	if (n == 0)
		n = buf_add_text(&line, "\n");
	return n < 0 ? n : child_send(d->print, line.data, line.size);
}

static void look(struct daemon *d, struct practice *p)
{
	const struct station *st = &p->core.station;
	for (int i = 0; i < st->n_unseen; i++) {
		const struct slip s = st->unseen[i];
		if (s.number <= p->printed || s.state != SLIP_QUEUED || !child_running(d->print))
			continue;
		hand_over(d, p, &s);
		p->printed = s.number;
	}
}

void practice_slips_look(struct daemon *d)
{
	for (int i = 0; i < d->core.station.n_rooms; i++)
		if (d->core.practice[i])
			look(d, d->core.practice[i]);
}

/* Of a practice that is over it is removed. */
static int keep_file(const struct daemon *d, const struct practice *p, int32_t room, int32_t slip)
{
	char from[PATH_MAX + FILE_NAME_MAX], to[PATH_MAX + FILE_NAME_MAX], name[FILE_NAME_MAX];
	file_name(room, slip, name);
	snprintf(from, sizeof from, "%s/" UNFINISHED "/%s", d->core.folder, name);
	if (!p)
		return remove(from) < 0 ? -errno : 0;
	snprintf(to, sizeof to, "%s/slips", p->core.folder);
	mkdir(to, 0750);
	snprintf(to, sizeof to, "%s/slips/%s", p->core.folder, name);
	return rename(from, to) < 0 ? -errno : 0;
}

void practice_slips_word(struct daemon *d, int64_t id, enum slip_state state, int64_t cups)
{
	int64_t of = id - PRACTICE_JOBS;
	int32_t room = (int32_t)(of / OF_A_ROOM % 100), slip = (int32_t)(of % OF_A_ROOM / COPIES);
	int i = core_room_index(&d->core, room);
	struct practice *p = i < 0 ? NULL : d->core.practice[i];
	if (state == SLIP_WRITTEN && keep_file(d, p, room, slip) < 0)
		state = SLIP_FAILED;
	const struct slip *s = p ? station_slip(&p->core.station, slip) : NULL;
	if (!s)
		return;
	struct event e = {.kind = EV_SLIP_STATE,
	                  .case_no = s->case_no,
	                  .room = s->room,
	                  .n = slip,
	                  .what = (uint8_t)state,
	                  .other = s->copy,
	                  .ref = cups >= 0 && cups <= INT32_MAX ? cups : 0};
	if (state == SLIP_WRITTEN)
		file_name(room, slip, e.text);
	core_store(&p->core, &e, 1, NULL);
	d->core.changes++;
	board_show(d);
}
