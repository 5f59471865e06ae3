#include <errno.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include "record/snapshot.h"

/* clang-format off */
#define SIZE_OF(field) sizeof(((struct station *)NULL)->field)
#define PART(field, kind) {#field, kind, offsetof(struct station, field), SIZE_OF(field), SIZE_OF(field), 0}
#define ARRAY(field, kind) {#field, kind, offsetof(struct station, field), SIZE_OF(field), SIZE_OF(field[0]), 0}
#define COUNTED(field, n) \
	{#field, PART_COUNTED, offsetof(struct station, field), SIZE_OF(field), SIZE_OF(field[0]), \
	 offsetof(struct station, n)}

/* In the order of the struct. */
static const struct snapshot_part parts[] = {
	PART(site, PART_SETTING),
	PART(number, PART_SETTING),
	PART(site_name, PART_SETTING),
	PART(language, PART_SETTING),
	PART(rooms, PART_SETTING),
	PART(n_rooms, PART_SETTING),
	PART(policy, PART_SETTING),
	PART(practice, PART_SETTING),
	PART(catalogue, PART_LIST),
	PART(staff, PART_LIST),
	{"quarantines", PART_LIST, offsetof(struct station, quarantines), sizeof(void *), sizeof(void *), 0},
	PART(n_quarantines, PART_LIST),
	PART(quarantines_room, PART_LIST),
	PART(sheets, PART_CASES),
	PART(before, PART_CASES),
	PART(undo, PART_CASES),
	COUNTED(unseen, n_unseen),
	PART(n_unseen, PART_STATE),
	PART(older_unseen, PART_STATE),
	COUNTED(owed, n_owed),
	PART(n_owed, PART_STATE),
	PART(more_owed, PART_STATE),
	COUNTED(after, n_after),
	PART(n_after, PART_STATE),
	PART(more_after, PART_STATE),
	PART(last_case_no, PART_STATE),
	PART(last_slip_no, PART_STATE),
	PART(last_item_no, PART_STATE),
	ARRAY(idle_asked, PART_BY_ROOM),
	ARRAY(idle_n, PART_BY_ROOM),
	ARRAY(idle_copy, PART_BY_ROOM),
	ARRAY(idle_last, PART_BY_ROOM),
	ARRAY(papers, PART_BY_ROOM),
	COUNTED(carried, n_carried),
	PART(n_carried, PART_STATE),
	COUNTED(held, n_held),
	PART(n_held, PART_STATE),
	COUNTED(unfollowed, n_unfollowed),
	PART(n_unfollowed, PART_STATE),
	PART(more_unfollowed, PART_STATE),
	PART(backup_seq, PART_STATE),
	PART(backup_ms, PART_STATE),
	PART(boot, PART_STATE),
	PART(last, PART_STATE),
	PART(wall_ms, PART_STATE),
	PART(released, PART_SETTING),
	PART(clock_wrong, PART_STATE),
	ARRAY(heard, PART_BY_ROOM),
	PART(recorded, PART_STATE),
	PART(proof, PART_STATE),
	PART(incarnation, PART_STATE),
};
/* clang-format on */
#define PARTS (sizeof parts / sizeof *parts)

const struct snapshot_part *snapshot_parts(size_t *n)
{
	*n = PARTS;
	return parts;
}

static int count_of(const struct station *st, const struct snapshot_part *p)
{
	return *(const int *)(const void *)((const char *)st + p->count);
}

/* --- out ----------------------------------------------------------------------------------------- */

static int put_number(struct buf *out, uint32_t n)
{
	return buf_add(out, &n, sizeof n);
}

static int put_list(struct buf *out, const void *list, size_t count, size_t element)
{
	int n = put_number(out, (uint32_t)count);
	return n < 0 || !count ? n : buf_add(out, list, count * element);
}

static int put_rooms(const struct station *st, struct buf *out)
{
	int n = put_number(out, (uint32_t)st->n_rooms);
	for (int i = 0; i < st->n_rooms && n == 0; i++)
		n = put_number(out, (uint32_t)st->rooms[i].number);
	return n;
}

static int put_case(const struct station *st, int i, struct buf *out)
{
	int n = put_number(out, (uint32_t)i);
	if (n == 0)
		n = buf_add(out, &st->sheets[i], sizeof st->sheets[i]);
	if (n == 0)
		n = buf_add(out, &st->undo[i], sizeof st->undo[i]);
	if (n == 0 && st->undo[i].seq)
		n = buf_add(out, &st->before[i], sizeof st->before[i]);
	return n;
}

static int put_cases(const struct station *st, struct buf *out)
{
	int n = 0;
	for (int i = 0; i < SHEETS_MAX && n == 0; i++)
		if (st->sheets[i].case_no)
			n = put_case(st, i, out);
	return n < 0 ? n : put_number(out, SHEETS_MAX);
}

static int put_part(const struct station *st, const struct snapshot_part *p, struct buf *out)
{
	const char *at = (const char *)st + p->offset;
	switch (p->kind) {
	case PART_SETTING:
	case PART_CASES:
	case PART_LIST:
		return 0;
	case PART_STATE:
		return buf_add(out, at, p->size);
	case PART_COUNTED:
		return put_list(out, at, (size_t)count_of(st, p), p->element);
	case PART_BY_ROOM:
		return put_list(out, at, (size_t)st->n_rooms, p->element);
	}
	return -EINVAL;
}

