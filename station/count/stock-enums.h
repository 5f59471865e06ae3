/* What the record keeps of stores, as enums (station/stock says what is done with them). A name stands in records for ever:
 * it is never changed, and what is new comes at the end.
 */
#ifndef BANDTALLY_COUNT_STOCK_ENUMS_H
#define BANDTALLY_COUNT_STOCK_ENUMS_H

/* How it is known what came in. */
enum received_how {
	RECEIVED_CODED = 1,     /* line, lot and expiry were read from its code */
	RECEIVED_CONFIRMED,     /* typed by one, confirmed by a second person */
	RECEIVED_NOT_CONFIRMED, /* typed, with nobody to confirm it: it is not issued */
};

/* What became of a label. 0: it was printed, and nobody has read it back. */
enum label_fate {
	LABEL_READ = 1,
	LABEL_SPOILT,
	LABEL_DESTROYED,
	LABEL_OPENED /* a case read it: it is on its pack */
};

/* What a case did with packs of one line and lot. */
enum case_took {
	TOOK_OPENED = 1,
	TOOK_RETURNED, /* unopened: it lies in the room still */
	TOOK_ISOLATED, /* wrong number in its pack */
	TOOK_MISSING,  /* opened, and not accounted for when the case ended */
	TOOK_FOUND,    /* such a one was found after the end */
};

/* Why a pack was written off. */
enum written_why {
	WRITTEN_SAID = 1,   /* as the text says */
	WRITTEN_NOT_SEALED, /* it came back, and was not sealed, dry and clean */
};

/* What was counted. 0, of an earlier version: what lay on the shelf and did not wait to be confirmed. */
enum counted_what {
	COUNTED_WITH_WAITING = 1, /* all that lay there */
};

/* What a bench asks. X(NAME, "name in the record") */
#define BENCH_QUESTIONS(X)                                                                                   \
	X(RECEIVE_WHAT, "receive-what") /* RECEIVE: what came? */                                            \
	/* typed; here and next, n: 1 something of it was typed, other: packs in one */                      \
	X(LOT, "lot")                                                                                        \
	X(EXPIRY, "expiry")                                                                                  \
	X(HOW_MANY, "how-many") /* boxes or packs came? */                                                   \
	X(SO_MANY, "so-many")   /* n packs: is that right? other: 1 something of it was typed */             \
	X(TYPED_BY, "typed-by") /* n packs came: whose badge? */                                             \
	X(SECOND, "second")     /* n packs came, typed by person: a second badge */                          \
	X(CONFIRM_WHAT, "confirm-what")                                                                      \
	X(PRINT_WHAT, "print-what")                                                                          \
	X(PRINT_MANY, "print-many")                                                                          \
	X(LABEL_WHICH, "label-which") /* n: enum label_fate that it has */                                   \
	X(BOX_AGAIN, "box-again")     /* all labels are accounted for */                                     \
	X(ISSUE, "issue")             /* other: to this room; each pack, until DONE */                       \
	X(RETURN_WHAT, "return-what")                                                                        \
	X(RETURN_FROM, "return-from") /* which room? */                                                      \
	X(SEALED, "sealed")           /* other: from this room; sealed, dry, clean? */                       \
	X(COUNT_WHAT, "count-what")                                                                          \
	X(COUNT_MANY, "count-many") /* n: so many wait to be confirmed */                                    \
	X(WRITE_WHAT, "write-what")                                                                          \
	X(WRITE_MANY, "write-many")                                                                          \
	X(WRITE_WHY, "write-why") /* n packs; typed */                                                       \
	X(QUARANTINE_WHAT, "quarantine-what")                                                                \
	X(QUARANTINE_LOT, "quarantine-lot") /* this lot only? */                                             \
	X(QUARANTINE_WHY, "quarantine-why") /* typed */                                                      \
	X(NOTICE, "notice")                 /* text: why; typed: the notice's reference */                   \
	X(RELEASE_WHAT, "release-what")                                                                      \
	X(RELEASE_FIRST, "release-first")   /* a badge */                                                    \
	X(RELEASE_SECOND, "release-second") /* a badge other than person */                                  \
	X(FOUND, "found")                   /* what came back in a tray, linen or a bin? */                  \
	X(FOUND_OF, "found-of")             /* several cases miss one: the slip of the case */               \
	X(PRINT_AGAIN, "print-again")       /* n labels were not read back: are they to be replaced? */

enum bench_question {
	BENCH_NOTHING = 0,
#define X(name, text) BENCH_##name,
	BENCH_QUESTIONS(X)
#undef X
	    BENCH_QUESTION_KINDS
};

#endif
