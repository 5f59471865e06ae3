/* `bandtally code`: what a barcode says, element by element, or where and why it is wrong. */
#ifndef BANDTALLY_TOOL_CODE_COMMAND_H
#define BANDTALLY_TOOL_CODE_COMMAND_H

/* argv[0] is "code". Answers on stdout; what is wrong with a TEXT goes to stderr. Returns an exit code of
 * base/error.h: a TEXT that is wrong gives 1; --file gives 0 once each line is answered, right or wrong. */
int tool_code(int argc, char **argv);

#endif
