/* How well and how fast the camera reads, beside the decoders alone in the same run.
 *
 *   bench-photos [--json]
 *
 * Photographs: right and wrong texts of scan-camera and of zbarimg on the same files, family by family.
 * Frame: one 1280x720 frame without a symbol, all symbologies on, as the driver looks at it, on one core; the
 * reference is one plain libzbar scan of the same frame.
 */
#include <fcntl.h>
#include <jansson.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <time.h>
#include <unistd.h>
#include <zbar.h>

#include "base/buf.h"
#include "base/error.h"
#include "drivers/eyes.h"
#include "drivers/picture.h"
#include "photos.h"

#define FRAME_GOAL_MS 33.0
#define ROUNDS 112 /* each of 56 photographs twice, as an even and as an odd frame */

static json_t *results;

static void result(const char *name, double value, const char *unit, double reference, double goal, bool met)
{
	double ratio = reference > 0 ? value / reference : 0;
	json_array_append_new(results, json_pack("{s:s,s:f,s:s,s:f,s:f,s:f,s:b}", "name", name, "value",
	                                         value, "unit", unit, "reference", reference, "ratio", ratio,
	                                         "goal", goal, "met", met));
}

/* The text of a line "CODE-128:text" of zbarimg, or NULL where the line goes on with the text before. */
static char *begins_code(char *line)
{
	static const char *const names[] = {
	    "EAN-13:",   "EAN-8:",       "UPC-A:",   "UPC-E:",  "ISBN-10:", "ISBN-13:",
	    "CODE-128:", "CODE-39:",     "CODE-93:", "I2/5:",   "Codabar:", "QR-Code:",
	    "DataBar:",  "DataBar-Exp:", "PDF417:",  "SQ-Code:"};
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (strncmp(line, names[i], strlen(names[i])) == 0)
			return line + strlen(names[i]);
	return NULL;
}

static void read_with_zbarimg(struct photos *p)
{
	char command[1200], *line = NULL;
	size_t room = 0;
	for (size_t i = 0; i < p->count; i++) {
		_cleanup_(buf_free) struct buf text = {0};
		snprintf(command, sizeof command, "exec zbarimg --quiet '%s' 2>/dev/null", p->item[i].path);
		FILE *f = popen(command, "r");
		ssize_t n;
		while (f && (n = getline(&line, &room, f)) > 0) {
			char *start = begins_code(line);
			if (start && text.size)
				photo_take(&p->item[i], text.data, text.size);
			if (start)
				buf_clear(&text);
			else
				start = line;
			buf_add(&text, start, (size_t)(line + n - start));
		}
		if (text.size)
			photo_take(&p->item[i], text.data, text.size);
		if (f)
			pclose(f);
	}
	free(line);
}

static void compare_photos(bool print)
{
	struct photos p;
	struct tally ours[FAMILIES_MAX], theirs[FAMILIES_MAX];
	char camera[512], name[64];
	const char *bin = getenv("BANDTALLY_BIN");
	snprintf(camera, sizeof camera, "%s/scan-camera", bin ? bin : "build/release/bin");
	photos_open(&p);
	photos_read(&p, camera);
	size_t n = photos_tally(&p, ours);
	photos_clear(&p);
	read_with_zbarimg(&p);
	photos_tally(&p, theirs);
	if (print)
		printf("%-16s %8s  %18s  %18s\n", "photographs", "pictures", "scan-camera", "zbarimg");
	for (size_t i = 0; i < n; i++) {
		bool met = ours[i].right >= theirs[i].right && ours[i].wrong == 0;
		snprintf(name, sizeof name, "photos %.31s", ours[i].family);
		result(name, ours[i].right, "right", theirs[i].right, theirs[i].right, met);
		if (print)
			printf("%-16s %8d  %5d right %2d wrong  %5d right %2d wrong%s\n", ours[i].family,
			       ours[i].pictures, ours[i].right, ours[i].wrong, theirs[i].right,
			       theirs[i].wrong, met ? "" : "  BELOW");
	}
	photos_free(&p);
}

/* A table before a camera: light that falls off, soft shapes, grain; no symbol. */
static void draw_table(struct plane *p)
{
	unsigned seed = 7;
	if (plane_resize(p, 1280, 720) < 0)
		exit(1);
	for (int y = 0; y < p->height; y++) {
		for (int x = 0; x < p->width; x++) {
			seed = seed * 1103515245U + 12345U;
			int light = 90 + x / 16 + y / 12;
			int cloth = (x / 160 + y / 120) % 3 * 20;
			int tool = (x * 3 + y * 2) % 400 < 24 && y > 200 && y < 600 ? -60 : 0;
			int v = light + cloth + tool + (int)(seed >> 16) % 7 - 3;
			p->pixels[y * p->width + x] = (uint8_t)(v < 0 ? 0 : v > 255 ? 255 : v);
		}
	}
}

