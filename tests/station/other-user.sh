#!/bin/sh
# A station that runs as its own user serves an auditor who is a third: the copy of the record is made in the
# station's folder, the auditor can read it, nobody can list it, and it goes. What a user does at the socket holds up no
# other. (who-may.py has who may ask for what.)
#   other-user.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
[ "$(id -u)" = 0 ] && command -v setpriv >/dev/null || {
	echo 'skipped: another user can be taken on by root only'
	exit 77
}
# The auditor and the group exist for this test alone, in a view of the files that nobody else has.
if [ -z "${BANDTALLY_OWN_VIEW:-}" ]; then
	unshare -m true 2>/dev/null || {
		echo 'skipped: no view of the files of its own can be had here'
		exit 77
	}
	BANDTALLY_OWN_VIEW=yes exec unshare -m sh "$0" "$@"
fi
. "$(dirname "$0")/common"
as_nobody() { setpriv --reuid nobody --regid nogroup --clear-groups "$@"; }
chmod 755 "$root"
cp /etc/passwd "$root/passwd"
cp /etc/group "$root/group"
echo 'bt-auditor:x:64001:65534::/:/bin/sh' >>"$root/passwd"
echo 'bt-visitor:x:64003:65534::/:/bin/sh' >>"$root/passwd"
echo 'bt-nurse:x:64004:65534::/:/bin/sh' >>"$root/passwd"
echo 'bt-keeper:x:64005:65534::/:/bin/sh' >>"$root/passwd"
echo 'bandtally-audit:x:64002:bt-auditor' >>"$root/group"
echo 'bandtally-count:x:64006:bt-nurse' >>"$root/group"
echo 'bandtally-stores:x:64007:bt-keeper' >>"$root/group"
mount --bind "$root/passwd" /etc/passwd
mount --bind "$root/group" /etc/group
as() {
	user=$1
	shift
	setpriv --reuid "$user" --regid nogroup --init-groups "$bin/bandtally" --data "$data" "$@"
}
install -d -o nobody -g games -m 0711 "$data" "$data/copies"
as_nobody test -x "$bin/bandtallyd" || skip 'another user cannot reach the programs'
echo left >"$data/copies/left-by-a-crash"
start sh -c 'umask 0027 && exec setpriv --reuid nobody --regid games --clear-groups "$@"' sh
[ -z "$(ls "$data/copies")" ] || fail 'the copy of a station that was killed stays'
echo 'ok what a killed station left is gone'
bt audit verify | grep -q 'events, numbered without a gap' || fail 'root cannot verify the record'
as bt-auditor audit verify | grep 'events, numbered without a gap' || fail 'the auditor cannot verify the record'
! as bt-auditor stock release GREEN-M --by 1 --and 2 2>/dev/null || fail 'an auditor may do what is for stores'
! as bt-visitor audit verify 2>/dev/null || fail 'somebody in no group may have a copy'
soon 'the copy goes once it was read' '[ -z "$(ls "$data/copies")" ]'
[ "$(stat -c %a "$data/copies")" = 711 ] || fail "the folder of copies can be listed: $(stat -c %a "$data/copies")"
echo 'ok the copy is gone, and its folder cannot be listed'
mkdir -m 0755 "$root/kept"
! as bt-auditor backup "$root/kept/auditor.db" 2>"$root/why" || fail 'a backup lies where its maker may not write'
grep -q 'kept/auditor.db.new: Permission denied: check the folder, its owner' "$root/why" || fail "$(cat "$root/why")"
chown bt-auditor "$root/kept"
as bt-auditor backup "$root/kept/auditor.db" | grep -q 'is whole' || fail 'the auditor cannot make a backup'
[ "$(stat -c %U:%a "$root/kept/auditor.db")" = bt-auditor:640 ] || fail "$(stat -c %U:%a "$root/kept/auditor.db")"
bt status | grep -q 'last that was checked was made 0 min ago' || fail 'the station does not know of its backup'
! as bt-visitor backup "$root/kept/visitor.db" 2>/dev/null || fail 'somebody in no group may have a backup'
echo 'ok a backup is made by those who may have copies'
# What users can do to the others' connections. Each is a user by the credentials with which it connects.
cat >"$root/doors.py" <<'X'
import os, socket, sys, time
path = sys.argv[1]
USERS = {"visitor": (64003, []), "nurse": (64004, [64006]), "keeper": (64005, [64007]), "auditor": (64001, [64002])}


