#!/bin/sh
# A station that runs as its own user serves an auditor who is a third: the copy of the record is made in the
# station's folder, the auditor can read it, nobody can list it, and it goes. Who is in which group may do what that group
# may, and no more: each request is tried by each.
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
! as bt-auditor stock release GREEN-M 2>/dev/null || fail 'an auditor may do what is for stores'
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
# Of count, stores and audit: who may. Nobody else may anything.
ask() { # USER REQUEST: what the station answers to it alone
	setpriv --reuid "$1" --regid nogroup --init-groups /usr/bin/python3 -c 'import socket, sys
s = socket.socket(socket.AF_UNIX)
s.connect(sys.argv[1])
s.sendall(b"{\"do\":\"%s\"}\n" % sys.argv[2].encode())
print(s.makefile().readline())' "$data/socket" "$2"
}
while read -r request allowed; do
	for user in nurse:count keeper:stores auditor:audit visitor:none; do
		answer=$(ask "bt-${user%:*}" "$request")
		case " $allowed " in
		*" ${user#*:} "*) ! expr "$answer" : '.*not allowed: your user' >/dev/null || fail "$user may not $request" ;;
		*) expr "$answer" : '.*not allowed: your user' >/dev/null || fail "$user may $request: $answer" ;;
		esac
	done
done <<X
scan count
type count
sheet count audit
status count stores audit
case count audit
cases count audit
lines count stores audit
catalogue stores
staff nobody
withdraw nobody
list-staff count stores audit
quarantine stores
release stores
label stores
retry count stores
copy audit
backed-up audit
X
echo 'ok each request is for its own groups'
