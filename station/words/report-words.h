/* The sentences of a report and of the auditor's other papers, by name, in English: formats of printf, whose arguments the
 * comment before a group names in their order. None is made of pieces of grammar. */
#ifndef BANDTALLY_WORDS_REPORT_WORDS_H
#define BANDTALLY_WORDS_REPORT_WORDS_H

/* clang-format off */
/* the report as a whole; ALL_OF: first and last day */
#define RW_TITLE "Finger and toe tourniquets: report"
#define RW_ALL_ROOMS "%s to %s, all rooms"
#define RW_ONE_ROOM "%s to %s, %s" /* room */
#define RW_MADE_OF "Made of the record of %s up to event %lld, hash %.16s…" /* site, number, hash */
#define RW_ABOUT_RECORDED "It shows what was recorded. What nobody entered is in no figure of it, and no figure says that a patient came to no harm."
#define RW_ABOUT_HELD_BACK "Nobody is named. A cell of fewer than %d cases or %d people is held back: '(held back)' is not 0." /* cases, people */
#define RW_ABOUT_POLICY "Each case is judged by the policy of its day; a reminder is a local setting and no limit."
#define RW_ALL_HELD_BACK "Fewer than %d cases or %d people were recorded in these days: no figure is shown, because it could point to somebody. Ask for more days or all rooms." /* cases, people */
#define RW_NO_CASES "No case was recorded in these days. That is not the same as no operation: see the theatre list."
#define RW_HELD_BACK "(held back)"
#define RW_NOT_KNOWN "not known"
#define RW_AT_LEAST "at least %s"
#define RW_SHARE "%d of %d: %s %% (95 %% interval %s to %s %%, exact)" /* x, n, share, low, high */
#define RW_SHARE_NONE "0 of %d: not proof of none; up to %s %% could still be so (one-sided 95 %% bound, exact)" /* n, high */
#define RW_SHARE_OF_NOTHING "none recorded: no share"

/* cases */
#define RW_CASES "Cases"
#define RW_CASES_FORCED "The station holds the sign-out until everything is accounted for. So the first number is no rate of success, and none is made of it."
#define RW_CASES_ALL "Recorded"
#define RW_CASES_RECONCILED "Ended with everything accounted for"
#define RW_CASES_UNRESOLVED "Ended unresolved"
#define RW_CASES_CANCELLED "Cancelled"
#define RW_CASES_OPEN "Still open"
#define RW_CASES_LEFT "Patient left before the end"
#define RW_CASES_CLOCK "Times are no measure: clock not to be trusted, or entered from paper"
#define RW_CASES_CLOCK_NOTE "In the totals, and in no chart, week or month."

/* minutes on a digit */
#define RW_MINUTES "Minutes on a digit"
#define RW_MINUTES_HOW "The longest stretch of each digit. Median and 90th percentile by nearest rank; a tourniquet that is still on, or lay over a power cut, counts as 'at least so long' (Kaplan-Meier)."
#define RW_MINUTES_PART "Digit"
#define RW_MINUTES_N "Number"
#define RW_MINUTES_MEDIAN "Median"
#define RW_MINUTES_P90 "90th percentile"
#define RW_MINUTES_LONGEST "Longest"
#define RW_MINUTES_PAST "Past the first local reminder"
#define RW_MINUTES_ON "Still on"
#define RW_MINUTES_GAP "Over a power cut"
#define RW_MINUTES_UNIT "minutes"
#define RW_MINUTES_NO_REMINDER "For %d digits the record has no first reminder of that day: they are not among those past one." /* digits */
#define RW_MINUTES_LEFT_OUT "%d digits of cases with more than six are in no figure." /* digits */
#define RW_PART_ALL "all"
#define RW_PART_FINGER "finger"
#define RW_PART_THUMB "thumb"
#define RW_PART_TOE "toe"
#define RW_PART_OTHER "described in words"
#define RW_CHART_MINUTES "Minutes, %s" /* part */
#define RW_CHART_MINUTES_HOW "Each point is the mean logarithm of %d tourniquets, one after another, shown as minutes on a logarithmic scale: single minutes are not normal, and a chart of them would signal for nothing. Those still on or 'at least' are not in it." /* size of a group */
#define RW_CHART_MINUTES_LIMITS "Lines: mean, and mean ± 2.66 mean moving ranges of the logarithms. Signals: beyond a line, or nine in a row on one side."

