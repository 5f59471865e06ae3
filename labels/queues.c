#include "labels/queues.h"

#include <cups/cups.h>
#include <errno.h>

#include "base/name.h"
#include "labels/send.h"

static int tell(const cups_dest_t *d, struct buf *out)
{
	char said[128];
	const char *info = cupsGetOption("printer-info", d->num_options, d->options);
	snprintf(said, sizeof said, "%.120s", info ? info : "");
	name_mend(said);
	return buf_printf(out, "%s\t%s\t%s\n", d->name, d->is_default ? "default" : "", said);
}

int queues_tell(struct buf *out)
{
	cups_dest_t *all = NULL;
	struct printer p;
	struct error e;
	int n = cupsGetDests(&all), r = 0;
	for (int i = 0; i < n && r == 0; i++)
		if (!all[i].instance && printer_read(all[i].name, &p, &e) == 0)
			r = tell(&all[i], out);
	cupsFreeDests(n, all);
	return r;
}
