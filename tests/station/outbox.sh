#!/bin/sh
# More slips than any list holds: none is given up, the printer's program is never given more than it takes, and after a
# restart each comes out all the same.
#   outbox.sh FOLDER-OF-PROGRAMS
set -eu
real=$1
bin=
. "$(dirname "$0")/common"
bin=$root/bin
slips=300
mkdir "$bin"
cp "$real/bandtallyd" "$real/bandtally" "$bin"
# In the place of bandtally-print: takes 64 at most, and finishes them once $root/paper is there.
cat >"$bin/bandtally-print" <<X
#!/usr/bin/python3
import json, os, select, sys
waiting = []
lines = b""
while True:
    ready = select.select([0], [], [], 0.05)[0]
    if ready:
        data = os.read(0, 65536)
        if not data: break
        lines += data
        *whole, lines = lines.split(b"\n")
        waiting += [json.loads(x)["job"]["id"] for x in whole if x]
    with open("$root/most", "a") as f: f.write("%d\n" % len(waiting))
    while waiting and os.path.exists("$root/paper"):
        id = waiting.pop(0)
        with open("$root/printed", "a") as f: f.write("%d\n" % (id // 100))
        os.write(1, b'{"v":1,"job":{"id":%d,"state":"done","cups":7,"pages":1,"text":"slip: done"}}\n' % id)
X
chmod +x "$bin/bandtally-print"
: >"$root/printed"
start
scan() { bt scan "$(bt label cards --list | awk -F '\t' -v m="$1" '$3 == m { print $1; exit }')" >/dev/null || [ $? = 4 ] || fail "refused: $1"; }
for card in 'NEW CASE' CANCEL YES; do scan "$card"; done
/usr/bin/python3 - "$data/socket" "$slips" <<'X' || fail 'the addenda are not taken'
import json, socket, sys
s = socket.socket(socket.AF_UNIX)
s.connect(sys.argv[1])
f = s.makefile('rw')
for i in range(int(sys.argv[2])):
    f.write(json.dumps({'do': 'type', 'room': 1, 'text': 'case 1: note %d' % i}) + '\n')
    f.flush()
    answer = json.loads(f.readline())
    if answer.get('verdict') != 'accepted': sys.exit(str(answer))
X
older=$((slips - 128))
[ "$(bt print list | tail -n 1)" = "and $older older, not seen yet" ] || fail "the older ones are not counted: $(bt print list | tail -n 1)"
bt status | grep -q "^and $older older slips, not seen yet" || fail 'the status does not count them'
soon 'its program has what it takes' '[ "$(tail -n 1 "$root/most")" = 48 ]'
stop
start
touch "$root/paper"
soon 'each comes out' '[ "$(sort -un "$root/printed" | wc -l)" -ge 300 ]'
[ "$(sort -un "$root/printed" | tail -n 1)" = "$slips" ] || fail 'another slip came out'
[ "$(sort "$root/printed" | uniq -d | wc -l)" = 0 ] || fail "some came twice: $(sort "$root/printed" | uniq -d | head -3)"
[ "$(sort -n "$root/most" | tail -n 1)" -le 64 ] || fail 'it was given more than it takes'
bt print list | grep -q queued && fail 'one still waits'
echo 'ok none falls off a list'
stop
