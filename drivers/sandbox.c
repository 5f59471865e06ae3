#include "drivers/sandbox.h"

#include <errno.h>
#include <fcntl.h>
#include <linux/landlock.h>
#include <seccomp.h>
#include <stdint.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/prctl.h>
#include <sys/syscall.h>
#include <unistd.h>

int sandbox_landlock_abi(void)
{
	long v = syscall(SYS_landlock_create_ruleset, NULL, 0, LANDLOCK_CREATE_RULESET_VERSION);
	return v > 0 ? (int)v : 0;
}

/* Every right that the kernel knows, so that an empty rule set forbids each of them. Bits by number: the
 * headers of Debian 12 know fewer than a newer kernel offers (linux/landlock.h, LANDLOCK_ACCESS_FS_*). */
static uint64_t rights_of(int abi)
{
	uint64_t rights = (UINT64_C(1) << 13) - 1;
	if (abi >= 2)
		rights |= UINT64_C(1) << 13; /* refer */
	if (abi >= 3)
		rights |= UINT64_C(1) << 14; /* truncate */
	return rights; /* 15, ioctl on devices (5), is left to the filter: the device itself needs it */
}

static int forbid_files(void)
{
	int abi = sandbox_landlock_abi();
	if (abi == 0)
		return 0;
	struct landlock_ruleset_attr attr = {.handled_access_fs = rights_of(abi)};
	/* Version 1's size of the struct: every later kernel takes it. */
	int fd = (int)syscall(SYS_landlock_create_ruleset, &attr, sizeof attr.handled_access_fs, 0);
	if (fd < 0)
		return -errno;
	int r = syscall(SYS_landlock_restrict_self, fd, 0) < 0 ? -errno : 0;
	close(fd);
	return r;
}

/* What anything that reads an open device does. */
static const int plain_calls[] = {
    SCMP_SYS(read),
    SCMP_SYS(readv),
    SCMP_SYS(pread64),
    SCMP_SYS(write),
    SCMP_SYS(writev),
    SCMP_SYS(close),
    SCMP_SYS(lseek),
    SCMP_SYS(fstat),
    SCMP_SYS(poll),
    SCMP_SYS(ppoll),
    SCMP_SYS(select),
    SCMP_SYS(pselect6),
    SCMP_SYS(epoll_wait),
    SCMP_SYS(epoll_pwait),
    SCMP_SYS(epoll_ctl),
    SCMP_SYS(timerfd_settime),
    SCMP_SYS(munmap),
    SCMP_SYS(mremap),
    SCMP_SYS(brk),
    SCMP_SYS(madvise),
    SCMP_SYS(futex),
    SCMP_SYS(clock_gettime),
    SCMP_SYS(clock_nanosleep),
    SCMP_SYS(nanosleep),
    SCMP_SYS(gettimeofday),
    SCMP_SYS(getpid),
    SCMP_SYS(gettid),
    SCMP_SYS(rt_sigaction),
    SCMP_SYS(rt_sigprocmask),
    SCMP_SYS(rt_sigreturn),
    SCMP_SYS(sigaltstack),
    SCMP_SYS(restart_syscall),
    SCMP_SYS(getrandom),
    SCMP_SYS(sched_yield),
    SCMP_SYS(exit),
    SCMP_SYS(exit_group),
};

static int allow_plain(scmp_filter_ctx f)
{
	int r = 0;
	for (size_t i = 0; i < sizeof plain_calls / sizeof *plain_calls && r == 0; i++)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, plain_calls[i], 0);
	return r;
}

/* Calls that are harmless only with certain arguments. */
static int allow_bounded(scmp_filter_ctx f, char ioctl_type)
{
	int r =
	    seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(mmap), 1, SCMP_A2(SCMP_CMP_MASKED_EQ, PROT_EXEC, 0));
	if (r == 0)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(mprotect), 1,
		                     SCMP_A2(SCMP_CMP_MASKED_EQ, PROT_EXEC, 0));
	/* abort() sends itself a signal. */
	if (r == 0)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(tgkill), 1,
		                     SCMP_A0(SCMP_CMP_EQ, (scmp_datum_t)getpid(), 0));
	/* The C library asks for a file's size by newfstatat(fd, "", …, AT_EMPTY_PATH). */
	if (r == 0)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(newfstatat), 1,
		                     SCMP_A3(SCMP_CMP_MASKED_EQ, AT_EMPTY_PATH, AT_EMPTY_PATH));
	if (r == 0 && ioctl_type)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(ioctl), 1,
		                     SCMP_A1(SCMP_CMP_MASKED_EQ, 0xff00, (scmp_datum_t)ioctl_type << 8));
	return r;
}

static int load_filter(char ioctl_type)
{
	scmp_filter_ctx f = seccomp_init(SCMP_ACT_ERRNO(EPERM));
	if (!f)
		return -ENOMEM;
	int r = allow_plain(f);
	if (r == 0)
		r = allow_bounded(f, ioctl_type);
	if (r == 0)
		r = seccomp_load(f);
	seccomp_release(f);
	return r;
}

int sandbox_enter(char ioctl_type, struct error *e)
{
	if (prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) < 0)
		return error_set(e, -errno, "sandbox: not entered: %s: run a kernel with seccomp",
		                 strerror(errno));
	int r = forbid_files();
	if (r < 0)
		return error_set(e, r, "sandbox: Landlock refused: %s: report this kernel", strerror(-r));
	r = load_filter(ioctl_type);
	if (r < 0)
		return error_set(e, r, "sandbox: seccomp refused: %s: run a kernel with seccomp",
		                 strerror(-r));
	return 0;
}
