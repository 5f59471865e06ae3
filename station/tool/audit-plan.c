/* The theatre lists that reports set beside the record, and where what was given once is kept. */
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/file.h"
#include "report/plan.h"
#include "tool/audit-record.h"
#include "tool/audit.h"

#define KEPT_MAX ((size_t)1024 * 1024) /* what file_read() reads again */

static int is_room(void *context, int32_t room)
{
	return recorded_room(context, room) != NULL;
}

/* A room that was given up since has had its lists. */
static int was_room(void *context, int32_t room)
{
	(void)context;
	return room > 0;
}

int audit_plan_read(struct plan *p, const char *file, struct recorded *settings, struct error *e)
{
	_cleanup_(buf_free) struct buf text = {0};
	int n = file_read(file, &text);
	if (n < 0)
		return error_set(e, n, "the theatre list %.300s cannot be read: %s: check the path", file,
		                 strerror(-n));
	return plan_read(p, text.data ? text.data : "", text.size, is_room, settings, e);
}

static int read_kept(struct plan *p, const char *file, struct error *e)
{
	_cleanup_(buf_free) struct buf text = {0};
	struct error why = {0};
	int n = *file ? file_read(file, &text) : -ENOENT;
	if (n == -ENOENT || n == -ENOTDIR || n == -EACCES) /* or it is another account's */
		return 0;
	if (n == 0 && plan_read(p, text.data ? text.data : "", text.size, was_room, NULL, &why) == 0)
		return 0;
	return error_set(e, n < 0 ? n : -EINVAL,
	                 "the theatre lists that were kept in %.300s cannot be read: remove that file, and "
	                 "give the lists again with --list",
	                 file);
}

static int keep(const struct plan *p, const char *file, struct error *e)
{
	_cleanup_(buf_free) struct buf text = {0};
	int n = *file ? plan_write(p, &text) : -ENOENT;
	if (n == 0)
		n = text.size > KEPT_MAX ? -EFBIG : file_replace(file, 0600, text.data, text.size);
	return n < 0 ? error_set(e, n, "the theatre list cannot be kept in %.300s: %s: check that folder",
	                         *file ? file : "the home folder", strerror(-n))
	             : 0;
}

static void say_kept(const struct plan *p, const char *file)
{
	int32_t first = p->slots[0].day, last = p->slots[p->count - 1].day;
	fprintf(stderr, "theatre list: %zu places, %04d-%02d-%02d to %04d-%02d-%02d, kept in %s\n", p->count,
	        first / 10000, first / 100 % 100, first % 100, last / 10000, last / 100 % 100, last % 100,
	        file);
}

int audit_plan(struct plan *p, struct record *r, const char *given, struct recorded *settings,
               struct error *e)
{
	char file[PATH_MAX];
	struct plan later = {0};
	struct error kept = {0};
	*p = (struct plan){0};
	if (given && strcmp(given, "none") == 0)
		return 0;
	audit_place(r, &(struct audit_folder){"XDG_DATA_HOME", ".local/share"}, "theatre-list", file);
	int n = given ? audit_plan_read(&later, given, settings, e) : 0;
	if (n == 0)
		n = read_kept(p, file, e);
	if (n == 0 && given)
		n = plan_lay_over(p, &later, e);
	if (n == 0 && given && keep(p, file, &kept) < 0)
		fprintf(stderr, "bandtally: %s\n", kept.text);
	else if (n == 0 && p->count)
		say_kept(p, file);
	plan_deinit(&later);
	return n < 0 ? n : given || p->count;
}
