# shellcheck shell=sh
# The demo's own print server: a private CUPS with a queue 'slips' and an IPP Everywhere printer behind it, both on
# loopback and on free ports. What the printer is given is its paper: it lies in $folder/slips by slip and copy.

# have_print_server: whether one can be made here. CUPS wants to be root; what is missing is said.
have_print_server() {
	if [ "$(id -u)" -ne 0 ]; then
		echo 'Printing: a private print server needs root here, so slips are written as PDF.'
		return 1
	fi
	PATH=$PATH:/usr/sbin
	for program in cupsd ippeveprinter ipptool lpadmin lpstat dbus-daemon; do
		command -v "$program" >/dev/null && continue
		echo "Printing: $program is not installed, so slips are written as PDF."
		return 1
	done
}

# A port that nothing listens on now, from those that the kernel gives to nobody.
free_port() {
	port=$1
	while grep -qsi ": [0-9A-F]*:$(printf %04X "$port") [0-9A-F]*:[0-9A-F]* 0A " /proc/net/tcp /proc/net/tcp6; do
		port=$((port + 1))
	done
	echo "$port"
}

write_print_settings() {
	mkdir -p "$print"/conf/ppd "$print"/spool "$print"/cache "$print"/run "$print"/tmp "$print"/printer "$folder/slips"
	chmod 755 "$folder" "$print"
	chmod 1777 "$print/tmp" # the filters of CUPS run as another user
	cat >"$print/conf/cups-files.conf" <<-END
		ServerRoot $print/conf
		RequestRoot $print/spool
		CacheDir $print/cache
		StateDir $print/run
		TempDir $print/tmp
		ErrorLog $print/error_log
		AccessLog $print/access_log
		PageLog $print/page_log
		Sandboxing relaxed
		SystemGroup root
	END
	cat >"$print/conf/cupsd.conf" <<-END
		Listen 127.0.0.1:$cups_port
		DirtyCleanInterval 0
		MaxLogSize 0
		Browsing Off
		WebInterface No
		DefaultAuthType None
		<Location />
		  Order allow,deny
		  Allow from 127.0.0.1
		</Location>
	END
	# The printer's hands: each document that arrives is put down under the name of its job.
	cat >"$print/paper" <<-END
		#!/bin/sh
		set -- "\$1" \$IPP_JOB_NAME
		cp "\$1" "$folder/slips/slip-\$(printf '%07d' "\$(expr "\$4" + 0)")-copy-\$6.pdf"
		echo 'ATTR: job-impressions-completed=1' >&2
	END
	chmod 755 "$print/paper"
}

start_printer() {
	print=$folder/print cups_port=$(free_port 18631) printer_port=$(free_port 18741)
	write_print_settings
	CUPS_SERVER=127.0.0.1:$cups_port DBUS_SYSTEM_BUS_ADDRESS=unix:path=$print/bus
	export CUPS_SERVER DBUS_SYSTEM_BUS_ADDRESS
	dbus-daemon --session --address="$DBUS_SYSTEM_BUS_ADDRESS" --nofork --nopidfile >"$print/log" 2>&1 &
	print_pids=$!
	wait_for 5 test -S "$print/bus" || surprise 'no private message bus could be started'
	ippeveprinter -n localhost -p "$printer_port" -r off -k -d "$print/printer" -f application/pdf -c "$print/paper" \
		'Slip printer' >>"$print/log" 2>&1 &
	print_pids="$! $print_pids"
	direct=ipp://127.0.0.1:$printer_port/ipp/print
	wait_for 10 ipptool -q "$direct" get-printer-attributes.test || surprise 'the printer did not start'
	cupsd -f -c "$print/conf/cupsd.conf" -s "$print/conf/cups-files.conf" >>"$print/log" 2>&1 &
	print_pids="$! $print_pids"
	wait_for 10 server_runs || surprise 'the print server did not start'
	lpadmin -p slips -E -v "$direct" -m everywhere 2>>"$print/log" || surprise 'the queue could not be made'
	wait_for 10 test -s "$print/conf/ppd/slips.ppd" || surprise 'the queue is not ready'
	queue=slips
	echo "Printing: a private CUPS at $CUPS_SERVER, queue 'slips', with an IPP printer behind it."
}

server_runs() { lpstat -r 2>/dev/null | grep -q 'is running'; }

wait_for() {
	tries=$(($1 * 20))
	shift
	until "$@" >/dev/null 2>&1; do
		[ $((tries -= 1)) -gt 0 ] || return 1
		sleep 0.05
	done
}

# Ends what start_printer started, and nothing else.
stop_printer() {
	for pid in ${print_pids:-}; do
		kill "$pid" 2>/dev/null || true
		wait "$pid" 2>/dev/null || true
	done
	print_pids=
}
