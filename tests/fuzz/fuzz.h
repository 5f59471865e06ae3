/* What the targets share. Each target's own head says what must hold, whatever the bytes. */
#ifndef BANDTALLY_TESTS_FUZZ_FUZZ_H
#define BANDTALLY_TESTS_FUZZ_FUZZ_H

#include <fcntl.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static int fuzz_told = 2; /* where the target's own words go, whatever stderr is now */

static inline void must(int holds, const char *what)
{
	if (holds)
		return;
	dprintf(fuzz_told, "fuzz: %s\n", what);
	abort();
}

/* What is logged from here on is not for this terminal; until fuzz_aloud(). */
static inline void fuzz_quiet(void)
{
	static int nowhere = -1;
	if (nowhere < 0) {
		nowhere = open("/dev/null", O_WRONLY | O_CLOEXEC);
		fuzz_told = fcntl(2, F_DUPFD_CLOEXEC, 3);
	}
	dup2(nowhere, 2);
}

static inline void fuzz_aloud(void)
{
	dup2(fuzz_told, 2);
}

#endif
