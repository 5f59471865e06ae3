/* The subcommands of `bandtally`. Each gets its words (argv[0] is its own name) and returns an exit code of
 * base/error.h; each prints its usage for --help, from which its man page is made.
 */
#ifndef BANDTALLY_TOOL_TOOL_H
#define BANDTALLY_TOOL_TOOL_H

/* X(name, "what it is for"), a row a line: config/CMakeLists.txt reads the names. People write '-' for '_'. */
/* clang-format off */
#define COMMANDS(X) \
	X(setup, "a first start: site, rooms, printer, scanner, badges") \
	X(scan, "enter a code as if it had been scanned") \
	X(sheet, "the open case of a room") \
	X(board, "an address that opens a room's page for typing, once") \
	X(status, "rooms, scanners, slips that were not seen") \
	X(case, "the cases in the record") \
	X(code, "what a barcode says, or where and why it is wrong") \
	X(catalogue, "what is counted: import, export, check") \
	X(staff, "who has a badge: add, list, withdraw") \
	X(stock, "what stores have and do: receive, label, issue, count, recall, quarantine") \
	X(label, "all that is printed before a case: cards, labels, paper count sheets, leaflets") \
	X(print, "slips on their way to paper: list, retry") \
	X(backup, "a copy of the record in a file, read back and proven") \
	X(restore, "put a backup in the place of the record; or only look at one") \
	X(audit, "verify the record, check slips against it") \
	X(report_fault, "what a developer needs to mend a fault, without a name or a code of anybody")
/* clang-format on */

#define X(name, what) int tool_##name(int argc, char **argv);
COMMANDS(X)
#undef X

#endif
