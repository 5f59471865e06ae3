/* The sentences of a report and of the auditor's other papers: a case in time order, a trace, a sample, the certificate of what
 * left the record. The form is that of sayings.h. None is made of pieces of grammar; the words of a table stand alone.
 */
#ifndef BANDTALLY_WORDS_REPORT_WORDS_H
#define BANDTALLY_WORDS_REPORT_WORDS_H

/* clang-format off */
#define REPORT_WORDS(X, N) \
	REPORT_WHOLE(X, N) \
	REPORT_CASES(X, N) \
	REPORT_MINUTES(X, N) \
	REPORT_DISCREPANCIES(X, N) \
	REPORT_UNRESOLVED(X, N) \
	REPORT_SLIPS(X, N) \
	REPORT_PACKS(X, N) \
	REPORT_EVIDENCE(X, N) \
	REPORT_ENTRY(X, N) \
	REPORT_AFTER(X, N) \
	REPORT_COVERAGE(X, N) \
	REPORT_ROOMS(X, N) \
	REPORT_SIGNS(X, N) \
	REPORT_CHARTS(X, N) \
	REPORT_PAGES(X, N) \
	REPORT_ARCHIVES(X, N) \
	REPORT_ONE_CASE(X, N) \
	REPORT_TRACE(X, N) \
	REPORT_SAMPLE(X, N)

/* the report as a whole */
#define REPORT_WHOLE(X, N) \
	X(RW_TITLE, "report-title", "Finger and toe tourniquets: report") \
	X(RW_ALL_ROOMS, "report-all-rooms", "{first} to {second}, all rooms") \
	X(RW_ONE_ROOM, "report-one-room", "{first} to {second}, {room}") \
	X(RW_MADE_OF, "report-made-of", "Made of the record of {text} up to event {words}, hash {hash}…") \
	N(RW_MADE_OF_STATIONS, "report-made-of-stations", \
	  "Made of the hospital's copy of the record of {n} station of {text}; the last table says how far it goes", \
	  "Made of the hospital's copies of the records of {n} stations of {text}; the last table says how far each goes") \
	X(RW_STATIONS, "report-stations", "Stations") \
	X(RW_STATIONS_MIND, "report-stations-mind", \
	  "What a station has not sent yet is in no figure. A room is named with its station.") \
	X(RW_STATIONS_STATION, "report-stations-station", "Station") \
	X(RW_STATIONS_CASES, "report-stations-cases", "Cases in its record") \
	X(RW_STATIONS_SEQ, "report-stations-seq", "Up to event") \
	X(RW_STATIONS_TIME, "report-stations-time", "Its time") \
	X(RW_STATIONS_HASH, "report-stations-hash", "Hash") \
	X(RW_MADE, "report-made", "made {words}") \
	X(RW_ABOUT_RECORDED, "report-about-recorded", \
	  "It shows what was recorded. What nobody entered is in no figure of it, and no figure says that a patient came to no harm.") \
	X(RW_ABOUT_HELD_BACK, "report-about-held-back", \
	  "Nobody is named. A cell of fewer than {n} cases or {people} people is held back, and with one room the next smallest, so that it cannot be worked out: '(held back)' is not 0.") \
	X(RW_ABOUT_POLICY, "report-about-policy", \
	  "Each case is judged by the policy of its day; a reminder is a local setting and no limit.") \
	X(RW_ALL_HELD_BACK, "report-all-held-back", \
	  "Fewer than {n} cases or {people} people were recorded in these days: no figure is shown, because it could point to somebody. Ask for more days or all rooms.") \
	X(RW_NO_CASES, "report-no-cases", \
	  "No case was recorded in these days. That is not the same as no operation: see the theatre list.") \
	X(RW_HELD_BACK, "report-held-back", "(held back)") \
	X(RW_NOT_KNOWN, "report-not-known", "not known") \
	X(RW_DECIMAL, "report-decimal", ".") \
	X(RW_AT_LEAST, "report-at-least", "at least {words}") \
	X(RW_SHARE, "report-share", "{n} of {all}: {share} % (95 % interval {low} to {high} %, exact)") \
	X(RW_SHARE_NONE, "report-share-none", \
	  "0 of {all}: not proof of none; up to {high} % could still be so (one-sided 95 % bound, exact)") \
	X(RW_SHARE_OF_NOTHING, "report-share-of-nothing", "none recorded: no share")

