#include "base/pem.h"

#include <errno.h>
#include <fcntl.h>
#include <stdbool.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/file.h"

static const struct {
	const char *word;
	size_t
	    most; /* bytes; together they go on one line to the board (board/feed.h), where some take two */
} files_known[PEM_COUNT] = {
    [PEM_CERTIFICATE] = {"certificate", 16 << 10},
    [PEM_KEY] = {"key", 16 << 10},
    [PEM_CLIENTS] = {"clients", 64 << 10},
    [PEM_REVOKED] = {"revoked", 128 << 10},
};

const char *pem_word(enum pem which)
{
	return files_known[which].word;
}

/* The library would tell "no such file" and "not allowed" alike. */
static int may_read(const char *what, const char *file, bool secret, struct error *e)
{
	struct stat st;
	int fd = open(file, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
	if (fd < 0)
		return error_set(e, -errno, PEM_WHERE "%s %s: %s: let the station's user read it" PEM_MEND,
		                 what, file, strerror(errno));
	int r = fstat(fd, &st) < 0 ? -errno : 0;
	close(fd);
	if (r < 0 || !S_ISREG(st.st_mode))
		return error_set(e, r < 0 ? r : -EINVAL, PEM_WHERE "%s %s: it is no file: name one" PEM_MEND,
		                 what, file);
	if (secret && st.st_mode & (S_IROTH | S_IWOTH))
		return error_set(
		    e, -EPERM,
		    PEM_WHERE
		    "%s %s: every user can read or change it: close it with 'chmod o= %s', and have "
		    "another made if it stood open to others",
		    what, file, file);
	return 0;
}

static bool is_text(const struct buf *b)
{
	for (size_t i = 0; i < b->size; i++)
		if ((b->data[i] < ' ' || b->data[i] > '~') && !strchr("\t\r\n", b->data[i]))
			return false;
	return b->size > 0;
}

static int read_one(enum pem which, const char *file, struct buf *text, struct error *e)
{
	const char *what = files_known[which].word;
	int r = may_read(what, file, which == PEM_KEY, e);
	if (r < 0)
		return r;
	r = file_read(file, text);
	if (r == 0 && text->size > files_known[which].most)
		r = -EFBIG;
	if (r < 0)
		return error_set(e, r, PEM_WHERE "%s %s: %s: at most %zu bytes are taken" PEM_MEND, what,
		                 file, strerror(-r), files_known[which].most);
	if (!is_text(text))
		return error_set(e, -EINVAL, PEM_WHERE "%s %s: it is no text: give a PEM file" PEM_MEND, what,
		                 file);
	return 0;
}

int pem_read(struct pem_files *f, struct error *e)
{
	int r = 0;
	pem_forget(f);
	for (int i = 0; i < PEM_COUNT && r == 0; i++)
		if (f->path[i])
			r = read_one((enum pem)i, f->path[i], &f->text[i], e);
	return r;
}

void pem_forget(struct pem_files *f)
{
	for (int i = 0; i < PEM_COUNT; i++) {
		if (f->text[i].data)
			explicit_bzero(f->text[i].data, f->text[i].room);
		buf_free(&f->text[i]);
	}
}
