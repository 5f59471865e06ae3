#include "base/confine.h"

#include <errno.h>
#include <fcntl.h>
#include <linux/landlock.h>
#include <seccomp.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/prctl.h>
#include <sys/syscall.h>
#include <unistd.h>

/* The search for leaks at the end starts a thread and reads memory, which a confined program may not; the tests look
 * for leaks outside it. AddressSanitizer finds this only by its dynamic name. */
#if defined(__SANITIZE_ADDRESS__)
#define UNDER_ASAN 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define UNDER_ASAN 1
#endif
#endif
#ifdef UNDER_ASAN
__attribute__((visibility("default"))) const char *__asan_default_options(void);
const char *__asan_default_options(void)
{
	return "detect_leaks=0";
}
#endif

int confine_landlock_abi(void)
{
	long v = syscall(SYS_landlock_create_ruleset, NULL, 0, LANDLOCK_CREATE_RULESET_VERSION);
	return v > 0 ? (int)v : 0;
}

/* --- files -------------------------------------------------------------------------------------- */

#define TRUNCATE (UINT64_C(1) << 14) /* since version 3; the headers of Debian 12 do not know it */

/* Every right that the kernel knows (linux/landlock.h). 15, ioctl on devices (5), is left to the filter: a
 * device that is open needs it. */
static uint64_t rights_of(int abi)
{
	uint64_t rights = (UINT64_C(1) << 13) - 1;
	if (abi >= 2)
		rights |= UINT64_C(1) << 13; /* refer */
	if (abi >= 3)
		rights |= TRUNCATE;
	return rights;
}

static int allow_beneath(int ruleset, const char *folder, uint64_t rights)
{
	struct landlock_path_beneath_attr beneath = {.allowed_access = rights,
	                                             .parent_fd = open(folder, O_PATH | O_CLOEXEC)};
	if (beneath.parent_fd < 0)
		return -errno;
	int r =
	    syscall(SYS_landlock_add_rule, ruleset, LANDLOCK_RULE_PATH_BENEATH, &beneath, 0) < 0 ? -errno : 0;
	close(beneath.parent_fd);
	return r;
}

/* NULL: no file at all. */
static int limit_files(const char *writes)
{
	const uint64_t reading = LANDLOCK_ACCESS_FS_READ_FILE | LANDLOCK_ACCESS_FS_READ_DIR;
	const uint64_t writing = LANDLOCK_ACCESS_FS_WRITE_FILE | LANDLOCK_ACCESS_FS_MAKE_REG |
	                         LANDLOCK_ACCESS_FS_REMOVE_FILE | TRUNCATE;
	int abi = confine_landlock_abi(), r = 0;
	if (abi == 0)
		return 0;
	struct landlock_ruleset_attr attr = {.handled_access_fs = rights_of(abi)};
	/* Version 1's size of the struct: every later kernel takes it. */
	int fd = (int)syscall(SYS_landlock_create_ruleset, &attr, sizeof attr.handled_access_fs, 0);
	if (fd < 0)
		return -errno;
	if (writes)
		r = allow_beneath(fd, "/", reading);
	if (writes && r == 0)
		r = allow_beneath(fd, writes, (reading | writing) & rights_of(abi));
	if (r == 0)
		r = syscall(SYS_landlock_restrict_self, fd, 0) < 0 ? -errno : 0;
	close(fd);
	return r;
}

/* --- system calls ------------------------------------------------------------------------------- */

/* What any process does whose descriptors are open. */
static const struct confine_call plain[] = {
    {.number = SYS_read},
    {.number = SYS_readv},
    {.number = SYS_write},
    {.number = SYS_writev},
    {.number = SYS_close},
    {.number = SYS_fstat},
    {.number = SYS_poll},
    {.number = SYS_ppoll},
    {.number = SYS_epoll_wait},
    {.number = SYS_epoll_pwait},
    {.number = SYS_epoll_ctl},
    {.number = SYS_munmap},
    {.number = SYS_mremap},
    {.number = SYS_brk},
    {.number = SYS_madvise},
    {.number = SYS_futex},
    {.number = SYS_clock_gettime},
    {.number = SYS_gettimeofday},
    {.number = SYS_getpid},
    {.number = SYS_gettid},
    {.number = SYS_rt_sigaction},
    {.number = SYS_rt_sigprocmask},
    {.number = SYS_rt_sigreturn},
    {.number = SYS_sigaltstack},
    {.number = SYS_restart_syscall},
    {.number = SYS_getrandom},
    {.number = SYS_sched_yield},
    {.number = SYS_exit},
    {.number = SYS_exit_group},
    {SYS_mmap, 2, PROT_EXEC, 0},
    {SYS_mprotect, 2, PROT_EXEC, 0},
    /* The C library asks for a file's size by newfstatat(fd, "", …, AT_EMPTY_PATH). */
    {SYS_newfstatat, 3, AT_EMPTY_PATH, AT_EMPTY_PATH},
};

