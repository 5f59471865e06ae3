#include "record/snapshot.h"

#include <errno.h>
#include <fcntl.h>
#include <inttypes.h>
#include <limits.h>
#include <link.h>
#include <sodium.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/log.h"
#include "record/store-internal.h"

#define SIZE_MAX_BYTES (64u << 20)
#define BUILD_BYTES 32
#define A_TURN (32u << 10) /* bytes that are hashed or written at once */
#define TURN_MS 5
#define SETTLE_MS 5000 /* in which the kernel writes by itself what a sync would have to wait for */

struct snapshot_head { /* no gaps: its bytes are what is signed */
	char magic[16];
	uint32_t fold, rooms_max; /* rooms_max: of the tests' smaller builds */
	uint8_t build[BUILD_BYTES];
	int64_t seq;
	struct chain chain;
	uint64_t size, annex; /* annex: of the bytes, those at the end that are another room's */
	uint8_t digest[crypto_hash_sha256_BYTES];
};
_Static_assert(sizeof(struct snapshot_head) ==
                   16 + 8 + BUILD_BYTES + 8 + CHAIN_BYTES + 16 + crypto_hash_sha256_BYTES,
               "a gap would be signed with whatever lies in it");

static const char magic[16] = "bt-snapshot\n";

/* --- which program this is ------------------------------------------------------------------------ */

static int note_of(struct dl_phdr_info *info, size_t size, void *context)
{
	(void)size;
	for (int i = 0; i < info->dlpi_phnum; i++) {
		const ElfW(Phdr) *p = &info->dlpi_phdr[i];
		if (p->p_type != PT_NOTE)
			continue;
		const char *at = (const char *)(info->dlpi_addr + p->p_vaddr), *end = at + p->p_memsz;
		while (at + sizeof(ElfW(Nhdr)) <= end) {
			const ElfW(Nhdr) *n = (const ElfW(Nhdr) *)(const void *)at;
			const char *name = at + sizeof *n, *id = name + ((n->n_namesz + 3u) & ~3u);
			if (n->n_type == NT_GNU_BUILD_ID && n->n_namesz == 4 && memcmp(name, "GNU", 4) == 0 &&
			    n->n_descsz <= BUILD_BYTES) {
				memcpy(context, id, n->n_descsz);
				return 1;
			}
			at = id + ((n->n_descsz + 3u) & ~3u);
		}
	}
	return 1; /* the program itself is the first, and no other is asked */
}

static void build_id(uint8_t out[BUILD_BYTES])
{
	memset(out, 0, BUILD_BYTES);
	dl_iterate_phdr(note_of, out);
}

/* --- writing -------------------------------------------------------------------------------------- */

struct snapshot_writer {
	const struct seal *seal;
	char path[PATH_MAX], new_path[PATH_MAX];
	struct snapshot_head head;
	struct buf state;
	crypto_hash_sha256_state hash;
	size_t hashed, written;
	int fd, begun, settled;
};

int snapshot_begin(struct snapshot_writer **out, const struct record *r, const struct seal *seal,
                   const char *folder, const struct station *st, const struct buf *annex)
{
	struct snapshot_writer *w = calloc(1, sizeof *w);
	if (!w)
		return -ENOMEM;
	w->fd = -1;
	w->seal = seal;
	memcpy(w->head.magic, magic, sizeof magic);
	w->head.fold = SNAPSHOT_FOLD;
	w->head.rooms_max = ROOMS_MAX;
	build_id(w->head.build);
	w->head.seq = record_last(r, &w->head.chain);
	snprintf(w->path, sizeof w->path, "%.4000s/" SNAPSHOT_FILE, folder);
	snprintf(w->new_path, sizeof w->new_path, "%.4000s/" SNAPSHOT_FILE ".new", folder);
	int n = snapshot_pack(st, &w->state);
	if (n == 0 && annex && annex->size)
		n = buf_add(&w->state, annex->data, annex->size);
	w->head.annex = annex ? annex->size : 0;
	if (n < 0) {
		snapshot_free(w);
		return n;
	}
	w->head.size = w->state.size;
	crypto_hash_sha256_init(&w->hash);
	*out = w;
	return 0;
}

