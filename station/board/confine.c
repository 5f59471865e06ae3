#include "board/confine.h"

#include <errno.h>
#include <fcntl.h>
#include <linux/landlock.h>
#include <seccomp.h>
#include <stdint.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/mman.h>
#include <sys/prctl.h>
#include <sys/syscall.h>
#include <unistd.h>

/* Rights by number: bits 0-12 are version 1, 13 refer (2), 14 truncate (3) (linux/landlock.h). */
static int forbid_files(void)
{
	long abi = syscall(SYS_landlock_create_ruleset, NULL, 0, LANDLOCK_CREATE_RULESET_VERSION);
	if (abi <= 0)
		return 0;
	struct landlock_ruleset_attr attr = {.handled_access_fs = (UINT64_C(1) << (abi >= 3   ? 15
	                                                                           : abi >= 2 ? 14
	                                                                                      : 13)) -
	                                                          1};
	int fd = (int)syscall(SYS_landlock_create_ruleset, &attr, sizeof attr.handled_access_fs, 0);
	if (fd < 0)
		return -errno;
	int r = syscall(SYS_landlock_restrict_self, fd, 0) < 0 ? -errno : 0;
	close(fd);
	return r;
}

static const int calls[] = {
    SCMP_SYS(accept),       SCMP_SYS(accept4),        SCMP_SYS(brk),          SCMP_SYS(clock_gettime),
    SCMP_SYS(close),        SCMP_SYS(epoll_ctl),      SCMP_SYS(epoll_pwait),  SCMP_SYS(epoll_wait),
    SCMP_SYS(exit),         SCMP_SYS(exit_group),     SCMP_SYS(fstat),        SCMP_SYS(futex),
    SCMP_SYS(getpeername),  SCMP_SYS(getpid),         SCMP_SYS(getrandom),    SCMP_SYS(getsockname),
    SCMP_SYS(getsockopt),   SCMP_SYS(gettid),         SCMP_SYS(gettimeofday), SCMP_SYS(madvise),
    SCMP_SYS(mremap),       SCMP_SYS(munmap),         SCMP_SYS(poll),         SCMP_SYS(read),
    SCMP_SYS(readv),        SCMP_SYS(recvfrom),       SCMP_SYS(recvmsg),      SCMP_SYS(restart_syscall),
    SCMP_SYS(rt_sigaction), SCMP_SYS(rt_sigprocmask), SCMP_SYS(rt_sigreturn), SCMP_SYS(sched_yield),
    SCMP_SYS(sendmsg),      SCMP_SYS(sendto),         SCMP_SYS(setsockopt),   SCMP_SYS(shutdown),
    SCMP_SYS(sigaltstack),  SCMP_SYS(write),          SCMP_SYS(writev),
};

/* Calls that are harmless only with certain arguments. */
static int allow_bounded(scmp_filter_ctx f)
{
	int r =
	    seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(mmap), 1, SCMP_A2(SCMP_CMP_MASKED_EQ, PROT_EXEC, 0));
	if (r == 0)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(mprotect), 1,
		                     SCMP_A2(SCMP_CMP_MASKED_EQ, PROT_EXEC, 0));
	if (r == 0) /* how much there is to read */
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(ioctl), 1,
		                     SCMP_A1(SCMP_CMP_EQ, FIONREAD, 0));
	if (r == 0)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(fcntl), 1, SCMP_A1(SCMP_CMP_EQ, F_GETFL, 0));
	if (r == 0)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(fcntl), 1, SCMP_A1(SCMP_CMP_EQ, F_SETFL, 0));
	if (r == 0)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(fcntl), 1, SCMP_A1(SCMP_CMP_EQ, F_SETFD, 0));
	if (r == 0) /* the C library asks for a file's size by newfstatat(fd, "", …, AT_EMPTY_PATH) */
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(newfstatat), 1,
		                     SCMP_A3(SCMP_CMP_MASKED_EQ, AT_EMPTY_PATH, AT_EMPTY_PATH));
	if (r == 0) /* abort() sends itself a signal */
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, SCMP_SYS(tgkill), 1,
		                     SCMP_A0(SCMP_CMP_EQ, (scmp_datum_t)getpid(), 0));
	return r;
}

static int load_filter(void)
{
	scmp_filter_ctx f = seccomp_init(SCMP_ACT_ERRNO(EPERM));
	if (!f)
		return -ENOMEM;
	int r = allow_bounded(f);
	for (size_t i = 0; i < sizeof calls / sizeof *calls && r == 0; i++)
		r = seccomp_rule_add(f, SCMP_ACT_ALLOW, calls[i], 0);
	if (r == 0)
		r = seccomp_load(f);
	seccomp_release(f);
	return r;
}

int confine(struct error *e)
{
	if (prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) < 0)
		return error_set(e, -errno, "sandbox: not entered: %s: run a kernel with seccomp",
		                 strerror(errno));
	int r = forbid_files();
	if (r < 0)
		return error_set(e, r, "sandbox: Landlock refused: %s: report this kernel", strerror(-r));
	r = load_filter();
	if (r < 0)
		return error_set(e, r, "sandbox: seccomp refused: %s: run a kernel with seccomp",
		                 strerror(-r));
	return 0;
}