int snapshot_pack(const struct station *st, struct buf *out)
{
	int n = put_rooms(st, out);
	for (size_t i = 0; i < PARTS && n == 0; i++)
		n = put_part(st, &parts[i], out);
	if (n == 0)
		n = put_cases(st, out);
	if (n == 0)
		n = put_list(out, st->catalogue.lines, st->catalogue.count, sizeof *st->catalogue.lines);
	if (n == 0)
		n = put_list(out, st->staff.list, st->staff.count, sizeof *st->staff.list);
	if (n == 0)
		n = put_list(out, st->quarantines, st->n_quarantines, sizeof *st->quarantines);
	return n;
}

/* --- in ------------------------------------------------------------------------------------------ */

struct in {
	const char *at, *end;
	uint32_t rooms[ROOMS_MAX]; /* their numbers, by their places then */
	uint32_t n_rooms;
};

static int take(struct in *in, void *to, size_t size)
{
	if ((size_t)(in->end - in->at) < size)
		return -EINVAL;
	if (size)
		memcpy(to, in->at, size);
	in->at += size;
	return 0;
}

/* How many follow, of which there may be `max`. */
static int take_count(struct in *in, uint32_t *count, size_t max)
{
	int n = take(in, count, sizeof *count);
	return n < 0 ? n : *count > max ? -EINVAL : 0;
}

static int place_then(const struct in *in, int32_t room)
{
	for (uint32_t i = 0; i < in->n_rooms; i++)
		if (in->rooms[i] == (uint32_t)room)
			return (int)i;
	return -1;
}

/* What happened in a room that was not among them was not kept. */
static int take_rooms(struct in *in, const struct station *st)
{
	int n = take_count(in, &in->n_rooms, ROOMS_MAX);
	if (n == 0)
		n = take(in, in->rooms, sizeof *in->rooms * in->n_rooms);
	for (int i = 0; i < st->n_rooms && n == 0; i++)
		n = place_then(in, st->rooms[i].number) < 0 ? -ESTALE : 0;
	return n;
}

static int take_by_room(struct in *in, struct station *st, const struct snapshot_part *p)
{
	uint32_t count = 0;
	int n = take_count(in, &count, ROOMS_MAX);
	const char *all = in->at;
	if (n == 0 && (count != in->n_rooms || (size_t)(in->end - in->at) < count * p->element))
		return -EINVAL;
	for (int i = 0; i < st->n_rooms && n == 0; i++)
		memcpy((char *)st + p->offset + (size_t)i * p->element,
		       all + (size_t)place_then(in, st->rooms[i].number) * p->element, p->element);
	in->at += n == 0 ? count * p->element : 0;
	return n;
}

static int take_part(struct in *in, struct station *st, const struct snapshot_part *p)
{
	char *at = (char *)st + p->offset;
	uint32_t count = 0;
	int n = 0;
	switch (p->kind) {
	case PART_SETTING:
	case PART_CASES:
	case PART_LIST:
		return 0;
	case PART_STATE:
		return take(in, at, p->size);
	case PART_COUNTED:
		n = take_count(in, &count, p->size / p->element);
		return n < 0 ? n : take(in, at, count * p->element);
	case PART_BY_ROOM:
		return take_by_room(in, st, p);
	}
	return -EINVAL;
}

static int take_cases(struct in *in, struct station *st)
{
	uint32_t i = 0;
	int n;
	while ((n = take_count(in, &i, SHEETS_MAX)) == 0 && i < SHEETS_MAX) {
		n = take(in, &st->sheets[i], sizeof st->sheets[i]);
		if (n == 0)
			n = take(in, &st->undo[i], sizeof st->undo[i]);
		if (n == 0 && st->undo[i].seq)
			n = take(in, &st->before[i], sizeof st->before[i]);
		if (n < 0)
			return n;
	}
	return n;
}

static int take_lists(struct in *in, struct station *st)
{
	uint32_t count = 0;
	int n = take_count(in, &count, CATALOGUE_LINES_MAX);
	if (n == 0 && (n = catalogue_reserve(&st->catalogue, count)) == 0 &&
	    (n = take(in, st->catalogue.lines, count * sizeof *st->catalogue.lines)) == 0)
		st->catalogue.count = count;
	if (n == 0 && (n = take_count(in, &count, UINT32_MAX)) == 0 &&
	    (n = staff_reserve(&st->staff, count)) == 0 &&
	    (n = take(in, st->staff.list, count * sizeof *st->staff.list)) == 0)
		st->staff.count = count;
	if (n == 0 && (n = take_count(in, &count, UINT32_MAX)) == 0 &&
	    (n = station_reserve_quarantines(st, count)) == 0 &&
	    (n = take(in, st->quarantines, count * sizeof *st->quarantines)) == 0)
		st->n_quarantines = count;
	return n;
}

/* As before the first event. The lists keep their memory. */
static void forget(struct station *st)
{
	for (size_t i = 0; i < PARTS; i++)
		if (parts[i].kind != PART_SETTING && parts[i].kind != PART_LIST)
			memset((char *)st + parts[i].offset, 0, parts[i].size);
	st->catalogue.count = st->staff.count = st->n_quarantines = 0;
}

int snapshot_unpack(struct station *st, const void *bytes, size_t size)
{
	struct in in = {.at = bytes, .end = (const char *)bytes + size};
	int n = take_rooms(&in, st);
	for (size_t i = 0; i < PARTS && n == 0; i++)
		n = take_part(&in, st, &parts[i]);
	if (n == 0)
		n = take_cases(&in, st);
	if (n == 0)
		n = take_lists(&in, st);
	if (n == 0 && in.at != in.end)
		n = -EINVAL;
	if (n < 0)
		forget(st);
	return n;
}
