#include "tool/fault.h"

void fault_title(struct fault *f, const char *title)
{
	buf_printf(&f->out, "\n== %s\n", title);
}

void fault_masked(struct fault *f, const char *before, const char *text)
{
	buf_add_text(&f->out, before);
	mask_text(&f->mask, text, &f->out);
	if (f->out.size && f->out.data[f->out.size - 1] != '\n')
		buf_add_text(&f->out, "\n");
}
