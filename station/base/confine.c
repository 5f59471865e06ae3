#include "base/confine.h"

#include <errno.h>
#include <fcntl.h>
#include <linux/landlock.h>
#include <sched.h>
#include <seccomp.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/mman.h>
#include <sys/prctl.h>
#include <sys/stat.h>
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

static int landlock_abi(void)
{
	long v = syscall(SYS_landlock_create_ruleset, NULL, 0, LANDLOCK_CREATE_RULESET_VERSION);
	return v > 0 ? (int)v : 0;
}

int confine_has_landlock(void)
{
	return landlock_abi() >= 2;
}

/* --- files -------------------------------------------------------------------------------------- */

#define READING (LANDLOCK_ACCESS_FS_READ_FILE | LANDLOCK_ACCESS_FS_READ_DIR)
#define TRUNCATE (UINT64_C(1) << 14) /* since version 3; the headers of Debian 12 do not know it */
#define OF_A_FILE                                                                                            \
	(LANDLOCK_ACCESS_FS_READ_FILE | LANDLOCK_ACCESS_FS_WRITE_FILE | LANDLOCK_ACCESS_FS_EXECUTE | TRUNCATE)

/* Every right that the kernel knows (linux/landlock.h). 15, ioctl on devices (5), is left to the filter: a
 * device that is open needs it. */
static uint64_t known_rights(void)
{
	return ((UINT64_C(1) << 14) - 1) | (landlock_abi() >= 3 ? TRUNCATE : 0);
}

static uint64_t rights_of(enum confine_use use)
{
	switch (use) {
	case CONFINE_READ:
		return READING;
	case CONFINE_RUN:
		return READING | LANDLOCK_ACCESS_FS_EXECUTE;
	case CONFINE_OPEN:
		return READING | LANDLOCK_ACCESS_FS_WRITE_FILE | TRUNCATE;
	case CONFINE_WRITE:
		return ~(uint64_t)(LANDLOCK_ACCESS_FS_EXECUTE | LANDLOCK_ACCESS_FS_MAKE_CHAR |
		                   LANDLOCK_ACCESS_FS_MAKE_BLOCK);
	}
	return 0;
}

static int allow_place(int ruleset, const struct confine_place *place)
{
	struct stat is;
	struct landlock_path_beneath_attr beneath = {.parent_fd = open(place->path, O_PATH | O_CLOEXEC)};
	if (beneath.parent_fd < 0)
		return errno == ENOENT || errno == EACCES || errno == ENOTDIR ? 0 : -errno;
	beneath.allowed_access = rights_of(place->use) & known_rights();
	if (fstat(beneath.parent_fd, &is) == 0 && !S_ISDIR(is.st_mode))
		beneath.allowed_access &= OF_A_FILE;
	int r =
	    syscall(SYS_landlock_add_rule, ruleset, LANDLOCK_RULE_PATH_BENEATH, &beneath, 0) < 0 ? -errno : 0;
	close(beneath.parent_fd);
	return r;
}

static int limit_files(const struct confine_place *places, size_t count)
{
	int r = 0;
	if (!confine_has_landlock())
		return 0;
	struct landlock_ruleset_attr attr = {.handled_access_fs = known_rights()};
	/* Version 1's size of the struct: every later kernel takes it. */
	int fd = (int)syscall(SYS_landlock_create_ruleset, &attr, sizeof attr.handled_access_fs, 0);
	if (fd < 0)
		return -errno;
	for (size_t i = 0; i < count && r == 0; i++)
		r = allow_place(fd, &places[i]);
	if (r == 0)
		r = syscall(SYS_landlock_restrict_self, fd, 0) < 0 ? -errno : 0;
	close(fd);
	return r;
}

/* --- system calls ------------------------------------------------------------------------------- */

/* What any process does whose descriptors are open. SCMP_SYS() where an architecture (arm64) lacks the call: it counts for
 * nothing there. */
