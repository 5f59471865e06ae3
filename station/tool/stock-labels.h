/* bandtally stock labels: the signed list of label numbers for another station, written or taken. */
#ifndef BANDTALLY_TOOL_STOCK_LABELS_H
#define BANDTALLY_TOOL_STOCK_LABELS_H

/* One of `write` and `take` is a file's path, the other NULL; `key`: what was typed of the other station's key. An exit code. */
int stock_labels(const char *write, const char *take, const char *key);

#endif
