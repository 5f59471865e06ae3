#!/bin/sh
# Everything in the data folder that somebody could change, changed, and who notices it.
#   tamper.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
command -v python3 >/dev/null || skip 'python3 is not installed'
# A printer's program that keeps the signed summaries.
mkdir "$root/bin"
cp "$bin/bandtallyd" "$root/bin/"
cat >"$root/bin/bandtally-print" <<PRINT
#!/bin/sh
exec sed -n -u 's/.*"jws":"\([^"]*\)".*/\1/p' >>$root/slips
PRINT
chmod +x "$root/bin/bandtally-print"
: >"$root/slips"
tools=$bin
bin=$root/bin
bt() { "$tools/bandtally" --data "$data" "$@"; }
printf '[board]\nstart = no\n' >"$data/station.ini"
code_of() { bt label cards --list | awk -F '\t' -v w="$1" '$3 == w { print $1 }'; }

# --- a case with a correction after its end, a second one, and one that is open
start
bt staff add --registered practitioner SCRUB-1 >/dev/null
new=$(code_of 'NEW CASE') cancel=$(code_of CANCEL) yes=$(code_of YES)
cases=0
whole_case() {
	cases=$((cases + 1))
	bt scan "$new" >/dev/null
	bt scan "$cancel" >/dev/null || true
	bt scan "$yes" >/dev/null || true
	type_text "case $cases: looked under the dressing again"
}
whole_case
soon 'the first slip was handed over' '[ "$(wc -l <"$root/slips")" = 1 ]'
stop
mkdir "$root/older"
cp -r "$data"/record.db "$data/head" "$root/older/"
start
whole_case
soon 'the second slip was handed over, and the first again' '[ "$(wc -l <"$root/slips")" = 3 ]'
bt scan "$new" >/dev/null
stop
mkdir "$root/whole"
cp "$data"/record.db "$data"/station.key "$data"/station.pub.json "$root/whole/"
cp -r "$data/head" "$root/whole/"

verify() { bt audit verify --key "$root/whole/station.pub.json" "$@"; }
slips() { bt audit slip --key "$root/whole/station.pub.json" --file "$root/slips"; }
put_back() {
	rm -rf "$data"/record.db* "$data/head"
	cp -r "$root/whole/"* "$data/"
}
sees() { # WHAT WAS DONE; WORDS; COMMAND…: it fails, and says so
	done=$1 words=$2
	shift 2
	code=0
	"$@" >"$root/out" 2>&1 || code=$?
	[ "$code" = 1 ] || fail "$done: exit $code of $*: $(cat "$root/out")"
	grep -q -- "$words" "$root/out" || fail "$done: no '$words' in: $(cat "$root/out")"
	echo "ok $done: $*" | sed "s,$root,,g; s/--key [^ ]* //" | cut -c 1-150
}
misses() { # WHAT WAS DONE; COMMAND…: it cannot know
	done=$1
	shift
	"$@" >"$root/out" 2>&1 || fail "$done: $* noticed it: $(cat "$root/out")"
	echo "ok $done: not noticed by $*" | sed "s,$root,,g; s/--key [^ ]* //" | cut -c 1-150
}