/* cases */
#define REPORT_CASES(X, N) \
	X(RW_CASES, "report-cases", "Cases") \
	X(RW_CASES_FORCED, "report-cases-forced", \
	  "The station holds the sign-out until everything is accounted for. So the first number is no rate of success, and none is made of it.") \
	X(RW_CASES_ALL, "report-cases-all", "Recorded") \
	X(RW_CASES_RECONCILED, "report-cases-reconciled", "Ended with everything accounted for") \
	X(RW_CASES_UNRESOLVED, "report-cases-unresolved", "Ended unresolved") \
	X(RW_CASES_CANCELLED, "report-cases-cancelled", "Cancelled") \
	X(RW_CASES_OPEN, "report-cases-open", "Still open") \
	X(RW_CASES_LEFT, "report-cases-left", "Patient left before the end") \
	X(RW_CASES_CLOCK, "report-cases-clock", "Times are no measure: clock not to be trusted, or entered from paper") \
	X(RW_CASES_CLOCK_NOTE, "report-cases-clock-note", "Cases whose times are no measure are in the totals, and in no chart, week or month.")

/* minutes on a digit */
#define REPORT_MINUTES(X, N) \
	X(RW_MINUTES, "report-minutes", "Minutes on a digit") \
	X(RW_MINUTES_HOW, "report-minutes-how", \
	  "The longest stretch of each digit. Median and 90th percentile by nearest rank; a tourniquet that is still on, or lay over a power cut, counts as 'at least so long' (Kaplan-Meier).") \
	X(RW_MINUTES_PART, "report-minutes-part", "Digit") \
	X(RW_MINUTES_N, "report-minutes-n", "Number") \
	X(RW_MINUTES_MEDIAN, "report-minutes-median", "Median") \
	X(RW_MINUTES_P90, "report-minutes-p90", "90th percentile") \
	X(RW_MINUTES_LONGEST, "report-minutes-longest", "Longest") \
	X(RW_MINUTES_PAST, "report-minutes-past", "Past the first local reminder") \
	X(RW_MINUTES_ON, "report-minutes-on", "Still on") \
	X(RW_MINUTES_GAP, "report-minutes-gap", "Over a power cut") \
	X(RW_MINUTES_UNIT, "report-minutes-unit", "minutes") \
	N(RW_MINUTES_NO_REMINDER, "report-minutes-no-reminder", \
	  "For {n} digit the record has no first reminder of that day: it is not among those past one.", \
	  "For {n} digits the record has no first reminder of that day: they are not among those past one.") \
	N(RW_MINUTES_LEFT_OUT, "report-minutes-left-out", \
	  "{n} digit of a case with more than six is in no figure.", \
	  "{n} digits of cases with more than six are in no figure.") \
	X(RW_PART_ALL, "report-part-all", "all") \
	X(RW_PART_FINGER, "report-part-finger", "finger") \
	X(RW_PART_THUMB, "report-part-thumb", "thumb") \
	X(RW_PART_TOE, "report-part-toe", "toe") \
	X(RW_PART_OTHER, "report-part-other", "described in words") \
	X(RW_CHART_MINUTES, "report-chart-minutes", "Minutes, {what}") \
	X(RW_CHART_MINUTES_HOW, "report-chart-minutes-how", \
	  "Each point is the mean logarithm of {n} tourniquets, one after another, shown as minutes on a logarithmic scale: single minutes are not normal, and a chart of them would signal for nothing. Those still on or 'at least' are not in it.") \
	X(RW_CHART_MINUTES_LIMITS, "report-chart-minutes-limits", \
	  "Lines: mean, and mean ± 2.66 mean moving ranges of the logarithms. Signals: beyond a line, or nine in a row on one side.")

