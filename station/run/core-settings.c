/* Which settings a start goes by: those of the folder, or what was sound last; and what is said where it is another station by
 * them than its record knows. */
#include <stdio.h>
#include <string.h>

#include "base/log.h"
#include "run/core-internal.h"
#include "run/media.h"
#include "run/sense.h"
#include "run/sound.h"

void core_settings_read(struct core *c)
{
	c->settings_used = sound_read(&c->settings, &c->station, c->folder, c->settings_fault);
}

/* Nothing was given out under the letters of a station that was never worked with. */
static bool was_worked_with(const struct station *st)
{
	return st->last_case_no || st->last_slip_no || st->staff.count;
}

/* Letters that nobody wrote are those that the record has; others that somebody wrote are said, for all that was printed before
 * is then another site's. */
static void settle_site(struct core *c)
{
	const struct recorded *was = &c->station.recorded;
	struct error e = {0};
	if (sound_site_check(&c->settings, &c->station, c->folder, &e) < 0) {
		memcpy(c->station.site, was->site, sizeof c->station.site);
		if (!c->settings_used) {
			c->settings_used = SAY_FAULT_SETTINGS_KEPT;
			snprintf(c->settings_fault, sizeof c->settings_fault, "%.*s",
			         (int)sizeof c->settings_fault - 1, e.text);
		}
	}
	if (was_worked_with(&c->station) && was->known >> SETTING_SITE & 1 &&
	    strcmp(was->site, c->station.site) != 0)
		memcpy(c->site_was, was->site, sizeof c->site_was);
}

static void settle_number(struct core *c)
{
	int was = sound_number(c->folder);
	if (was >= 0 && was != c->station.number && was_worked_with(&c->station) && !c->settings_used)
		snprintf(c->number_was, sizeof c->number_was, "%d", was);
}

int core_settings_say(const struct core *c, int i, struct say *out)
{
	struct say all[6];
	int n = 0;
	if (c->settings_used)
		all[n++] = (struct say){.saying = c->settings_used, .fault = c->settings_fault};
	if (c->scanners_used)
		all[n++] = (struct say){.saying = c->scanners_used, .fault = c->scanners_fault};
	if (c->labels_fault[0])
		all[n++] = (struct say){.saying = SAY_FAULT_MEDIA, .fault = c->labels_fault};
	else if (c->sense_fault[0])
		all[n++] = (struct say){.saying = SAY_FAULT_SENSE, .fault = c->sense_fault};
	if (c->site_was[0])
		all[n++] = *SAY(FAULT_SITE_CHANGED, .site = c->station.site, .text = c->site_was);
	if (c->number_was[0])
		all[n++] = *SAY(FAULT_NUMBER_CHANGED, .n = c->station.number, .text = c->number_was);
	if (i >= n)
		return 0;
	*out = all[i];
	return i + 1;
}

/* Those that are used are kept, where they are the folder's own. */
void core_settings_settle(struct core *c)
{
	char words[900];
	struct say what;
	struct error e = {0};
	settle_site(c);
	settle_number(c);
	core_settings_look(c);
	for (int i = 0; (i = core_settings_say(c, i, &what));) {
		say_sentence(&what, words, sizeof words);
		log_warn(LOG_SETTINGS, "%s", words);
	}
	if (!c->settings_used && sound_keep(c->folder, &e) < 0)
		log_warn(LOG_SETTINGS, "%s", e.text);
}

static void keep_fault(char out[500], int n, const struct error *e)
{
	snprintf(out, 500, "%.*s", 499, n < 0 ? e->text : "");
}

void core_settings_look(struct core *c)
{
	struct error labels = {0}, sense = {0};
	const int was = c->labels_fault[0] || c->sense_fault[0];
	const int n = media_check(c->folder, &labels);
	keep_fault(c->labels_fault, n, &labels);
	keep_fault(c->sense_fault, n < 0 ? 0 : sense_check(&c->settings, &c->station, c->folder, &sense),
	           &sense);
	if (was != (c->labels_fault[0] || c->sense_fault[0]))
		c->changes++;
}
