#!/bin/sh
# The service as systemd would start it: how much it leaves open by systemd's own count, and that the station does all that it
# does with the system calls and the kinds of sockets that the unit leaves it.
#   unit.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
command -v systemd-analyze >/dev/null || skip 'systemd-analyze is not installed'
most=12 # tenths
for unit in bandtallyd bandtally-backup; do
	sed "s#@BINDIR@#$bin#" "$source/config/systemd/$unit.service" >"$root/$unit.service"
	systemd-analyze security --offline=true --no-pager --threshold=$most "$root/$unit.service" >"$root/open" 2>&1 ||
		fail "$unit leaves more open than it did: $(grep -v '✓' "$root/open")"
done
echo 'ok the services leave no more open than they did'
# What Restart=always promises holds for as long as the cause lasts, and none of its starts waits for the whole record.
grep -q '^StartLimitIntervalSec=0$' "$root/bandtallyd.service" && grep -q '^Restart=always$' "$root/bandtallyd.service" ||
	fail 'after a few starts that failed the service is not tried again'
! grep '^ExecStartPre=.*--check' "$root/bandtallyd.service" | grep -v -- '--settings' || fail 'a start waits for a check of the whole record'
echo 'ok it is started again for as long as it takes'
# What stays open is said beside it.
systemd-analyze security --offline=true --no-pager "$root/bandtallyd.service" | grep '✗' >"$root/open"
for word in $(sed 's/(INET|INET6)/INET/; s/^✗ \(RestrictAddressFamilies=~\)\?\([A-Z_]*[A-Za-z]*\).*/\2/' "$root/open"); do
	grep -q "^#.*$word" "$source/config/systemd/bandtallyd.service" || fail "nothing is said of why $word stays open"
done
[ "$(wc -l <"$root/open")" -gt 5 ] || fail 'nothing is left open, and yet a station works'

# Starts a program with the calls and the sockets of a unit: UNIT PROGRAM…
cat >"$root/as-unit.py" <<'X'
import ctypes, os, re, socket, subprocess, sys

ALLOW, EPERM = 0x7FFF0000, 0x00050000 | 1
seccomp = ctypes.CDLL("libseccomp.so.2", use_errno=True)
seccomp.seccomp_init.restype = ctypes.c_void_p


class Where(ctypes.Structure):
    _fields_ = [("arg", ctypes.c_uint), ("op", ctypes.c_int), ("a", ctypes.c_uint64), ("b", ctypes.c_uint64)]


def calls_of(name):
    if not name.startswith("@"):
        return {name}
    said = subprocess.run(["systemd-analyze", "syscall-filter", name], check=True, capture_output=True, text=True).stdout
    all = set()
    for line in said.splitlines()[1:]:
        word = line.strip()
        if word and not word.startswith("#"):
            all |= calls_of(word)
    return all


def of_unit(key):
    return re.findall("^%s=(.*)$" % key, open(sys.argv[1]).read(), re.M)


allowed = set()
for words in of_unit("SystemCallFilter"):
    names = set().union(*(calls_of(w) for w in words.lstrip("~").split()))
    allowed = allowed - names if words.startswith("~") else allowed | names
families = [getattr(socket, w) for w in of_unit("RestrictAddressFamilies")[0].split()]
assert len(allowed) > 100 and socket.AF_UNIX in families
allowed |= {"execve"} # which starts it
filter = ctypes.c_void_p(seccomp.seccomp_init(ctypes.c_uint32(EPERM)))
for name in allowed:
    number = seccomp.seccomp_syscall_resolve_name(name.encode())
    if name == "socket":
        for family in families:
            where = Where(0, 4, family, 0)
            assert seccomp.seccomp_rule_add_array(filter, ctypes.c_uint32(ALLOW), number, 1, ctypes.byref(where)) == 0
    elif number != -1:
        seccomp.seccomp_rule_add(filter, ctypes.c_uint32(ALLOW), number, 0)
# The board's socket, as systemd hands it over.
board = socket.create_server(("127.0.0.1", 0))
os.dup2(board.fileno(), 3)
os.set_inheritable(3, True)
os.environ.update(LISTEN_PID=str(os.getpid()), LISTEN_FDS="1", LISTEN_FDNAMES="board")
assert seccomp.seccomp_load(filter) == 0
os.execvp(sys.argv[2], sys.argv[2:])
X
printf 'P5 1 1 255\nx' >"$root/picture.pgm"
cat >"$data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[board]
start = yes
port = 8417
[driver camera]
command = $bin/scan-camera --image $root/picture.pgm
room = 1
X
start /usr/bin/python3 "$root/as-unit.py" "$root/bandtallyd.service"
bt catalogue import "$source/config/catalogue.csv" >/dev/null
bt staff add --registered --number 1 practitioner SCRUB-1 >/dev/null
bt staff add --registered --number 2 practitioner CIRC-2 >/dev/null
card() { bt label cards --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
badge() { bt label badges --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
for scan in "$(card 'NEW CASE')" "$(badge SCRUB-1)" "$(badge CIRC-2)" \
	'(01)09506000134352(17)330331(10)T26(21)S1' "$(badge CIRC-2)" "$(card 'FINAL COUNT')" "$(card NO)"; do
	bt scan "$scan" >>"$root/log" || [ $? = 4 ] || fail "refused: $scan"
done
soon 'a slip is printed' '[ -s "$data/slips/slip-0000001-copy-1.pdf" ]'
soon 'a driver works' 'grep -q "no code was read" "$root/log"'
soon 'the board is there' 'grep -q "the board is at" "$root/log"'
grep -q "the board's port is .* as bandtallyd.socket says" "$root/log" || fail 'nobody says that station.ini names another port'
page=$(sed -n 's/.*the board is at //p' "$root/log" | head -n 1)
serves() {
	/usr/bin/python3 - "$1" <<'X'
import sys, urllib.request
page = urllib.request.build_opener(urllib.request.ProxyHandler({})).open(sys.argv[1], timeout=10).read()
assert b"<html" in page
X
}
serves "$page" || fail 'no page is served'
kill "$(ps -o pid=,args= --ppid "$daemon" | awk '/bandtally-board/ { print $1 }')"
soon 'a board that ended is there again' '[ "$(grep -c "the board is at" "$root/log")" = 2 ]'
serves "$page" || fail 'no page is served after the board ended'
bt backup "$root/one.db" | grep -q 'is whole' || fail 'no backup is made'
stop
! grep -i 'sandbox\|keeps its rights\|Operation not permitted\|udev does not answer' "$root/log" || fail 'something was not allowed'
echo 'ok and all that the station does is left to it'
