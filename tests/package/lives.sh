#!/bin/sh
# A station's life with its package, in a fresh Debian: see inside.sh, which runs there.   lives.sh FOLDER-OF-PACKAGES
set -eu
here=$(cd "$(dirname "$0")" && pwd)
skip() {
	echo "skipped: $*"
	exit 77
}
[ "$(id -u)" = 0 ] || skip 'a Debian of its own needs root'
command -v mmdebstrap >/dev/null || skip 'mmdebstrap is not installed'
[ -e "$(echo "$1"/bandtally_*.deb)" ] || skip 'no package was built (package-builds)'
sources=/etc/apt/sources.list
[ -s $sources ] || sources=/etc/apt/sources.list.d/debian.sources
root=$(mktemp -d /tmp/bandtally-debian-XXXXXX)
trap 'rm -rf "$root"' EXIT
began=$(date +%s)
took() {
	echo "   $(($(date +%s) - began)) s: $*"
	began=$(date +%s)
}
mmdebstrap --quiet --variant=minbase --mode=root --aptopt='Acquire::Languages "none"' bookworm "$root/debian" $sources \
	>"$root/log" 2>&1 </dev/null || {
	! grep -qi 'resolve\|connect\|unable to fetch\|failed to fetch' "$root/log" || skip "Debian's mirror does not answer"
	cat "$root/log"
	exit 1
}
took 'a fresh Debian'
mkdir "$root/debian/packages"
cp "$1"/bandtally_*.deb "$root/debian/packages/first.deb"
sh "$here/second.sh" "$1"/bandtally_*.deb "$root/debian/packages/second.deb"
cp "$here/inside.sh" "$root/debian/packages/"
cp "$here/../../labels/samples/badges.json" "$root/debian/packages/sample.json"
kiosk=$(echo "$1"/bandtally-kiosk_*.deb)
cp "$kiosk" "$root/debian/packages/wall.deb"
sh "$here/second.sh" "$kiosk" "$root/debian/packages/wall-second.deb"
# A browser and X are half a gigabyte, and not what is tried: one empty package stands in for all that the wall's needs.
mkdir -p "$root/empty/DEBIAN"
printf 'Package: stand-in\nVersion: 1\nArchitecture: all\nMaintainer: nobody <nobody@example.org>\nDescription: stands in\nProvides: %s\n' \
	"$(dpkg-deb -f "$kiosk" Depends | tr ',' '\n' | grep -v '[|(]' | paste -sd ,)" >"$root/empty/DEBIAN/control"
dpkg-deb -b "$root/empty" "$root/debian/packages/stand-in.deb" >/dev/null
took 'a second version'
# With processes, mounts and a name of its own: what it leaves running ends with it.
unshare --mount --pid --fork --kill-child --uts --ipc sh -c '
	mount -t proc proc "$1/proc"
	mount -t sysfs -o ro sys "$1/sys"
	mount -t tmpfs tmpfs "$1/run"
	mount --rbind /dev "$1/dev"
	hostname station
	exec chroot "$1" /bin/sh /packages/inside.sh' sh "$root/debian" </dev/null
took 'its life'
