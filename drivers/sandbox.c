#include "drivers/sandbox.h"

#include <sys/syscall.h>

#include "base/confine.h"

int sandbox_enter(char ioctl_type, struct error *e)
{
	/* What anything that reads an open device does. */
	const struct confine_call calls[] = {
	    {.number = SYS_pread64},
	    {.number = SYS_lseek},
#ifdef SYS_select /* arm64 has the other alone */
	    {.number = SYS_select},
#endif
	    {.number = SYS_pselect6},
	    {.number = SYS_timerfd_settime},
	    {.number = SYS_clock_nanosleep},
	    {.number = SYS_nanosleep},
	    {SYS_ioctl, 1, 0xff00, (uint64_t)(unsigned char)ioctl_type << 8},
	};
	size_t count = sizeof calls / sizeof *calls;
	return confine(calls, ioctl_type ? count : count - 1, e);
}