/* discrepancies */
#define REPORT_DISCREPANCIES(X, N) \
	X(RW_DISCREPANCIES, "report-discrepancies", "Discrepancies") \
	X(RW_DISCREPANCIES_MIND, "report-discrepancies-mind", \
	  "Fewer is not better by itself: a count that is looked at less finds less. Most retained items in published series followed a count that was called correct.") \
	X(RW_DISCREPANCIES_CASES, "report-discrepancies-cases", "Cases with a discrepancy, of those that ended with a count") \
	X(RW_DISCREPANCIES_CLOSED, "report-discrepancies-closed", "Cases in which it was closed: found, or counted right") \
	X(RW_SEARCH_DONE, "report-search-done", "Search steps done") \
	X(RW_SEARCH_NOT_DONE, "report-search-not-done", "Search steps entered as not done") \
	X(RW_FOUND_WHERE, "report-found-where", "Found during this step of the search") \
	X(RW_FOUND_TIMES, "report-found-times", "Things") \
	X(RW_FOUND_BEFORE, "report-found-before", "step {n}") \
	X(RW_CHART_CASES, "report-chart-cases", "Cases between those with a discrepancy") \
	X(RW_CHART_CASES_UNIT, "report-chart-cases-unit", "cases between") \
	X(RW_CHART_CASES_HOW, "report-chart-cases-how", \
	  "Each point: how many cases lay between one with a discrepancy and the next; the last, hollow, is not over.") \
	X(RW_CHART_CASES_LIMITS, "report-chart-cases-limits", \
	  "Lines: median and 99.865 % quantile of the geometric distribution. High is 'rarer'.") \
	X(RW_CHART_CASES_NO_LOW, "report-chart-cases-no-low", \
	  "There is no low line: events are so frequent that no single gap, not even 0, would be unusual.") \
	X(RW_CHART_DAYS, "report-chart-days", "Days between unresolved cases") \
	X(RW_CHART_DAYS_UNIT, "report-chart-days-unit", "days between") \
	X(RW_CHART_DAYS_HOW, "report-chart-days-how", \
	  "Each point: days from one unresolved case to the next; the last, hollow, is the interval that is running, which may say 'rarer' and never 'more often'.") \
	X(RW_CHART_DAYS_LIMITS, "report-chart-days-limits", \
	  "Lines: median, 0.135 % and 99.865 % quantile of the exponential distribution.") \
	X(RW_CHART_DAYS_RUNNING, "report-chart-days-running", \
	  "A steady one leaves a gap at least as long as the running one in {share} % of intervals.")

/* unresolved */
#define REPORT_UNRESOLVED(X, N) \
	X(RW_UNRESOLVED, "report-unresolved", "Unresolved cases") \
	X(RW_UNRESOLVED_SHARE, "report-unresolved-share", "Of those that ended with a count") \
	X(RW_UNRESOLVED_DATES, "report-unresolved-dates", "Their dates, because fewer than {n} intervals make no limits: {list}") \
	X(RW_UNRESOLVED_NUMBERS, "report-unresolved-numbers", "Incident numbers still owed")

/* slips */
#define REPORT_SLIPS(X, N) \
	X(RW_SLIPS, "report-slips", "Slips") \
	X(RW_SLIPS_MIND, "report-slips-mind", \
	  "'Seen' is that a scanner read the paper's own code: that it came out, not that it lies in the notes.") \
	X(RW_SLIPS_QUEUED, "report-slips-queued", "Slips made") \
	X(RW_SLIPS_SEEN, "report-slips-seen", "Seen") \
	X(RW_SLIPS_NOT_SEEN, "report-slips-not-seen", "Not seen") \
	X(RW_CHART_SLIPS, "report-chart-slips", "Share of slips not seen") \
	X(RW_CHART_SLIPS_UNIT, "report-chart-slips-unit", "% not seen") \
	X(RW_CHART_SLIPS_HOW, "report-chart-slips-how", \
	  "Each point is a month, or a week where the report is of a quarter or less. Lines: the share of all, and exact binomial limits for the number of that point.")

/* packs */
#define REPORT_PACKS(X, N) \
	X(RW_PACKS, "report-packs", "Packs with a number of their own") \
	X(RW_PACKS_MIND, "report-packs-mind", \
	  "By the labels that this station's stores made, and what was scanned at counts. What stores received, issued and wrote off is not counted here, so 'not scanned' is not 'lost': it may lie on a shelf.") \
	X(RW_PACKS_NUMBERED, "report-packs-numbered", "Numbers given out in these days") \
	X(RW_PACKS_OPENED, "report-packs-opened", "Scanned at a count and opened") \
	X(RW_PACKS_RETURNED, "report-packs-returned", "Returned unopened") \
	X(RW_PACKS_ISOLATED, "report-packs-isolated", "Items isolated: wrong number in their pack") \
	X(RW_PACKS_OTHER, "report-packs-other", "Received, issued, written off") \
	X(RW_PACKS_ROOMS, "report-packs-rooms", \
	  "A room's packs against its cases: not counted here: see 'bandtally stock list'.")

