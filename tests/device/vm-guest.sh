# shellcheck shell=sh
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
gadget() { # NAME FUNCTION PRODUCT SERIAL: the folder of a new USB device, that this kernel is to itself
	mountpoint -q /sys/kernel/config || mount -t configfs none /sys/kernel/config
	folder=/sys/kernel/config/usb_gadget/$1
	mkdir -p "$folder/strings/0x409" "$folder/configs/c.1" "$folder/functions/$2"
	echo 0x1209 >"$folder/idVendor"
	echo "0x$3" >"$folder/idProduct"
	echo Example >"$folder/strings/0x409/manufacturer"
	echo "Code Reader $1" >"$folder/strings/0x409/product"
	echo "$4" >"$folder/strings/0x409/serialnumber"
	echo "$folder"
}
plug_gadget() { # FOLDER
	for f in "$1"/functions/*; do
		[ -e "$1/configs/c.1/${f##*/}" ] || ln -s "$f" "$1/configs/c.1/"
	done
	echo dummy_udc.0 >"$1/UDC"
}
unplug_gadget() { # FOLDER
	echo '' >"$1/UDC"
}
