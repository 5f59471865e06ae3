/* Which settings may stand in a report of a fault that leaves the hospital (bandtally report-fault).
 *
 * Each setting of station.ini, scanners.ini and labels.ini has a row: NUMBER and WORD may stand there, and only where the value
 * has that form; WITHHELD, what people name freely (sites, rooms, devices), addresses and paths, is said to be given and no
 * more. A new setting of station.ini is refused by its reader until it has a row. Of policy.ini the numbers are told
 * (count/policy.h), the texts withheld.
 */
#ifndef BANDTALLY_BASE_SETTINGS_TOLD_H
#define BANDTALLY_BASE_SETTINGS_TOLD_H

/* X("file", "first word of its section", "key", how it is told) */
/* clang-format off */
#define SETTINGS_TOLD(X) \
	X("station", "site", "letters", WITHHELD) \
	X("station", "site", "name", WITHHELD) \
	X("station", "site", "language", WORD) \
	X("station", "site", "telephone", WITHHELD) \
	X("station", "station", "head", WITHHELD) \
	X("station", "station", "number", NUMBER) \
	X("station", "room", "name", WITHHELD) \
	X("station", "room", "single_operator", WORD) \
	X("station", "room", "language", WORD) \
	X("station", "room", "kind", WORD) \
	X("station", "printer", "queue", WITHHELD) \
	X("station", "printer", "paper", WORD) \
	X("station", "printer", "patient_label", NUMBER) \
	X("station", "printer", "dpi", NUMBER) \
	X("station", "labels", "queue", WITHHELD) \
	X("station", "labels", "media", WITHHELD) \
	X("station", "board", "start", WORD) \
	X("station", "board", "open", WORD) \
	X("station", "board", "port", NUMBER) \
	X("station", "board", "typing", WORD) \
	X("station", "board", "volume", NUMBER) \
	X("station", "board", "quiet", NUMBER) \
	X("station", "board", "speech", WORD) \
	X("station", "board elsewhere", "start", WORD) \
	X("station", "board elsewhere", "address", WITHHELD) \
	X("station", "board elsewhere", "port", NUMBER) \
	X("station", "board elsewhere", "hosts", WITHHELD) \
	X("station", "board elsewhere", "certificate", WITHHELD) \
	X("station", "board elsewhere", "key", WITHHELD) \
	X("station", "board elsewhere", "clients", WITHHELD) \
	X("station", "board elsewhere", "revoked", WITHHELD) \
	X("station", "board elsewhere", "typing", WORD) \
	X("station", "hospital", "start", WORD) \
	X("station", "hospital", "hosts", WITHHELD) \
	X("station", "hospital", "database", WITHHELD) \
	X("station", "hospital", "certificate", WITHHELD) \
	X("station", "hospital", "key", WITHHELD) \
	X("station", "hospital", "authority", WITHHELD) \
	X("station", "hospital", "lists_hours", NUMBER) \
	X("station", "driver", "command", WITHHELD) \
	X("station", "driver", "room", NUMBER) \
	X("scanners", "scanner", "vendor", WORD) /* which model it is */ \
	X("scanners", "scanner", "product", WORD) \
	X("scanners", "scanner", "serial", WITHHELD) \
	X("scanners", "scanner", "port", WITHHELD) \
	X("scanners", "scanner", "room", NUMBER) \
	X("scanners", "scanner", "mode", WORD) \
	X("scanners", "scanner", "layout", WORD) \
	X("scanners", "scanner", "baud", NUMBER) \
	X("scanners", "scanner", "bits", NUMBER) \
	X("scanners", "scanner", "parity", WORD) \
	X("scanners", "scanner", "stop", NUMBER) \
	X("scanners", "scanner", "prefix", WITHHELD) \
	X("scanners", "scanner", "suffix", WITHHELD) \
	X("labels", "medium", "dpi", NUMBER) \
	X("labels", "medium", "label_mm", NUMBER) \
	X("labels", "medium", "sheet_mm", NUMBER) \
	X("labels", "medium", "labels", NUMBER) \
	X("labels", "medium", "first_mm", NUMBER) \
	X("labels", "medium", "step_mm", NUMBER) \
	X("labels", "medium", "shape", WORD)
/* clang-format on */

enum setting_told {
	SETTING_UNKNOWN, /* has no row */
	SETTING_WITHHELD,
	SETTING_NUMBER, /* at most 15 of digits, ' ', 'x', '.', ':' and '-'; or yes, no */
	SETTING_WORD,   /* at most 8 small letters and digits */
};

/* `section` may have a name behind its first word, as in "room 1". */
enum setting_told setting_told(const char *file, const char *section, const char *key);

/* Whether the value has the form in which it may be told. */
int setting_fits(enum setting_told told, const char *value);

#endif
