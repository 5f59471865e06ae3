/* Fuzzing the settings: any bytes as station.ini, and as policy.ini. A fault names its file. */
#include <fcntl.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "run/settings.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(int holds, const char *what)
{
	if (holds)
		return;
	fprintf(stderr, "fuzz: %s\n", what);
	abort();
}

static char folder[64];

static void remove_folder(void)
{
	rmdir(folder);
}

static void try_as(const char *name, const uint8_t *data, size_t size)
{
	static struct station st;
	struct settings s;
	struct error e = {0};
	char path[128];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	int fd = open(path, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
	must(fd >= 0 && write(fd, data, size) == (ssize_t)size, "cannot write the file");
	close(fd);
	memset(&st, 0, sizeof st);
	if (settings_read(&s, &st, folder, &e) < 0) {
		must(strstr(e.text, name) && strstr(e.text, ": "),
		     "the fault is no sentence, or does not name its file");
	} else {
		must(st.n_rooms >= 1 && st.n_rooms <= ROOMS_MAX && s.n_drivers >= 0 &&
		         s.n_drivers <= DRIVERS_MAX,
		     "rooms");
		must(strlen(st.site) == 2 && st.policy.n_points <= POLICY_LIST_MAX, "the site or the policy");
	}
	station_deinit(&st);
	unlink(path);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	if (!folder[0]) {
		snprintf(folder, sizeof folder, "%s",
		         access("/dev/shm", W_OK) == 0 ? "/dev/shm/bandtally-XXXXXX"
		                                       : "/tmp/bandtally-XXXXXX");
		must(mkdtemp(folder) != NULL, "cannot make a folder");
		atexit(remove_folder);
	}
	try_as("station.ini", data, size);
	try_as("policy.ini", data, size);
	return 0;
}