/* discrepancies */
#define RW_DISCREPANCIES "Discrepancies"
#define RW_DISCREPANCIES_MIND "Fewer is not better by itself: a count that is looked at less finds less. Most retained items in published series followed a count that was called correct."
#define RW_DISCREPANCIES_CASES "Cases with a discrepancy, of those that ended with a count"
#define RW_DISCREPANCIES_CLOSED "Cases in which it was closed: found, or counted right"
#define RW_SEARCH_DONE "Search steps done"
#define RW_SEARCH_NOT_DONE "Search steps not done, with a reason"
#define RW_FOUND_WHERE "Found during this step of the search"
#define RW_FOUND_TIMES "Things"
#define RW_FOUND_BEFORE "step %d" /* number, where its words are not known */
#define RW_CHART_CASES "Cases between those with a discrepancy"
#define RW_CHART_CASES_UNIT "cases between"
#define RW_CHART_CASES_HOW "Each point: how many cases lay between one with a discrepancy and the next; the last, hollow, is not over."
#define RW_CHART_CASES_LIMITS "Lines: median and 99.865 %% quantile of the geometric distribution. High is 'rarer'."
#define RW_CHART_CASES_NO_LOW "There is no low line: events are so frequent that no single gap, not even 0, would be unusual."
#define RW_CHART_DAYS "Days between unresolved cases"
#define RW_CHART_DAYS_UNIT "days between"
#define RW_CHART_DAYS_HOW "Each point: days from one unresolved case to the next; the last, hollow, is the interval that is running, which may say 'rarer' and never 'more often'."
#define RW_CHART_DAYS_LIMITS "Lines: median, 0.135 %% and 99.865 %% quantile of the exponential distribution."
#define RW_CHART_DAYS_RUNNING "A steady one leaves a gap at least as long as the running one in %s %% of intervals." /* share */

/* unresolved */
#define RW_UNRESOLVED "Unresolved cases"
#define RW_UNRESOLVED_SHARE "Of those that ended with a count"
#define RW_UNRESOLVED_DATES "Their dates, because fewer than %d intervals make no limits: %s" /* intervals, dates */
#define RW_UNRESOLVED_NUMBERS "Incident numbers still owed"

/* slips */
#define RW_SLIPS "Slips"
#define RW_SLIPS_MIND "'Seen' is that a scanner read the paper's own code: that it came out, not that it lies in the notes."
#define RW_SLIPS_QUEUED "Slips made"
#define RW_SLIPS_SEEN "Seen"
#define RW_SLIPS_NOT_SEEN "Not seen"
#define RW_CHART_SLIPS "Share of slips not seen"
#define RW_CHART_SLIPS_UNIT "% not seen"
#define RW_CHART_SLIPS_HOW "Each point is a month, or a week where the report is of a quarter or less. Lines: the share of all, and exact binomial limits for the number of that point."

/* packs */
#define RW_PACKS "Packs with a number of their own"
#define RW_PACKS_MIND "By the labels that this station's stores made, and what was scanned at counts. What stores received, issued and wrote off is not in this record, so 'not scanned' is not 'lost': it may lie on a shelf."
#define RW_PACKS_NUMBERED "Numbers given out in these days"
#define RW_PACKS_OPENED "Scanned at a count and opened"
#define RW_PACKS_RETURNED "Returned unopened"
#define RW_PACKS_ISOLATED "Items isolated: wrong number in their pack"
#define RW_PACKS_OTHER "Received, issued, written off"
#define RW_PACKS_ROOMS "A room's packs against its cases: not known, because no issue to rooms is in this record."

/* evidence */
#define RW_EVIDENCE "Evidence by which items were accounted for"
#define RW_EVIDENCE_MARK "Mark on the item scanned"
#define RW_EVIDENCE_SHOWN "Shown"
#define RW_EVIDENCE_TYPED "Answer typed"
#define RW_EVIDENCE_MIND "A typed answer is weaker than what was scanned at the field; none of them is a look at the digit, which is apart."

/* how it was entered */
#define RW_ENTRY "How it was entered"
#define RW_ENTRY_SINGLE "Single-person count"
#define RW_ENTRY_KEYED "Cases with something typed"
#define RW_ENTRY_LATE "Cases with something entered late"
#define RW_ENTRY_OWED "Cases in which something was owed"
#define RW_ENTRY_OVERRIDDEN "Cases with an override"
#define RW_ENTRY_CORRECTED "Cases with a correction"

/* afterwards */
#define RW_AFTER "After the end, and clocks"
#define RW_AFTER_FOUND "Cases of which something was found after the end"
#define RW_AFTER_CUTS "Cases whose clocks have a gap"
#define RW_AFTER_UNFOLLOWED "Cases with an event that could not be read"
#define RW_AFTER_UNFOLLOWED_NOTE "Their figures may lack something."

