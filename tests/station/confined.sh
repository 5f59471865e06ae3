#!/bin/sh
# The station keeps only what it and its programs need, and still does all that it did: it starts its programs again, opens
# what is plugged in later, makes copies and folders anew. Where the kernel has no Landlock it says so once, and works.
#   confined.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
set -- # the words before those of a program that does not run as root
if [ "$(id -u)" = 0 ] && command -v setpriv >/dev/null; then
	set -- setpriv --reuid nobody --regid nogroup --clear-groups
	"$@" test -x "$bin/bandtallyd" || skip 'another user cannot reach the programs'
	chmod 755 "$root"
fi
yield() { [ "$(id -u)" != 0 ] || chown nobody "$@"; } # to that user
# A place that is none of the station's, and not for temporary files either.
beside=$(realpath "$bin/..")
case $beside/ in
/tmp/* | /var/tmp/*) [ -w /var/lib ] && beside=/var/lib || skip "the build lies in $beside, where temporary files may be read: build it elsewhere" ;;
esac
elsewhere=$(mktemp -d "$beside/bandtally-confined-XXXXXX")
line=
at_end() {
	rm -rf "$elsewhere"
	[ -z "$line" ] || kill "$line" 2>/dev/null || true
}
# A terminal that comes while the station runs, as a scanner that is plugged in.
cat >"$root/line.py" <<X
import os, time
_, line = os.openpty()
with open("$root/line.new", "w") as f: f.write(os.ttyname(line))
os.rename("$root/line.new", "$root/line")
time.sleep(600)
X
# Whatever the station starts may try this.
cat >"$root/try" <<X
#!/bin/sh
try() { # WHAT COMMAND
	if (eval "\$2") >/dev/null 2>&1; then echo "\$1 done"; else echo "\$1 refused"; fi >>$root/tried
}
try read 'cat $elsewhere/readable'
try temporary 'echo x >$root/file'
try data 'mkdir -p $data/profiles && echo x >$data/profiles/file'
try open 'exec 5<>/dev/null'
try plugged-in 'exec 5<>\$(cat $root/line)'
try program 'true | cat'
try signal 'kill -0 \$PPID'
try elsewhere 'echo x >$elsewhere/file'
try move 'mv $elsewhere/readable $elsewhere/moved && mv $elsewhere/moved $elsewhere/readable'
try namespace 'unshare -U true'
echo end >>$root/tried
X
cat >"$root/driver" <<X
#!/bin/sh
echo '{"v":1,"hello":{"driver":"mine","device":"none"}}'
[ ! -e $root/line ] || sh $root/try
exec sleep 600
X
chmod +x "$root/driver"
echo readable >"$elsewhere/readable"
yield "$root" "$data" "$elsewhere" "$elsewhere/readable"
printf '[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[board]\nstart = no\n[driver mine]\ncommand = %s\nroom = 1\n' \
	"$root/driver" >"$data/station.ini"
start "$@"
grep -q '^NoNewPrivs:[[:space:]]*1' "/proc/$daemon/status" && grep -q '^Seccomp:[[:space:]]*2' "/proc/$daemon/status" ||
	fail "it is not confined: $(cat "/proc/$daemon/status")"
[ $# = 0 ] || [ "$(stat -c %U "/proc/$daemon/mem")" = root ] || fail 'its memory is for others of its user'
/usr/bin/python3 "$root/line.py" &
line=$!
soon 'something is plugged in' '[ -e "$root/line" ]'
yield "$(cat "$root/line")"

# Outside all of it can be done, or the test would show nothing.
"$@" sh -c "sh $root/try; :"
for what in read temporary data open plugged-in program signal elsewhere move; do
	grep -q "^$what done" "$root/tried" || fail "outside: $(cat "$root/tried")"
done
rm "$root/tried"
kill "$(ps -o pid=,args= --ppid "$daemon" | awk '/sleep 600/ { print $1 }')"
soon 'a program that ended is started again' 'grep -q "^end" "$root/tried"'
for what in read temporary data open plugged-in program signal; do
	grep -q "^$what done" "$root/tried" || fail "what it starts can no longer do what it must: $(cat "$root/tried")"
done
grep -q '^namespace refused' "$root/tried" || fail "what it starts makes a world of its own: $(cat "$root/tried")"
if grep -q 'has no Landlock' "$root/log"; then
	echo 'skipped: this kernel has no Landlock, which keeps files'
else
	for what in elsewhere move; do
		grep -q "^$what refused" "$root/tried" || fail "what it starts writes where it likes: $(cat "$root/tried")"
	done
fi
echo 'ok what it starts has what it needs, and writes nowhere else'

# Folders that somebody took away come again; a copy is made, a slip's folder written to.
rm -rf "$data/copies" "$data/profiles"
bt backup "$root/one.db" | grep -q 'is whole' || fail 'no backup is made'
bt scan "$(bt label cards --list | awk -F '\t' '$3 == "NEW CASE" { print $1 }')" >/dev/null
stop
start "$@"
bt status | grep -q 'last case 1' || fail 'what was scanned is not there'
stop
[ ! -e "$data/socket" ] || fail 'its socket stays'
[ "$(grep -c 'has no Landlock' "$root/log")" = 0 ] || skip 'this kernel has no Landlock'

# A kernel without it: what asks for it is answered that there is no such call.
cat >"$root/without.py" <<'X'
import ctypes, os, sys
seccomp = ctypes.CDLL("libseccomp.so.2", use_errno=True)
seccomp.seccomp_init.restype = ctypes.c_void_p
filter = ctypes.c_void_p(seccomp.seccomp_init(ctypes.c_uint32(0x7FFF0000)))  # all is allowed
for call in b"landlock_create_ruleset", b"landlock_add_rule", b"landlock_restrict_self":
    number = seccomp.seccomp_syscall_resolve_name(call)
    assert seccomp.seccomp_rule_add(filter, ctypes.c_uint32(0x00050000 | 38), number, 0) == 0  # but these: ENOSYS
assert seccomp.seccomp_load(filter) == 0
os.execvp(sys.argv[1], sys.argv[1:])
X
start "$@" /usr/bin/python3 "$root/without.py"
[ "$(grep -c 'has no Landlock' "$root/log")" = 1 ] || fail 'it is not said, or not once, that the kernel has no Landlock'
bt scan "$(bt label cards --list | awk -F '\t' '$3 == "CANCEL" { print $1 }')" >/dev/null || true
soon 'without Landlock its programs run' 'ps -o args= --ppid "$daemon" | grep -q "bandtally-print --serve"'
stop
echo 'ok and so does the station, and says once what it lacks'
