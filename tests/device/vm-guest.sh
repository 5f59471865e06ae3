# Sourced by the scripts that run inside the emulated machine (machine.py): $work $bin $tests $here are set.
PATH=/usr/sbin:/usr/bin:/sbin:/bin
export SYSTEMD_IGNORE_CHROOT=1 # the machine is this chroot

start_devices() { # SCRIPT RULE…: the script's kernel modules, and udev with our rules behind these
	for ko in $(cat "$work/$1.modules"); do
		insmod "$ko" 2>/dev/null || echo "@no module $ko"
	done
	shift
	mkdir -p /run/udev/rules.d
	cp "$here/../../config/udev/70-bandtally-scanner.rules" /run/udev/rules.d/
	printf '%s\n' "$@" >/run/udev/rules.d/69-this-machine.rules
	/lib/systemd/systemd-udevd --daemon
	udevadm trigger --subsystem-match=input
	udevadm settle -t 20
}
named() { # NAME: the event node of the device with this name
	n=0
	while [ $n -lt 100 ]; do
		for e in /sys/class/input/event*; do
			[ "$(cat "$e/device/name" 2>/dev/null)" = "$1" ] && echo "/dev/input/${e##*/}" && return
		done
		sleep 0.1
		n=$((n + 1))
	done
}