/* coverage */
#define RW_COVERAGE "Coverage"
#define RW_COVERAGE_NONE "No theatre list was given (--list): nobody can tell from this record which operations were not recorded."
#define RW_COVERAGE_SPAN "The theatre list that was given last names %zu places, from %s to %s." /* count, days */
#define RW_COVERAGE_MIND "The list is a plan. More can be recorded than was planned; a share is made of neither."
#define RW_COVERAGE_MONTH "Month"
#define RW_COVERAGE_PLANNED "Planned"
#define RW_COVERAGE_RECORDED "Recorded on those days"
#define RW_COVERAGE_EMPTY "Room-days planned, none recorded"
#define RW_COVERAGE_UNPLANNED "Recorded, none planned that day"
#define RW_COVERAGE_UNKNOWN "Room-days recorded that no list has"

/* rooms */
#define RW_ROOMS "Rooms, by number"
#define RW_ROOMS_MIND "In the order of their numbers and of nothing else: with few cases any order is chance."
#define RW_ROOMS_ROOM "Room"
#define RW_ROOMS_CASES "Cases"
#define RW_ROOMS_DISCREPANCIES "With a discrepancy"
#define RW_ROOMS_UNRESOLVED "Unresolved"

/* signs */
#define RW_SIGNS "Signs of work-arounds, by room and week"
#define RW_SIGNS_MIND "They prove nothing: a quick hand, a test, a shared trolley or a slow scanner looks the same. They say where to go and look, and never at whom."
#define RW_SIGNS_WHAT "Answers: shown less than %d s after the scan before. Looks: less than %d s after the final count was agreed. Badges: two people's within %d s. Typed: %d entries within %d s. Even: %d scans in a row at intervals alike to %d ms." /* the limits */
#define RW_SIGNS_WEEK "Week of"
#define RW_SIGNS_ANSWERS "Answers"
#define RW_SIGNS_LOOKS "Looks"
#define RW_SIGNS_BADGES "Badges"
#define RW_SIGNS_TYPED "Typed"
#define RW_SIGNS_EVEN "Even"
#define RW_SIGNS_LEFT_OUT "%d further rows of the table have no place on paper: ask for fewer days." /* rows */

/* under a chart */
#define RW_CHART_NONE "No chart: there was none."
#define RW_CHART_FEW "No chart: too few yet."
#define RW_CHART_RARE "No chart: fewer than %d are expected at some point, so that its lines would signal by chance." /* expected */
#define RW_CHART_NO_LIMITS "Points only: fewer than %d intervals make no limits." /* intervals */
#define RW_CHART_LEFT_OUT "%d older ones are not shown." /* values */
#define RW_CHART_FALSE "Of charts of a steady one, so long, %s %% show at least one signal." /* share */
#define RW_CHART_SIGNALS "Signals here: %d. Each names its rule beside the point: L beyond a line, R a run of nine." /* signals */
#define RW_CHART_NO_SIGNALS "Signals here: none."

