/* Whether the outlines that a camera's driver sends lie round what it shows.
 *   picture-look [FOLDER] <LINES     the driver's lines; the last picture with a code is kept as FOLDER/seen.jpeg
 * In each picture with a code what is dark, the modules of the symbol alone, must lie within its outlines, and an outline
 * must not be mostly empty. 0, or 1 with the reason; 2 where no picture with a code came. */
#include <stdio.h>
#include <string.h>

#include "base/base64.h"
#include "base/buf.h"
#include "base/wire.h"
#include "drivers/picture.h"

#define DARK 90       /* the frame is grey (120) about a symbol of 40 on 210 */
#define BESIDE 20     /* thousandths that an outline may be off */
#define WITHIN 95     /* of a hundred dark places */
#define FILLED_MIN 15 /* of a hundred places of an outline */

static int decode(const struct wire_line *l, struct buf *jpeg)
{
	static char text[WIRE_LINE_MAX];
	size_t n = 0;
	for (size_t i = 0; i < l->data_size && l->data[i] != '='; i++)
		text[n++] = l->data[i] == '+' ? '-' : l->data[i] == '/' ? '_' : l->data[i];
	return base64url_read(jpeg, text, n);
}

static bool within(const struct wire_seen *s, int x, int y, int beside)
{
	return x >= s->left - beside && x <= s->right + beside && y >= s->top - beside &&
	       y <= s->bottom + beside;
}

static int look(const struct plane *p, const struct wire_line *l)
{
	int dark = 0, outlined = 0, places = 0, filled = 0;
	for (int i = 0; i < p->width * p->height; i++) {
		int x = (i % p->width * 2 + 1) * 500 / p->width, y = (i / p->width * 2 + 1) * 500 / p->height;
		bool beside = false, in = false, is_dark = p->pixels[i] < DARK;
		for (size_t s = 0; s < l->n_seen; s++) {
			beside |= within(&l->seen[s], x, y, BESIDE);
			in |= within(&l->seen[s], x, y, 0);
		}
		dark += is_dark;
		outlined += is_dark && beside;
		places += in;
		filled += in && is_dark;
	}
	printf("%d x %d: %d of %d dark places outlined, %d of %d places of the outline dark\n", p->width,
	       p->height, outlined, dark, filled, places);
	return dark && outlined * 100 >= dark * WITHIN && filled * 100 >= places * FILLED_MIN ? 0 : 1;
}

static int keep(const char *folder, const struct buf *jpeg)
{
	char path[4096];
	snprintf(path, sizeof path, "%s/seen.jpeg", folder);
	FILE *f = fopen(path, "wb");
	bool kept = f && fwrite(jpeg->data, jpeg->size, 1, f) == 1;
	return f && fclose(f) == 0 && kept ? 0 : -1;
}

int main(int argc, char **argv)
{
	static char text[WIRE_LINE_MAX + 2];
	static struct wire_line l;
	struct error e;
	int result = 2;
	while (fgets(text, sizeof text, stdin)) {
		_cleanup_(buf_free) struct buf jpeg = {0};
		_cleanup_(plane_free) struct plane p = {0};
		if (wire_read_line(text, strlen(text), &l, &e) < 0 || l.kind != WIRE_PICTURE || !l.n_seen)
			continue;
		if (decode(&l, &jpeg) < 0 ||
		    picture_jpeg((const uint8_t *)jpeg.data, jpeg.size, &p, &e) < 0) {
			printf("no picture: %s\n", e.text);
			return 1;
		}
		if (argc > 1 && keep(argv[1], &jpeg) < 0)
			return 1;
		int wrong = look(&p, &l);
		result = result == 2 ? wrong : result | wrong;
	}
	return result;
}
