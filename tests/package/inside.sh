#!/bin/sh
# In a fresh Debian: installs, uses, upgrades, takes back, removes and purges the station's package, and the wall screen's.
set -eu
export DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 PATH=/usr/sbin:/usr/bin:/sbin:/bin
data=/var/lib/bandtally
fail() {
	echo "FAIL: $*"
	for log in /tmp/apt /tmp/station; do [ ! -e $log ] || tail -n 20 $log; done
	exit 1
}
holds() { # SENTENCE COMMAND…
	said=$1
	shift
	"$@" >/tmp/held 2>&1 || { cat /tmp/held; fail "not so: $said"; }
	echo "ok $said"
}
apt() { apt-get -y -qq --no-install-recommends -o Dpkg::Options::=--force-confdef -o Dpkg::Options::=--force-confold "$@" >/tmp/apt 2>&1; }
version() { dpkg-query -W -f '${Version} ${db:Status-Status}' bandtally; }
kept() { sha256sum -c --quiet /tmp/sums; }
keep() { sha256sum $data/record.db $data/station.key >/tmp/sums; }
as_station='setpriv --reuid=bandtally --regid=bandtally --init-groups env'
# As the service would: its user, its groups, its cache.
begin() {
	# shellcheck disable=SC2086
	$as_station XDG_CACHE_HOME=/var/cache/bandtally bandtallyd --data $data --head $data-head 2>>/tmp/station &
	station=$!
	for _ in $(seq 100); do
		! bandtally status >/dev/null 2>&1 || return 0
		sleep 0.1
	done
	fail 'the station does not start'
}
end() {
	kill "$station"
	wait "$station" || fail 'the station did not end in order'
}
card() { bandtally label cards --list | awk -F '\t' -v m="$1" '$3 == m { print $1 }'; }
scan() {
	code=$1
	shift
	bandtally scan "$code" "$@" >/tmp/scanned 2>&1 || [ $? = 4 ] || { cat /tmp/scanned; fail "refused: $code"; }
}

# By hand, before the package: real files in the data folder.
mkdir -p $data
printf '[site]\nletters = DF\nname = By hand\n[room 1]\nname = Theatre 4\n[board]\nstart = no\n' >$data/station.ini
printf '[reminders]\n' >$data/policy.ini
apt update || fail 'apt update'
began=$(date +%s)
apt install /packages/first.deb || fail 'it is not installed'
echo "   installed by apt in $(($(date +%s) - began)) s; $(du -sm / --exclude=/proc --exclude=/sys --exclude=/dev 2>/dev/null | cut -f 1) MB in all"
holds 'settings made by hand are those of /etc' grep -q '^letters = DF' /etc/bandtally/station.ini
holds 'what the package brought lies beside them' grep -q '^letters = BC' /etc/bandtally/station.ini.dpkg-dist
for name in station policy scanners labels; do
	holds "$name.ini lives in /etc alone" test "$(readlink $data/$name.ini)" = /etc/bandtally/$name.ini
done
holds 'the service is enabled' test -L /etc/systemd/system/multi-user.target.wants/bandtallyd.service
holds "the backup's timer is not" test ! -e /etc/systemd/system/timers.target.wants/bandtally-backup.timer
before=$(find $data $data-head | sort)
holds 'root may check before the first start' bandtallyd --check
holds 'and that makes nothing' test "$before" = "$(find $data $data-head | sort)"
holds 'a language is installed' test -r /usr/share/bandtally/words/de.mo

install -d -o bandtally -g bandtally /var/cache/bandtally # systemd's part
began=$(date +%s)
begin
bandtally staff add --registered --number 1 practitioner SCRUB-1 >/dev/null
scan "$(card 'NEW CASE')"
echo "   started, and the first scan entered, in $(($(date +%s) - began)) s"
holds 'and while it runs' bandtallyd --check
holds 'a scan is entered, in the room that was set by hand' sh -c 'bandtally status | grep -q "room 1, Theatre 4: case 1"'
# shellcheck disable=SC2086
page() { $as_station "$@" bandtally-print --pdf $data/page.pdf </packages/sample.json 2>/tmp/page; }
touch /usr/share/fonts/truetype/dejavu # later than the machine's own cache of it
holds 'a page is made' page HOME=/nonexistent
grep -q 'No writable cache' /tmp/page || fail 'the cache of fonts is not needed any more'
holds 'and by the service with a cache of its fonts' page XDG_CACHE_HOME=/var/cache/bandtally
holds 'so that nothing is said' test ! -s /tmp/page
rm $data/page.pdf

