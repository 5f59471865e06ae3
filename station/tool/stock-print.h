/* `bandtally stock` where it asks and changes nothing. */
#ifndef BANDTALLY_TOOL_STOCK_PRINT_H
#define BANDTALLY_TOOL_STOCK_PRINT_H

/* Each prints for a terminal, or as JSON, and returns the exit code. `line` NULL: all lines. `lot` NULL: all lots. */
int stock_print_list(const char *line, const char *lot, int as_json);
int stock_print_earliest(const char *line, int as_json);
int stock_print_recall(const char *line, const char *lot, int as_json);
/* `since` yyyymmdd, 0 ever. */
int stock_print_shortfalls(int since, int as_json);
int stock_print_found(const char *line, int since, int as_json);

#endif
