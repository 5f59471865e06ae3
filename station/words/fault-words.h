/* Why the station cannot be trusted, and what is wrong with it, as boards and `bandtally status` say it. After a doubt whoever
 * shows it says to count by hand, so no sentence here does. The form is that of sayings.h; no record holds these.
 */
#ifndef BANDTALLY_WORDS_FAULT_WORDS_H
#define BANDTALLY_WORDS_FAULT_WORDS_H

/* clang-format off */
#define FAULT_WORDS(X, N) \
	DOUBTS(X, N) \
	FAULTS(X, N) \
	WAITS(X, N)

#define DOUBTS(X, N) \
	X(DOUBT_ASIDE, "doubt-aside", \
	  "The record could not be read and lies in {text}; the station works on a new one. Have whoever looks after the station take that file out of the data folder.") \
	X(DOUBT_DIVERGED, "doubt-diverged", \
	  "The station could not follow its own record at event {event} ({text}). Restart it when no case is open.") \
	X(DOUBT_STOPPED, "doubt-stopped", "The station was stopped by its administrator with a case open.") \
	X(DOUBT_STORAGE, "doubt-storage", "The station {fault}.") \
	/* events that it could not follow */ \
	X(UNFOLLOWED, "unfollowed", "{list} could not be followed") \
	X(DOUBT_UNFOLLOWED, "doubt-unfollowed", "{list} could not be followed. Tell whoever looks after the station.") \
	X(DOUBT_UNFOLLOWED_CASE, "doubt-unfollowed-case", "{list} could not be followed.") \
	X(UNFOLLOWED_EVENT, "unfollowed-event", "event {event} ({text})") \
	X(UNFOLLOWED_OF_CASE, "unfollowed-of-case", "event {event} ({text}) of case {case}") \
	/* it works on another record than before: why, and what is to be done */ \
	X(BEGUN_BEHIND, "begun-behind", "An older record was put back.") \
	X(BEGUN_OTHER, "begun-other", "Another record was put in place of the station's.") \
	X(BEGUN_NO_HEAD, "begun-no-head", \
	  "Nothing says whether this is the station's latest record: its head file is gone.") \
	X(BEGUN_PAPER, "begun-paper", "A paper is newer than the record: an older one was put back.") \
	X(BEGUN_ELSE, "begun-else", "The station works on another record than before.") \
	X(DOUBT_BEGUN, "doubt-begun", \
	  "{what} What this record lacks the station does not know: look at the last papers, then 'bandtally audit settle {event} WHAT'.") \
	X(DOUBT_BEGUN_AT, "doubt-begun-at", \
	  "{what} The one before had come to event {other_event}. What this record lacks the station does not know: look at the last papers, then 'bandtally audit settle {event} WHAT'.")

