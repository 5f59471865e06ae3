#include "report/sample.h"

#include <stdlib.h>

/* A splitmix64 step: public domain, Vigna 2015. */
static uint64_t draw(uint64_t *state)
{
	uint64_t z = *state += 0x9e3779b97f4a7c15u;
	z = (z ^ z >> 30) * 0xbf58476d1ce4e5b9u;
	z = (z ^ z >> 27) * 0x94d049bb133111ebu;
	return z ^ z >> 31;
}

/* From 0 to n - 1, each as likely: what would favour the low ones is drawn again. */
static int32_t below(uint64_t *state, int32_t n)
{
	uint64_t part = UINT64_MAX / (uint64_t)n, z;
	do
		z = draw(state);
	while (z >= part * (uint64_t)n);
	return (int32_t)(z / part);
}

static int32_t *find(int32_t *list, int32_t count, int32_t number)
{
	int32_t i = 0;
	while (i < count && list[i] < number)
		i++;
	return list + i;
}

static void put(int32_t *list, int32_t count, int32_t *at, int32_t number)
{
	for (int32_t *p = list + count; p > at; p--)
		*p = p[-1];
	*at = number;
}

/* Floyd's algorithm (Bentley and Floyd, Communications of the ACM 30, 1987): no list of the population is needed. */
void sample_draw(uint64_t seed, int32_t population, int32_t count, int32_t *out)
{
	for (int32_t n = 0; n < count; n++) {
		int32_t last = population - count + n, number = below(&seed, last + 1),
		        *at = find(out, n, number);
		if (at < out + n && *at == number)
			at = find(out, n, number = last);
		put(out, n, at, number);
	}
}