static const struct confine_call plain[] = {
    {.number = SYS_read},
    {.number = SYS_readv},
    {.number = SYS_write},
    {.number = SYS_writev},
    {.number = SYS_close},
    {.number = SYS_fstat},
    {.number = SCMP_SYS(poll)},
    {.number = SYS_ppoll},
    {.number = SCMP_SYS(epoll_wait)},
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

/* What changes the system, or another process: nothing here has to. */
static const int nobody_s[] = {
    SCMP_SYS(ptrace),
    SCMP_SYS(process_vm_readv),
    SCMP_SYS(process_vm_writev),
    SCMP_SYS(process_madvise),
    SCMP_SYS(pidfd_getfd),
    SCMP_SYS(kcmp),
    SCMP_SYS(mount),
    SCMP_SYS(umount2),
    SCMP_SYS(mount_setattr),
    SCMP_SYS(move_mount),
    SCMP_SYS(open_tree),
    SCMP_SYS(fsopen),
    SCMP_SYS(fspick),
    SCMP_SYS(fsconfig),
    SCMP_SYS(fsmount),
    SCMP_SYS(pivot_root),
    SCMP_SYS(chroot),
    SCMP_SYS(unshare),
    SCMP_SYS(setns),
    SCMP_SYS(init_module),
    SCMP_SYS(finit_module),
    SCMP_SYS(delete_module),
    SCMP_SYS(kexec_load),
    SCMP_SYS(kexec_file_load),
    SCMP_SYS(reboot),
    SCMP_SYS(swapon),
    SCMP_SYS(swapoff),
    SCMP_SYS(acct),
    SCMP_SYS(quotactl),
    SCMP_SYS(bpf),
    SCMP_SYS(perf_event_open),
    SCMP_SYS(userfaultfd),
    SCMP_SYS(io_uring_setup),
    SCMP_SYS(add_key),
    SCMP_SYS(request_key),
    SCMP_SYS(keyctl),
    SCMP_SYS(open_by_handle_at),
    SCMP_SYS(clock_settime),
    SCMP_SYS(clock_adjtime),
    SCMP_SYS(adjtimex),
    SCMP_SYS(settimeofday),
    SCMP_SYS(sethostname),
    SCMP_SYS(setdomainname),
    SCMP_SYS(syslog),
    SCMP_SYS(mknod),
    SCMP_SYS(mknodat),
};

/* What a process that starts none and writes a few files has no use for. */
static const int not_loosely[] = {
    SCMP_SYS(execve),
    SCMP_SYS(execveat),
    SCMP_SYS(fork),
    SCMP_SYS(vfork),
    SCMP_SYS(listen),
    SCMP_SYS(accept),
    SCMP_SYS(accept4),
    SCMP_SYS(kill),
    SCMP_SYS(tkill),
    SCMP_SYS(rt_sigqueueinfo),
    SCMP_SYS(chmod),
    SCMP_SYS(fchmod),
    SCMP_SYS(fchmodat),
    SCMP_SYS(chown),
    SCMP_SYS(fchown),
    SCMP_SYS(lchown),
    SCMP_SYS(fchownat),
    SCMP_SYS(setxattr),
    SCMP_SYS(lsetxattr),
    SCMP_SYS(fsetxattr),
    SCMP_SYS(link),
    SCMP_SYS(linkat),
    SCMP_SYS(symlink),
    SCMP_SYS(symlinkat),
    SCMP_SYS(rt_tgsigqueueinfo),
    SCMP_SYS(setpriority),
    SCMP_SYS(ioprio_set),
    SCMP_SYS(sched_setaffinity),
    SCMP_SYS(sched_setscheduler),
    SCMP_SYS(sched_setparam),
    SCMP_SYS(migrate_pages),
    SCMP_SYS(move_pages),
    SCMP_SYS(pidfd_send_signal),
    SCMP_SYS(pidfd_open),
};

static int refuse(scmp_filter_ctx f, const int *calls, size_t count)
{
	int r = 0;
	for (size_t i = 0; i < count && r == 0; i++)
		r = seccomp_rule_add(f, SCMP_ACT_ERRNO(EPERM), calls[i], 0);
	return r;
}

static int refuse_where(scmp_filter_ctx f, int call, struct scmp_arg_cmp where)
{
	return seccomp_rule_add(f, SCMP_ACT_ERRNO(EPERM), call, 1, where);
}

/* A terminal's own calls put letters into its input, as if somebody had typed a command there. */
static int refuse_typing(scmp_filter_ctx f)
{
	int r = refuse_where(f, SYS_ioctl, SCMP_A1(SCMP_CMP_MASKED_EQ, UINT32_MAX, TIOCSTI));
	return r < 0 ? r : refuse_where(f, SYS_ioctl, SCMP_A1(SCMP_CMP_MASKED_EQ, UINT32_MAX, TIOCLINUX));
}

/* Threads stay. The C library makes them with clone() where there is no clone3(), whose flags no filter can see. */
static int refuse_processes(scmp_filter_ctx f)
{
	int r = seccomp_rule_add(f, SCMP_ACT_ERRNO(ENOSYS), SYS_clone3, 0);
	return r < 0 ? r : refuse_where(f, SYS_clone, SCMP_A0(SCMP_CMP_MASKED_EQ, CLONE_THREAD, 0));
}

/* abort() and threads signal themselves; 0 is the process itself. */
static int refuse_others(scmp_filter_ctx f)
{
	int r = refuse_where(f, SYS_tgkill, SCMP_A0(SCMP_CMP_NE, (uint64_t)getpid(), 0));
	if (r == 0)
		r = refuse_where(f, SYS_prlimit64, SCMP_A0(SCMP_CMP_NE, 0, 0));
	return r < 0 ? r : refuse_where(f, SYS_sched_setattr, SCMP_A0(SCMP_CMP_NE, 0, 0));
}

static int forbid(int loosely)
{
	scmp_filter_ctx f = seccomp_init(SCMP_ACT_ALLOW);
	int r = f ? refuse(f, nobody_s, sizeof nobody_s / sizeof *nobody_s) : -ENOMEM;
	if (r == 0)
		r = refuse_typing(f);
	if (r == 0 && loosely)
		r = refuse(f, not_loosely, sizeof not_loosely / sizeof *not_loosely);
	if (r == 0 && loosely)
		r = refuse_processes(f);
	if (r == 0 && loosely)
		r = refuse_others(f);
	return f ? load(f, r) : r;
}

static int wall(int r, const char *whose, struct error *e)
{
	return r < 0 ? error_set(e, r, "sandbox: %s refused it: %s: run a kernel that has it", whose,
	                         strerror(-r))
	             : 0;
}

static int first_wall(const struct confine_place *places, size_t count, struct error *e)
{
	int r = wall(prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) < 0 ? -errno : 0, "the kernel", e);
	return r < 0 ? r : wall(limit_files(places, count), "Landlock", e);
}

