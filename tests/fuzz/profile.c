/* Fuzzing what is kept of a handheld: bytes that begin with a digit or '#' are a recording of key events, any others the
 * file of a profile.
 *
 * Whatever comes: a fault is a sentence; a profile that is taken can be told, written, and read back as the same; and the
 * times of a recording go up.
 */
#include <ctype.h>

#include "drivers/handheld-events.h"
#include "drivers/profile.h"
#include "tests/fuzz/folder.h"

static struct keymaps maps;

static void same_when_written(const struct profile *p)
{
	struct profile again;
	struct error e = {0};
	struct buf text = {0}, twice = {0};
	must(profile_write(p, &text) == 0, "a profile that cannot be written");
	must(profile_read(folder_write("again", text.data, text.size), &again, &e) == 0, e.text);
	must(profile_write(&again, &twice) == 0 && text.size == twice.size &&
	         memcmp(text.data, twice.data, text.size) == 0,
	     "a profile changes when it is written");
	buf_free(&text);
	buf_free(&twice);
}

static void read_profile(const uint8_t *data, size_t size)
{
	struct profile p;
	struct error e = {0};
	struct buf told = {0};
	if (profile_read(folder_write("profile", data, size), &p, &e) < 0) {
		must(strstr(e.text, ": ") != NULL, "the fault is no sentence");
		return;
	}
	must(p.layouts && p.layouts <= LAYOUT_ALL && p.end != TYPING_END_RAW,
	     "a profile that nothing could have");
	must(p.gap_ms >= PROFILE_GAP_MIN_MS && p.gap_ms <= PROFILE_GAP_MAX_MS, "a gap that no file may name");
	must(profile_undecided(&p, &maps, &told) >= 0 && profile_describe(&p, &told) == 0,
	     "no words for a profile");
	buf_free(&told);
	same_when_written(&p);
}

static void read_events(char *text)
{
	int64_t last = 0;
	for (char *save = NULL, *line = strtok_r(text, "\n", &save); line;
	     line = strtok_r(NULL, "\n", &save)) {
		struct key_event event;
		struct error e = {0};
		int n = key_event_read(line, last, &event, &e);
		must(n >= 0 || strstr(e.text, ": ") != NULL, "the fault is no sentence");
		if (n != KEY_EVENT_READ)
			continue;
		must(event.ms >= last, "a time that goes back");
		last = event.ms;
	}
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct error e = {0};
	if (!maps.of[0])
		must(keymaps_load(&maps, LAYOUT_ALL, &e) == 0, e.text);
	if (!size || (!isdigit(data[0]) && data[0] != '#')) {
		read_profile(data, size);
		return 0;
	}
	char *text = malloc(size + 1);
	must(text != NULL, "no memory");
	memcpy(text, data, size);
	text[size] = 0;
	read_events(text);
	free(text);
	return 0;
}