def connect(user):
    uid, groups = USERS[user]
    os.setgroups(groups)
    os.setresuid(-1, uid, -1)
    try:
        s = socket.socket(socket.AF_UNIX)
        s.connect(path)  # waits for its turn among those that came before
        s.settimeout(20)
        return s
    finally:
        os.setresuid(-1, 0, -1)


def ask_on(s, request):
    try:
        s.sendall(request + b"\n")
        return s.makefile().readline()
    except OSError as e:
        return str(e)


def status_ms():
    began = time.monotonic()
    s = connect("nurse")
    answer = ask_on(s, b'{"do":"status"}')
    s.close()
    return (time.monotonic() - began) * 1000 if '"ok":true' in answer else answer or "nothing"


def check(sentence, good, saw=""):
    print(("ok " if good else "FAIL: ") + sentence + ("" if good else ": %s" % saw), flush=True)


def quick(sentence):
    took = [status_ms() for _ in range(5)]
    check(sentence, all(type(t) is float and t < 1000 for t in took), took)


def rest_of(s):
    try:
        return s.makefile().read()
    except OSError as e:
        return str(e)


def push(all):
    """Lines, unread, for four seconds."""
    end = time.monotonic() + 4
    for s in all:
        s.setblocking(False)
    while time.monotonic() < end:
        for s in all:
            try:
                s.send(b"{}\n" * 20000)
            except OSError:
                pass
        time.sleep(0.001)


s = connect("visitor")
s.settimeout(2)
said = rest_of(s)
check("who has no rights is told so and left at once", said.count("\n") == 1 and "not allowed: your user" in said, said)
idle = [connect("visitor") for _ in range(100)]
quick("a hundred connections of such a user keep nobody out")
for s in idle:
    s.close()
flood = [connect("visitor") for _ in range(20)]
push(flood)
for s in flood:
    s.close()
quick("nor does what they send")
mine = [connect("auditor") for _ in range(9)]
mine[8].settimeout(2)
said = rest_of(mine[8])
check("a user has eight connections, and is told why there is no ninth", "too many programs of your user" in said, said)
quick("others have theirs")
said = ask_on(mine[0], b'{"do":"status"}')
check("the eight are served", '"ok":true' in said, said)
for s in mine:
    s.close()
time.sleep(0.3)
s = connect("auditor")
said = ask_on(s, b'{"do":"' + b"x" * 100000 + b'"}')
check("a line of who may send no catalogue is short", "longer than 64 KiB" in said, said)
s.close()
s = connect("keeper")
said = ask_on(s, b'{"do":"' + b"x" * 1000000 + b'"}')
check("of who may it is not", "asks for something unknown" in said, said)
s.close()
# Eight that send and do not read: their lines wait, and they are left after ten seconds.
deaf = [connect("auditor") for _ in range(8)]
push(deaf)
quick("who does not read keeps nobody from it")
for s in deaf:
    s.close()
quick("nor does what they leave behind")
deaf = [connect("auditor") for _ in range(8)]
push(deaf)
time.sleep(11)
s = connect("auditor")
said = ask_on(s, b'{"do":"status"}')
check("and is left", '"ok":true' in said, said)
s.close()
for s in deaf:
    s.close()
# One that says all it has to say, ends, and reads.
s = connect("auditor")
s.sendall(b"{}\n" * 500)
s.shutdown(socket.SHUT_WR)
said = rest_of(s)
check("lines that came before the end are answered, each", said.count("\n") == 500, said.count("\n"))
X
/usr/bin/python3 "$root/doors.py" "$data/socket" | tee "$root/doors" || fail 'the users did not end'
[ "$(grep -c '^ok' "$root/doors")" = 12 ] && ! grep -q '^FAIL' "$root/doors" || fail 'what a user does hurts others'