int confine(const struct confine_call *calls, size_t count, struct error *e)
{
	int r = first_wall(NULL, 0, e);
	return r < 0 ? r : wall(allow_only(calls, count), "seccomp", e);
}

int confine_loosely(const struct confine_place *places, size_t count, struct error *e)
{
	int r = first_wall(places, count, e);
	return r < 0 ? r : wall(forbid(1), "seccomp", e);
}

/* Since version 4; the headers of Debian 12 do not know them. */
#define NET_ABI 4
#define NET_BIND (UINT64_C(1) << 0)
#define NET_CONNECT (UINT64_C(1) << 1)
#define NET_RULE 2

static int limit_ports(const uint16_t *ports, size_t count)
{
	struct {
		uint64_t files, net;
	} attr = {.net = NET_BIND | NET_CONNECT};
	int r = 0, fd = (int)syscall(SYS_landlock_create_ruleset, &attr, sizeof attr, 0);
	if (fd < 0)
		return -errno;
	for (size_t i = 0; i < count && r == 0; i++) {
		struct {
			uint64_t access, port;
		} rule = {NET_CONNECT, ports[i]};
		r = syscall(SYS_landlock_add_rule, fd, NET_RULE, &rule, 0) < 0 ? -errno : 0;
	}
	if (r == 0)
		r = syscall(SYS_landlock_restrict_self, fd, 0) < 0 ? -errno : 0;
	close(fd);
	return r;
}

int confine_ports(const uint16_t *ports, size_t count, struct error *e)
{
	if (landlock_abi() < NET_ABI)
		return 0;
	int r = wall(prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) < 0 ? -errno : 0, "the kernel", e);
	if (r == 0)
		r = wall(limit_ports(ports, count), "Landlock", e);
	return r < 0 ? r : 1;
}

int confine_parent(const struct confine_place *places, size_t count, struct error *e)
{
	int r = first_wall(places, count, e);
	return r < 0 ? r : wall(forbid(0), "seccomp", e);
}
