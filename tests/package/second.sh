#!/bin/sh
# A second version of a package: as the first, with other settings; the same bytes each time.   second.sh FIRST.deb SECOND.deb
set -eu
work=$(mktemp -d /tmp/bandtally-second-XXXXXX)
trap 'rm -rf "$work"' EXIT
dpkg-deb -R "$1" "$work/second"
was=$(sed -n 's/^Version: //p' "$work/second/DEBIAN/control")
sed -i "s/^Version: .*/Version: $was.1/" "$work/second/DEBIAN/control"
[ ! -e "$work/second/DEBIAN/preinst" ] || sed -i "s/'$was'/'$was.1'/" "$work/second/DEBIAN/preinst"
for settings in "$work/second/etc/bandtally/"*.ini; do
	echo '# of the second version' >>"$settings"
done
SOURCE_DATE_EPOCH=1 dpkg-deb -b "$work/second" "$2" >/dev/null
