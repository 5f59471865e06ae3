#!/bin/sh
# What the station started may ask it for nothing: its programs, what they start, what those leave behind when they end, as
# whatever user. Anybody else may, as before; as a service the station refuses its own user too.
#   own-programs.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
# Asks for a badge that lets its holder sign out, from a process of its own for each way, and writes down the answers.
cat >"$root/ask.py" <<'X'
import json, os, socket, sys, time
path, answers = sys.argv[1], open(sys.argv[2], "a")
REQUEST = json.dumps({"do": "staff", "kind": 2, "name": "GHOST-1", "registered": True}) + "\n"


def connect():
    s = socket.socket(socket.AF_UNIX)
    s.settimeout(10)
    s.connect(path)
    return s


def ask_on(s):
    try:
        s.sendall(REQUEST.encode())
    except OSError:
        pass  # turned away before
    try:
        return s.makefile().readline() or "nothing"
    except OSError as e:
        return str(e)


def note(way, answer):
    answers.write(way + " " + answer.rstrip("\n") + "\n")
    answers.flush()


def in_child(act):
    pid = os.fork()
    if pid == 0:
        act()
        os._exit(0)
    return pid


def leaves_behind():
    between = os.getpid()

    def orphan():
        while os.getppid() == between:
            time.sleep(0.01)
        note("orphan", ask_on(connect()))

    in_child(orphan)


def as_another():
    if os.getuid() == 0:
        os.setgroups([])
        os.setgid(0)
        os.setuid(65534)
    note("another-user", ask_on(connect()))


def heir():
    """One connects and ends, another asks."""
    mine, its = socket.socketpair()

    def connects():
        s = connect()
        socket.send_fds(its, [b"x"], [s.fileno()])

    pid = in_child(connects)
    _, fds, _, _ = socket.recv_fds(mine, 1, 1)
    os.waitpid(pid, 0)
    inherited = socket.socket(fileno=fds[0])
    inherited.settimeout(10)  # the other's limit made the descriptor non-blocking: an answer that is late would read as none
    note("heir", ask_on(inherited))


note("itself", ask_on(connect()))
os.waitpid(in_child(lambda: note("child", ask_on(connect()))), 0)
os.waitpid(in_child(leaves_behind), 0)
os.waitpid(in_child(as_another), 0)
heir()
X
cat >"$root/driver" <<X
#!/bin/sh
echo '{"v":1,"hello":{"driver":"mine","device":"none"}}'
/usr/bin/python3 $root/ask.py $data/socket $root/answers
exec sleep 600
X
chmod +x "$root/driver"
chmod 711 "$root" "$data"
printf '[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[board]\nstart = no\n[driver mine]\ncommand = %s\nroom = 1\n' \
	"$root/driver" >"$data/station.ini"
inside() { # the words before the program's own
	rm -f "$root/answers"
	start "$@"
	soon 'a program of it has asked in five ways' '[ "$(wc -l <"$root/answers")" = 5 ]'
	for way in itself child orphan heir; do
		grep -q "^$way .*not allowed: the station's own programs" "$root/answers" || fail "$way: $(cat "$root/answers")"
	done
	grep -q '^another-user .*not allowed' "$root/answers" || fail "as another user: $(cat "$root/answers")"
	! bt staff list | grep -q GHOST || fail 'a program of the station has added a badge'
	echo 'ok and was refused each time'
}
# As before Linux 6.5: the kernel gives no pidfd of a peer.
cat >"$root/older.py" <<'X'
import ctypes, os, sys
seccomp = ctypes.CDLL("libseccomp.so.2", use_errno=True)
seccomp.seccomp_init.restype = ctypes.c_void_p


class Where(ctypes.Structure):
    _fields_ = [("arg", ctypes.c_uint), ("op", ctypes.c_int), ("a", ctypes.c_uint64), ("b", ctypes.c_uint64)]


filter = ctypes.c_void_p(seccomp.seccomp_init(ctypes.c_uint32(0x7FFF0000)))  # all is allowed
number = seccomp.seccomp_syscall_resolve_name(b"getsockopt")
option = Where(2, 4, 77, 0)  # SO_PEERPIDFD: no such option
assert seccomp.seccomp_rule_add_array(filter, ctypes.c_uint32(0x00050000 | 92), number, 1, ctypes.byref(option)) == 0
assert seccomp.seccomp_load(filter) == 0
os.execvp(sys.argv[1], sys.argv[1:])
X
inside /usr/bin/python3 "$root/older.py"
stop
inside
# The same, from outside: who asks, not what is asked, is refused.
: >"$root/answers"
/usr/bin/python3 "$root/ask.py" "$data/socket" "$root/answers"
soon 'somebody else asks in the same ways' '[ "$(wc -l <"$root/answers")" = 5 ]'
for way in itself child orphan; do
	grep -q "^$way .*\"ok\":true" "$root/answers" || fail "$way, outside: $(cat "$root/answers")"
done
bt staff list | grep -q GHOST || fail 'nothing was added'
# What a program leaves behind is buried by the station, who is its parent now.
soon 'nothing that ended stays' '[ -z "$(ps -o stat= --ppid "$daemon" | grep Z)" ]'
stop

# As a service: systemd says so to the process that it starts. Root may ask, the station's own user may not.
[ "$(id -u)" = 0 ] && command -v setpriv >/dev/null || {
	echo 'skipped: another user can be taken on by root only'
	exit 0
}
as_nobody() { setpriv --reuid nobody --regid nogroup --clear-groups "$@"; }
as_nobody test -x "$bin/bandtallyd" || {
	echo 'skipped: another user cannot reach the programs'
	exit 0
}
rm -rf "$data"
install -d -o nobody -g nogroup -m 0711 "$data"
start setpriv --reuid nobody --regid nogroup --clear-groups sh -c 'SYSTEMD_EXEC_PID=$$ exec "$@"' sh
as_nobody "$bin/bandtally" --data "$data" status >"$root/said" 2>&1 && fail 'its own user may ask a service'
grep -q "not allowed: your user" "$root/said" || fail "$(cat "$root/said")"
stop
start setpriv --reuid nobody --regid nogroup --clear-groups sh -c 'SYSTEMD_EXEC_PID=1 exec "$@"' sh
as_nobody "$bin/bandtally" --data "$data" staff add --number 1 surgeon S-1 >"$root/said" 2>&1 ||
	fail "whoever started it by hand may not ask: $(cat "$root/said")"
stop
echo 'ok its own user is refused where it is a service, and only there'
