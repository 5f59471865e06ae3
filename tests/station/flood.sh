#!/bin/sh
# A scanner that goes mad: ten thousand lines of scans, half lines, lines that are too long, no JSON, no UTF-8; one that
# ends again and again; junk and a thousand connections at the socket. The station answers within a second all the while,
# what was entered is in the record, and a program that ends is started again, later each time.
#   flood.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
place=/tmp
[ ! -w /dev/shm ] || place=/dev/shm
. "$(dirname "$0")/common"
make_scanner mad
now_ms() { date +%s%3N; }
cat >"$root/dies" <<X
#!/bin/sh
date +%s%3N >>$root/starts
exit 1
X
chmod +x "$root/dies"
cat >"$data/station.ini" <<X
[site]
letters = BC
[room 1]
name = Theatre 1
[room 2]
name = Theatre 2
[driver mad]
command = $root/driver
room = 1
[driver dies]
command = $root/dies
room = 2
X
printf '[scans]\nburst_ms = 0\n' >"$data/policy.ini"
exec 9<>"$root/lines"
start
soon 'the scanner is there' 'bt status | grep -q "scanner mad, room 1.*: running"'
code() { bt label cards --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
new=$(code 'NEW CASE') awake=$(code 'AWAKE PATIENT')
bt scan --room 2 "$(bt label cards --room 2 --list | awk -F '\t' '$3 == "NEW CASE" { print $1 }')" >/dev/null || fail 'no case in room 2'

# The last line opens a case in room 1: when it is there, the flood is over.
awk -v awake="$awake" -v new="$new" 'BEGIN {
	long = "x"
	while (length(long) < 5000)
		long = long long
	for (i = 0; i < 10000; i++)
		if (i % 10 < 3)
			printf "{\"v\":1,\"scan\":{\"aim\":\"]C0\",\"data\":\"%s\"}}\n", awake
		else if (i % 10 == 3)
			printf "{\"v\":1,\"scan\":{\"data\":\"unknown %d\"}}\n", i
		else if (i % 10 == 4)
			printf "{\"v\":1,\"scan\":{\"da\n"
		else if (i % 10 == 5 && i % 50 == 5)
			printf "{\"v\":1,\"scan\":{\"data\":\"%s\"}}\n", long
		else if (i % 10 == 6)
			printf "\377\376 no text \300\n"
		else if (i % 10 == 7)
			printf "{\"v\":1,\"scan\":{\"hex\":\"00%04x00ff\"}}\n", i
		else if (i % 10 == 8)
			printf "{\"v\":1,\"fault\":{\"code\":\"mad\",\"text\":\"fault %d\"}}\n", i
		else
			printf "[[[[[[[[[[\n\n"
	printf "{\"v\":1,\"scan\":{\"aim\":\"]C0\",\"data\":\"%s\"}}\n", new
}' >"$data/flood"
began=$(now_ms)
cat "$data/flood" >&9 &
feeder=$!
worst=0 asked=0
while :; do
	from=$(now_ms)
	bt sheet --room 1 >"$data/sheet" || fail 'the socket does not answer during the flood'
	took=$(($(now_ms) - from))
	[ "$took" -le "$worst" ] || worst=$took
	asked=$((asked + 1))
	! grep -q 'case 2' "$data/sheet" || break
	[ $(($(now_ms) - began)) -lt 60000 ] || fail 'the flood does not end'
done
wait "$feeder"
[ "$worst" -lt 1000 ] || fail "an answer took $worst ms during the flood"
[ "$asked" -gt 3 ] || fail 'the flood was over before anything could be asked'
echo "ok 10,001 lines in $(($(now_ms) - began)) ms; $asked answers meanwhile, the slowest after $worst ms"
bt sheet --room 2 | grep -q 'case 1' || fail 'the case of the other room is gone'
fault=$(bt status | grep 'scanner mad') && echo "ok the status says: $fault"

# Starts of the one that dies: half a second, one, two …
tries=200
until [ "$(wc -l <"$root/starts")" -ge 4 ]; do
	[ $((tries -= 1)) -gt 0 ] || fail 'a scanner that ended was not started again'
	sleep 0.05