static size_t a_turn_of(const struct snapshot_writer *w, size_t done)
{
	return w->state.size - done < A_TURN ? w->state.size - done : A_TURN;
}

static int write_all(int fd, const void *bytes, size_t size)
{
	for (const char *at = bytes; size;) {
		ssize_t n = write(fd, at, size);
		if (n < 0 && errno != EINTR)
			return -errno;
		at += n > 0 ? n : 0;
		size -= n > 0 ? (size_t)n : 0;
	}
	return 0;
}

static int write_head(struct snapshot_writer *w)
{
	uint8_t mac[SEAL_MAC_BYTES];
	crypto_hash_sha256_final(&w->hash, w->head.digest);
	seal_mac(w->seal, "snapshot", &w->head, sizeof w->head, mac);
	w->begun = 1;
	w->fd = open(w->new_path, O_WRONLY | O_CREAT | O_TRUNC | O_NOFOLLOW | O_CLOEXEC, 0600);
	int n = w->fd < 0 ? -errno : write_all(w->fd, &w->head, sizeof w->head);
	return n < 0 ? n : write_all(w->fd, mac, sizeof mac);
}

static int put_in_place(struct snapshot_writer *w)
{
	if (fdatasync(w->fd) < 0 || rename(w->new_path, w->path) < 0)
		return -errno;
	return 0;
}

int snapshot_step(struct snapshot_writer *w)
{
	size_t part;
	int n = 0;
	if ((part = a_turn_of(w, w->hashed))) {
		crypto_hash_sha256_update(&w->hash, (const unsigned char *)w->state.data + w->hashed, part);
		w->hashed += part;
	} else if (!w->begun) {
		n = write_head(w);
	} else if ((part = a_turn_of(w, w->written))) {
		n = write_all(w->fd, w->state.data + w->written, part);
		w->written += part;
	} else if (!w->settled) {
		w->settled = 1;
		buf_free(&w->state);
		w->hashed = w->written = 0;
		sync_file_range(w->fd, 0, 0, SYNC_FILE_RANGE_WRITE);
		return SETTLE_MS;
	} else {
		return put_in_place(w);
	}
	return n < 0 ? n : TURN_MS;
}

void snapshot_free(struct snapshot_writer *w)
{
	if (!w)
		return;
	if (w->fd >= 0)
		close(w->fd);
	buf_free(&w->state);
	free(w);
}

/* --- reading -------------------------------------------------------------------------------------- */

/* Why this file is not for this start, or NULL. */
static const char *head_fault(const struct snapshot_head *h, const uint8_t mac[SEAL_MAC_BYTES],
                              const struct seal *seal)
{
	uint8_t ours[SEAL_MAC_BYTES], build[BUILD_BYTES], none[BUILD_BYTES] = {0};
	seal_mac(seal, "snapshot", h, sizeof *h, ours);
	build_id(build);
	if (memcmp(h->magic, magic, sizeof magic) != 0 || sodium_memcmp(mac, ours, sizeof ours) != 0)
		return "it is not signed by this station's key";
	if (h->fold != SNAPSHOT_FOLD || h->rooms_max != ROOMS_MAX ||
	    memcmp(h->build, build, sizeof build) != 0 || memcmp(build, none, sizeof none) == 0)
		return "it is of another version";
	return h->size > SIZE_MAX_BYTES || h->annex > h->size ? "it is too long" : NULL;
}

