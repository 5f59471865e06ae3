/* scan-handheld on an event node of umockdev: plugged in, unplugged in the middle of a code, 10,000 codes at
 * once.
 *
 *   handheld-mock DRIVER         checks, one sentence each
 *
 * umockdev's limits: a grab always succeeds, and events are never dropped by themselves; vm-scanner has
 * those. */
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "handheld-rig.h"

#define CODES 10000

static int failures;

static void check(bool good, const char *sentence)
{
	failures += !good;
	printf("%s %s\n", good ? "ok    " : "FAILED", sentence);
	fflush(stdout);
}

static bool is_fault(const struct wire_line *l, const char *word)
{
	return l->kind == WIRE_FAULT && strcmp(l->code, word) == 0;
}

static void settle(void)
{
	usleep(350000); /* more than TYPING_SETTLE_MS */
}

static void in_order(UMockdevTestbed *bed, struct rig_driver *d, int fd)
{
	static struct wire_line l;
	settle();
	rig_code(fd, "9506000134352");
	check(rig_next(d, &l) && rig_is_scan(&l, "9506000134352") && l.ms > 0,
	      "a code is one scan, with the time of its last key");
	rig_type(fd, "95");
	usleep(1300000);
	check(rig_next(d, &l) && l.kind == WIRE_FAULT, "a code without its end is said, not sent");
	double rate;
	int right = rig_many(d, fd, CODES, &rate);
	printf("       %d codes, %.0f a second\n", CODES, rate);
	check(right == CODES, "10,000 codes one upon the other: none lost, none changed, none out of order");
	rig_type(fd, "950");
	usleep(100000);
	close(fd); /* the node hangs up before udev says anything, as a real one does */
	umockdev_testbed_uevent(bed, "/sys" RIG_SYSFS "/input7/event7", "remove");
	umockdev_testbed_remove_device(bed, "/sys" RIG_SYSFS "/input7/event7");
	check(rig_next(d, &l) && is_fault(&l, "partial"),
	      "unplugged in the middle of a code: the part is thrown away and said");
	check(rig_next(d, &l) && is_fault(&l, "lost"), "and the scanner is lost");
	int status = 0;
	waitpid(d->pid, &status, 0);
	check(WIFEXITED(status) && WEXITSTATUS(status) == 1, "and the driver ends with 1");
}

static void a_second_scanner(int fd, const char *program)
{
	static struct wire_line l;
	struct rig_driver d = rig_start(program, "/dev/input/event8");
	check(rig_next(&d, &l) && l.kind == WIRE_HELLO, "a second scanner has a driver of its own");
	rig_type(fd, "111");
	usleep(20000);
	rig_code(fd, "222");
	check(rig_next(&d, &l) && is_fault(&l, "partial"), "a code under way at the opening is no code");
	rig_code(fd, "950");
	check(rig_next(&d, &l) && rig_is_scan(&l, "950"), "and the next one is");
	kill(d.pid, SIGTERM);
	waitpid(d.pid, NULL, 0);
	fclose(d.lines);
}

int main(int argc, char **argv)
{
	static struct wire_line l;
	UMockdevTestbed *bed = umockdev_testbed_new();
	if (argc < 2 || !umockdev_in_mock_environment()) {
		fprintf(stderr, "handheld-mock: run it through handheld-mock.sh\n");
		return 2;
	}
	/* umockdev takes no further device once one is gone. */
	int fd = rig_plug(bed, 7), second = rig_plug(bed, 8);
	check(fd >= 0 && second >= 0, "two scanners are plugged in");
	struct rig_driver d = rig_start(argv[1], "/dev/input/event7");
	check(rig_next(&d, &l) && l.kind == WIRE_HELLO, "the driver says hello");
	check(strstr(l.uncertain, "separator") != NULL, "and what it does not know of this scanner");
	in_order(bed, &d, fd);
	a_second_scanner(second, argv[1]);
	fclose(d.lines);
	g_object_unref(bed);
	return failures ? 1 : 0;
}
