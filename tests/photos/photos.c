#include "photos.h"

#include <iconv.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/wire.h"

/* Texts of a picture that its manifest does not name, checked by eye. */
static const struct {
	const char *name, *text, *why;
} others[] = {
    {"ean13-2-", "9784872348880", "a book's jacket bears two codes side by side"},
    {"ean13-2-", "1920081045006", "the same jacket"},
    {"qrcode-2-16", "[\x8a\x4f\x91\xa4QR", "a QR code is printed within the ring of another"},
};

static bool is(const struct photo *p, const char *symbology)
{
	return strstr(p->family, symbology) != NULL;
}

/* Without what does not count. */
static size_t reduce(const struct photo *p, const char *in, size_t size, char *out)
{
	size_t n = 0;
	bool article = is(p, "ean13") || is(p, "upca");
	if (is(p, "code128") && size >= 3 && memcmp(in, "]C1", 3) == 0)
		in += 3, size -= 3;
	while (size > 0 && (in[size - 1] == '\n' || in[size - 1] == '\r'))
		size--;
	if (article && size == 12)
		out[n++] = '0';
	for (size_t i = 0; i < size; i++) {
		if (in[i] == 0x1d && (is(p, "code128") || is(p, "datamatrix")))
			continue;
		if (in[i] == ' ' && article)
			continue;
		out[n++] = in[i];
	}
	return n;
}

static bool same_in(const char *charset, const char *data, size_t size, const char *text, size_t text_size)
{
	char out[PHOTO_TEXT_MAX], *to = out, *from = (char *)(size_t)data;
	size_t room = sizeof out;
	iconv_t cd = iconv_open("UTF-8", charset);
	if (cd == (iconv_t)-1)
		return false;
	bool whole = iconv(cd, &from, &size, &to, &room) != (size_t)-1;
	iconv_close(cd);
	return whole && sizeof out - room == text_size && memcmp(out, text, text_size) == 0;
}

static bool expected(const struct photo *p, const char *data, size_t size)
{
	static const char *const charsets[] = {"ISO-8859-1", "CP932",  "BIG5",
	                                       "GB18030",    "EUC-JP", "UTF-16BE"};
	char a[PHOTO_TEXT_MAX], b[PHOTO_TEXT_MAX];
	if (size >= sizeof a || p->size >= sizeof b || is(p, "none"))
		return false;
	size_t na = reduce(p, data, size, a), nb = reduce(p, p->text, p->size, b);
	if (na == nb && memcmp(a, b, na) == 0)
		return true;
	for (size_t i = 0; (is(p, "qrcode") || is(p, "datamatrix")) && i < sizeof charsets / sizeof *charsets;
	     i++)
		if (same_in(charsets[i], a, na, b, nb))
			return true;
	return false;
}

static bool another_real_code(const struct photo *p, const char *data, size_t size)
{
	for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
		size_t n = strlen(others[i].text);
		if (strstr(p->name, others[i].name) && size >= n && memcmp(data, others[i].text, n) == 0)
			return true;
	}
	return false;
}

bool photo_take(struct photo *photo, const char *data, size_t size)
{
	if (!photo)
		return false;
	if (expected(photo, data, size))
		photo->right = true;
	else if (another_real_code(photo, data, size))
		photo->other++;
	else
		return photo->wrong = true, false;
	return true;
}

static int hex(char c)
{
	return c <= '9' ? c - '0' : (c | 32) - 'a' + 10;
}

static void add_row(struct photos *p, char *line)
{
	char *field[4] = {0}, *rest = line;
	for (int i = 0; i < 4 && rest; i++)
		field[i] = strsep(&rest, "\t\n");
	if (!field[2] || strcmp(field[0], "file") == 0)
		return;
	p->item = realloc(p->item, (p->count + 1) * sizeof *p->item);
	struct photo *one = &p->item[p->count++];
	*one = (struct photo){0};
	snprintf(one->path, sizeof one->path, "%s/%s", p->folder, field[0]);
	one->name = NULL;
	snprintf(one->family, sizeof one->family, "%s %s", field[1], field[2]);
	one->size = field[3] ? strlen(field[3]) / 2 : 0;
	one->text = malloc(one->size + 1);
	for (size_t i = 0; i < one->size; i++)
		one->text[i] = (char)(hex(field[3][2 * i]) << 4 | hex(field[3][2 * i + 1]));
	one->text[one->size] = '\0';
}

