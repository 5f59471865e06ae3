/* A set of 128-bit keys, each with a value. */
#ifndef BANDTALLY_TESTS_STATES_KEYS_H
#define BANDTALLY_TESTS_STATES_KEYS_H

#include <stddef.h>
#include <stdint.h>

struct key {
	uint64_t a, b;
};

struct keys {
	struct key_slot {
		struct key key;
		uint32_t value;
	} * slots;
	size_t room, count;
};

/* The key's value; a new one where it is not there, with value 0 and *is_new set. Good until the next call. */
uint32_t *keys_at(struct keys *k, struct key key, int *is_new);
void keys_free(struct keys *k);

#endif