/* evidence */
#define REPORT_EVIDENCE(X, N) \
	X(RW_EVIDENCE, "report-evidence", "Evidence by which items were accounted for") \
	X(RW_EVIDENCE_MARK, "report-evidence-mark", "Mark on the item scanned") \
	X(RW_EVIDENCE_SHOWN, "report-evidence-shown", "Shown") \
	X(RW_EVIDENCE_TYPED, "report-evidence-typed", "Answer typed") \
	X(RW_EVIDENCE_MIND, "report-evidence-mind", \
	  "A typed answer is weaker than what was scanned at the field; none of them is a look at the digit, which is apart.")

/* how it was entered */
#define REPORT_ENTRY(X, N) \
	X(RW_ENTRY, "report-entry", "How it was entered") \
	X(RW_ENTRY_SINGLE, "report-entry-single", "Single-person count") \
	X(RW_ENTRY_KEYED, "report-entry-keyed", "Cases with something typed") \
	X(RW_ENTRY_LATE, "report-entry-late", "Cases with something entered late") \
	X(RW_ENTRY_OWED, "report-entry-owed", "Cases in which something was owed") \
	X(RW_ENTRY_OVERRIDDEN, "report-entry-overridden", "Cases with an override") \
	X(RW_ENTRY_CORRECTED, "report-entry-corrected", "Cases with a correction")

/* afterwards */
#define REPORT_AFTER(X, N) \
	X(RW_AFTER, "report-after", "After the end, and clocks") \
	X(RW_AFTER_FOUND, "report-after-found", "Cases of which something was found after the end") \
	X(RW_AFTER_CUTS, "report-after-cuts", "Cases whose clocks have a gap") \
	X(RW_AFTER_UNFOLLOWED, "report-after-unfollowed", "Cases with an event that could not be read") \
	X(RW_AFTER_UNFOLLOWED_NOTE, "report-after-unfollowed-note", "Figures of cases with an event that could not be read may lack something.")

/* coverage */
#define REPORT_COVERAGE(X, N) \
	X(RW_COVERAGE, "report-coverage", "Coverage") \
	X(RW_COVERAGE_NONE, "report-coverage-none", \
	  "No theatre list was given (--list): nobody can tell from this record which operations were not recorded.") \
	X(RW_COVERAGE_SPAN, "report-coverage-span", \
	  "Places on the theatre list that was given last: {n}, from {first} to {second}.") \
	X(RW_COVERAGE_MIND, "report-coverage-mind", \
	  "The list is a plan. More can be recorded than was planned; a share is made of neither.") \
	X(RW_COVERAGE_MONTH, "report-coverage-month", "Month") \
	X(RW_COVERAGE_PLANNED, "report-coverage-planned", "Planned") \
	X(RW_COVERAGE_RECORDED, "report-coverage-recorded", "Recorded on those days") \
	X(RW_COVERAGE_EMPTY, "report-coverage-empty", "Room-days planned, none recorded") \
	X(RW_COVERAGE_UNPLANNED, "report-coverage-unplanned", "Recorded, none planned that day") \
	X(RW_COVERAGE_UNKNOWN, "report-coverage-unknown", "Room-days recorded that no list has")

/* rooms */
#define REPORT_ROOMS(X, N) \
	X(RW_ROOMS, "report-rooms", "Rooms, by number") \
	X(RW_ROOMS_MIND, "report-rooms-mind", \
	  "In the order of their numbers and of nothing else: with few cases any order is chance.") \
	X(RW_ROOMS_ROOM, "report-rooms-room", "Room") \
	X(RW_ROOMS_CASES, "report-rooms-cases", "Cases") \
	X(RW_ROOMS_DISCREPANCIES, "report-rooms-discrepancies", "With a discrepancy") \
	X(RW_ROOMS_UNRESOLVED, "report-rooms-unresolved", "Unresolved")

