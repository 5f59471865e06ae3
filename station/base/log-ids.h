/* What somebody who runs the machine must hear of: a message at warning or above bears one of these ids, which a monitor
 * matches and which never changes its meaning. `bandtallyd --messages` prints the table.
 *
 * X(NAME, "id", priority as syslog(3) has it: 2 critical, 3 error, 4 warning, "what it means", "what to do")
 */
#ifndef BANDTALLY_BASE_LOG_IDS_H
#define BANDTALLY_BASE_LOG_IDS_H

/* clang-format off */
#define LOG_IDS(X) \
	X(START, "bt-start", 2, "the station cannot start", \
	  "count by hand on the paper sheet; mend what stands behind the id, try it with bandtallyd --check, start the station") \
	X(DISTRUST, "bt-distrust", 2, "the station cannot be trusted just now, and its boards say so", \
	  "let the rooms count by hand on the paper sheet; mend the reason that stands behind the id: it goes on by itself") \
	X(STORE, "bt-store", 3, "something was not entered, because the record could not take it", \
	  "make room on the disk of the data folder and see that it can be written; where that is so, bandtally report-fault") \
	X(RECORD, "bt-record", 3, "the record could not be asked, or holds something that the station cannot follow", \
	  "look at the disk's own messages; bandtally status, then bandtally audit verify and bandtally report-fault") \
	X(ASIDE, "bt-record-aside", 2, "the record could not be read: the station begins a new one", \
	  "keep the file that is named; restore the last backup (man bandtally), enter from the slips and paper what is missing") \
	X(OLDER, "bt-record-older", 3, "an older record, or another one, was put back", \
	  "go through the slips and the paper since that backup; settle it with bandtally audit settle (man bandtallyd)") \
	X(PROOF, "bt-proof", 4, "how far the record has come, or its public keys, cannot be written or read in their place", \
	  "make the folder that is named writable for the station's user") \
	X(SNAPSHOT, "bt-snapshot", 4, "the next start reads the whole record, which takes longer", \
	  "see that the data folder's disk has room; nothing is lost") \
	X(SETTINGS, "bt-settings", 4, "a settings file is wrong, or two settings contradict each other; what was sound before is used", \
	  "mend the line that is named, try it with bandtallyd --check, start the station again when no case is open") \
	X(CLOCK, "bt-clock", 4, "the wall clock cannot be right; tourniquet times go by another clock and stay right", \
	  "set the clock (timedatectl), and see that it is set after each start") \
	X(SCANNER, "bt-scanner", 4, "a scanner is lost, faulty, without a room, or not found by itself", \
	  "plug it in again; meanwhile the spare scanner; where its settings are named, mend scanners.ini") \
	X(PROGRAM, "bt-program", 4, "one of the station's programs ended, failed, or does not take what it is told; it is started again", \
	  "once is nothing; where it comes again, bandtally report-fault") \
	X(PRINTER, "bt-printer", 4, "a slip or labels wait for the printer, or were not printed", \
	  "see to the printer; bandtally print list, then bandtally print retry") \
	X(PAPER, "bt-paper", 3, "a slip or labels cannot be made", \
	  "write what the slip would say by hand; bandtally audit verify, then bandtally report-fault") \
	X(HOSPITAL, "bt-hospital", 4, "the hospital's store cannot be reached, refuses, or has other events than this station", \
	  "nothing is lost and the count goes on; mend what is named with who runs the store (hospital.md)") \
	X(LISTS, "bt-lists", 4, "an entry of the hospital's lists is not taken over, or what they said of used items is not to be had", \
	  "correct the entry in the hospital's store; or mend the disk or the owner of elsewhere.db: the count goes on") \
	X(BOARD, "bt-board", 4, "a page of the board is not as it should be, or a browser is turned away", \
	  "mend what is named: a port, a certificate, a language; the count goes on") \
	X(GUESSES, "bt-guesses", 4, "codes of slips that this station never printed are tried", \
	  "find out who holds that scanner, and what is read there") \
	X(ASKED, "bt-asked", 4, "a program at the socket does not take its answer, or the directory of groups gives none", \
	  "see to that program, or to the directory service; the count goes on") \
	X(RIGHTS, "bt-rights", 4, "the station keeps more rights on this machine than it needs", \
	  "run a kernel with Landlock (5.19 or later), under the unit that comes with the station")
/* clang-format on */

enum log_id {
#define X(name, ...) LOG_##name,
	LOG_IDS(X)
#undef X
	    LOG_ID_COUNT
};

struct log_row {
	const char *id;
	int priority;
	const char *means, *todo;
};
extern const struct log_row log_rows[LOG_ID_COUNT];

#endif
