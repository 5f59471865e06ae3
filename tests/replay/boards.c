#include "boards.h"

#include "decide/next.h"
#include "play.h"
#include "tell/view.h"

json_t *board_shown(const struct play *p)
{
	struct sheet idle;
	struct next next;
	char said[SAID_MAX];
	const struct sheet *s = station_shown(&p->st, p->room, &idle);
	const struct view_source from = {
	    .station = &p->st, .day = &p->day, .now = p->now, .distrust = "", .language = p->language};
	reply_words_in(&p->out.reply, p->language, said);
	next_step(&p->st, s, p->room, p->now, &next);
	const struct view_scan last = {
	    .at = p->now, .verdict = play_verdict_name(p->out.reply.verdict), .said = said};
	return view_room(&from, &(struct view_room_source){.room = p->room,
	                                                   .next = &next,
	                                                   .sign_out = ready_to_sign_out(s),
	                                                   .recent = &last,
	                                                   .n_recent = 1});
}
