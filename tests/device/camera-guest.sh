#!/bin/sh
# Runs inside the emulated machine (camera-vm.sh): a camera of the kernel's own test driver (vivid, whose output
# is looped into its capture device) shows frames, and scan-camera reads them. Lines that begin with "@" are the
# result.
PATH=/usr/sbin:/usr/bin:/sbin:/bin
work=$1 bin=$2
for ko in $(cat "$work/vivid.modules"); do
	# shellcheck disable=SC2046 # each is a parameter of its own
	insmod "$ko" $(case $ko in */vivid.ko) echo n_devs=1 node_types=0x101 num_inputs=1 input_types=3 num_outputs=1 ccs_cap_mode=0 ccs_out_mode=0 \
		output_types=1 vid_cap_nr=20 vid_out_nr=21 no_error_inj=0 ;; esac) || echo "@no module $ko"
done
cap=/dev/video20 out=/dev/video21 first='"data":"10AB12'
# The smallest timing, 640x480, on both sides: vivid loops only equal sizes, and emulation is slow.
v4l2-ctl -d $out --set-dv-bt-timings index=0 >/dev/null
v4l2-ctl -d $cap --set-dv-bt-timings index=0 >/dev/null
v4l2-ctl -d $cap -c loop_video=1,osd_text_mode=2

# One stream for the whole test: a vivid output that is stopped and started again can hang.
show() { # FILE: from now on the camera sees this frame
	ln -sf "$1" /tmp/next
	mv /tmp/next /tmp/shown
}
show "$work/blank.grey"
while cat /tmp/shown; do :; done | v4l2-ctl -d $out --set-fmt-video-out width=640,height=480,pixelformat=GREY,field=none \
	--stream-out-mmap --stream-from=- >/tmp/feed 2>&1 &

mark() { # so that a run that hangs shows where
	echo "@@ $(cut -d. -f1 /proc/uptime) s: $*; $(tail -n 1 /tmp/lines 2>/dev/null)"
}

until_line() { # PATTERN SECONDS
	n=0
	while ! grep -q "$1" /tmp/lines && [ $n -lt $(($2 * 5)) ]; do
		sleep 0.2
		n=$((n + 1))
	done
}

mark camera set up
show "$work/first.grey"
sleep 1
"$bin/scan-camera" --device $cap </dev/null >/tmp/lines 2>/tmp/errors &
camera=$!
until_line "$first" 60
mark first code
kill -USR1 $camera # as the station does after its card
until_line '"codes":\[\[' 30
kill -USR2 $camera
mark picture
sleep 5 # it stays in view: no second scan
show "$work/blank.grey"
sleep 4
show "$work/second.grey"
mark second shown
until_line LOC-0042 60
mark second code
show "$work/blank.grey"
sleep 4
show "$work/first.grey"
n=0
while [ "$(grep -c "$first" /tmp/lines)" -lt 2 ] && [ $n -lt 60 ]; do
	sleep 1
	n=$((n + 1))
done
mark first code again
echo "@sandbox $(grep -c '^Seccomp:.*2' /proc/$camera/status)"
v4l2-ctl -d $cap -c disconnect=1 >/dev/null
n=0
while kill -0 $camera 2>/dev/null && [ $n -lt 20 ]; do
	sleep 1
	n=$((n + 1))
done
kill -0 $camera 2>/dev/null && echo "@still running"
wait $camera
echo "@exit $?"
sed 's/^/@line /' /tmp/lines
sed 's/^/@error /' /tmp/errors
sed 's/^/@feed /' /tmp/feed | head -n 3
