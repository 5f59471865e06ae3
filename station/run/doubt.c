#include "run/doubt.h"

#include <stdio.h>
#include <string.h>

static void add(char out[DISTRUST_MAX], const char *sentence)
{
	size_t used = strlen(out);
	if (*sentence && used < DISTRUST_MAX - 1)
		snprintf(out + used, DISTRUST_MAX - used, "%s%s", used ? " " : "", sentence);
}

static void add_say(char out[DISTRUST_MAX], const struct language *language, const struct say *say)
{
	char sentence[700];
	say_sentence_in(language, say, sentence, sizeof sentence);
	add(out, sentence);
}

static void add_unfollowed(char out[DISTRUST_MAX], const struct core *c, const struct language *language,
                           enum saying saying, int32_t case_no)
{
	char words[500];
	station_unfollowed_words(&c->station, language, saying, case_no, words, sizeof words);
	saying_capital(words);
	add(out, words);
}

/* What does not go away by itself stands first. */
void core_distrust_in(const struct core *c, const struct language *language, int32_t case_no,
                      char out[DISTRUST_MAX])
{
	char proof[600];
	out[0] = 0;
	if (c->doubt.stopped)
		add_say(out, language, SAY(DOUBT_STOPPED));
	if (c->doubt.aside[0])
		add_say(out, language, SAY(DOUBT_ASIDE, .text = c->doubt.aside));
	proof_doubt(&c->station.proof, language, proof, sizeof proof);
	add(out, proof);
	add_unfollowed(out, c, language, SAY_DOUBT_UNFOLLOWED, 0);
	if (c->doubt.diverged)
		add_say(out, language,
		        SAY(DOUBT_DIVERGED, .event = (int32_t)c->doubt.diverged,
		            .text = event_name(c->doubt.diverged_by)));
	if (c->doubt.storage[0])
		add_say(out, language, SAY(DOUBT_STORAGE, .fault = c->doubt.storage));
	else if (c->doubt.damaged)
		add_say(out, language, SAY(DOUBT_STORAGE, .fault = record_damage(c->record)));
	if (case_no)
		add_unfollowed(out, c, language, SAY_DOUBT_UNFOLLOWED_CASE, case_no);
}
