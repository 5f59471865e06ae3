/* Fuzzing bandtally-print, the daemon's end of its pipe: bytes that begin with {"v" are lines to `--serve`, any others the
 * document of one job. Nothing is written and no printer is asked: both are told here to have done as they were asked, and
 * a printer has a sheet of another size in it. Time passes only where the program waits, by as much.
 *
 * Whatever comes: each line that is said is JSON, of a job in one of its states or a picture or a fault, with a sentence where
 * something is wrong; what is to be printed is a whole PDF; and the program ends with its input.
 */
#include <poll.h>
#include <sys/mman.h>

#include "base/clock.h"
#include "base/json.h"
#include "labels/canvas.h"
#include "labels/send.h"
#include "labels/serve.h"
#include "tests/fuzz/fuzz.h"

#define INPUT_MAX 32768
#define WAITS_MAX 10000

static int64_t now_ms;
static int waits;

int __wrap_poll(struct pollfd *fds, nfds_t count, int ms);
int __real_poll(struct pollfd *fds, nfds_t count, int ms);
int __wrap_poll(struct pollfd *fds, nfds_t count, int ms)
{
	now_ms += ms > 0 ? ms : 0;
	must(++waits < WAITS_MAX, "it does not end with its input");
	return __real_poll(fds, count, 0);
}

struct instant __wrap_clock_now(void);
struct instant __wrap_clock_now(void)
{
	return (struct instant){.boot_ms = now_ms, .wall_ms = now_ms};
}

static void is_whole(const struct buf *pdf)
{
	must(pdf->size > 64 && memcmp(pdf->data, "%PDF-", 5) == 0 &&
	         memmem(pdf->data + pdf->size - 16, 16, "%%EOF", 5) != NULL,
	     "no whole PDF");
}

void __wrap_job_write(struct job *j, const char *path);
void __wrap_job_write(struct job *j, const char *path)
{
	is_whole(&j->pdf);
	must(*path, "a file without a name");
	j->state = JOB_WRITTEN;
	snprintf(j->text, sizeof j->text, "%.80s: written", j->title);
}

/* Waits once, then prints. */
bool __wrap_job_step(struct job *j);
bool __wrap_job_step(struct job *j)
{
	static const char *const sheets[] = {"na_letter_8.5x11in", "iso_a6_105x148mm", "oe_photo-l_3.5x5in",
	                                     "custom_x_1x1mm"};
	is_whole(&j->pdf);
	must(j->pages > 0, "no page");
	if (j->state == JOB_NEW && !j->unwanted) {
		job_lay_on(j, sheets[j->cups % 4]);
		is_whole(&j->pdf);
	}
	j->state = j->unwanted ? JOB_WITHDRAWN : j->state == JOB_NEW ? JOB_WAITING : JOB_DONE;
	j->why = j->state == JOB_WAITING ? SAY_PRINTER_NOT_READ : SAY_NONE;
	snprintf(j->text, sizeof j->text, "%.80s: as it is", j->title);
	return true;
}

static void look_at_line(const char *line, size_t size)
{
	static const char *const states[] = {"written", "sent", "waiting", "done", "failed", "withdrawn"};
	struct error e = {0};
	_cleanup_(json_drop) json_t *o = json_read(line, size, &e);
	const json_t *job = json_object_get(o, "job"), *picture = json_object_get(o, "picture"),
	             *fault = json_object_get(o, "fault");
	int known = 0;
	must(json_is_object(o) && json_object_size(o) == 2 && (job || picture || fault),
	     "a line that is none");
	for (size_t i = 0; i < sizeof states / sizeof *states; i++)
		known |= strcmp(states[i], json_text(job, "state")) == 0;
	must(!job || (known && json_is_integer(json_object_get(job, "id"))), "a job without its state");
	must(!job || strcmp(json_text(job, "state"), "failed") != 0 || strstr(json_text(job, "text"), ": "),
	     "a job fails without a sentence");
	must(!fault || strstr(json_text(fault, "text"), ": "), "a fault without a sentence");
	must(!picture || json_is_array(json_object_get(picture, "pictures")) || *json_text(picture, "fault"),
	     "neither a picture nor why not");
}

static void look_at_all(int out)
{
	size_t size = (size_t)lseek(out, 0, SEEK_END);
	char *text = malloc(size + 1), *end;
	must(text && pread(out, text, size, 0) == (ssize_t)size, "no memory");
	for (char *line = text; line < text + size; line = end + 1) {
		end = memchr(line, '\n', (size_t)(text + size - line));
		must(end != NULL, "half a line");
		look_at_line(line, (size_t)(end - line));
	}
	free(text);
}

static int file_of(const char *before, const uint8_t *data, size_t size, const char *behind)
{
	int fd = memfd_create("lines", MFD_CLOEXEC);
	must(fd >= 0 && write(fd, before, strlen(before)) >= 0 && write(fd, data, size) == (ssize_t)size &&
	         write(fd, behind, strlen(behind)) >= 0 && lseek(fd, 0, SEEK_SET) == 0,
	     "no memory");
	return fd;
}

/* A document may stand on lines of its own; a job may not. */
static int file_of_document(const uint8_t *data, size_t size)
{
	static uint8_t flat[INPUT_MAX];
	for (size_t i = 0; i < size; i++)
		flat[i] = data[i] == '\n' ? ' ' : data[i];
	return file_of("{\"v\":1,\"job\":{\"id\":7,\"to\":{\"printer\":\"slips\"},\"document\":", flat, size,
	               "}}\n");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static int opened;
	struct error e = {0};
	if (size > INPUT_MAX)
		return 0;
	if (!opened++)
		must(fonts_open(&e) == 0, e.text);
	now_ms = 1000;
	waits = 0;
	int lines = size >= 4 && memcmp(data, "{\"v\"", 4) == 0;
	int in = lines ? file_of("", data, size, "\n") : file_of_document(data, size);
	int out = memfd_create("said", MFD_CLOEXEC);
	must(serve(in, out, NULL) == 0, "it did not end in order");
	look_at_all(out);
	close(in);
	close(out);
	return 0;
}
