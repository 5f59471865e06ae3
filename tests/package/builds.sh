#!/bin/sh
# The packages are built twice, in folders of different names and depth: the same bytes, and lintian has nothing to say.
#   builds.sh FOLDER      FOLDER/one keeps the first ones
set -eu
source=${BANDTALLY_SOURCE:-$(cd "$(dirname "$0")/../.." && pwd)}
skip() {
	echo "skipped: $*"
	exit 77
}
for program in dh lintian; do command -v $program >/dev/null || skip "$program is not installed"; done
git -C "$source" rev-parse HEAD >/dev/null 2>&1 || skip 'the sources are not in git'
rm -rf "$1"
mkdir -p "$1"
again=$(mktemp -d /tmp/bandtally-package-XXXXXX)
trap 'rm -rf "$again"' EXIT
for folder in "$1/one" "$again/built/elsewhere"; do
	began=$(date +%s)
	"$source/config/debian/build" "$folder" >/dev/null
	echo "ok built in $(($(date +%s) - began)) s"
done
many=0
for package in "$1"/one/*.deb; do
	cmp "$package" "$again/built/elsewhere/$(basename "$package")"
	many=$((many + 1))
done
[ $many = 5 ] || { echo "FAIL: $many packages, not 5: three, and the debug symbols of two"; exit 1; }
echo 'ok two folders, the same bytes'
said=$(lintian --pedantic --fail-on none "$1"/one/*.changes 2>&1 | grep -v 'root privileges') || true
! echo "$said" | grep '^[A-Z]: ' | grep -v '^N:' || { echo 'FAIL: lintian has something to say'; exit 1; }
echo 'ok lintian has nothing to say'
ls -l "$1"/one/*.deb | awk '{ print "   " $5 " bytes " $NF }'
