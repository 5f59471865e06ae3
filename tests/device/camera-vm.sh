#!/bin/sh
# The real V4L2 path: Debian's kernel in emulation (qemu, TCG), its vivid driver as the camera, scan-camera as
# built. A code in view is one scan, a second code another, the first one after an absence again; asked for a picture it
# shows the code within its outline; a camera that is pulled out is a fault and exit 1.
#   camera-vm.sh BIN FRAMES LOOK     the folder of the programs, the programs camera-frames and picture-look
# Needs the packages of kind 'test' in config/packages. The kernel comes by apt-get download into the build
# folder, once. Where something is absent it says 'skipped: …' and ends with 77.
set -eu
bin=$(cd "$1" && pwd) frames=$2 look=$3
here=$(cd "$(dirname "$0")" && pwd)
work=${BANDTALLY_VM:-$(cd "$bin/.." && pwd)/device}
mkdir -p "$work"
skip() {
	echo "skipped: $*"
	exit 77
}
for tool in qemu-system-x86_64 busybox cpio modprobe v4l2-ctl; do
	PATH=$PATH:/usr/sbin:/sbin command -v $tool >/dev/null || skip "$tool is not installed: run config/setup --test"
done
PATH=$PATH:/usr/sbin:/sbin
file -L "$(command -v busybox)" 2>/dev/null | grep -q 'dynamically' && skip "busybox is not static: install busybox-static"
if [ ! -d "$work/kernel/boot" ]; then
	version=$(apt-cache depends linux-image-amd64 2>/dev/null | sed -n 's/.*Depends: linux-image-//p' | head -n 1)
	[ -n "$version" ] || skip "apt knows no kernel package: run apt-get update"
	(cd "$work" && apt-get download -qq "linux-image-$version" >/dev/null 2>&1) || skip "the kernel package cannot be downloaded"
	dpkg -x "$work"/linux-image-*.deb "$work/kernel"
	rm "$work"/linux-image-*.deb
fi
version=$(ls "$work/kernel/lib/modules")
depmod -b "$work/kernel" "$version"
modules() { modprobe -d "$work/kernel" -S "$version" --show-depends "$1" | awk '$1 == "insmod" { print $2 }'; }
modules vivid >"$work/vivid.modules"

# What the guest starts from: busybox and the modules that reach this machine's files, read-only.
rm -rf "$work/root"
mkdir -p "$work/root/bin" "$work/root/proc" "$work/root/sys" "$work/root/host" "$work/root/lib"
cp "$(command -v busybox)" "$work/root/bin/busybox"
# The machine has a /tmp of its own; a project that lies in the host's is seen there all the same.
kept=$(printf '%s\n' "$work" "$here" "$bin" | sed -n 's|^/tmp/\([^/]*\).*|\1|p' | sort -u)
for top in $kept; do mkdir -p "$work/root/kept/$top"; done
{
	echo '#!/bin/busybox sh'
	echo '/bin/busybox mount -t proc proc /proc'
	for m in virtio_pci 9p 9pnet_virtio; do modules $m; done | awk '!seen[$0]++' | while read -r ko; do
		cp "$ko" "$work/root/lib/"
		echo "/bin/busybox insmod /lib/$(basename "$ko")"
	done
	echo '/bin/busybox mount -t 9p -o trans=virtio,version=9p2000.L,ro,msize=262144,cache=loose host /host'
	for top in $kept; do echo "/bin/busybox mount -o bind /host/tmp/$top /kept/$top"; done
	echo 'for d in proc:proc sys:sysfs dev:devtmpfs tmp:tmpfs run:tmpfs; do /bin/busybox mount -t ${d#*:} none /host/${d%:*}; done'
	for top in $kept; do echo "/bin/busybox mkdir -p /host/tmp/$top; /bin/busybox mount -o bind /kept/$top /host/tmp/$top"; done
	echo "/bin/busybox chroot /host /bin/sh $here/camera-guest.sh $work $bin"
	echo 'echo @end'
	echo '/bin/busybox poweroff -f'
} >"$work/root/init"
chmod +x "$work/root/init"
(cd "$work/root" && find . | cpio -o -H newc --quiet) >"$work/initrd"

"$frames" '(10)AB12(21)SER9' >"$work/first.grey"
"$frames" LOC-0042 >"$work/second.grey"
"$frames" '' >"$work/blank.grey"

timeout 240 qemu-system-x86_64 -machine q35 -accel tcg,thread=multi -cpu Nehalem -smp 2 -m 1024 -nodefaults \
	-display none -no-reboot -kernel "$work/kernel/boot/vmlinuz-$version" -initrd "$work/initrd" \
	-append 'console=ttyS0 quiet panic=-1 tsc=unstable mitigations=off' -serial "file:$work/serial" \
	-virtfs local,path=/,mount_tag=host,security_model=none,readonly=on,multidevs=remap \
	</dev/null || true
tr -d '\r' <"$work/serial" >"$work/log"

grep '^@' "$work/log" | grep -v '"jpeg"' || { tail -n 20 "$work/log"; }
failed=0
check() { # WHAT, then a command
	what=$1
	shift
	if "$@"; then echo "ok: $what"; else
		echo "FAILED: $what"
		failed=1
	fi
}
lines() { [ "$(grep -c "^@line .*$1" "$work/log")" -eq "$2" ]; }
check 'the machine ran to its end' grep -q '^@end' "$work/log"
check 'the driver said hello first' sh -c "grep '^@line' '$work/log' | head -n 1 | grep -q '\"hello\"'"
check 'the driver was in its sandbox' grep -q '^@sandbox 1' "$work/log"
check 'a code in view is one scan, and after an absence one more' lines '"aim":"]d2","data":"10AB12.u001D21SER9"' 2
check 'another code is a scan of its own' lines '"aim":"]C0","data":"LOC-0042"' 1
check 'nothing else was scanned' lines '"scan"' 3
check 'what it shows when it is asked has the code within its outline' sh -c "sed -n 's/^@line //p' '$work/log' | '$look' '$work'"
check 'a camera that is pulled out is a fault' lines '"code":"lost"' 1
check 'and ends the driver with 1' grep -q '^@exit 1' "$work/log"
exit $failed