/* one case, in time order */
#define RW_PAGE_FIGURE "Figure"
#define RW_PAGE_VALUE "Value"
#define RW_PAGE_VALUES "Values of the chart"
#define RW_PAGE_AT "At"
#define RW_PAGE_LOWER "Lower limit"
#define RW_PAGE_UPPER "Upper limit"
#define RW_PAGE_SIGNAL "Signal"
#define RW_PAGE_BEYOND "beyond a limit"
#define RW_PAGE_RUN "nine in a row on one side"
#define RW_PAGE_RUNNING "not over"
#define RW_PAGE_TITLE "Finger and toe tourniquets: all reports"
#define RW_PAGE_OTHERS "Other reports"
#define RW_PAGE_ALL "All reports"
#define RW_PAGE_EARLIER "Earlier: %s"        /* which */
#define RW_PAGE_LATER "Later: %s"            /* which */
#define RW_PAGE_YEAR "The year"
#define RW_PAGE_QUARTERS "Quarters"
#define RW_PAGE_MONTHS "Months"
#define RW_PAGE_ROOMS "The year by room"
#define RW_PAGE_QUARTER "Quarter %d of %d"   /* quarter, year */
#define RW_PAGE_MADE "These reports show the record as it stood at %s. What was entered later is in none of them: ask for them again with 'bandtally board audit'." /* day and time */
#define RW_PAGE_YEAR_BESIDE "Another year: 'bandtally board audit --year %d'." /* a year */
#define RW_LEFT "%d cases left the record, the last of them for the archive %s on %s: they are in no figure and no row here. Ask for them with --file." /* cases, archive, day */
#define RW_CASE_LEFT "This case left the record for the archive %s on %s. What stands here is what stayed; ask for the whole with --file." /* archive, day */
#define RW_ARCHIVE_TITLE "Certificate: what left the record"
#define RW_ARCHIVE_ABOUT "Everything that the record held was written to this archive, sealed with the station's key, and read back from its first event to its last, before anything left. The record that goes on begins with that seal: 'bandtally audit verify' holds it to what is said here."
#define RW_ARCHIVE_SECTION "What left"
#define RW_ARCHIVE_FILE "Archive"
#define RW_ARCHIVE_LAST "Its last event"
#define RW_ARCHIVE_HASH "Hash of that"
#define RW_ARCHIVE_BEFORE "Of cases that were over before"
#define RW_ARCHIVE_YEARS "Years for which a case is kept at least, by the policy"
#define RW_ARCHIVE_CASES "Cases that left"
#define RW_ARCHIVE_EVENTS "Events that left"
#define RW_ARCHIVE_SLIPS "Slips of theirs, archived as PDF/A-1b"
#define RW_ARCHIVE_SLIP_FILES "Files of slips, one a month"
#define RW_ARCHIVE_STAYS_SECTION "What stayed"
#define RW_ARCHIVE_STAYS_OF "Of each case that left stay its number, label, opening and end, its slips' numbers, and what it used up, so that no number is given out twice, and a thing that is found or a slip that is read still finds it."
#define RW_ARCHIVE_LIST "The cases that left"
#define RW_ARCHIVE_CASE "Case"
#define RW_ARCHIVE_DAY "Opened"
#define RW_ARCHIVE_ITS_SLIPS "Slips"
#define RW_ARCHIVE_MORE "%d further cases have no place here: their numbers are those that stand in the archive and no longer in the record." /* cases */
#define RW_ARCHIVE_LEAVES "leave"
#define RW_ARCHIVE_OPEN "have not ended"
#define RW_ARCHIVE_YOUNG "are not old enough"
#define RW_ARCHIVE_UNRESOLVED "ended unresolved"
#define RW_ARCHIVE_OWED "have something owed, or a slip that was not seen"
#define RW_ARCHIVE_FOUND "have a thing that was found after their end"
#define RW_ARCHIVE_NAMED "are kept for something that was named"
#define RW_ARCHIVE_UNREAD "have an event that cannot be read or followed"
#define RW_ARCHIVE_UNSENT "are not all kept by the hospital's store"
#define RW_ARCHIVE_LEFT "have left before"
#define RW_CASE_TITLE "One case, in time order"
#define RW_CASE_OF "case %d" /* number */
#define RW_CASE_PEOPLE_PLACES "People stand by their place. With --people and a reason their names are given, and that somebody asked is recorded."
#define RW_CASE_PEOPLE_NAMES "People's names are given, for this reason, which is recorded: %s" /* reason */
#define RW_CASE_EVENTS "Every event of it"
#define RW_CASE_TIME "Time"
#define RW_CASE_WHAT "What"
#define RW_CASE_WHO "Who"
#define RW_CASE_OF_WHAT "Of what"
#define RW_CASE_HOW "How"
#define RW_CASE_KEYED "typed"
#define RW_CASE_LATE "late"
#define RW_CASE_UNDONE "taken back"
#define RW_CASE_STATION "station"
#define RW_CASE_SOMEBODY "somebody"
#define RW_CASE_OLD_WORDS "in the words of an earlier version, which may name somebody: see --people"
#define RW_CASE_MORE "%d further events have no place on paper: see --json or 'bandtally audit export'." /* events */
#define RW_CASE_DUE "Due, and not done"
#define RW_CASE_DUE_NONE "Nothing that the station asked for was left open."
#define RW_CASE_DUE_DEBT "Owed, and not paid: %s" /* what is owed */
#define RW_CASE_DUE_LOOK "Not seen bare after the final count: %s" /* digit */
#define RW_CASE_DUE_REMINDER "Reminder at %s, %s, that no badge acknowledged" /* time, digit */
#define RW_CASE_DUE_SLIP "Slip %d was not seen" /* slip */
#define RW_CASE_DUE_END "The case has not ended"

