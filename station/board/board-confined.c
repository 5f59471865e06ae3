#include "board/board-confined.h"

#include <fcntl.h>
#include <sys/ioctl.h>
#include <sys/syscall.h>

#include "base/confine.h"

int confine_board(struct error *e)
{
	static const struct confine_call calls[] = {
	    {.number = SYS_accept},
	    {.number = SYS_accept4},
	    {.number = SYS_getpeername},
	    {.number = SYS_getsockname},
	    {.number = SYS_getsockopt},
	    {.number = SYS_setsockopt},
	    {.number = SYS_recvfrom},
	    {.number = SYS_recvmsg},
	    {.number = SYS_sendmsg},
	    {.number = SYS_sendto},
	    {.number = SYS_shutdown},
	    {SYS_ioctl, 1, UINT32_MAX, FIONREAD}, /* how much there is to read */
	    {SYS_fcntl, 1, UINT32_MAX, F_GETFL},
	    {SYS_fcntl, 1, UINT32_MAX, F_SETFL},
	    {SYS_fcntl, 1, UINT32_MAX, F_SETFD},
	};
	return confine(calls, sizeof calls / sizeof *calls, e);
}
