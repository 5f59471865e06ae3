#!/bin/sh
# What a driver says of its device is kept by name, in the record and in no language; each word that a driver of ours has is
# a name of the list's, and any other word is 'other', with the driver's own text in the journal.
#   driver-words.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
# A scanner for each word: of one scanner's faults the record keeps one in ten seconds.
words='lost open sandbox uncertain learned partial dropped garbled two-cards too-long unreadable covered frozen stalled'
printf '[site]\nletters = BC\n[board]\nstart = no\n' >"$data/station.ini"
room=0
for word in $words told ended; do
	room=$((room + 1))
	printf '#!/bin/sh\necho '\''{"v":1,"hello":{"driver":"%s","device":"none"}}'\''\n' "$word" >"$root/$word"
	printf 'echo '\''{"v":1,"fault":{"code":"%s","text":"words of %s"}}'\''\nexec sleep 600\n' "$word" "$word" >>"$root/$word"
	chmod +x "$root/$word"
	printf '[room %d]\nname = Room of %s\n[driver %s]\ncommand = %s\nroom = %d\n' \
		"$room" "$word" "$word" "$root/$word" "$room" >>"$data/station.ini"
done
start
for word in $words told ended; do
	soon "the journal has the words of '$word'" "grep -q 'Room of $word: words of $word' '$root/log'"
done
stop
python3 - "$data/record.db" >"$root/kept" <<'PY'
import json, sqlite3, sys
for (text,) in sqlite3.connect(sys.argv[1]).execute("SELECT payload FROM event WHERE kind = 'scanner-fault'"):
    said = json.loads(text)["said"]
    print(said["scanner"], said["what"])
    assert "words of" not in text, text
PY
echo 'ok the record holds no sentence of a driver'
for word in $words; do
	grep -qx "$word scanner-$word" "$root/kept" || fail "'$word' is kept otherwise: $(cat "$root/kept")"
done
echo 'ok each word of the list is kept by its name'
for word in told ended; do
	grep -qx "$word scanner-other" "$root/kept" || fail "'$word' was taken for a driver's: $(cat "$root/kept")"
done
echo 'ok and no other'
