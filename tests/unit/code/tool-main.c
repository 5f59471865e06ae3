/* `bandtally code` alone, for the tests that read whole files of codes through it. */
#include "tool/code-command.h"

int main(int argc, char **argv)
{
	return tool_code(argc, argv);
}
