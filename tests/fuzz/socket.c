/* Fuzzing the socket with its states: each line of the bytes is a request to a whole station (station-rig.h); what the
 * lines store, the next lines meet.
 */
#include "tests/fuzz/fuzz.h"
#include "tests/fuzz/station-rig.h"

#define INPUT_MAX 8192

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static const struct rig_parts parts = {
	    .settings = "[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n"};
	if (size <= INPUT_MAX)
		rig_run(&parts, rig_ask, (const char *)data, size);
	return 0;
}
