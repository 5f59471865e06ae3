#!/bin/sh
# Typing at the page needs a ticket, which only a member of the group gets at the socket. A connection to the loopback
# address has no user: so a whole case is tried through the page by a user in no group, and ten thousand codes; then what
# a ticket and its cookie do, used twice, in another room, after restarts of the board and of the station, and in another
# boot.
#   typing.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
command -v curl >/dev/null || skip 'curl is not here'
port=$(/usr/bin/python3 -c 'import socket
s = socket.socket()
s.bind(("127.0.0.1", 0))
print(s.getsockname()[1])')
origin=http://127.0.0.1:$port
settings() { # [board] beside its port
	printf '[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n[board]\nstart = yes\nport = %s\n%s\n' \
		"$port" "$1" >"$data/station.ini"
}
board_runs() { curl -sf -o /dev/null "$origin/"; }
events() { bt status --json | sed 's/.*"events":\([0-9]*\),.*/\1/'; }
code() { bt label cards --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
# Whoever may do nothing at the socket; where it cannot be taken on, HTTP is asked all the same.
nobody() { "$@"; }
[ "$(id -u)" != 0 ] || ! command -v setpriv >/dev/null || nobody() { setpriv --reuid nobody --regid nogroup --clear-groups "$@"; }
typed() { # CODE [ROOM [WORDS OF CURL…]]: what the page is answered, and how
	body="{\"room\":${2:-1},\"code\":\"$1\"}"
	[ $# -lt 2 ] && shift 1 || shift 2
	curl -s -w ' %{http_code}\n' -H "Origin: $origin" -H 'Content-Type: application/json' -d "$body" "$@" "$origin/keyed"
}
closed() { # SENTENCE, and the answer on stdin
	grep -q '^Typing is closed: ask for a new ticket\.' || fail "$1"
	echo "ok $1"
}
enter() { # JAR ROOM: as the browser follows the address
	curl -s -o /dev/null -w '%{http_code} %{redirect_url}\n' -c "$1" "$(bt board --room "$2")"
}
settings ''
start
soon 'the board runs' board_runs
bt catalogue import "$source/config/catalogue.csv" >/dev/null
bt staff add --registered practitioner SCRUB-1 >/dev/null
bt staff add --registered practitioner CIRC-1 >/dev/null
pack=$(bt label pack --line GREEN-M --lot T26 --expiry 2028-03-31 --count 1 --pdf "$root/pack.pdf" | sed 's/[^0-9]*\([0-9]*\).*/\1/')
[ -n "$pack" ] || fail 'no pack is labelled'

# A user in no group: each code of a case, with the page's own Origin.
before=$(events)
for c in "$(code 'NEW CASE')" BTBC300000111 BTBC300000208 BTBC2010223 "$(code OFF)"; do
	answer=$(nobody curl -s -w ' %{http_code}\n' -H "Origin: $origin" -H 'Content-Type: application/json' \
		-d "{\"room\":1,\"code\":\"$c\"}" "$origin/keyed")
	expr "$answer" : 'Typing is closed: .*' >/dev/null || fail "who is in no group types $c: $answer"
done
[ "$(events)" = "$before" ] && bt sheet | grep -q 'no case' || fail 'who is in no group changes the record'
echo 'ok who is in no group cannot run a case through the page'

# As fast as it goes: nothing of it is stored, and the others hardly notice.
cat >"$root/flood.py" <<'Y'
import http.client, sys, time
port, end, n, cookie = int(sys.argv[1]), time.monotonic() + float(sys.argv[2]), 0, sys.argv[3]
got = {}
while time.monotonic() < end:
    c = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    c.request("POST", "/keyed", '{"room":1,"code":"A%d"}' % (n if cookie == "other" else 0), {
        "Origin": "http://127.0.0.1:%d" % port, "Content-Type": "application/json", "Cookie": cookie})
    status = c.getresponse().status
    got[status] = got.get(status, 0) + 1
    n += 1
    c.close()
print(" ".join("%d:%d" % x for x in sorted(got.items())))
Y
flood() { nobody /usr/bin/python3 - "$port" "$1" "$2" <"$root/flood.py"; }
flood 2 other >"$root/one" &
one=$!
flood 2 "bandtally-$port-1=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA" >"$root/two" &
two=$!
worst=0
for i in 1 2 3 4 5 6 7 8; do
	from=$(date +%s%3N)
	bt sheet >/dev/null
	took=$(($(date +%s%3N) - from))
	[ "$took" -le "$worst" ] || worst=$took
done
wait "$one" "$two"
grep -q '^403:[0-9][0-9][0-9]*$' "$root/one" && grep -q '^403:[0-9][0-9][0-9]*$' "$root/two" || fail "$(cat "$root/one" "$root/two")"
[ "$(events)" = "$before" ] || fail "what comes without a ticket is stored: $(($(events) - before)) events"
[ "$worst" -lt 1000 ] || fail "an answer took $worst ms meanwhile"
echo "ok of $(cat "$root/one" "$root/two" | tr '\n' ' ')codes without a ticket none is stored; the slowest answer at the socket took $worst ms"

# The right way.
address=$(bt board --room 1)
expr "$address" : "$origin/ticket/[A-Za-z0-9_-]\{43\}\$" >/dev/null || fail "no address: $address"
[ "$(curl -s -o /dev/null -w '%{http_code} %{redirect_url}' -c "$root/jar" "$address")" = "303 $origin/?room=1" ] || fail 'the ticket opens nothing'
[ "$(curl -s -o /dev/null -w '%{http_code}' -c "$root/jar2" "$address")" = 403 ] || fail 'a ticket works twice'
! grep -q bandtally "$root/jar2" || fail 'a used ticket gives a cookie'
typed "$(code 'NEW CASE')" 1 -b "$root/jar" | grep -q '"said":"Case 1 opened in Theatre 1\.".*"verdict":"accepted".* 200$' || fail 'a code is not taken with a cookie'
typed BTBC10100171 2 -b "$root/jar" | closed 'a cookie is for its own room'
typed BTBC10100171 1 -b "$root/jar" -H 'Origin: http://evil.example' | grep -q ' 403$' || fail 'two Origins are taken'
curl -s -w ' %{http_code}\n' -b "$root/jar" -H 'Origin: http://evil.example' -H 'Content-Type: application/json' -d '{"room":1,"code":"X"}' "$origin/keyed" | grep -q ' 403$' ||
	fail 'another Origin is taken'
[ "$(enter "$root/jar-2" 2)" = "303 $origin/?room=2" ] || fail 'no ticket for the other room'
typed "$(bt label cards --room 2 --list | awk -F '\t' '$3 == "NEW CASE" { print $1 }')" 2 -b "$root/jar-2" | grep -q 'Case 2 opened in Theatre 2' ||
	fail 'the other room has its own'
echo 'ok a ticket works once, its cookie in its own room, from the page alone'

# Five a second, and what is refused again and again is stored once a second.
sleep 1.1
before=$(events)
cookie=$(awk '/bandtally/ { print $6 "=" $7 }' "$root/jar")
flood 2.5 "$cookie" >"$root/one"
taken=$(sed 's/.*200:\([0-9]*\).*/\1/' "$root/one")
[ "$taken" -ge 10 ] && [ "$taken" -le 18 ] && grep -q '429:[0-9][0-9]' "$root/one" || fail "of typed codes: $(cat "$root/one")"
stored=$(($(events) - before))
[ "$stored" -ge 2 ] && [ "$stored" -le 4 ] || fail "$taken times the same refusal are $stored events"
echo "ok of $(cat "$root/one") typed codes five a second are taken, and the same refusal is stored once a second ($stored)"

# Who keeps what. The board's program is ended as a crash ends it; its cookies are the station's.
board=$(pgrep -P "$daemon" -f bandtally-board) || fail 'the board has no process'
kill -KILL "$board"
soon 'the board runs again' board_runs
sleep 1.1
typed X1 1 -b "$root/jar" | grep -q ' 200$' || fail 'a cookie does not outlive the board'
late=$(bt board --room 1)
stop
sqlite3 "$data/record.db" "SELECT payload FROM event WHERE kind = 'case-opened'" | grep -q keyed || fail 'it is not marked as keyed'
start
soon 'the board runs' board_runs
typed X2 1 -b "$root/jar" | grep -q ' 200$' || fail 'a cookie does not outlive a restart of the station'
[ "$(curl -s -o /dev/null -w '%{http_code}' "$late")" = 403 ] || fail 'a ticket outlives the station'
[ "$(stat -c %a "$data/cookies")" = 600 ] || fail 'others may read the cookies'
for secret in "${address##*/}" "${late##*/}" "${cookie#*=}"; do
	! grep -rqF -e "$secret" "$data" "$root/log" || fail 'a ticket or a cookie stands in a file or a log'
done
echo 'ok a cookie outlives the board and a restart; nothing that is written lets anybody in'
stop
sed -i 's/"boot":"[0-9a-f]*/&0/; s/"boot":"./"boot":"/' "$data/cookies"
start
soon 'the board runs' board_runs
typed X3 1 -b "$root/jar" | closed 'a cookie does not outlive a boot'
stop
echo '{"boot":' >"$data/cookies"
start
grep -q 'cookies cannot be read: typing at the pages needs new tickets' "$root/log" || fail 'a damaged file is not told'
soon 'the board runs' board_runs
[ "$(enter "$root/jar" 1)" = "303 $origin/?room=1" ] || fail 'no new ticket'
typed X4 1 -b "$root/jar" | grep -q ' 200$' || fail 'the new ticket is of no use'

# A board that was taken over has the hashes, and what its pages show while it lives; it types with neither.
hash=$(sed 's/.*"hash":"\([0-9a-f]*\)".*/\1/' "$data/cookies")
[ ${#hash} = 64 ] || fail 'there is no cookie'
stop
mkdir "$root/bin"
cp "$bin/bandtallyd" "$bin/bandtally-print" "$root/bin"
cat >"$root/bin/bandtally-board" <<Y
#!/bin/sh
echo '{"v":1,"listening":{"port":1}}'
for cookie in '' ',"cookie":""' ',"cookie":"$hash"' ',"cookie":7'; do
	echo '{"v":1,"keyed":{"id":"a","room":2,"code":"BTBC10100171"'"\$cookie"'}}'
done
echo '{"v":1,"ticket":{"id":"b"}}' '{"v":1,"ticket":7}' '{"v":1,"open":7}'
echo '{"v":1,"ticket":{"id":"b","ticket":"$hash"}}'
exec cat >$root/told
Y
chmod +x "$root/bin/bandtally-board"
"$root/bin/bandtallyd" --data "$data" 2>>"$root/log" &
daemon=$!
soon 'the station runs with another board' '[ "$(grep -c "\"reply\"" "$root/told")" = 4 ] && grep -q "\"entry\"" "$root/told"'
[ "$(grep -c '"reply":{"id":"a","refused":"closed"}' "$root/told")" = 4 ] || fail "a board types without a cookie: $(cat "$root/told")"
! grep '"entry"' "$root/told" | grep -q cookie || fail 'a board gets a cookie for a hash'
bt status | grep -q 'room 2, Theatre 2: case 2' || fail 'what a board made up is entered'
stop
start
soon 'the board runs' board_runs
echo 'ok a board that was taken over cannot type'

# What cannot be had says so.
bt board --room 7 2>&1 | grep -q 'no ticket: room 7 is not in station.ini' || fail 'a room that is none'
bt board --desk 2>&1 | grep -q 'no ticket: all who reach this board may see it' || fail 'a ticket that is not needed'
bt board --elsewhere 2>&1 | grep -q 'no ticket: this board is not started: see \[board elsewhere\]' || fail 'a board that is none'
mkdir "$root/a b"
page=$(bt board --room 1 --file "$root/a b/page.html")
[ "$page" = "file://$root/a%20b/page.html" ] && [ "$(stat -c %a "$root/a b/page.html")" = 600 ] || fail "the page in a file: $page"
address=$(sed -n 's/.*url=\([^"]*\)".*/\1/p' "$root/a b/page.html")
[ "$(curl -s -o /dev/null -w '%{http_code}' "$address")" = 303 ] || fail "the page in a file leads to '$address'"
ln -s "$data/station.ini" "$root/link.html"
bt board --room 1 --file "$root/link.html" >/dev/null
[ ! -L "$root/link.html" ] && grep -q Theatre "$data/station.ini" || fail 'a link is followed'
! bt board --file "$root/page" >"$root/why" 2>&1 && grep -q 'does not end in .html' "$root/why" || fail 'a page that is shown as text'
echo 'ok an address can be handed over in a file of its own'
stop
settings 'typing = no'
start
soon 'the board runs' board_runs
bt board 2>&1 | grep -q 'no ticket: typing is switched off at this board: see typing in \[board\] of station.ini' || fail 'typing is not off'
stop
settings 'typing = no
open = no'
start
soon 'the board runs' board_runs
see() { timeout 2 curl -sN "$@" "$origin/events?room=1" || true; }
see | grep -q '^This board shows nothing without a ticket' || fail 'a closed view is seen'
[ "$(enter "$root/jar" 1)" = "303 $origin/?room=1" ] || fail 'no ticket for a closed view'
see -b "$root/jar" | grep -q 'event: view' || fail 'nothing is seen with a ticket'
typed X5 1 -b "$root/jar" | grep -q 'switched off.* 403$\|^ 403$' || fail 'typing is not off'
curl -s -o /dev/null -c "$root/jar" "$(bt board --desk)"
timeout 2 curl -sN -b "$root/jar" "$origin/events?desk=1" | grep -q 'event: view' || fail 'the desk is not seen with a ticket'
echo 'ok a setting closes the view as well'