#define FAULTS(X, N) \
	X(KEY_WAS_DAMAGED, "key-was-damaged", \
	  "The station's key was damaged and lies aside as station.key-damaged.") \
	X(KEY_WAS_LOST, "key-was-lost", "The station's key was lost.") \
	X(KEY_IS_ANOTHER, "key-is-another", "The station's key is another than before.") \
	X(FAULT_KEY, "fault-key", \
	  "{what} Slips are signed with another from event {event} on. Find out who did it; restore the old one, or keep its public part for old slips; then 'bandtally audit settle {event} WHAT'.") \
	X(FAULT_KEY_READ, "fault-key-read", \
	  "Other users of this machine can read the station's key, and could sign slips as this station: make it readable for its owner alone (chmod 600 station.key).") \
	X(FAULT_KEY_LINK, "fault-key-link", \
	  "The station's key is a symbolic link, and others may own what it names: put the file itself into the data folder.") \
	X(FAULT_HEAD, "fault-head", \
	  "How far the record has come cannot be noted in {text}: {fault}. An older record would not be noticed: check that folder.") \
	X(FAULT_SETTINGS_KEPT, "fault-settings-kept", \
	  "{fault}. Until it is mended the station works with the settings that it had before.") \
	X(FAULT_SETTINGS_NONE, "fault-settings-none", \
	  "{fault}. There are no earlier settings: until it is mended the station works with one room, and with the policy as it is shipped.") \
	X(FAULT_SCANNERS_NONE, "fault-scanners-none", \
	  "{fault}. There is no earlier list of scanners: until it is mended those that it lists are not known; type the codes, or count by hand.") \
	X(FAULT_MEDIA, "fault-media", "{fault}. Until it is mended no labels are printed on what it describes.") \
	X(FAULT_SENSE, "fault-sense", "{fault}. The count goes on all the same.") \
	X(FAULT_SITE_CHANGED, "fault-site-changed", \
	  "Since this start the station is of site {site}; it was of site {text}: every badge, card and label printed before is refused. Print them anew; or, if it is not meant, put [site] letters = {text} back into station.ini.") \
	X(FAULT_NUMBER_CHANGED, "fault-number-changed", \
	  "Since this start this is station {n} of its site; it was station {text}: papers and labels printed before are another station's. If it is not meant, put [station] number = {text} back into station.ini.") \
	X(FAULT_PAPER_OWED, "fault-paper-owed", \
	  "Paper sheet {n} of {room} is owed: scan its code and enter it; if it was not used, scan {card} behind its code.") \
	X(FAULT_ROOM_GONE, "fault-room-gone", \
	  "Room {n} is not in station.ini, but case {case} is open there: count by hand there, and put the room back into station.ini.") \
	X(FAULT_ROOM_GONE_ON, "fault-room-gone-on", \
	  "Room {n} is not in station.ini, but case {case} is open there, with a tourniquet on: {list}. Count by hand there, and put the room back into station.ini.") \
	X(FAULT_ROOM_STORES, "fault-room-stores", \
	  "Room {n} is a stores bench in station.ini, but case {case} is open there: it goes on as a room of cases until that has ended. If it is not meant, put kind = cases back.") \
	X(FAULT_ROOM_STORES_ON, "fault-room-stores-on", \
	  "Room {n} is a stores bench in station.ini, but case {case} is open there, with a tourniquet on: {list}. It goes on as a room of cases until that has ended. If it is not meant, put kind = cases back.") \
	X(FAULT_ROOM_AUDIT, "fault-room-audit", \
	  "Room {n} is an auditor's desk in station.ini, but case {case} is open there: it goes on as a room of cases until that has ended. If it is not meant, put kind = cases back.") \
	X(FAULT_ROOM_AUDIT_ON, "fault-room-audit-on", \
	  "Room {n} is an auditor's desk in station.ini, but case {case} is open there, with a tourniquet on: {list}. It goes on as a room of cases until that has ended. If it is not meant, put kind = cases back.") \
	X(ROOM_GONE_DIGIT, "room-gone-digit", "{digit}, {what}") \
	X(ROOM_NAMELESS, "room-nameless", "a room that is not in station.ini") \
	X(FAULT_LISTS_OLD, "fault-lists-old", \
	  "The hospital's lists of recalls, staff and catalogue are {n} h old: ask stores before something new is used.") \
	X(FAULT_LISTS_NEVER, "fault-lists-never", \
	  "The hospital's lists of recalls, staff and catalogue were never received here: ask stores before something is used.") \
	X(FAULT_PRINTING, "fault-printing", "Printing slip {slip}: {why}.") \
	X(FAULT_LABELS, "fault-labels", \
	  "Printing labels {item_number} to {last_number}: {why}. Those that do not come out: PRINT LABELS, then YES.") \
	/* in a driver's own words */ \
	X(FAULT_SCANNER, "fault-scanner", "Scanner {scanner} of {room}: {fault}.") \
	X(FAULT_SCANNER_NO_ROOM, "fault-scanner-no-room", "Scanner {scanner}: {fault}.") \
	X(SCANNER_IS_CHECKED, "scanner-is-checked", \
	  "is being checked: nothing but cards, badges and digits is taken from it")

/* What waits for the end of the case, which nobody has to do anything about (run/machine.h). */
#define WAITS(X, N) \
	X(WAITS_UPDATE, "waits-update", "An update waits until no case is open.") \
	X(WAITS_RESTART, "waits-restart", "A restart waits until no case is open.")
/* clang-format on */

#endif