/* a trace */
#define RW_TRACE_TITLE "Trace"
#define RW_TRACE_OF_LINE "line %s" /* key */
#define RW_TRACE_OF_LOT "lot %s" /* lot, as it was scanned */
#define RW_TRACE_OF_LINE_LOT "line %s, lot %s" /* key, lot */
#define RW_TRACE_OF_ITEM "item %s" /* identity */
#define RW_TRACE_OF_BADGE "badge %d" /* number */
#define RW_TRACE_OF_OVERRIDES "overrides, late entries and corrections"
#define RW_TRACE_COMPARED "A lot is compared as it was scanned, letter for letter; one that reads much the same on its label may be another."
#define RW_TRACE_NONE "The record has none. That is no proof that there was none: what nobody scanned is not in it."
#define RW_TRACE_UNREAD "Cases with an event that cannot be read, so that it is not known whether they had it: %d (%s)." /* cases, their numbers */
#define RW_TRACE_FORWARD "Forward: where it was used"
#define RW_TRACE_BACK "Back: where it came from"
#define RW_TRACE_CASE "Case"
#define RW_TRACE_DAY "Date"
#define RW_TRACE_ROOM "Room"
#define RW_TRACE_THING "Thing"
#define RW_TRACE_NOW "Where it is now"
#define RW_TRACE_SLIPS "Slips"
#define RW_TRACE_WHAT "What"
#define RW_TRACE_LABELLED "numbers %lld to %lld given out" /* first, last */
#define RW_TRACE_QUARANTINED "quarantined: %s" /* why */
#define RW_TRACE_RELEASED "released: %s" /* why */
#define RW_TRACE_LATER "%d further rows have no place on paper: ask for less." /* rows */
#define RW_TRACE_PLACE_HERE "counted in, on the field"
#define RW_TRACE_PLACE_ON "on a digit when this was read or when the case ended"
#define RW_TRACE_PLACE_OFF "off, not accounted for"
#define RW_TRACE_PLACE_ACCOUNTED "accounted for in this case"
#define RW_TRACE_PLACE_RETURNED "returned unopened"
#define RW_TRACE_PLACE_ISOLATED "isolated: wrong number in its pack"
#define RW_TRACE_PLACE_STRUCK "struck as a misread"
#define RW_TRACE_PLACE_EXTRA "extra, at a count"
#define RW_TRACE_HEARD "When each room was last heard of"
#define RW_TRACE_HEARD_MIND "A room that recorded nothing since may have used it unseen."
#define RW_TRACE_HEARD_LAST "Last case"
#define RW_TRACE_NEVER "never"
#define RW_TRACE_WITHDRAWN "Withdrawn on %s; what it did afterwards" /* day */
#define RW_TRACE_NOT_WITHDRAWN "This badge was not withdrawn: there is no use after that."
#define RW_TRACE_SCANNERS "Which scanner read a code is not in the record, so a scanner cannot be traced."
#define RW_TRACE_OVERRIDDEN "Overridden"
#define RW_TRACE_LATE "Late"
#define RW_TRACE_CORRECTED "Corrected"
#define RW_TRACE_YES "yes"

/* a sample */
#define RW_SAMPLE_TITLE_SLIPS "Sample of slips, to be found among the papers"
#define RW_SAMPLE_TITLE_LIST "Sample of planned operations, to be found in the record"
#define RW_SAMPLE_OF "%d of %d, seed %lld" /* how many, of how many, seed */
#define RW_SAMPLE_AGAIN "The same seed and the same record, or list, draw the same ones again."
#define RW_SAMPLE_BOUND "%d of %d right still allows up to %s %% wrong (one-sided 95 %% bound, exact): it proves no more." /* n, n, share */
#define RW_SAMPLE_TICK "Tick what was found; what was not stays without a tick, and is looked for."
#define RW_SAMPLE_SLIP "Slip"
#define RW_SAMPLE_CASE "Case"
#define RW_SAMPLE_ROOM "Room"
#define RW_SAMPLE_DATE "Date"
#define RW_SAMPLE_SLOT "Slot"
#define RW_SAMPLE_RECORDED "Cases recorded that day"
#define RW_SAMPLE_STATE "The record says"
#define RW_SAMPLE_SEEN "seen"
#define RW_SAMPLE_NOT_SEEN "not seen"
#define RW_SAMPLE_VOID "no such slip"
#define RW_SAMPLE_PAPER "Paper found"
#define RW_SAMPLE_HELD "Signed and held"
#define RW_SAMPLE_FOUND "Found"
#define RW_SAMPLE_BOX "[   ]"
/* clang-format on */

#endif
