#include "keys.h"

#include <stdlib.h>

static struct key_slot *slot_of(const struct keys *k, struct key key)
{
	size_t i = key.a & (k->room - 1);
	while ((k->slots[i].key.a | k->slots[i].key.b) &&
	       (k->slots[i].key.a != key.a || k->slots[i].key.b != key.b))
		i = (i + 1) & (k->room - 1);
	return &k->slots[i];
}

static void grow(struct keys *k)
{
	struct keys more = {.room = k->room ? k->room * 2 : 1 << 12, .count = k->count};
	more.slots = calloc(more.room, sizeof *more.slots);
	if (!more.slots)
		exit(1);
	for (size_t i = 0; i < k->room; i++)
		if (k->slots[i].key.a | k->slots[i].key.b)
			*slot_of(&more, k->slots[i].key) = k->slots[i];
	free(k->slots);
	*k = more;
}

uint32_t *keys_at(struct keys *k, struct key key, int *is_new)
{
	if (k->count * 2 >= k->room)
		grow(k);
	struct key_slot *slot = slot_of(k, key);
	*is_new = !(slot->key.a | slot->key.b);
	if (*is_new) {
		slot->key = key;
		k->count++;
	}
	return &slot->value;
}

void keys_free(struct keys *k)
{
	free(k->slots);
	*k = (struct keys){0};
}