/* signs */
#define REPORT_SIGNS(X, N) \
	X(RW_SIGNS, "report-signs", "Signs of work-arounds, by room and week") \
	X(RW_SIGNS_MIND, "report-signs-mind", \
	  "They prove nothing: a quick hand, a test, a shared trolley or a slow scanner looks the same. They say where to go and look, and never at whom.") \
	X(RW_SIGNS_FAST, "report-signs-fast", "Answers: shown less than {limit} s after the scan before.") \
	X(RW_SIGNS_LOOK, "report-signs-look", "Looks: less than {limit} s after the final count was agreed.") \
	X(RW_SIGNS_CLOSE, "report-signs-close", "Badges: two people's within {limit} s.") \
	X(RW_SIGNS_BURST, "report-signs-burst", "Typed: {n} entries within {limit} s.") \
	X(RW_SIGNS_ALIKE, "report-signs-alike", "Even: {n} scans in a row at intervals alike to {limit} ms.") \
	X(RW_SIGNS_WEEK, "report-signs-week", "Week of") \
	X(RW_SIGNS_ANSWERS, "report-signs-answers", "Answers") \
	X(RW_SIGNS_LOOKS, "report-signs-looks", "Looks") \
	X(RW_SIGNS_BADGES, "report-signs-badges", "Badges") \
	X(RW_SIGNS_TYPED, "report-signs-typed", "Typed") \
	X(RW_SIGNS_EVEN, "report-signs-even", "Even") \
	N(RW_SIGNS_LEFT_OUT, "report-signs-left-out", \
	  "{n} further row of the table has no place on paper: ask for fewer days.", \
	  "{n} further rows of the table have no place on paper: ask for fewer days.")

/* under a chart */
#define REPORT_CHARTS(X, N) \
	X(RW_CHART_NONE, "report-chart-none", "No chart: there was none.") \
	X(RW_CHART_FEW, "report-chart-few", "No chart: too few yet.") \
	X(RW_CHART_RARE, "report-chart-rare", \
	  "No chart: fewer than {n} are expected at some point, so that its lines would signal by chance.") \
	X(RW_CHART_NO_LIMITS, "report-chart-no-limits", "Points only: fewer than {n} intervals make no limits.") \
	N(RW_CHART_LEFT_OUT, "report-chart-left-out", \
	  "{n} older one is not shown.", \
	  "{n} older ones are not shown.") \
	X(RW_CHART_FALSE, "report-chart-false", \
	  "Of charts of a steady one, so long, {share} % show at least one signal.") \
	X(RW_CHART_SIGNALS, "report-chart-signals", \
	  "Signals here: {n}. Each names its rule beside the point: L beyond a line, R a run of nine.") \
	X(RW_CHART_NO_SIGNALS, "report-chart-no-signals", "Signals here: none.") \
	X(RW_CHART_CENTRE, "report-chart-centre", "centre") \
	X(RW_CHART_LOWER, "report-chart-lower", "lower") \
	X(RW_CHART_UPPER, "report-chart-upper", "upper")

/* a report as a page */
#define REPORT_PAGES(X, N) \
	X(RW_PAGE_FIGURE, "report-page-figure", "Figure") \
	X(RW_PAGE_VALUE, "report-page-value", "Value") \
	X(RW_PAGE_VALUES, "report-page-values", "Values of the chart") \
	X(RW_PAGE_AT, "report-page-at", "At") \
	X(RW_PAGE_LOWER, "report-page-lower", "Lower limit") \
	X(RW_PAGE_UPPER, "report-page-upper", "Upper limit") \
	X(RW_PAGE_SIGNAL, "report-page-signal", "Signal") \
	X(RW_PAGE_BEYOND, "report-page-beyond", "beyond a limit") \
	X(RW_PAGE_RUN, "report-page-run", "nine in a row on one side") \
	X(RW_PAGE_RUNNING, "report-page-running", "not over") \
	X(RW_PAGE_TITLE, "report-page-title", "Finger and toe tourniquets: all reports") \
	X(RW_PAGE_OTHERS, "report-page-others", "Other reports") \
	X(RW_PAGE_ALL, "report-page-all", "All reports") \
	X(RW_PAGE_EARLIER, "report-page-earlier", "Earlier: {words}") \
	X(RW_PAGE_LATER, "report-page-later", "Later: {words}") \
	X(RW_PAGE_YEAR, "report-page-year", "The year") \
	X(RW_PAGE_QUARTERS, "report-page-quarters", "Quarters") \
	X(RW_PAGE_MONTHS, "report-page-months", "Months") \
	X(RW_PAGE_ROOMS, "report-page-rooms", "The year by room") \
	X(RW_PAGE_QUARTER, "report-page-quarter", "Quarter {n} of {year}") \
	X(RW_PAGE_MADE, "report-page-made", \
	  "These reports show the record as it stood at {words}. What was entered later is in none of them: ask for them again with 'bandtally board audit'.") \
	X(RW_PAGE_YEAR_BESIDE, "report-page-year-beside", "Another year: 'bandtally board audit --year {year}'.")

