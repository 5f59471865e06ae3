/* Fuzzing what comes on a serial line: any bytes, as termios hands them over with PARMRK. The first byte says how the
 * scanner is set; behind it 0xfe and a byte is a silence of so many times 8 ms.
 *
 * Whatever comes: a code has at least one byte and lies between its prefix and its end, both of which are gone; one with a
 * damaged byte in it is none; and what is unfinished is over within a second.
 */
#include "drivers/serial-line.h"
#include "tests/fuzz/fuzz.h"

static const struct serial_line settings[] = {
    {.silence = false}, /* carriage return or line feed */
    {.silence = true},
    {.prefix = "\x02", .prefix_size = 1, .suffix = "\x03", .suffix_size = 1},
    {.suffix = "\r\n", .suffix_size = 2},
    {.prefix = "AB", .prefix_size = 2, .suffix = "CDCDCDCD", .suffix_size = SERIAL_AROUND_MAX},
    {.prefix = "ABABABAB", .prefix_size = SERIAL_AROUND_MAX, .silence = true},
};

static void take(enum serial_result what, struct serial_line *l, int damaged)
{
	if (what == SERIAL_NOTHING)
		return;
	must(l->size <= SERIAL_CODE_MAX, "more bytes than there is room for");
	must(what != SERIAL_CODE || l->size > 0, "a code without a byte");
	must(what != SERIAL_CODE || !damaged, "a code with a damaged byte in it");
	must(what != SERIAL_SKIPPED || l->size > 0, "nothing was skipped");
	serial_line_clear(l);
}

/* What was damaged is over at the next end or silence, as serial_line itself says by no longer skipping. */
static void hear(struct serial_line *l, const uint8_t *data, size_t size)
{
	int64_t now = 0;
	int damaged = 0;
	serial_line_begin(l, now);
	for (size_t i = 0; i < size; i++) {
		if (data[i] == 0xfe && i + 1 < size) {
			now += data[++i] * 8;
			take(serial_line_tick(l, now), l, damaged);
		} else {
			enum serial_result what = serial_line_byte(l, data[i], now);
			take(what, l, damaged);
			damaged =
			    what == SERIAL_ERROR || what == SERIAL_BREAK || what == SERIAL_LONG || damaged;
		}
		damaged = damaged && l->skipping;
	}
	take(serial_line_tick(l, now + 1000), l, damaged);
	must(serial_line_due_ms(l) < 0, "a code that waits for ever");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static struct serial_line l;
	if (!size)
		return 0;
	l = settings[data[0] % (sizeof settings / sizeof *settings)];
	hear(&l, data + 1, size - 1);
	return 0;
}