void photos_open(struct photos *p)
{
	char path[512], *line = NULL;
	size_t room = 0;
	const char *shared = getenv("BANDTALLY_SHARED"), *source = getenv("BANDTALLY_SOURCE");
	*p = (struct photos){0};
	snprintf(p->folder, sizeof p->folder, "%s/data/photos", shared ? shared : "");
	if (!shared)
		snprintf(p->folder, sizeof p->folder, "%s/../shared/data/photos", source ? source : ".");
	snprintf(path, sizeof path, "%s/manifest.tsv", p->folder);
	FILE *f = fopen(path, "r");
	if (!f) {
		printf("skipped: %s is not there; set BANDTALLY_SHARED to the folder that holds data/\n",
		       path);
		exit(SKIP);
	}
	while (getline(&line, &room, f) > 0)
		add_row(p, line);
	free(line);
	fclose(f);
	for (size_t i = 0; i < p->count; i++)
		p->item[i].name = strrchr(p->item[i].path, '/') + 1;
}

void photos_free(struct photos *p)
{
	for (size_t i = 0; i < p->count; i++)
		free(p->item[i].text);
	free(p->item);
}

void photos_clear(struct photos *p)
{
	for (size_t i = 0; i < p->count; i++) {
		p->item[i].right = p->item[i].wrong = false;
		p->item[i].other = 0;
	}
}

struct photo *photos_find(struct photos *p, const char *path)
{
	const char *name = strrchr(path, '/') ? strrchr(path, '/') + 1 : path;
	for (size_t i = 0; i < p->count; i++)
		if (strcmp(p->item[i].name, name) == 0)
			return &p->item[i];
	return NULL;
}

size_t photos_tally(const struct photos *p, struct tally out[FAMILIES_MAX])
{
	size_t n = 0;
	for (size_t i = 0; i < p->count; i++) {
		size_t k = 0;
		while (k < n && strcmp(out[k].family, p->item[i].family) != 0)
			k++;
		if (k == FAMILIES_MAX)
			continue;
		if (k == n) {
			out[n] = (struct tally){0};
			strcpy(out[n++].family, p->item[i].family);
		}
		out[k].pictures++;
		out[k].right += p->item[i].right;
		out[k].wrong += p->item[i].wrong;
	}
	return n;
}

/* Starts scan-camera on every second picture from `first` on. */
static FILE *start(const struct photos *p, const char *scan_camera, size_t first, pid_t *pid)
{
	int ends[2];
	if (pipe(ends) < 0)
		return NULL;
	fflush(stdout);
	*pid = fork();
	if (*pid == 0) {
		char **words = calloc(p->count + 3, sizeof *words);
		size_t n = 0;
		words[n++] = (char *)(size_t)scan_camera;
		words[n++] = (char *)(size_t) "--image";
		for (size_t i = first; i < p->count; i += 2)
			words[n++] = p->item[i].path;
		dup2(ends[1], STDOUT_FILENO);
		close(ends[0]);
		close(ends[1]);
		/* 'No code was read' is said for each such picture. */
		if (!freopen("/dev/null", "w", stderr))
			_exit(126);
		execv(scan_camera, words);
		_exit(127);
	}
	close(ends[1]);
	return fdopen(ends[0], "r");
}

static bool take_lines(struct photos *p, FILE *lines)
{
	char *line = NULL;
	size_t room = 0;
	ssize_t n;
	bool good = true;
	struct wire_line seen;
	struct error e;
	while ((n = getline(&line, &room, lines)) > 0) {
		if (wire_read_line(line, (size_t)n, &seen, &e) < 0) {
			printf("FAILED %s\n", e.text);
			good = false;
		} else if (seen.kind == WIRE_FAULT) {
			printf("FAILED fault %s: %s\n", seen.code, seen.text);
			good = false;
		} else if (seen.kind == WIRE_SCAN &&
		           !photo_take(photos_find(p, seen.file), seen.data, seen.data_size)) {
			printf("WRONG %s: %s %s\n", seen.file, seen.aim, seen.data);
		}
	}
	free(line);
	fclose(lines);
	return good;
}

bool photos_read(struct photos *p, const char *scan_camera)
{
	pid_t pid[2];
	FILE *lines[2] = {start(p, scan_camera, 0, &pid[0]), start(p, scan_camera, 1, &pid[1])};
	bool good = true;
	for (int i = 0; i < 2; i++) {
		int status = -1;
		good = lines[i] && take_lines(p, lines[i]) && good;
		waitpid(pid[i], &status, 0);
		if (status != 0)
			printf("FAILED scan-camera ended with status %x\n", (unsigned)status);
		good = good && status == 0;
	}
	return good;
}