/* what left the record */
#define REPORT_ARCHIVES(X, N) \
	N(RW_LEFT, "report-left", \
	  "{n} case left the record, for the archive {text} on {first}: it is in no figure and no row here. Ask for it with --file.", \
	  "{n} cases left the record, the last of them for the archive {text} on {first}: they are in no figure and no row here. Ask for them with --file.") \
	X(RW_CASE_LEFT, "report-case-left", \
	  "This case left the record for the archive {text} on {first}. What stands here is what stayed; ask for the whole with --file.") \
	X(RW_ARCHIVE_OF, "report-archive-period", "{text}") \
	X(RW_ARCHIVE_TITLE, "report-archive-title", "Certificate: what left the record") \
	X(RW_ARCHIVE_ABOUT, "report-archive-about", \
	  "Everything that the record held was written to this archive, sealed with the station's key, and read back from its first event to its last, before anything left. The record that goes on begins with that seal: 'bandtally audit verify' holds it to what is said here.") \
	X(RW_ARCHIVE_SECTION, "report-archive-section", "What left") \
	X(RW_ARCHIVE_FILE, "report-archive-file", "Archive") \
	X(RW_ARCHIVE_LAST, "report-archive-last", "Its last event") \
	X(RW_ARCHIVE_HASH, "report-archive-hash", "Hash of that") \
	X(RW_ARCHIVE_BEFORE, "report-archive-before", "Of cases that were over before") \
	X(RW_ARCHIVE_YEARS, "report-archive-years", "Years for which a case is kept at least, by the policy") \
	X(RW_ARCHIVE_CASES, "report-archive-cases", "Cases that left") \
	X(RW_ARCHIVE_EVENTS, "report-archive-events", "Events that left") \
	X(RW_ARCHIVE_SLIPS, "report-archive-slips", "Slips of theirs, archived as PDF/A-1b") \
	X(RW_ARCHIVE_SLIP_FILES, "report-archive-slip-files", "Files of slips, one a month") \
	X(RW_ARCHIVE_STAYS_SECTION, "report-archive-stays-section", "What stayed") \
	X(RW_ARCHIVE_STAYS_OF, "report-archive-stays-of", \
	  "Of each case that left stay its number, label, opening and end, its slips' numbers, and what it used up, so that no number is given out twice, and a thing that is found or a slip that is read still finds it.") \
	X(RW_ARCHIVE_LIST, "report-archive-list", "The cases that left") \
	X(RW_ARCHIVE_CASE, "report-archive-case", "Case") \
	X(RW_ARCHIVE_DAY, "report-archive-day", "Opened") \
	X(RW_ARCHIVE_ITS_SLIPS, "report-archive-its-slips", "Slips") \
	N(RW_ARCHIVE_MORE, "report-archive-more", \
	  "{n} further case has no place here: its number stands in the archive and no longer in the record.", \
	  "{n} further cases have no place here: their numbers are those that stand in the archive and no longer in the record.") \
	X(RW_ARCHIVE_LEAVES, "report-archive-leaves", "leave") \
	X(RW_ARCHIVE_OPEN, "report-archive-open", "have not ended") \
	X(RW_ARCHIVE_YOUNG, "report-archive-young", "are not old enough") \
	X(RW_ARCHIVE_UNRESOLVED, "report-archive-unresolved", "ended unresolved") \
	X(RW_ARCHIVE_OWED, "report-archive-owed", "have something owed, or a slip that was not seen") \
	X(RW_ARCHIVE_FOUND, "report-archive-found", "have a thing that was found after their end") \
	X(RW_ARCHIVE_NAMED, "report-archive-named", "are kept for something that was named") \
	X(RW_ARCHIVE_UNREAD, "report-archive-unread", "have an event that cannot be read or followed") \
	X(RW_ARCHIVE_UNSENT, "report-archive-unsent", "are not all kept by the hospital's store") \
	X(RW_ARCHIVE_LEFT, "report-archive-left", "have left before")