first=$(version)
! apt install /packages/second.deb || fail 'it was upgraded in the middle of a case'
holds 'no upgrade while a case is open, and it says which' grep -q '1 case is open (Theatre 4: case 1)' /tmp/apt
! apt remove bandtally || fail 'it was removed in the middle of a case'
holds 'no removal either' grep -q '1 case is open' /tmp/apt
! apt install tree || fail 'another package was installed in the middle of a case'
holds 'nor any other change by apt, before anything was done' grep -q '1 case is open' /tmp/apt
! dpkg -i /packages/second.deb >/tmp/apt 2>&1 || fail 'dpkg upgraded in the middle of a case'
holds 'nor by dpkg alone' grep -q '1 case is open' /tmp/apt
! dpkg -r bandtally >/tmp/apt 2>&1 || fail 'dpkg removed it in the middle of a case'
holds 'which does not remove it either' grep -q '1 case is open' /tmp/apt
holds 'the version stays, whole' test "$(version)" = "$first"
holds 'and the station goes on' kill -0 "$station"
scan "$(card CANCEL)"
scan "$(card YES)"
holds 'nothing is open' bandtally status --idle

cp /etc/bandtally/station.ini /tmp/station.ini
apt install /packages/second.deb || fail 'no upgrade with nothing open'
holds 'upgraded' test "$(version)" != "$first"
holds 'settings that somebody changed stay' cmp /tmp/station.ini /etc/bandtally/station.ini
holds 'those that nobody changed are the new ones' grep -q 'of the second version' /etc/bandtally/scanners.ini
end
begin
scan "$(card 'NEW CASE')"
touch /run/bandtally-stop-anyway
holds 'who must, may' apt install --reinstall /packages/second.deb
holds 'once' test ! -e /run/bandtally-stop-anyway
scan "$(card CANCEL)"
scan "$(card YES)"
end
keep
second=$(version)
! apt install --allow-downgrades /packages/first.deb || fail 'an earlier version went in its place'
holds 'an earlier version is refused with words' grep -q 'is earlier than the version that is installed' /tmp/apt
holds 'and the later one stays, whole' test "$(version)" = "$second"
holds 'with its record' kept

# The wall's screen.
apt install /packages/stand-in.deb /packages/wall.deb || fail "the wall's package is not installed"
holds "the wall's service is enabled" test -L /etc/systemd/system/multi-user.target.wants/bandtally-kiosk.service
holds 'its user gets tickets and is heard, and reads no device' \
	test "$(id -nG bandtally-kiosk | tr ' ' '\n' | sort | tr '\n' ' ')" = 'audio bandtally-count bandtally-kiosk '
echo 'room = 2' >>/etc/bandtally/kiosk.ini
cp /etc/bandtally/kiosk.ini /tmp/kiosk.ini
begin
scan "$(card 'NEW CASE')"
! dpkg -i /packages/wall-second.deb >/tmp/apt 2>&1 || fail 'the board was taken from the wall in the middle of a case'
holds 'while a case is open the board stays on the wall' grep -q '1 case is open' /tmp/apt
! dpkg -r bandtally-kiosk >/tmp/apt 2>&1 || fail 'the board was removed from the wall in the middle of a case'
holds 'and is not removed' grep -q '1 case is open' /tmp/apt
scan "$(card CANCEL)"
scan "$(card YES)"
apt install /packages/wall-second.deb || fail "the wall's package is not upgraded"
holds "upgraded, with the wall's room as it was set" cmp /tmp/kiosk.ini /etc/bandtally/kiosk.ini
apt remove bandtally-kiosk || fail "the wall's package is not removed"
holds 'removed, the wall is dark and the station goes on' sh -c "! test -e /usr/share/bandtally/kiosk/start && kill -0 $station"
apt install /packages/wall-second.deb || fail "the wall's package is not installed again"
holds 'installed again, with its settings' cmp /tmp/kiosk.ini /etc/bandtally/kiosk.ini
apt purge bandtally-kiosk stand-in || fail "the wall's package is not purged"
holds "a purge takes its settings and its user, and nothing of the station's" \
	sh -c '! test -e /etc/bandtally/kiosk.ini && ! id bandtally-kiosk && test -e /etc/bandtally/station.ini && bandtally status'
end
keep

apt remove bandtally || fail 'not removed'
holds 'removed, and record, key and settings stay' sh -c "! command -v bandtallyd && cmp /tmp/station.ini /etc/bandtally/station.ini"
holds 'as they were' kept
apt install /packages/second.deb || fail 'not installed again'
holds 'installed again, with the same settings' cmp /tmp/station.ini /etc/bandtally/station.ini
apt purge bandtally || fail 'not purged'
holds 'a purge says that record and key stay, and how they go' grep -q 'touch /var/lib/bandtally/remove-the-record' /tmp/apt
holds 'settings are gone' test ! -e /etc/bandtally
holds 'record and key stay' kept
holds 'nothing else is left' test -z "$(find / -xdev -name '*bandtally*' ! -path '/packages/*' ! -path '/proc/*' \
	! -path "$data*" ! -path '/tmp/*' ! -path '/var/cache/apt/*')"
apt install /packages/second.deb || fail 'not installed after a purge'
cp /tmp/station.ini /etc/bandtally/
begin
holds 'the record goes on after a purge' sh -c 'bandtally status | grep -q "last case 3"'
holds 'and is whole' bandtally audit verify
end
touch $data/remove-the-record
apt purge bandtally || fail 'not purged'
holds 'asked twice, a purge takes the record too' test ! -e $data -a ! -e $data-head