static int allow(scmp_filter_ctx f, const struct confine_call *calls, size_t count)
{
	int r = 0;
	for (size_t i = 0; i < count && r == 0; i++) {
		const struct confine_call *c = &calls[i];
		r = c->mask ? seccomp_rule_add(f, SCMP_ACT_ALLOW, c->number, 1,
		                               SCMP_CMP(c->arg, SCMP_CMP_MASKED_EQ, c->mask, c->value))
		            : seccomp_rule_add(f, SCMP_ACT_ALLOW, c->number, 0);
	}
	return r;
}

static int load(scmp_filter_ctx f, int r)
{
	if (r == 0)
		r = seccomp_load(f);
	seccomp_release(f);
	return r;
}

static int allow_only(const struct confine_call *calls, size_t count)
{
	/* abort() sends itself a signal. */
	const struct confine_call own = {SYS_tgkill, 0, UINT32_MAX, (uint64_t)getpid()};
	scmp_filter_ctx f = seccomp_init(SCMP_ACT_ERRNO(EPERM));
	if (!f)
		return -ENOMEM;
	int r = allow(f, plain, sizeof plain / sizeof *plain);
	if (r == 0)
		r = allow(f, &own, 1);
	return load(f, r == 0 ? allow(f, calls, count) : r);
}

static int forbid_some(void)
{
	static const int calls[] = {
	    SYS_execve,
	    SYS_execveat,
	    SYS_listen,
	    SYS_accept,
	    SYS_accept4,
	    SYS_ptrace,
	    SYS_process_vm_readv,
	    SYS_process_vm_writev,
	    SYS_pidfd_getfd,
	    SYS_mount,
	    SYS_umount2,
	    SYS_move_mount,
	    SYS_open_tree,
	    SYS_fsopen,
	    SYS_pivot_root,
	    SYS_chroot,
	    SYS_unshare,
	    SYS_setns,
	    SYS_init_module,
	    SYS_finit_module,
	    SYS_delete_module,
	    SYS_kexec_load,
	    SYS_reboot,
	    SYS_swapon,
	    SYS_bpf,
	    SYS_perf_event_open,
	    SYS_userfaultfd,
	    SYS_io_uring_setup,
	    SYS_clock_settime,
	    SYS_settimeofday,
	    SYS_sethostname,
	    SYS_chmod,
	    SYS_fchmodat,
	    SYS_chown,
	    SYS_fchownat,
	    SYS_setxattr,
	    SYS_mknod,
	    SYS_mknodat,
	    SYS_kill,
	    SYS_tkill,
	};
	scmp_filter_ctx f = seccomp_init(SCMP_ACT_ALLOW);
	int r = f ? 0 : -ENOMEM;
	for (size_t i = 0; i < sizeof calls / sizeof *calls && r == 0; i++)
		r = seccomp_rule_add(f, SCMP_ACT_ERRNO(EPERM), calls[i], 0);
	return f ? load(f, r) : r;
}

static int wall(int r, const char *whose, struct error *e)
{
	return r < 0 ? error_set(e, r, "sandbox: %s refused it: %s: run a kernel that has it", whose,
	                         strerror(-r))
	             : 0;
}

static int first_wall(const char *writes, struct error *e)
{
	int r = wall(prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) < 0 ? -errno : 0, "the kernel", e);
	return r < 0 ? r : wall(limit_files(writes), "Landlock", e);
}

int confine(const struct confine_call *calls, size_t count, struct error *e)
{
	int r = first_wall(NULL, e);
	return r < 0 ? r : wall(allow_only(calls, count), "seccomp", e);
}

int confine_loosely(const char *writes, struct error *e)
{
	if (access(writes, W_OK | X_OK) < 0)
		return error_set(e, -errno, "sandbox: the folder %s: %s: give one that may be written to",
		                 writes, strerror(errno));
	int r = first_wall(writes, e);
	return r < 0 ? r : wall(forbid_some(), "seccomp", e);
}