/* one case, in time order */
#define REPORT_ONE_CASE(X, N) \
	X(RW_CASE_TITLE, "report-case-title", "One case, in time order") \
	X(RW_CASE_OF, "report-case-of", "case {case}") \
	X(RW_CASE_PEOPLE_PLACES, "report-case-people-places", \
	  "People stand by their place. With --people and a reason their names are given, and that somebody asked is recorded.") \
	X(RW_CASE_PEOPLE_NAMES, "report-case-people-names", "People's names are given, for this reason, which is recorded: {reason}") \
	X(RW_CASE_EVENTS, "report-case-events", "Every event of it") \
	X(RW_CASE_TIME, "report-case-time", "Time") \
	X(RW_CASE_WHAT, "report-case-what", "What") \
	X(RW_CASE_WHO, "report-case-who", "Who") \
	X(RW_CASE_OF_WHAT, "report-case-of-what", "Of what") \
	X(RW_CASE_HOW, "report-case-how", "How") \
	X(RW_CASE_KEYED, "report-case-keyed", "typed") \
	X(RW_CASE_LATE, "report-case-late", "late") \
	X(RW_CASE_UNDONE, "report-case-undone", "taken back") \
	X(RW_CASE_STATION, "report-case-station", "station") \
	X(RW_CASE_SOMEBODY, "report-case-somebody", "somebody") \
	X(RW_CASE_OLD_WORDS, "report-case-old-words", \
	  "in the words of an earlier version, which may name somebody: see --people") \
	N(RW_CASE_MORE, "report-case-more", \
	  "{n} further event has no place on paper: see --json or 'bandtally audit export'.", \
	  "{n} further events have no place on paper: see --json or 'bandtally audit export'.") \
	X(RW_CASE_DUE, "report-case-due", "Due, and not done") \
	X(RW_CASE_DUE_NONE, "report-case-due-none", "Nothing that the station asked for was left open.") \
	X(RW_CASE_DUE_DEBT, "report-case-due-debt", "Owed, and not paid: {words}") \
	X(RW_CASE_DUE_LOOK, "report-case-due-look", "Not seen bare after the final count: {digit}") \
	X(RW_CASE_DUE_REMINDER, "report-case-due-reminder", "Reminder at {time}, {digit}, that no badge acknowledged") \
	X(RW_CASE_DUE_SLIP, "report-case-due-slip", "Slip {slip} was not seen") \
	X(RW_CASE_DUE_END, "report-case-due-end", "The case has not ended")

