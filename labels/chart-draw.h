/* One chart: points in their order, their centre and limits, drawn in black alone so that any printer and any eye reads it.
 * The same for paper and picture. Lengths in millimetres. */
#ifndef BANDTALLY_LABELS_CHART_DRAW_H
#define BANDTALLY_LABELS_CHART_DRAW_H

#include "base/json.h"
#include "labels/canvas.h"
#include "labels/schema.h"

#define CHART_POINTS_MAX 61

extern const struct field chart_fields[];

/* Room for the drawing itself; its title and sentences are the caller's. */
#define CHART_HEIGHT_MM 58.0

/* Draws the points of a chart that has any. */
void chart_draw(struct canvas *c, const json_t *chart, double x_mm, double y_mm, double width_mm);

#endif
