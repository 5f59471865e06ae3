#!/bin/sh
# A second version of the station's package: as the first, with other settings; the same bytes each time.   second.sh FIRST.deb SECOND.deb
set -eu
work=$(mktemp -d /tmp/bandtally-second-XXXXXX)
trap 'rm -rf "$work"' EXIT
dpkg-deb -R "$1" "$work/second"
was=$(sed -n 's/^Version: //p' "$work/second/DEBIAN/control")
sed -i "s/^Version: .*/Version: $was.1/" "$work/second/DEBIAN/control"
sed -i "s/'$was'/'$was.1'/" "$work/second/DEBIAN/preinst"
for name in station policy scanners labels; do
	echo '# of the second version' >>"$work/second/etc/bandtally/$name.ini"
done
SOURCE_DATE_EPOCH=1 dpkg-deb -b "$work/second" "$2" >/dev/null