/* a trace */
#define REPORT_TRACE(X, N) \
	X(RW_TRACE_TITLE, "report-trace-title", "Trace") \
	X(RW_TRACE_OF_LINE, "report-trace-of-line", "line {key}") \
	X(RW_TRACE_OF_LOT, "report-trace-of-lot", "lot {lot}") \
	X(RW_TRACE_OF_LINE_LOT, "report-trace-of-line-lot", "line {key}, lot {lot}") \
	X(RW_TRACE_OF_ITEM, "report-trace-of-item", "item {identity}") \
	X(RW_TRACE_OF_BADGE, "report-trace-of-badge", "badge {badge}") \
	X(RW_TRACE_OF_OVERRIDES, "report-trace-of-overrides", "overrides, late entries and corrections") \
	X(RW_TRACE_COMPARED, "report-trace-compared", \
	  "A lot is compared as it was scanned, letter for letter; one that reads much the same on its label may be another.") \
	X(RW_TRACE_NONE, "report-trace-none", \
	  "The record has none. That is no proof that there was none: what nobody scanned is not in it.") \
	X(RW_TRACE_UNREAD, "report-trace-unread", \
	  "Cases with an event that cannot be read, so that it is not known whether they had it: {n} ({list}).") \
	X(RW_TRACE_FORWARD, "report-trace-forward", "Forward: where it was used") \
	X(RW_TRACE_BACK, "report-trace-back", "Back: where it came from") \
	X(RW_TRACE_CASE, "report-trace-case", "Case") \
	X(RW_TRACE_DAY, "report-trace-day", "Date") \
	X(RW_TRACE_ROOM, "report-trace-room", "Room") \
	X(RW_TRACE_THING, "report-trace-thing", "Thing") \
	X(RW_TRACE_NOW, "report-trace-now", "Where it is now") \
	X(RW_TRACE_SLIPS, "report-trace-slips", "Slips") \
	X(RW_TRACE_WHAT, "report-trace-what", "What") \
	X(RW_TRACE_LABELLED, "report-trace-labelled", "numbers {item_number} to {last_number} given out") \
	X(RW_TRACE_QUARANTINED, "report-trace-quarantined", "quarantined: {reason}") \
	X(RW_TRACE_RELEASED, "report-trace-released", "released: {reason}") \
	N(RW_TRACE_LATER, "report-trace-later", \
	  "{n} further row has no place on paper: ask for less.", \
	  "{n} further rows have no place on paper: ask for less.") \
	X(RW_TRACE_PLACE_HERE, "report-trace-place-here", "counted in, on the field") \
	X(RW_TRACE_PLACE_ON, "report-trace-place-on", "on a digit when this was read or when the case ended") \
	X(RW_TRACE_PLACE_OFF, "report-trace-place-off", "off, not accounted for") \
	X(RW_TRACE_PLACE_ACCOUNTED, "report-trace-place-accounted", "accounted for in this case") \
	X(RW_TRACE_PLACE_RETURNED, "report-trace-place-returned", "returned unopened") \
	X(RW_TRACE_PLACE_ISOLATED, "report-trace-place-isolated", "isolated: wrong number in its pack") \
	X(RW_TRACE_PLACE_STRUCK, "report-trace-place-struck", "struck from the sheet") \
	X(RW_TRACE_PLACE_EXTRA, "report-trace-place-extra", "extra, at a count") \
	X(RW_TRACE_HEARD, "report-trace-heard", "When each room was last heard of") \
	X(RW_TRACE_HEARD_MIND, "report-trace-heard-mind", "A room that recorded nothing since may have used it unseen.") \
	X(RW_TRACE_HEARD_LAST, "report-trace-heard-last", "Last case") \
	X(RW_TRACE_NEVER, "report-trace-never", "never") \
	X(RW_TRACE_WITHDRAWN, "report-trace-withdrawn", "Withdrawn on {first}; what it did afterwards") \
	X(RW_TRACE_NOT_WITHDRAWN, "report-trace-not-withdrawn", "This badge was not withdrawn: there is no use after that.") \
	X(RW_TRACE_NEVER_GIVEN, "report-trace-never-given", "The record has no badge of this number: look at the number.") \
	X(RW_TRACE_SCANNERS, "report-trace-scanners", \
	  "Which scanner read a code is not in the record, so a scanner cannot be traced.") \
	X(RW_TRACE_OVERRIDDEN, "report-trace-overridden", "Overridden") \
	X(RW_TRACE_LATE, "report-trace-late", "Late") \
	X(RW_TRACE_CORRECTED, "report-trace-corrected", "Corrected") \
	X(RW_TRACE_YES, "report-trace-yes", "yes")

/* a sample */
#define REPORT_SAMPLE(X, N) \
	X(RW_SAMPLE_TITLE_SLIPS, "report-sample-title-slips", "Sample of slips, to be found among the papers") \
	X(RW_SAMPLE_TITLE_LIST, "report-sample-title-list", "Sample of planned operations, to be found in the record") \
	X(RW_SAMPLE_OF, "report-sample-of", "{n} of {all}, seed {words}") \
	X(RW_SAMPLE_AGAIN, "report-sample-again", "The same seed and the same record, or list, draw the same ones again.") \
	X(RW_SAMPLE_BOUND, "report-sample-bound", \
	  "{n} of {n} right still allows up to {share} % wrong (one-sided 95 % bound, exact): it proves no more.") \
	X(RW_SAMPLE_TICK, "report-sample-tick", \
	  "Tick what was found; what was not stays without a tick, and is looked for.") \
	X(RW_SAMPLE_SLIP, "report-sample-slip", "Slip") \
	X(RW_SAMPLE_CASE, "report-sample-case", "Case") \
	X(RW_SAMPLE_ROOM, "report-sample-room", "Room") \
	X(RW_SAMPLE_DATE, "report-sample-date", "Date") \
	X(RW_SAMPLE_SLOT, "report-sample-slot", "Slot") \
	X(RW_SAMPLE_RECORDED, "report-sample-recorded", "Cases recorded that day") \
	X(RW_SAMPLE_STATE, "report-sample-state", "The record says") \
	X(RW_SAMPLE_SEEN, "report-sample-seen", "seen") \
	X(RW_SAMPLE_NOT_SEEN, "report-sample-not-seen", "not seen") \
	X(RW_SAMPLE_VOID, "report-sample-void", "no such slip") \
	X(RW_SAMPLE_PAPER, "report-sample-paper", "Paper found") \
	X(RW_SAMPLE_HELD, "report-sample-held", "Signed and held") \
	X(RW_SAMPLE_FOUND, "report-sample-found", "Found")
/* clang-format on */

#endif
