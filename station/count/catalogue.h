/* The catalogue: what kinds of item (lines) this hospital counts, and how a barcode finds its line.
 *
 * The catalogue owns its lines. A line is found again by its key; the pointer is good until the next change.
 */
#ifndef BANDTALLY_COUNT_CATALOGUE_H
#define BANDTALLY_COUNT_CATALOGUE_H

#include <stddef.h>
#include <stdint.h>

#include "base/buf.h"
#include "base/csv.h"
#include "base/error.h"
#include "count/role.h"

struct code;

#define LINE_KEY_MAX 25
#define LINE_NAME_MAX 57
#define LINE_CODES_MAX 6
#define LINE_CODE_MAX 41
#define LINE_INSTEAD_MAX 81
#define LINE_LABEL_MAX 81
#define LINE_UNITS_MAX 10000
#define LINE_MINIMUM_MAX 100000
#define LINE_CONTENTS_MAX 12
#define IDENTITY_MAX 57
#define LOT_MAX 31
#define CATALOGUE_LINES_MAX 4096

/* Where an item's own identity is, which decides what a scan of it can prove (rule 11). */
enum identity_kind {
	IDENTITY_NONE = 0, /* lot at most: the station cannot know this item from another */
	IDENTITY_PACK,     /* serial or stores' number on the wrapper: proves that a pack was opened */
	IDENTITY_MARK,     /* on the item itself, before sterilisation: proves the item */
};

/* Without a word on it no pack of a line is labelled. */
enum label_when { LABEL_NEVER = 0, LABEL_BEFORE_STERILISING, LABEL_AFTER_STERILISING };

struct line_part { /* a tray holds `count` of line `key` */
	char key[LINE_KEY_MAX];
	int16_t count;
};

struct line {
	char key[LINE_KEY_MAX];   /* stores' short name, unique */
	char name[LINE_NAME_MAX]; /* what people read: "finger tourniquet, green, M" */
	enum role role;
	enum identity_kind identity;
	int marked;  /* CE, UKCA or the local equivalent */
	int visible; /* bright or tagged */
	int single_use;
	int rolls_on; /* rule 7 */
	int shows_on_xray;
	int16_t per_pack;                 /* pieces a pack holds, at least 1 */
	int16_t size_min_mm, size_max_mm; /* stated digit circumference, 0 where the maker states none */
	int16_t label;                    /* enum label_when: whether stores label its packs */
	int32_t minimum;                  /* packs that stores want to have, 0 not said */
	char label_place
	    [LINE_LABEL_MAX];           /* where the label goes on the pack: "film side, clear of the seal" */
	char instead[LINE_INSTEAD_MAX]; /* TRAIT_REFUSED: what to use instead */
	/* What finds this line: a GTIN-14, with "*10" behind it where that is the code of a box of ten packs; an HIBC product ("+A9991234" + unit); "8004:" and a GIAI, or the
	 * start of one and '*'; or any other text that is printed on the item. */
	char codes[LINE_CODES_MAX][LINE_CODE_MAX];
	struct line_part contents[LINE_CONTENTS_MAX]; /* TRAIT_LIST */
};

/* The columns of a catalogue file: what there is to say of a line. */
enum line_column {
	COL_KEY,
	COL_NAME,
	COL_ROLE,
	COL_CODES,
	COL_MARKED,
	COL_VISIBLE,
	COL_SINGLE_USE,
	COL_IDENTITY,
	COL_ROLLS_ON,
	COL_XRAY,
	COL_PER_PACK,
	COL_SIZE,
	COL_CONTENTS,
	COL_INSTEAD,
	COL_LABEL,
	COL_LABEL_PLACE,
	COL_MINIMUM,
	LINE_COLUMNS
};

struct catalogue {
	struct line *lines; /* in the order in which they came */
	size_t count, room;
};

void catalogue_deinit(struct catalogue *c);

/* Makes room, so that as many further lines can be set without memory. 0 or -ENOMEM. */
int catalogue_reserve(struct catalogue *c, size_t more);

/* Makes `to`, which is not yet one, another of the same lines. 0 or -ENOMEM. */
int catalogue_copy(struct catalogue *to, const struct catalogue *from);

/* Adds the line, or puts it in the place of the one with its key. 0, -ENOMEM, -ENOSPC, or -EINVAL where
 * rule 5 forbids it (a tourniquet that is not marked or not visible) or a code already finds another line. */
int catalogue_set(struct catalogue *c, const struct line *line, struct error *e);

/* What rule 5 forbids of a line by itself: 0, or -EINVAL with `e` and the column that says so in `where`. */
int line_check(const struct line *line, enum line_column *where, struct error *e);

/* Takes the line with this key out, where there is one. What stands on sheets keeps what was known of it. */
void catalogue_remove(struct catalogue *c, const char *key);

/* The line with another key that a code of this one finds already; NULL none. `code`, where not NULL, becomes which. */
const struct line *catalogue_owner(const struct catalogue *c, const struct line *line, const char **code);

const struct line *catalogue_by_key(const struct catalogue *c, const char *key); /* NULL when absent */
const struct line *catalogue_by_code(const struct catalogue *c, const struct code *code);

/* The same, and how many packs the code stands for: the level of packaging is what the catalogue says of this code, never
 * what its digits look like. */
const struct line *catalogue_packs_by_code(const struct catalogue *c, const struct code *code,
                                           int32_t *packs);

/* Reads a catalogue file (base/csv.h) with the columns
 *   key,name,role,codes,marked,visible,single_use,identity,rolls_on,xray,per_pack,size_mm,contents,instead,
 *   label,label_place,minimum
 * role: a name of count/role.h; identity: none pack mark; yes/no for the flags; codes and
 * contents separated by spaces (contents "KEY*2"); size_mm "45-60" or empty; label: no before after. Every line is checked,
 * its product numbers by their check digits; the first fault is told with line and column, and nothing is taken. `lines` is
 * the caller's to free(); `numbers`, where not NULL, becomes on which line of the file each begins, and is the caller's too. */
int catalogue_read_csv(const char *text, size_t size, struct line **lines, size_t *count, struct error *e);
int catalogue_read_lines(const char *text, size_t size, struct catalogue *lines, int **numbers,
                         struct csv *places, struct error *e);

/* The same file of these lines, which read again gives the same lines. 0 or -ENOMEM. */
int catalogue_write_csv(const struct catalogue *c, struct buf *out);

/* What the file says of a line in a column, added to `out`, without quotation marks. 0 or -ENOMEM. */
int line_write_column(const struct line *line, enum line_column column, struct buf *out);
const char *line_column_name(enum line_column column);

const char *identity_name(enum identity_kind); /* "none", "pack", "mark" */
int identity_from_name(const char *name);

#endif
