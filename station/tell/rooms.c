#include "tell/rooms.h"

#include <stdio.h>

#include "code/own-codes.h"

static size_t say_digits(const struct sheet *s, struct moment now, char *out, size_t size)
{
	size_t used = 0;
	for (int i = 0; i < s->n_digits && used < size; i++) {
		char minutes[80];
		if (!digit_runs(&s->digits[i]))
			continue;
		digit_minutes_text(&s->digits[i], now, minutes, sizeof minutes);
		used += (size_t)snprintf(out + used, size - used, ", tourniquet on the %s, %s",
		                         own_digit_name(s->digits[i].number), minutes);
	}
	return used;
}

int rooms_gone_words(const struct station *st, int from, struct moment now, char *out, size_t size)
{
	char digits[300];
	out[0] = 0;
	for (int i = from; i < SHEETS_MAX; i++) {
		const struct sheet *s = &st->sheets[i];
		if (!s->case_no || station_room(st, s->room))
			continue;
		digits[0] = 0;
		say_digits(s, now, digits, sizeof digits);
		snprintf(out, size,
		         "Room %d (not in station.ini): case %d%.250s: count by hand there, and put the room "
		         "back into "
		         "station.ini",
		         (int)s->room, (int)s->case_no, digits);
		return i + 1;
	}
	return 0;
}
