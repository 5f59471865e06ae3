#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/ini.h"
#include "base/settings-told.h"
#include "count/policy.h"
#include "tool/client.h"
#include "tool/fault.h"

struct reading {
	struct fault *fault;
	const char *file;
	char section[INI_LINE_MAX];
	int withheld; /* of this section, since its last line */
};

static const struct {
	const char *section, *key;
} policy[] = {
#define X(number, name, text, section, key, ...) {section, key},
    POLICY_NUMBERS(X)
#undef X
};

static enum setting_told told(const struct reading *r, const char *section, const char *key)
{
	if (strcmp(r->file, "policy") != 0)
		return setting_told(r->file, section, key);
	for (size_t i = 0; i < sizeof policy / sizeof *policy; i++)
		if (strcmp(policy[i].section, section) == 0 && strcmp(policy[i].key, key) == 0)
			return SETTING_NUMBER;
	return SETTING_UNKNOWN;
}

static void print_withheld(struct reading *r)
{
	if (r->withheld)
		buf_printf(&r->fault->out, "    further settings, withheld: %d\n", r->withheld);
	r->withheld = 0;
}

static int each(void *context, const char *section, const char *key, const char *value, struct error *e)
{
	struct reading *r = context;
	enum setting_told how = told(r, section, key);
	(void)e;
	if (strcmp(r->section, section) != 0) {
		print_withheld(r);
		snprintf(r->section, sizeof r->section, "%s", section);
		fault_masked(r->fault, "  section ", section);
	}
	if (how == SETTING_UNKNOWN)
		r->withheld++;
	else
		buf_printf(&r->fault->out, "    %s = %s\n", key,
		           how == SETTING_WITHHELD    ? "(withheld)"
		           : setting_fits(how, value) ? value
		                                      : "(not of its form)");
	return 0;
}

void fault_settings(struct fault *f)
{
	static const char *const files[] = {"station", "policy", "scanners", "labels"};
	char path[PATH_MAX];
	fault_title(f, "settings: sites, rooms, devices, addresses, paths and texts are withheld");
	for (size_t i = 0; i < sizeof files / sizeof *files; i++) {
		struct error e = {0};
		struct reading r = {.fault = f, .file = files[i]};
		snprintf(path, sizeof path, "%.3900s/%s.ini", client_folder, files[i]);
		buf_printf(&f->out, "%s.ini\n", files[i]);
		int n = ini_read(path, each, &r, &e);
		print_withheld(&r);
		if (n < 0)
			fault_masked(f, "  ", n == -ENOENT ? "is not there" : e.text);
	}
}
