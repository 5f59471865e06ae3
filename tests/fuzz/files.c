/* Fuzzing the files that people keep. The first letter says which one the rest is: s everybody who has a badge, and c a
 * catalogue, each beside the ones that are there; d scanners.ini; l labels.ini; e a settings file in which a value is set.
 *
 * Whatever comes: a fault is a sentence. What a list would change can be stored, and the list that is then there is the
 * file's. Of an edited file each line but the one that was set is as it was.
 */
#include "base/ini-edit.h"
#include "base/ini.h"
#include "base/scanners.h"
#include "count/catalogue-import.h"
#include "count/staff-file.h"
#include "run/media.h"
#include "tests/fuzz/folder.h"

static void is_sentence(const struct error *e)
{
	must(strstr(e->text, ": ") != NULL, "the fault is no sentence");
}

/* --- lists --- */

static void read_staff(const char *text, size_t size)
{
	static const struct person people[] = {{.number = 1, .name = "SCRUB-1", .kind = 1, .registered = 1},
	                                       {.number = 2, .name = "CIRC-2", .kind = 1},
	                                       {.number = 3, .name = "SURGEON-3", .kind = 2, .withdrawn = 1}};
	struct staff there = {0};
	struct staff_import im = {0};
	struct error e = {0};
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		must(staff_set(&there, &people[i]) == 0, "no memory");
	if (staff_import_init(&im, &there, text, size, &e) < 0) {
		is_sentence(&e);
		staff_deinit(&there);
		return;
	}
	must(im.n_events <= im.n_changes, "more events than changes");
	for (size_t i = 0; i < im.n_events; i++) {
		const struct event *ev = &im.events[i];
		int32_t number = ev->kind == EV_STAFF_SET ? ev->staff.number : ev->person;
		must(number >= 1 && number <= 999999, "a badge that nobody could have");
	}
	staff_import_deinit(&im);
	staff_deinit(&there);
}

static void read_catalogue(const char *text, size_t size)
{
	static const char known[] = "key,name,role,codes,marked,visible,contents\n"
	                            "BAND,green M,tourniquet,09506000134352,yes,yes,\n"
	                            "CLAMP,mosquito,forceps,,no,no,\n"
	                            "TRAY,digit tray,tray,,no,no,CLAMP*2\n";
	struct catalogue there = {0};
	struct catalogue_import im = {0};
	struct error e = {0};
	must(catalogue_read_csv(known, sizeof known - 1, &there.lines, &there.count, &e) == 0, e.text);
	there.room = there.count;
	int n = catalogue_import_init(&im, &there, text + 1, size - 1, text[0] & 1, &e);
	must(n == 0 || strstr(e.text, ": ") != NULL, "the fault is no sentence");
	for (size_t i = 0; n == 0 && i < im.n_changes; i++) {
		const struct line_change *c = &im.changes[i];
		must(c->was || c->is, "a change of nothing");
		must(c->kind != LINE_CHANGED || c->columns, "a change in no column");
	}
	if (n == 0)
		catalogue_import_deinit(&im);
	catalogue_deinit(&there);
}

/* --- settings --- */

static void read_scanners(const char *text, size_t size)
{
	static struct scanners all;
	static const struct scanner_device device = {.subsystem = "input",
	                                             .node = "/dev/input/event7",
	                                             .vendor = "1209",
	                                             .product = "b0c0",
	                                             .serial = "SN0001",
	                                             .path = "pci-0000:00:14.0-usb-0:1.2:1.0",
	                                             .has_keys = "1",
	                                             .tag = "",
	                                             .room = ""};
	struct scanner_found found;
	struct error e = {0}, why = {0};
	if (scanners_read(folder_write("scanners.ini", text, size), &all, &e) < 0) {
		is_sentence(&e);
		return;
	}
	must(all.count >= 0 && all.count <= SCANNERS_MAX, "more scanners than there is room for");
	switch (scanners_decide(&all, &device, &found, &why)) {
	case SCANNER_NO:
		break;
	case SCANNER_YES:
		must(found.room >= 1 && found.room <= 99 && found.name[0], "a scanner of no room");
		break;
	case SCANNER_TELL:
		is_sentence(&why);
		break;
	}
}

static void read_labels(const char *text, size_t size)
{
	struct error e = {0};
	folder_write(MEDIA_FILE, text, size);
	_cleanup_(json_drop) json_t *small = media_find(folder, "small", &e);
	if (!small)
		is_sentence(&e);
	struct error all = {0};
	if (media_check(folder, &all) < 0)
		is_sentence(&all);
}

struct wanted {
	int times, others;
};

static int look(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	struct wanted *w = context;
	(void)e;
	if (strcmp(section, "room 2") != 0 || strcmp(name, "name") != 0)
		w->others++;
	else if (strcmp(value, "Theatre 2") == 0)
		w->times++;
	return 0;
}

static void edit(const char *text, size_t size)
{
	struct wanted before = {0}, after = {0}, gone = {0};
	struct error e = {0};
	struct buf file = {0};
	if (ini_read(folder_write("station.ini", text, size), look, &before, &e) < 0)
		return;
	must(buf_add(&file, text, size) == 0 && ini_put(&file, "room 2", "name", "Theatre 2") == 0,
	     "no memory");
	must(ini_read(folder_write("station.ini", file.data, file.size), look, &after, &e) == 0, e.text);
	must(after.times == 1, "the value that was set is not the one that is read");
	must(after.others == before.others, "another value was changed");
	ini_drop(&file, "room 2", "name");
	must(ini_read(folder_write("station.ini", file.data, file.size), look, &gone, &e) == 0, e.text);
	must(gone.times == 0 && gone.others == before.others,
	     "the value was not taken out, or another one was");
	buf_free(&file);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static const struct {
		char letter;
		void (*read)(const char *text, size_t size);
	} kinds[] = {
	    {'s', read_staff}, {'c', read_catalogue}, {'d', read_scanners}, {'l', read_labels}, {'e', edit}};
	for (size_t i = 0; size > 1 && i < sizeof kinds / sizeof *kinds; i++)
		if (data[0] == kinds[i].letter)
			kinds[i].read((const char *)data + 1, size - 1);
	return 0;
}
