/* Runs a libFuzzer entry without libFuzzer: every file of a folder, then each of them damaged in repeatable
 * ways.
 *
 *     fuzz-NAME FOLDER [ROUNDS]      ROUNDS damaged copies of each file, 2,000 unless said
 */
#include <dirent.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

#define ROOM 32768

static uint32_t next_random(uint32_t *state) /* xorshift32 */
{
	*state ^= *state << 13;
	*state ^= *state >> 17;
	*state ^= *state << 5;
	return *state;
}

/* Exactly as many bytes as there are, so that a read beyond them is seen by the sanitizer. */
static void run(const uint8_t *data, size_t size)
{
	uint8_t *copy = malloc(size ? size : 1);
	if (!copy)
		exit(1);
	memcpy(copy, data, size);
	LLVMFuzzerTestOneInput(copy, size);
	free(copy);
}

static size_t damage(uint8_t *data, size_t size, uint32_t *state)
{
	size_t at = size ? next_random(state) % size : 0;
	uint8_t byte = (uint8_t)next_random(state);
	switch (next_random(state) % 6) {
	case 0: /* another byte */
		if (size)
			data[at] = byte;
		return size;
	case 1: /* another printable byte */
		if (size)
			data[at] = (uint8_t)(0x20 + byte % 0x5f);
		return size;
	case 2: /* cut short */
		return at;
	case 3: /* one byte more */
		if (size == ROOM)
			return size;
		memmove(data + at + 1, data + at, size - at);
		data[at] = byte % 4 ? (uint8_t)('0' + byte % 10) : 0x1d;
		return size + 1;
	case 4: /* one byte less */
		if (!size)
			return 0;
		memmove(data + at, data + at + 1, size - at - 1);
		return size - 1;
	default: /* twice */
		if (size * 2 > ROOM)
			return size;
		memcpy(data + size, data, size);
		return size * 2;
	}
}

static long replay_file(const char *path, long rounds)
{
	static uint8_t whole[ROOM], bad[ROOM];
	FILE *f = fopen(path, "rb");
	if (!f)
		return 0;
	size_t size = fread(whole, 1, sizeof whole, f);
	fclose(f);
	uint32_t state = 2463534242u;
	run(whole, size);
	for (long i = 0; i < rounds; i++) {
		size_t n = size;
		memcpy(bad, whole, size);
		for (uint32_t k = 0; k <= next_random(&state) % 4; k++)
			n = damage(bad, n, &state);
		run(bad, n);
	}
	return 1;
}

int main(int argc, char **argv)
{
	long files = 0, rounds = argc > 2 ? atol(argv[2]) : 2000;
	DIR *folder = argc > 1 ? opendir(argv[1]) : NULL;
	if (!folder) {
		fprintf(stderr, "usage: %s FOLDER [ROUNDS]\n", argv[0]);
		return 2;
	}
	for (struct dirent *e; (e = readdir(folder));) {
		char path[4096];
		snprintf(path, sizeof path, "%s/%s", argv[1], e->d_name);
		if (e->d_name[0] != '.')
			files += replay_file(path, rounds);
	}
	closedir(folder);
	printf("%ld files, each as it is and damaged %ld times\n", files, rounds);
	return files ? 0 : 1;
}