# What is done to the record: the name of a change. `chained`: every hash after it is made anew, as anybody can.
change() {
	put_back
	python3 - "$data/record.db" "$1" <<'PY'
import hashlib, json, sqlite3, sys
db = sqlite3.connect(sys.argv[1])
what = sys.argv[2]
triggers = [row[0] for row in db.execute("SELECT sql FROM sqlite_master WHERE type = 'trigger'")]
names = [row[0] for row in db.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'")]
for name in names:
	db.execute('DROP TRIGGER ' + name)
rows = [list(row) for row in db.execute('SELECT seq, case_no, kind, key, payload, hash FROM event ORDER BY seq')]

def first(kind):
	return next(i for i, row in enumerate(rows) if row[2] == kind)

def rechain():
	before = bytes(32)
	for i, row in enumerate(rows):
		event = json.loads(row[4])
		event['seq'] = row[0] = i + 1
		if 'ref' in event and event['kind'] == 'sealed':
			event['ref'] = i
		row[4] = json.dumps(event, sort_keys=True, separators=(',', ':'), ensure_ascii=False)
		row[5] = before = hashlib.sha256(before + row[4].encode()).digest()

def edit(kind, old, new):
	row = rows[first(kind)]
	assert old in row[4], row
	row[4] = row[4].replace(old, new)

if what == 'payload':
	edit('staff-set', 'SCRUB-1', 'SCRUB-2')
elif what == 'payload-chained':
	edit('staff-set', 'SCRUB-1', 'SCRUB-2')
	rechain()
elif what == 'unsealed-chained': # and every trace of key and seal taken out
	edit('staff-set', 'SCRUB-1', 'SCRUB-2')
	rows[:] = [row for row in rows if row[2] not in ('sealed', 'key')]
	rechain()
elif what == 'hash':
	rows[2][5] = bytes(32)
elif what == 'short-hash':
	rows[2][5] = rows[2][5][:31]
elif what == 'case':
	rows[first('case-opened')][1] = 2
elif what == 'kind':
	rows[first('case-opened')][2] = 'case-ended'
elif what == 'key':
	rows[first('slip-queued')][3] = 'slip:9'
elif what == 'row':
	del rows[4]
elif what == 'row-chained':
	del rows[first('case-ended')]
	rechain()
elif what == 'seal':
	edit('sealed', '"jws":"e', '"jws":"f')
	rechain()
elif what == 'tail': # up to the last event of a case, which has its seal behind it
	last = max(i for i, row in enumerate(rows) if row[2] == 'case-ended')
	del rows[last + 1:]
elif what == 'tail-sealed':
	del rows[first('case-ended') + 2:]
elif what == 'swapped':
	rows[3][4], rows[4][4] = rows[4][4], rows[3][4]
elif what == 'further':
	seq, before = rows[-1][0] + 1, rows[-1][5]
	text = '{"boot":1,"boot_ms":5,"kind":"stopped","seq":%d,"v":1,"wall_ms":6}' % seq
	rows.append([seq, 0, 'stopped', '', text, hashlib.sha256(before + text.encode()).digest()])
db.execute('DELETE FROM event')
db.executemany('INSERT INTO event VALUES (?,?,?,?,?,?)', rows)
if what != 'triggers':
	for sql in triggers:
		db.execute(sql)
if what == 'index':
	db.execute('DROP INDEX event_lasting')
elif what == 'table':
	db.execute('CREATE TABLE notes(text TEXT)')
elif what == 'view':
	db.execute('ALTER TABLE event RENAME TO old')
	db.execute('CREATE VIEW event AS SELECT * FROM old')
elif what == 'trigger-emptied':
	db.execute('DROP TRIGGER event_no_delete')
	db.execute("CREATE TRIGGER event_no_delete BEFORE DELETE ON event BEGIN SELECT 1; END")
db.commit()
PY
}

# --- nothing was changed
change nothing
verify >"$root/out" 2>&1 || fail "an unchanged record: $(cat "$root/out")"
verify --each-seal --slips "$root/slips" >"$root/out" 2>&1 || fail "unchanged, with slips: $(cat "$root/out")"
grep -q 'whole, and holds what was kept elsewhere' "$root/out" || fail "unchanged, with slips: $(cat "$root/out")"
grep -q '3 of 3 slips signed and held' "$root/out" || fail "slips were not looked at: $(cat "$root/out")"
slips >"$root/out" || fail "its slips: $(cat "$root/out")"
bt audit slip "$(head -n 1 "$root/slips")" >"$root/out" || fail "one slip: $(cat "$root/out")"
grep -q '^signed and held: slip 1, copy 1, of case 1$' "$root/out" || fail "$(cat "$root/out")"
printf '\n \n' >"$root/none"
for none in "$root/none" /dev/null; do # nothing was compared
	verify --slips "$none" >"$root/out" 2>&1 && fail "whole by no slip: $(cat "$root/out")"
	grep -q "no slip is in $none: nothing was compared" "$root/out" || fail "no slip: $(cat "$root/out")"
	bt audit slip --file "$none" >"$root/out" 2>&1 && fail "no slip is held: $(cat "$root/out")"
	grep -q "no slip is in $none: nothing was compared" "$root/out" || fail "no slip: $(cat "$root/out")"
done
bt audit slip --file - <"$root/none" >"$root/out" 2>&1 && fail "no slip is held: $(cat "$root/out")"
{ cat "$root/slips"; head -n 1 "$root/slips" | sed 's/.$//'; } >"$root/four"
bt audit slip --file - <"$root/four" >"$root/out" && fail 'a broken text passed'
[ "$(grep -c '^ *[1-3]  [0-9]*  ' "$root/out")" = 3 ] || fail "not a row for each slip: $(cat "$root/out")"
grep -q '^ *4  ' "$root/out" && grep -qx '3 of 4 slips signed and held' "$root/out" || fail "of four: $(cat "$root/out")"

# --- rows, one column after the other
change payload;         sees 'a text edited' 'its hash does not follow' verify
change hash;            sees 'a hash edited' 'its hash does not follow' verify
change short-hash;      sees 'a hash cut' 'its hash does not follow' verify
change case;            sees 'a case number edited' 'columns do not agree' verify
change kind;            sees 'a kind edited' 'columns do not agree' verify
change key;             sees 'a key edited' 'columns do not agree' verify
change row;             sees 'a row deleted' 'does not follow' verify
change swapped;         sees 'two texts exchanged' 'columns do not agree\|hash does not follow' verify

# --- the chain made anew
change payload-chained; sees 'a text edited, all hashes made anew' 'signs something else than the record holds' verify
                        sees 'a text edited, all hashes made anew' 'the record holds something else' slips
change row-chained;     sees 'a row deleted, renumbered, all hashes made anew' 'signs something else' verify
change seal;            sees 'a seal edited' 'not signed by any key' verify --each-seal
change unsealed-chained; sees 'key and seals taken out, all hashes made anew' 'names no key' verify
                        sees 'key and seals taken out, all hashes made anew' 'the record holds something else' slips

# --- the end
change tail;            sees 'the end cut off' 'has no seal behind it' verify
change tail-sealed;     misses 'the end cut off behind a seal' verify
                        sees 'the end cut off behind a seal' 'ends at event .* before event' slips
                        sees 'the end cut off behind a seal' '0 of 3 slips' verify --slips "$root/slips"
                        sees 'the end cut off behind a seal' 'the record ends before it' verify --head "$root/whole/head/head.json"
change further;         sees 'an event put behind the end' 'has no seal behind it' verify


# --- what the file is made of
change triggers;        sees 'triggers dropped' 'tables, indexes and triggers' verify
change trigger-emptied; sees 'a trigger that does nothing' 'tables, indexes and triggers' verify
change index;           sees 'an index dropped' 'tables, indexes and triggers' verify
change view;            sees 'the table made a view' 'event' verify
change table;           sees 'a further table' 'tables, indexes and triggers' verify

# --- bytes of the file, some of each kind of page: whatever changes what is read is noticed
change nothing
cp "$data/record.db" "$root/bytes.db"
python3 - "$root/bytes.db" "$tools/bandtally" "$root/whole/station.pub.json" <<'PY' || fail 'a byte of the file'
import collections, sqlite3, subprocess, sys
file, program, key = sys.argv[1:]
whole = open(file, 'rb').read()
size = int.from_bytes(whole[16:18], 'big')
kinds = {2: 'index, inner', 5: 'table, inner', 10: 'index', 13: 'table'}

def content():
	db = sqlite3.connect('file:%s?immutable=1' % file, uri=True)
	try:
		return (db.execute('SELECT * FROM event ORDER BY seq').fetchall(),
			db.execute('SELECT type, name, sql FROM sqlite_master ORDER BY name').fetchall(),
			db.execute('PRAGMA user_version').fetchall(),
			[db.execute("SELECT * FROM event WHERE " + where).fetchall() for where in (
				"case_no = 1 AND case_no > 0", "key = 'slip:1' AND key <> ''", "kind = 'case-ended'")])
	except (sqlite3.Error, UnicodeDecodeError) as e:
		return str(e)
	finally:
		db.close()

def verify(*more):
	return subprocess.run([program, 'audit', 'verify', '--file', file, '--key', key, *more], capture_output=True).returncode

was, told = content(), collections.Counter()
assert verify('--indexes') == 0
for page in range(len(whole) // size):
	at = page * size
	kind = 'first page' if page == 0 else kinds.get(whole[at], 'other')
	step = 149 if kind.startswith('table') else 61
	for i in [*range(at, at + 16), *range(at + 16, at + size, step)]:
		changed = bytearray(whole)
		changed[i] ^= 0x41
		open(file, 'wb').write(changed)
		if verify():
			told[kind, 'verify'] += 1
		elif verify('--indexes'):
			told[kind, 'verify --indexes'] += 1
		elif content() == was:
			told[kind, 'nobody: it is not read'] += 1
		else:
			print('byte', i, 'of page', page, kind, 'is read otherwise and not noticed')
			sys.exit(1)
for (kind, who), n in sorted(told.items()):
	print('ok %-12s %5d bytes: noticed by %s' % (kind, n, who))
assert told['table', 'verify'] > 50 and told['index', 'verify --indexes'] > 5, told
PY

# --- another station's record and slip
data=$root/other
mkdir "$data"
printf '[board]\nstart = no\n' >"$data/station.ini"
start
stop
sees "another station's record" 'not among those of this station' verify
sees "another station's slip" 'not signed by any key of this station' bt audit slip "$(head -n 1 "$root/slips")"
data=$root/data

# --- what the start says: it goes on under a new incarnation, with numbers behind those that were given out
last() { bt status --json | sed -n "s/.*\"last_case\":\([0-9]*\).*/\1/p"; }
incarnation() { sqlite "SELECT coalesce(max(json_extract(payload, '\$.n')), 1) FROM event WHERE kind = 'incarnation'"; }
sqlite() {
	python3 -c 'import sqlite3, sys; print(sqlite3.connect("file:" + sys.argv[1] + "?mode=ro", uri=True).execute(sys.argv[2]).fetchone()[0])' \
		"$data/record.db" "$1"
}
settles() { # everything that stands there, and then it is trusted
	for event in $(bt status | grep -o 'audit settle [0-9]*' | cut -d ' ' -f 3); do
		bt audit settle "$event" 'looked at the papers' >/dev/null
	done
	! bt status | grep -q 'DO NOT TRUST' || fail "settled, and not trusted: $(bt status)"
}
starts_saying() { # WHAT WAS DONE; WORDS; the numbers of cases begin behind CASE; INCARNATION
	"$bin/bandtallyd" --data "$data" --check >"$root/out" 2>&1 && fail "$1: a check says that all is sound"
	start >/dev/null
	bt status | grep -q "DO NOT TRUST THE STATION NOW: .*$2" || fail "$1: the board does not say '$2'"
	[ "$(last)" = "$3" ] || fail "$1: the last case is $(last), not $3"
	settles
	stop
	[ "$(incarnation)" = "$4" ] || fail "$1: incarnation $(incarnation), not $4"
	start >/dev/null
	! bt status | grep -q 'DO NOT TRUST' || fail "$1: it is said again"
	stop
	echo "ok $1: said at the start: $2"
}
starts_ordinarily() {
	start >/dev/null
	! bt status | grep -q 'DO NOT TRUST' || fail "$1: it is not ordinary"
	stop
	[ "$(incarnation)" = 1 ] || fail "$1: incarnation $(incarnation)"
	echo "ok $1: ordinary"
}
change nothing;         starts_ordinarily 'what was whole'
change tail-sealed;     starts_saying 'the end cut off behind a seal' 'An older record was put back' 3 2
                        verify >"$root/out" || fail "after the new incarnation: $(cat "$root/out")"
                        grep -q 'incarnation 2' "$root/out" || fail "$(cat "$root/out")"
                        sees 'the end cut off behind a seal, and gone on' 'another than the slip names' slips
change payload-chained; starts_saying 'all hashes made anew' 'Another record was put in place' 3 2
put_back; cp "$root/older/record.db" "$data/"
                        starts_saying 'an older copy' 'An older record was put back' 3 2
put_back; rm -r "$data/head"
                        starts_saying 'the head is gone' 'its head file is gone' 10003 2
put_back; echo '{}' >"$data/head/head.json"
                        starts_saying 'the head is damaged' 'its head file is gone' 10003 2
put_back; rm "$data/record.db"
                        starts_saying 'the record is gone' 'An older record was put back' 3 2
put_back; cp "$root/other/record.db" "$data/"
                        starts_saying "another station's record" 'An older record was put back' 3 2

# --- the first paper after an incarnation has a number of its own, and bears it
put_back; cp "$root/older/record.db" "$data/"
start >/dev/null
: >"$root/slips.before"; cp "$root/slips" "$root/slips.before"
type_text "case 1: looked again"
soon 'the slip of the new incarnation was handed over' '[ "$(wc -l <"$root/slips")" -gt "$(wc -l <"$root/slips.before")" ]'
bt audit slip "$(tail -n 1 "$root/slips")" >"$root/out" || fail "$(cat "$root/out")"
grep -q '^signed and held: slip 3, ' "$root/out" || fail "its number: $(cat "$root/out")"
grep -q '"incarnation":2' "$root/out" || fail "its incarnation: $(cat "$root/out")"
stop
cp "$root/slips.before" "$root/slips"

# --- both places went back together: the start cannot know, a paper that is newer does
put_back; rm -r "$data/head"; cp -r "$root/older/"* "$data/"
starts_ordinarily 'record and head went back together'
sees 'record and head went back together' 'the record holds something else' slips

# --- killed in the middle of a case: the record is ahead of its head
put_back
start >/dev/null
bt staff add --registered practitioner CIRC-2 >/dev/null
kill -9 "$daemon"; wait "$daemon" 2>/dev/null || true; daemon=
starts_ordinarily 'killed'

# --- a folder of its own, and one that cannot be written
put_back
printf '[board]\nstart = no\n[station]\nhead = %s\n' "$root/elsewhere" >"$data/station.ini"
starts_ordinarily 'another place is named: what was noted before is looked at'
[ -s "$root/elsewhere/head.json" ] || fail 'nothing was noted there'
rm -r "$root/elsewhere"
: >"$root/elsewhere"
start >/dev/null
bt status | grep -q 'FAULT: How far the record has come cannot be noted' || fail 'nobody says that the place cannot be written'
stop
