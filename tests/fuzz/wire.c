/* Fuzzing the line of a driver: any bytes. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/wire.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(int holds, const char *what)
{
	if (holds)
		return;
	fprintf(stderr, "fuzz: %s\n", what);
	abort();
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static struct wire_line w;
	struct error e = {0};
	if (wire_read_line((const char *)data, size, &w, &e) < 0) {
		must(strstr(e.text, ": ") != NULL, "the fault is no sentence");
		return 0;
	}
	must(size <= WIRE_LINE_MAX, "a line that is too long was taken");
	if (w.kind != WIRE_SCAN)
		return 0;
	must(w.data_size > 0 && w.data_size < sizeof w.data && w.data[w.data_size] == 0,
	     "the data of a scan");
	must(!w.aim[0] || wire_aim_valid(w.aim), "the AIM identifier of a scan");
	must(w.ms >= -1, "the time of a scan");
	return 0;
}
