/* Chance from a seed, the same on every machine: xorshift64*. */
#ifndef BANDTALLY_TESTS_THEATRE_RANDOM_H
#define BANDTALLY_TESTS_THEATRE_RANDOM_H

#include <stdint.h>

struct chance {
	uint64_t state; /* never 0 */
};

/* The stream of run `run` of `seed`. */
static inline struct chance chance_of(uint64_t seed, uint64_t run)
{
	uint64_t x = seed * 0x9E3779B97F4A7C15u + run * 0xD1B54A32D192ED03u + 0x2545F4914F6CDD1Du;
	x ^= x >> 33;
	x *= 0xFF51AFD7ED558CCDu;
	x ^= x >> 33;
	return (struct chance){x ? x : 1};
}

static inline uint64_t draw(struct chance *c)
{
	c->state ^= c->state >> 12;
	c->state ^= c->state << 25;
	c->state ^= c->state >> 27;
	return (c->state * 0x2545F4914F6CDD1Du) >> 16;
}

static inline int one_of(struct chance *c, int n) /* 0..n-1 */
{
	return (int)(draw(c) % (uint64_t)n);
}

static inline int64_t between(struct chance *c, int64_t low, int64_t high) /* both included */
{
	return low + (int64_t)(draw(c) % (uint64_t)(high - low + 1));
}

static inline int in_hundred(struct chance *c, int percent) /* 1 as often */
{
	return one_of(c, 100) < percent;
}

#endif
