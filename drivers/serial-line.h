/* Where a code begins and ends in the bytes of a serial line. Pure: times are arguments.
 *
 * The line is read with PARMRK (termios(3)): a byte that came with a framing or parity error is 0xff 0x00 and
 * the byte, a break 0xff 0x00 0x00, and a real 0xff comes twice. A code with such a byte in it is thrown away
 * whole.
 */
#ifndef BANDTALLY_DRIVERS_SERIAL_LINE_H
#define BANDTALLY_DRIVERS_SERIAL_LINE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define SERIAL_CODE_MAX 4200      /* longer than a driver's line can carry */
#define SERIAL_AROUND_MAX 8       /* bytes of a prefix or suffix */
#define SERIAL_UNFINISHED_MS 1000 /* a code whose end has not come by then is a partial one */
#define SERIAL_SILENCE_MS 100     /* ends a code where the scanner sends no end */
#define SERIAL_SETTLE_MS 250      /* silence before bytes are believed, after opening and after an error */

enum serial_result {
	SERIAL_NOTHING,
	SERIAL_CODE,    /* `code` of `size` bytes, without prefix and suffix */
	SERIAL_PARTIAL, /* `size` bytes came without their end */
	SERIAL_SKIPPED, /* `size` bytes came before the line was quiet for the first time */
	SERIAL_ERROR,   /* a byte with a framing or parity error: the code is being thrown away */
	SERIAL_BREAK,   /* the line was broken (unplugged at the scanner's end, or a wrong speed) */
	SERIAL_LONG,    /* more bytes than any code that can be sent */
	SERIAL_BARE,    /* a code without the prefix that this scanner sends: it may be cut */
};

struct serial_line {
	char prefix[SERIAL_AROUND_MAX + 1], suffix[SERIAL_AROUND_MAX + 1];
	size_t prefix_size, suffix_size; /* suffix 0: carriage return or line feed */
	bool silence;                    /* no suffix: silence ends a code */

	char code[SERIAL_CODE_MAX + 1];
	size_t size;
	int64_t last_ms; /* of the last byte */
	int marked;      /* how much of a PARMRK sequence was seen */
	bool skipping, opening;
};

/* The settings must be filled in; begins to listen at `now_ms`. */
void serial_line_begin(struct serial_line *l, int64_t now_ms);

/* The next byte. With anything but SERIAL_NOTHING, look at `code` and `size`, then call serial_line_clear().
 */
enum serial_result serial_line_byte(struct serial_line *l, unsigned char byte, int64_t at_ms);

/* The time is `now_ms`: CODE, PARTIAL, SKIPPED or NOTHING. */
enum serial_result serial_line_tick(struct serial_line *l, int64_t now_ms);
int64_t serial_line_due_ms(const struct serial_line *l); /* when to call it, -1 never */

void serial_line_clear(struct serial_line *l);

#endif