done
awk 'NR > 1 { gap = $1 - last; if (NR > 2 && gap < before * 1.3) exit 1; if (gap < 450) exit 1; before = gap } { last = $1 }' \
	"$root/starts" || fail "not later each time: $(cat "$root/starts")"
echo 'ok a scanner that ends is started again, later each time'
bt status | grep -q 'scanner dies, room 2: .*lost' || fail "the status does not say that it is lost: $(bt status)"

if command -v node >/dev/null; then
	cat >"$data/junk.mjs" <<'X'
import { connect } from 'node:net';
const path = process.argv[2], open = [];
const say = (bytes) => new Promise((done) => {
	const s = connect(path, () => s.write(bytes));
	let got = '';
	s.on('data', (d) => { got += d; if (got.includes('\n')) { s.destroy(); done(got); } });
	s.on('error', () => done('closed'));
	s.on('close', () => done(got || 'closed'));
	setTimeout(() => { s.destroy(); done(got || 'nothing'); }, 1500);
});
const bad = [Buffer.from([0, 255, 10]), '[]\n', '{}\n', 'null\n', '"x"\n', '{"do":7}\n', '{"do":"scan","code":{}}\n',
	'['.repeat(100000) + '\n', '{"do":"scan","code":"\\u0000"}\n', '{"do":"scan","code":"' + 'A'.repeat(5000) + '"}\n',
	'{"do":"copy","file":"relative"}\n', '{"do":"catalogue","csv":7}\n', '{"do":"staff","name":"x","kind":99}\n',
	'{"do":"scan","room":1e999,"code":"x"}\n', '{"do":"sheet","room":-1}\n', 'x'.repeat(3 << 20) + '\n'];
let silent = 0;
for (const b of bad) {
	const answer = await say(b);
	let fine = false;
	try {
		const o = JSON.parse(answer);
		fine = o.ok === false ? /: /.test(o.error) : o.ok === true;
	} catch { /* not JSON */ }
	if (!fine) {
		console.log('no sentence for ' + String(b).slice(0, 60) + ': ' + answer.slice(0, 200));
		silent++;
	}
}
// One that asks for a copy of the record and leaves at once.
await new Promise((done) => {
	const s = connect(path, () => s.write('{"do":"copy"}\n', () => { s.destroy(); done(); }));
});
// A thousand that connect and say nothing.
let turned = '';
for (let i = 0; i < 1000; i++)
	await new Promise((done) => {
		const s = connect(path, done);
		s.on('data', (d) => { turned ||= String(d); });
		s.on('error', done);
		open.push(s);
	});
await new Promise((done) => setTimeout(done, 300));
console.log(turned.includes('too many programs') ? 'turned away with a sentence' : 'not turned away: ' + turned);
for (const s of open)
	s.destroy();
process.exit(silent ? 1 : 0);
X
	node "$data/junk.mjs" "$data/socket" >"$data/out" || fail "$(cat "$data/out")"
	grep -q 'turned away with a sentence' "$data/out" || fail "$(cat "$data/out")"
	sleep 0.3
	from=$(now_ms)
	bt status >/dev/null || fail 'the socket does not answer after junk'
	[ $(($(now_ms) - from)) -lt 1000 ] || fail 'the socket is slow after junk'
	echo 'ok junk at the socket gets one sentence each; of a thousand connections the last are turned away with one'
else
	echo 'skipped: junk at the socket, because node is not here'
fi
bt audit verify | grep -q 'numbered without a gap' || fail 'no copy can be had after one was left'
soon 'a copy that nobody waits for goes' '[ -z "$(ls "$data/copies" 2>/dev/null)" ]'
stop
faults=$(sqlite3 "$data/record.db" "SELECT count(*) FROM event WHERE kind='scanner-fault' AND payload LIKE '%\"scanner\":\"mad\"%'")
[ "$faults" -ge 1 ] && [ "$faults" -le 10 ] || fail "$faults faults of one scanner in the record"
echo "ok its faults are in the record, $faults of thousands"
bt audit verify | grep -q 'numbered without a gap' || fail 'the record does not hold'
echo 'ok the record holds'