static double cpu_ms(void)
{
	struct timespec t;
	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
	return (double)t.tv_sec * 1e3 + (double)t.tv_nsec / 1e6;
}

static double plain_zbar_ms(const struct plane *p)
{
	zbar_image_scanner_t *s = zbar_image_scanner_create();
	double from = cpu_ms();
	zbar_image_t *image = zbar_image_create();
	zbar_image_set_format(image, zbar_fourcc('Y', '8', '0', '0'));
	zbar_image_set_size(image, (unsigned)p->width, (unsigned)p->height);
	zbar_image_set_data(image, p->pixels, (unsigned long)p->width * (unsigned long)p->height, NULL);
	zbar_scan_image(s, image);
	zbar_image_destroy(image);
	double ms = cpu_ms() - from;
	zbar_image_scanner_destroy(s);
	return ms;
}

/* `what` names the figure; each frame is looked at as frames 0, 1, 2 … of an empty table. */
static void time_frames(const char *what, struct plane *frames, size_t count, bool print)
{
	static struct readings seen;
	char name[64];
	struct eyes *eyes = eyes_new((1U << SYMBOLOGY_COUNT) - 1);
	if (!eyes || !count)
		exit(1);
	double longest = 0, ours = 0, reference = 0;
	for (unsigned long i = 0; i < ROUNDS; i++) {
		double before = cpu_ms();
		seen.count = 0;
		eyes_watch(eyes, &frames[i % count], i + i / count, false, &seen);
		double took = cpu_ms() - before;
		longest = took > longest ? took : longest;
		ours += took / ROUNDS;
		reference += plain_zbar_ms(&frames[i % count]) / ROUNDS;
	}
	snprintf(name, sizeof name, "%s, mean", what);
	result(name, ours, "ms", reference, FRAME_GOAL_MS, ours <= FRAME_GOAL_MS);
	snprintf(name, sizeof name, "%s, longest", what);
	result(name, longest, "ms", reference, FRAME_GOAL_MS, longest <= FRAME_GOAL_MS);
	if (print)
		printf("%s: mean %.1f ms, longest %.1f ms (goal %.0f); one plain libzbar scan %.1f ms\n",
		       what, ours, longest, FRAME_GOAL_MS, reference);
	eyes_free(eyes);
}

/* To 1280x720, whatever its shape. */
static void scale(const struct plane *in, struct plane *out)
{
	if (plane_resize(out, 1280, 720) < 0)
		exit(1);
	for (int y = 0; y < 720; y++) {
		for (int x = 0; x < 1280; x++) {
			double fx = x * (in->width - 1.001) / 1280, fy = y * (in->height - 1.001) / 720;
			double ax = fx - (int)fx, ay = fy - (int)fy;
			const uint8_t *a = in->pixels + (int)fy * in->width + (int)fx, *b = a + in->width;
			out->pixels[y * 1280 + x] = (uint8_t)((a[0] * (1 - ax) + a[1] * ax) * (1 - ay) +
			                                      (b[0] * (1 - ax) + b[1] * ax) * ay);
		}
	}
}

/* The photographs without a symbol. */
static void time_photographs(bool print)
{
	struct photos p;
	struct plane frames[64] = {0}, one = {0};
	size_t n = 0;
	photos_open(&p);
	for (size_t i = 0; i < p.count && n < 64; i++) {
		int fd =
		    strcmp(p.item[i].family, "bb none") ? -1 : open(p.item[i].path, O_RDONLY | O_CLOEXEC);
		if (fd < 0)
			continue;
		if (picture_read(fd, p.item[i].name, &one, NULL) == 0)
			scale(&one, &frames[n++]);
		close(fd);
	}
	time_frames("frame: photograph without a symbol", frames, n, print);
	while (n > 0)
		plane_free(&frames[--n]);
	plane_free(&one);
	photos_free(&p);
}

int main(int argc, char **argv)
{
	bool json = argc > 1 && strcmp(argv[1], "--json") == 0;
	results = json_array();
	struct plane table = {0};
	draw_table(&table);
	time_frames("frame: drawn table without a symbol", &table, 1, !json);
	plane_free(&table);
	time_photographs(!json);
	compare_photos(!json);
	if (json)
		json_dumpf(results, stdout, JSON_INDENT(1) | JSON_REAL_PRECISION(6));
	json_decref(results);
	return 0;
}
