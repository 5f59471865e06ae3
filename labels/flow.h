/* A column of text that runs over as many pages as it needs.
 *
 * Rows are never split and never cut: what does not fit goes to the next page, and a part that runs on says so there. The
 * document is laid out twice: once dry, to know how many pages there are and how long a roll must be, and once on paper.
 */
#ifndef BANDTALLY_LABELS_FLOW_H
#define BANDTALLY_LABELS_FLOW_H

#include "labels/canvas.h"

struct look { /* one size of paper */
	const char *name;
	double width_mm, height_mm; /* height of a roll: the longest page */
	bool roll;
	bool wide; /* enough room for evidence in a column of its own, and for two codes side by side */
	double margin_mm;
	double label_mm;     /* width of the column of labels in front of rows */
	double amiss_mm;     /* the same of what is missing, where and what to do */
	struct style first;  /* the digit and its minutes */
	struct style second; /* when, and who saw it bare */
	struct style place;  /* room, case, day: read at arm's length; what is missing */
	struct style deed, shout;
	struct style body, strong, small, small_strong, code;
	double write_mm; /* height of a line to write on */
	double patient_width_mm,
	    patient_height_mm; /* the space for the patient's label, where the site says none */
};

const struct look *look_of(const char *paper); /* NULL when there is no such paper */

struct flow {
	struct canvas *c;
	const struct look *look;
	double x, y, width;
	double bottom;       /* rows end above this */
	int page, pages;     /* pages is 0 during the dry run */
	bool over;           /* something is higher than a page has room for */
	double last_mm;      /* height of a roll's last page, from the dry run */
	const char *running; /* what a page says on top where a part runs on; NULL none does */
	/* Draws what every page bears and sets y and bottom; called with `page` already counted. */
	void (*begin_page)(struct flow *f, void *context);
	void *context;
};

void flow_page(struct flow *f);             /* starts the next page */
void flow_need(struct flow *f, double mm);  /* starts it unless so much is left */
void flow_space(struct flow *f, double mm); /* less at the foot of a page */
void flow_rule(struct flow *f);             /* double, with its space */
void flow_line(struct flow *f);             /* single, with its space */

/* A heading with its rule, kept together with `first_mm` of what follows; it stands again where the part runs on. */
void flow_section(struct flow *f, const char *title, double first_mm);
void flow_section_end(struct flow *f);

void flow_text(struct flow *f, const struct style *s, const char *text);

/* 'label ______' from `left` to `right`, standing on `base`; without moving on. */
double flow_blank_height(struct flow *f, const char *label, double span, double row); /* at least `row` */
void flow_blank(struct flow *f, const char *label, double left, double right, double base);

/* Columns of one row: widths add up to the width of the flow. */
struct cell {
	const struct style *style;
	const char *text;
	double width_mm;
};
double flow_cells_height(struct flow *f, const struct cell *cells, int count);
void flow_cells(struct flow *f, const struct cell *cells, int count); /* draws and moves on, keeps whole */

#endif
