/* What sentences can speak of. A value has one name and one type, the same in every sentence that names it as {name}.
 *
 * X(TYPE, member, "name", size), in the order of the names: the record keeps them in it (record/event-table.h). A name is
 * never changed and never given to anything else, for records hold it.
 *
 *   NUMBER  as it is                          DIGITS  a number with its zeros, `size` digits
 *   DIGIT   a finger or toe, 1 to 24          CARD    enum own_card, as it is printed
 *   DATE    yyyymmdd                          TIME    of the day, in minutes from midnight
 *   SAYING  enum saying: what is said beside the sentence or inside it, of the same values
 *   PERSON  a name as its badge shows it, kept as TEXT is; one without a badge is kept by a name (saying_of_person) and told
 *           in the language of the sentence
 *   SHIPPED a text of policy.ini, kept as TEXT is; one that is shipped (policy-words.h) is told in the language of the
 *           sentence
 *   THING   a name of the catalogue, kept as TEXT is; what a thing is called that the catalogue does not know is told in the
 *           language of the sentence
 *   TEXT    what people typed, or a setting or a catalogue says: fewer than `size` bytes
 *   WORDS   what was said already in the language of the sentence: a list, a part
 *
 * What stands in VALUES may be part of a refusal, which the record keeps. What stands in LOOSE_VALUES is for paper, board and
 * replies alone, whose sentences are made from the events each time: no record keeps them, and they may be changed.
 */
#ifndef BANDTALLY_WORDS_VALUES_H
#define BANDTALLY_WORDS_VALUES_H

/* clang-format off */
#define VALUES(X) \
	X(NUMBER, badge, "badge", 0) \
	X(CARD, card, "card", 0) \
	X(NUMBER, case_no, "case", 0) \
	X(TEXT, code, "code", 129)                 /* as far as it may be kept (rule 20) */ \
	X(NUMBER, copy, "copy", 0)                 /* of a slip */ \
	X(DATE, date, "date", 0) \
	X(DIGIT, digit, "digit", 0) \
	X(TEXT, instead, "instead", 81)            /* what the catalogue says to use in its place */ \
	X(THING, item, "item", 57)                 /* its name in the catalogue */ \
	X(DIGITS, item_number, "item_number", 8)   /* that stores gave */ \
	X(TEXT, key, "key", 25)                    /* of a line of the catalogue */ \
	X(DIGITS, label, "label", 7)               /* of a case */ \
	X(DIGITS, last_number, "last_number", 8)   /* the last of several that stores gave */ \
	X(TEXT, lot, "lot", 31) \
	X(NUMBER, minutes, "minutes", 0) \
	X(NUMBER, most, "most", 0)                 /* minutes, at most */ \
	X(NUMBER, n, "n", 0)                       /* how many: it decides between one and many */ \
	X(NUMBER, other_case, "other_case", 0) \
	X(NUMBER, other_copy, "other_copy", 0) \
	X(DATE, other_date, "other_date", 0) \
	X(PERSON, other_person, "other_person", 33) \
	X(TEXT, other_room, "other_room", 33) \
	X(PERSON, person, "person", 33) \
	X(SAYING, place, "place", 0) \
	X(SAYING, question, "question", 0) \
	X(TEXT, reason, "reason", 81)              /* as somebody typed it */ \
	X(TEXT, room, "room", 33) \
	X(SAYING, saying, "saying", 0)             /* the sentence itself */ \
	X(TEXT, scanner, "scanner", 33)            /* as scanners.ini names it, or "keyed" */ \
	X(TEXT, site, "site", 4)                   /* its letters */ \
	X(DIGITS, slip, "slip", 7) \
	X(DIGITS, station, "station", 2)           /* of a site */ \
	X(SHIPPED, step, "step", 121)              /* of the search, or a point of the sign-out */ \
	X(SAYING, then, "then", 0)                 /* what follows */ \
	X(TIME, time, "time", 0) \
	X(DIGITS, tray_number, "tray_number", 6) \
	X(SAYING, what, "what", 0) \
	X(SAYING, why, "why", 0)

#define LOOSE_VALUES(X) \
	X(NUMBER, all, "all", 0)                   /* of how many */ \
	X(NUMBER, day, "day", 0)                   /* of the month */ \
	X(TEXT, device, "device", 0)               /* as it names itself */ \
	X(NUMBER, event, "event", 0)               /* of the record */ \
	X(WORDS, fault, "fault", 0)                /* what this program's parts say in English of a code or a text */ \
	X(WORDS, first, "first", 0) \
	X(TIME, from, "from", 0)                   /* of the day */ \
	X(TEXT, hash, "hash", 0) \
	X(WORDS, high, "high", 0)                  /* the upper end of an interval, in digits */ \
	X(TEXT, identity, "identity", 0)           /* of an item, as its mark or its pack has it */ \
	X(NUMBER, issued, "issued", 0)             /* packs, to rooms */ \
	X(NUMBER, labelled, "labelled", 0)         /* packs: labels that were read back */ \
	X(NUMBER, limit, "limit", 0)               /* of a sign of a work-around: seconds or milliseconds */ \
	X(WORDS, list, "list", 0)                  /* say_list() */ \
	X(WORDS, low, "low", 0)                    /* the lower end of an interval */ \
	X(SAYING, month, "month", 0) \
	X(SAYING, more, "more", 0)                 /* what follows `then` */ \
	X(NUMBER, opened, "opened", 0)             /* packs */ \
	X(DIGIT, other_digit, "other_digit", 0) \
	X(NUMBER, other_event, "other_event", 0) \
	X(THING, other_item, "other_item", 0) \
	X(TEXT, other_lot, "other_lot", 31) \
	X(NUMBER, page, "page", 0) \
	X(NUMBER, pages, "pages", 0) \
	X(NUMBER, other_station, "other_station", 0) /* of this site */ \
	X(NUMBER, people, "people", 0) \
	X(TEXT, printer, "printer", 0) \
	X(NUMBER, received, "received", 0)         /* packs */ \
	X(PERSON, recorder, "recorder", 33)         /* whose badge recorded it */ \
	X(NUMBER, returned, "returned", 0)         /* packs, unopened */ \
	X(WORDS, second, "second", 0) \
	X(WORDS, share, "share", 0)                /* of a hundred, in digits */ \
	X(NUMBER, sheet, "sheet", 0)               /* of paper, of a room */ \
	X(TEXT, text, "text", 0)                   /* as it was typed, scanned or set */ \
	X(TIME, to, "to", 0)                       /* of the day */ \
	X(TEXT, typed, "typed", 81)                /* by somebody: a number */ \
	X(NUMBER, unaccounted, "unaccounted", 0)   /* packs */ \
	X(TEXT, version, "version", 0)             /* of this program */ \
	X(TEXT, where, "where", 81)                /* on a pack, as the catalogue says */ \
	X(WORDS, words, "words", 0) \
	X(NUMBER, written_off, "written_off", 0)   /* packs */ \
	X(NUMBER, year, "year", 0)
/* clang-format on */

#endif
