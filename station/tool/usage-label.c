/* What each paper of `bandtally label` is called with, for the command and for those that read its words. */
#include "tool/label.h"

/* clang-format off */
const char label_usage[] =
	"usage: bandtally label pack --line KEY [--lot LOT] [--expiry YYYY-MM-DD] --count N [--media NAME]  (--pdf FILE | --printer NAME)\n"
	"       bandtally label digits | cards [--room N]                        (--list | --pdf FILE | --printer NAME)\n"
	"       bandtally label badges                                           (--list | --pdf FILE | --printer NAME)\n"
	"       bandtally label paper-sheet [--room N] [--first N] [--count 10]  (--list | --pdf FILE | --printer NAME)\n"
	"       bandtally label briefing [--room N]                              (--pdf FILE | --printer NAME)\n"
	"       bandtally label leaflet | scanner-check                          (--pdf FILE | --printer NAME)\n"
	"pack         N new item numbers, and two labels an item: one for the pack, one for the paper or return bag.\n"
	"             --media: a roll or sheet that labels.ini of the data folder describes; left out: a roll, 57 x 32 mm\n"
#define X(print, name, of_room, options, line) line
	LABEL_PAPERS(X)
#undef X
	"--list prints code, room and meaning as tab-separated text. Without --room: the first room.\n"
	"example: bandtally label pack --line GREEN-M --lot T26 --expiry 2028-03-31 --count 20 --printer labels\n"
	"         bandtally label cards --room 2 --pdf cards.pdf\n";
/* clang-format on */
