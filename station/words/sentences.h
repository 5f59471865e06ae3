/* The one list of all sentences: what the record may hold (sayings.h), and what is said on paper, on the board and in replies
 * alone, a header a subject. Whoever writes a new one adds it to its subject's list; whoever opens a subject adds a line here.
 *
 * A key is a sentence's name in the catalogues (po/) and in the board's page. It is unique, and where no record holds it it
 * may be changed together with them.
 */
#ifndef BANDTALLY_WORDS_SENTENCES_H
#define BANDTALLY_WORDS_SENTENCES_H

#include "words/board-words.h"
#include "words/fault-words.h"
#include "words/forward-words.h"
#include "words/name-words.h"
#include "words/next-words.h"
#include "words/paper-words.h"
#include "words/policy-words.h"
#include "words/practice-words.h"
#include "words/printer-words.h"
#include "words/reply-words.h"
#include "words/report-words.h"
#include "words/sayings.h"
#include "words/slip-words.h"
#include "words/stock-words.h"
#include "words/stores-words.h"

/* clang-format off */
#define SENTENCES(X, N) \
	NAME_WORDS(X, N) \
	NEXT_WORDS(X, N) \
	REPLY_WORDS(X, N) \
	BOARD_WORDS(X, N) \
	FAULT_WORDS(X, N) \
	FORWARD_WORDS(FORWARD_ROW) \
	SLIP_WORDS(X, N) \
	PAPER_WORDS(X, N) \
	PRINTER_WORDS(X, N) \
	PRACTICE_WORDS(X, N) \
	STOCK_WORDS(X, N) \
	POLICY_WORDS(X, N) \
	STORES_WORDS(X, N) \
	REPORT_WORDS(X, N)
/* clang-format on */

#endif
