/* The subcommands of `bandtally`. Each gets its words (argv[0] is its own name) and returns an exit code of
 * base/error.h; each prints its usage for --help. */
#ifndef BANDTALLY_TOOL_TOOL_H
#define BANDTALLY_TOOL_TOOL_H

int tool_scan(int argc, char **argv);
int tool_sheet(int argc, char **argv);
int tool_board(int argc, char **argv);
int tool_status(int argc, char **argv);
int tool_case(int argc, char **argv);
int tool_catalogue(int argc, char **argv);
int tool_staff(int argc, char **argv);
int tool_stock(int argc, char **argv);
int tool_label(int argc, char **argv);
int tool_print(int argc, char **argv);
int tool_audit(int argc, char **argv);
int tool_backup(int argc, char **argv);
int tool_restore(int argc, char **argv);

#endif
