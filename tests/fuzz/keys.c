/* Fuzzing what a handheld types, from its key events to the line for the daemon. The first byte says which scanner it
 * is (below); each event is three bytes: the key, what happens to it, and how long after the one before.
 *
 * Whatever comes: an unfinished code waits for a time that comes, nothing is taken for a code that has more strokes than
 * there is room for, a meaning is bytes that fit and an AIM identifier in form, and the sentence of one that cannot be
 * said fits a line. What a check learns can be written, and reads back as the same profile.
 */
#include <linux/input-event-codes.h>
#include <unistd.h>

#include "drivers/handheld-meaning.h"
#include "drivers/profile-learn.h"
#include "drivers/wire-writer.h"
#include "tests/fuzz/fuzz.h"

#define LEARNS 0x80
#define SETTLES 0x40
#define LONG_MS 1500 /* a silence after which nothing may be held but what is too long */

static struct keymaps maps;

static const struct profile scanners[] = {
    {.layouts = LAYOUT_ALL, .end = TYPING_END_UNKNOWN, .gap_ms = PROFILE_GAP_MS},
    {.layouts = LAYOUT_BIT(LAYOUT_us),
     .gs = PROFILE_GS_CHORD,
     .gs_key = KEY_RIGHTBRACE,
     .gs_mods = STROKE_CTRL,
     .aim = PROFILE_AIM_ON,
     .around_known = true,
     .end = TYPING_END_ENTER,
     .gap_ms = PROFILE_GAP_MS},
    {.layouts = LAYOUT_BIT(LAYOUT_de),
     .gs = PROFILE_GS_ALT,
     .aim = PROFILE_AIM_OFF,
     .around_known = true,
     .prefix = "\x02",
     .suffix = "\x03",
     .end = TYPING_END_TAB,
     .gap_ms = PROFILE_GAP_MS},
    {.layouts = LAYOUT_BIT(LAYOUT_fr),
     .letters = PROFILE_CASE_SWAPPED,
     .gs = PROFILE_GS_TEXT,
     .gs_text = '|',
     .around_known = true,
     .end = TYPING_END_SILENCE,
     .gap_ms = PROFILE_GAP_MIN_MS},
    {.layouts = LAYOUT_BIT(LAYOUT_se) | LAYOUT_BIT(LAYOUT_no),
     .letters = PROFILE_CASE_UNKNOWN,
     .gs = PROFILE_GS_DROPPED,
     .end = TYPING_END_ENTER,
     .gap_ms = PROFILE_GAP_MAX_MS},
    {.layouts = LAYOUT_BIT(LAYOUT_ch),
     .gs = PROFILE_GS_CHORD,
     .gs_key = KEY_F8,
     .aim = PROFILE_AIM_ON,
     .around_known = true,
     .suffix = "#",
     .end = TYPING_END_UNKNOWN,
     .gap_ms = PROFILE_GAP_MS},
};
#define SCANNERS (sizeof scanners / sizeof *scanners)

static int nobody(void)
{
	static int fds[2] = {-1, -1};
	char part[65536];
	if (fds[0] < 0)
		must(pipe(fds) == 0, "no pipe");
	else
		must(read(fds[0], part, sizeof part) > 0, "a line was not written");
	return fds[1];
}

static void look_at_meaning(const struct profile *p, const struct typing *t)
{
	static struct meant m;
	if (t->count > TYPING_STROKES_MAX)
		return;
	if (!meaning_read(p, &maps, t->strokes, t->count, &m)) {
		must(m.why[0] && memchr(m.why, 0, sizeof m.why), "no reason");
		return;
	}
	must(m.size > 0 && m.size <= sizeof m.text, "a meaning without its bytes");
	must(!m.aim[0] || wire_aim_valid(m.aim), "an AIM identifier that is none");
	struct wire w = {nobody()};
	int n = wire_scan(
	    &w, &(struct wire_scan){.aim = m.aim, .data = m.text, .size = m.size, .ms = t->last_ms});
	must(n == 0 || n == WIRE_TOO_LONG, "a code that the daemon would refuse");
}

