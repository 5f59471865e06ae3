#!/bin/sh
# What is long comes a page at a time, and who asks without end and never reads is left.
#   lists.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
start
[ "$(bt case list --json | tr -d ' \n')" = '[]' ] || fail 'a list of no cases is not an empty list'
/usr/bin/python3 - "$data/socket" "$bin/bandtally" "$data" <<'X' || fail 'cases cannot be opened and cancelled'
import json, socket, subprocess, sys
cards = subprocess.run([sys.argv[2], '--data', sys.argv[3], 'label', 'cards', '--list'], capture_output=True, text=True).stdout
code = {}
for line in cards.splitlines():
    code.setdefault(line.split('\t')[2], line.split('\t')[0])
s = socket.socket(socket.AF_UNIX)
s.connect(sys.argv[1])
f = s.makefile('rw')
def scan(meaning):
    f.write(json.dumps({'do': 'scan', 'room': 1, 'code': code[meaning]}) + '\n')
    f.flush()
    return json.loads(f.readline())
for i in range(230):
    for meaning in ('NEW CASE', 'CANCEL', 'YES'):
        answer = scan(meaning)
        if answer['verdict'] == 'refused':
            sys.exit('%d %s: %s' % (i, meaning, answer))
X
[ "$(bt case list | awk 'NR > 1 { print $2 }' | sort -un | wc -l)" = 230 ] || fail "cases are missing: $(bt case list | wc -l)"
[ "$(bt case list | wc -l)" = 231 ] || fail 'cases are told twice'
bt case list | sed -n 2p | grep -q '^cancelled  *1  Room 1  ' || fail "a room is not told by its name: $(bt case list | sed -n 1,2p)"
bt case list --json | /usr/bin/python3 -c 'import json, sys
cases = json.load(sys.stdin)
sys.exit([c["case"] for c in cases] != list(range(1, 231)) or {c["state"] for c in cases} != {"cancelled"})' ||
	fail 'the list as JSON is not the same list'
echo 'ok 230 cases come in five pages, each once'
/usr/bin/python3 - "$data/socket" <<'X' || fail 'who never reads is not left'
import socket, sys
s = socket.socket(socket.AF_UNIX)
s.connect(sys.argv[1])
s.settimeout(20)
try:
    for i in range(20000):
        s.sendall(b'{"do":"cases"}\n' * 10)
except (BrokenPipeError, ConnectionResetError):
    sys.exit(0)
sys.exit('the station took every request')
X
bt status >/dev/null || fail 'the station does not answer others'
grep -q 'does not take its answer' "$root/log" || fail 'it is not told'
echo 'ok who never reads is left, and others are answered'
stop
