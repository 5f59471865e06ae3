#include "run/media.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/ini.h"
#include "base/name.h"

#define NAME_MAX_BYTES 40
#define LABEL_LOW_UM 20000
#define LABEL_HIGH_UM 120000
#define LABEL_LOW_HIGH_UM 12000 /* the least height */
#define SHEET_MAX_UM 420000

struct medium {
	char name[NAME_MAX_BYTES];
	int dpi, rectangle;
	int label[2], sheet[2], labels[2], first[2], step[2]; /* across and down; lengths in micrometres */
};

struct reading {
	const char *path, *wanted; /* NULL: all are checked */
	struct medium now, found;
};

static const struct length {
	const char *name;
	size_t place;
	int low_um, high_um;
} lengths[] = {
    {"label_mm", offsetof(struct medium, label), LABEL_LOW_HIGH_UM, LABEL_HIGH_UM},
    {"sheet_mm", offsetof(struct medium, sheet), LABEL_LOW_UM, SHEET_MAX_UM},
    {"first_mm", offsetof(struct medium, first), 0, SHEET_MAX_UM},
    {"step_mm", offsetof(struct medium, step), LABEL_LOW_HIGH_UM, SHEET_MAX_UM},
};

/* "7.5 x 15.5" */
static int read_pair(const char *value, double out[2])
{
	int used = 0;
	return sscanf(value, "%lf x %lf%n", &out[0], &out[1], &used) == 2 && !value[used] ? 0 : -EINVAL;
}

static int set_length(struct medium *m, const struct length *l, const char *value, struct error *e)
{
	double mm[2];
	int *um = (int *)((char *)m + l->place);
	if (read_pair(value, mm) == 0) {
		for (int i = 0; i < 2; i++)
			um[i] = mm[i] >= 0 && mm[i] < 1000 ? (int)(mm[i] * 1000 + 0.5) : -1;
		if (um[0] >= l->low_um && um[1] >= l->low_um && um[0] <= l->high_um && um[1] <= l->high_um)
			return 0;
	}
	return error_set(e, -EINVAL, "%s is '%.40s': it must be two lengths from %.1f to %.1f mm, as 57 x 32",
	                 l->name, value, l->low_um / 1000.0, l->high_um / 1000.0);
}

static int set_labels(struct medium *m, const char *value, struct error *e)
{
	double n[2];
	if (read_pair(value, n) == 0)
		for (int i = 0; i < 2; i++)
			m->labels[i] = n[i] >= 1 && n[i] <= 40 && (double)(int)n[i] == n[i] ? (int)n[i] : 0;
	return m->labels[0] && m->labels[1]
	           ? 0
	           : error_set(e, -EINVAL, "labels is '%.40s': it must be how many across and down, as 3 x 8",
	                       value);
}

static int set_value(struct medium *m, const char *name, const char *value, struct error *e)
{
	for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++)
		if (strcmp(lengths[i].name, name) == 0)
			return set_length(m, &lengths[i], value, e);
	if (strcmp(name, "labels") == 0)
		return set_labels(m, value, e);
	if (strcmp(name, "shape") == 0) {
		m->rectangle = strcmp(value, "rectangle") == 0;
		return m->rectangle || strcmp(value, "square") == 0
		           ? 0
		           : error_set(e, -EINVAL, "shape is '%.40s': it must be square or rectangle", value);
	}
	if (strcmp(name, "dpi") != 0)
		return error_set(e, -EINVAL, "%.40s is no setting of a medium: leave it out", name);
	m->dpi = strcmp(value, "203") == 0 ? 203 : strcmp(value, "300") == 0 ? 300 : 600;
	return m->dpi != 600 || strcmp(value, "600") == 0
	           ? 0
	           : error_set(e, -EINVAL, "dpi is '%.40s': it must be 203, 300 or 600", value);
}

/* --- a medium as a whole --------------------------------------------------------------------------- */

static int check_sheet(const struct medium *m, struct error *e)
{
	if (!m->labels[0] || !m->step[0])
		return error_set(e, -EINVAL,
		                 "[medium %s]: a sheet needs sheet_mm, labels and step_mm: give them",
		                 m->name);
	for (int i = 0; i < 2; i++) {
		if (m->labels[i] > 1 && m->step[i] < m->label[i])
			return error_set(e, -EINVAL,
			                 "[medium %s]: its labels would lie on each other: step_mm must be "
			                 "label_mm or more",
			                 m->name);
		if (m->first[i] + (m->labels[i] - 1) * m->step[i] + m->label[i] > m->sheet[i])
			return error_set(e, -EINVAL,
			                 "[medium %s]: its last label would lie beyond the sheet: measure "
			                 "first_mm and step_mm",
			                 m->name);
	}
	return 0;
}