/* 1 where the record has this event with this hash. */
static int record_has(struct record *r, int64_t seq, const struct chain *chain)
{
	sqlite3_stmt *s = NULL;
	int has = 0;
	if (store_prepare(r, &s, "SELECT hash FROM event WHERE seq = ?", NULL) < 0)
		return 0;
	sqlite3_bind_int64(s, 1, seq);
	if (sqlite3_step(s) == SQLITE_ROW && sqlite3_column_bytes(s, 0) == CHAIN_BYTES)
		has = memcmp(sqlite3_column_blob(s, 0), chain->hash, CHAIN_BYTES) == 0;
	sqlite3_finalize(s);
	return has;
}

static ssize_t read_all(int fd, void *bytes, size_t size)
{
	size_t done = 0;
	ssize_t n = 1;
	while (done < size && n != 0) {
		n = read(fd, (char *)bytes + done, size - done);
		if (n < 0 && errno != EINTR)
			return -errno;
		done += n > 0 ? (size_t)n : 0;
	}
	return (ssize_t)done;
}

/* What stands behind the head. NULL and why where it is not what the head says. */
static char *read_state(int fd, const struct snapshot_head *h, const char **why)
{
	uint8_t digest[crypto_hash_sha256_BYTES];
	char *state = malloc(h->size + 1);
	*why = "there is no memory for it";
	if (!state)
		return NULL;
	*why = "its state is not the one that was signed";
	if (read_all(fd, state, h->size + 1) == (ssize_t)h->size) {
		crypto_hash_sha256(digest, (const unsigned char *)state, h->size);
		if (memcmp(digest, h->digest, sizeof digest) == 0)
			return state;
	}
	free(state);
	return NULL;
}

/* NULL where `st` has it. */
static const char *take(int fd, struct record *r, const struct seal *seal, struct station *st,
                        struct buf *annex, int64_t *seq)
{
	struct snapshot_head h;
	uint8_t mac[SEAL_MAC_BYTES];
	const char *why;
	if (read_all(fd, &h, sizeof h) != (ssize_t)sizeof h ||
	    read_all(fd, mac, sizeof mac) != (ssize_t)sizeof mac)
		return "it is too short";
	if ((why = head_fault(&h, mac, seal)))
		return why;
	if (!record_has(r, h.seq, &h.chain))
		return "the record does not have its event";
	char *state = read_state(fd, &h, &why);
	if (!state)
		return why;
	size_t own = h.size - h.annex;
	int n = annex && h.annex ? buf_add(annex, state + own, h.annex) : 0;
	if (n == 0)
		n = snapshot_unpack(st, state, own);
	free(state);
	*seq = h.seq;
	return n == 0 ? NULL : n == -ESTALE ? "the rooms are others" : strerror(-n);
}

static int look(struct record *r, const struct seal *seal, const char *path, struct station *st,
                struct buf *annex, int64_t *seq, const char **why)
{
	int fd = open(path, O_RDONLY | O_NOFOLLOW | O_CLOEXEC);
	*why = NULL;
	if (fd < 0 && errno == ENOENT)
		return SNAPSHOT_TAKEN_NOT;
	*why = fd < 0 ? strerror(errno) : take(fd, r, seal, st, annex, seq);
	if (fd >= 0)
		close(fd);
	return *why ? SNAPSHOT_TAKEN_NOT : SNAPSHOT_TAKEN;
}

int snapshot_load(struct record *r, const struct seal *seal, const char *folder, struct station *st,
                  struct buf *annex, int64_t *seq)
{
	char path[PATH_MAX];
	const char *why;
	snprintf(path, sizeof path, "%.4000s/" SNAPSHOT_FILE, folder);
	int taken = look(r, seal, path, st, annex, seq, &why);
	if (why) {
		log_warn(LOG_SNAPSHOT,
		         "the snapshot is thrown away, and the record read from its beginning: %s", why);
		unlink(path);
	}
	return taken;
}

int snapshot_look(struct record *r, const struct seal *seal, const char *folder, struct station *st,
                  int64_t *seq)
{
	char path[PATH_MAX];
	const char *why;
	snprintf(path, sizeof path, "%.4000s/" SNAPSHOT_FILE, folder);
	return look(r, seal, path, st, NULL, seq, &why);
}
