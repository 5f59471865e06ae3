/* Pages that `bandtally board --file` writes for a browser on this machine, for nobody else to read. */
#ifndef BANDTALLY_TOOL_BOARD_PAGE_H
#define BANDTALLY_TOOL_BOARD_PAGE_H

/* Leads to `address` at once. 0 or a negative errno. */
int board_page_leads(const char *file, const char *address);

/* Says in each installed language that the station is awaited, and loads itself again each second: for a wall, until what
 * leads to the board is written to the same place. Its title is the time by the browser, as that of the board. 0 or a
 * negative errno. */
int board_page_waits(const char *file);

#endif