static void learn(struct learner *l, const struct typing *t)
{
	switch (learner_add(l, &maps, t->strokes,
	                    t->count < TYPING_STROKES_MAX ? t->count : TYPING_STROKES_MAX, t->longest_ms)) {
	case LEARNER_OURS:
		must(l->ours[0] && memchr(l->ours, 0, sizeof l->ours), "a card without its text");
		break;
	case LEARNER_BEGIN:
	case LEARNER_END:
	case LEARNER_OTHER:
		break;
	}
	must(l->count <= LEARN_CODES_MAX, "more codes than there is room for");
}

static void take(enum typing_result what, struct typing *t, const struct profile *p, struct learner *l)
{
	if (what == TYPING_NOTHING)
		return;
	if (what == TYPING_CODE && p)
		look_at_meaning(p, t);
	else if (what == TYPING_CODE)
		learn(l, t);
	must(what != TYPING_CODE || t->count > 0, "a code without a stroke");
	must(what != TYPING_PARTIAL || t->count > 0, "an unfinished code without a stroke");
	if (what == TYPING_SKIPPED)
		t->skipped = 0;
	typing_clear(t);
	must(typing_pending(t) == 0, "something is left of a code");
}

static void same_profile(const struct learner *l)
{
	struct profile p = {0};
	struct error e = {0};
	struct buf text = {0};
	if (learner_result(l, &maps, &p, &e) < 0) {
		must(strstr(e.text, ": ") != NULL, "the fault is no sentence");
		return;
	}
	must(p.layouts && p.layouts <= LAYOUT_ALL && p.end != TYPING_END_RAW,
	     "a profile that nothing could have");
	must(p.gap_ms >= PROFILE_GAP_MIN_MS && p.gap_ms <= PROFILE_GAP_MAX_MS, "a gap that no file may name");
	must(profile_write(&p, &text) == 0 && text.size, "a profile that cannot be written");
	must(profile_undecided(&p, &maps, &text) >= 0 && profile_describe(&p, &text) == 0,
	     "no words for a profile");
	buf_free(&text);
}

/* Of the third byte: eighths of a typing's pace, and from 0xf0 on silences. */
static int64_t after_ms(uint8_t byte)
{
	return byte >= 0xf0 ? LONG_MS : byte >= 0xc0 ? 150 + byte : byte / 8;
}

static void type(struct typing *t, const uint8_t *events, size_t size, const struct profile *p,
                 struct learner *l)
{
	int64_t now = 1000;
	for (size_t i = 0; i + 3 <= size; i += 3) {
		now += after_ms(events[i + 2]);
		if (events[i + 1] >= 0xfe) {
			typing_lost(t, now);
			continue;
		}
		take(typing_tick(t, now), t, p, l);
		take(typing_key(t, events[i] + 256u * (events[i + 1] >= 0xf0), events[i + 1] % 3, now), t, p,
		     l);
		must(typing_due_ms(t) < 0 || typing_due_ms(t) >= t->last_ms,
		     "a code that waits for the past");
	}
	take(typing_tick(t, now + 10 * LONG_MS), t, p, l);
	must(typing_due_ms(t) < 0 && typing_pending(t) == 0, "a code that waits for ever");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	static struct typing t;
	static struct learner l;
	struct error e = {0};
	if (!maps.of[0])
		must(keymaps_load(&maps, LAYOUT_ALL, &e) == 0, e.text);
	if (!size)
		return 0;
	const struct profile *p = data[0] & LEARNS ? NULL : &scanners[data[0] % SCANNERS];
	memset(&l, 0, sizeof l);
	typing_init(&t, p ? p->end : TYPING_END_RAW, p ? p->gap_ms : LEARN_GAP_MS, 1000, data[0] & SETTLES);
	type(&t, data + 1, size - 1, p, &l);
	if (!p)
		same_profile(&l);
	return 0;
}