static int check_medium(const struct medium *m, struct error *e)
{
	if (!m->name[0])
		return 0;
	if (!m->dpi || !m->label[0])
		return error_set(e, -EINVAL, "[medium %s]: it needs dpi and label_mm: give them", m->name);
	if (m->label[0] < LABEL_LOW_UM || m->label[0] % 1000 || m->label[1] % 1000)
		return error_set(
		    e, -EINVAL, "[medium %s]: label_mm must be whole millimetres, at least 20 x 12", m->name);
	int sheet = m->sheet[0] || m->labels[0] || m->step[0] || m->first[0] || m->first[1];
	return !sheet        ? 0
	       : m->sheet[0] ? check_sheet(m, e)
	                     : error_set(e, -EINVAL, "[medium %s]: a sheet needs sheet_mm: give it", m->name);
}

static int end_medium(struct reading *r, struct error *e)
{
	int n = check_medium(&r->now, e);
	if (n == 0 && r->wanted && strcmp(r->wanted, r->now.name) == 0)
		r->found = r->now;
	return n;
}

static int begin_medium(struct reading *r, const char *section, struct error *e)
{
	const char *name = strncmp(section, "medium ", 7) == 0 ? section + 7 : "";
	int n = end_medium(r, e);
	r->now = (struct medium){0};
	if (n < 0)
		return n;
	if (!*name || strlen(name) >= NAME_MAX_BYTES ||
	    name_check("its name", name, NAME_MAX_BYTES - 1, e) < 0)
		return error_set(e, -EINVAL,
		                 "[%.60s]: each section is a medium, as [medium small]: name it so", section);
	memcpy(r->now.name, name, strlen(name) + 1);
	return 0;
}

static int take(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	struct reading *r = context;
	const char *now = strncmp(section, "medium ", 7) == 0 ? section + 7 : "";
	int n = !r->now.name[0] || strcmp(now, r->now.name) != 0 ? begin_medium(r, section, e) : 0;
	return n < 0 ? n : set_value(&r->now, name, value, e);
}

static int read_media(const char *folder, struct reading *r, struct error *e)
{
	char path[PATH_MAX];
	struct error why;
	snprintf(path, sizeof path, "%.3800s/" MEDIA_FILE, folder);
	int n = ini_read(path, take, r, e);
	if (n == 0 && (n = end_medium(r, &why)) < 0)
		error_set(e, n, "%.200s: %.280s", path, why.text);
	return n;
}

/* --- for others ------------------------------------------------------------------------------------ */

static json_t *medium_told(const struct medium *m)
{
	json_t *o =
	    json_pack("{s:i,s:s,s:{s:i,s:i}}", "dpi", m->dpi, "shape", m->rectangle ? "rectangle" : "square",
	              "label", "width_mm", m->label[0] / 1000, "height_mm", m->label[1] / 1000);
	if (m->sheet[0])
		json_object_set_new(o, "sheet",
		                    json_pack("{s:i,s:i,s:i,s:i,s:i,s:i,s:i,s:i}", "width_um", m->sheet[0],
		                              "height_um", m->sheet[1], "across", m->labels[0], "down",
		                              m->labels[1], "first_x_um", m->first[0], "first_y_um",
		                              m->first[1], "step_x_um", m->step[0], "step_y_um", m->step[1]));
	return o;
}

json_t *media_find(const char *folder, const char *name, struct error *e)
{
	struct reading r = {.wanted = name};
	int n = read_media(folder, &r, e);
	if (n < 0 && n != -ENOENT)
		return NULL;
	if (r.found.name[0])
		return medium_told(&r.found);
	error_set(e, -ENOENT,
	          "no labels were numbered: " MEDIA_FILE
	          " of the data folder has no [medium %.40s]: describe "
	          "what lies in the printer there",
	          name);
	return NULL;
}

int media_check(const char *folder, struct error *e)
{
	struct reading r = {0};
	int n = read_media(folder, &r, e);
	return n == -ENOENT || n == -ENOTDIR ? 0 : n;
}
