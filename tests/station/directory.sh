#!/bin/sh
# A directory service that does not answer, as name services reach it: who is known without it may ask, the station starts
# and counts, and what the service says later is taken then.
#   directory.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
[ "$(id -u)" = 0 ] && command -v setpriv >/dev/null || {
	echo 'skipped: another user can be taken on by root only'
	exit 77
}
# The service exists for this test alone, in a view of the files that nobody else has.
if [ -z "${BANDTALLY_OWN_VIEW:-}" ]; then
	unshare -m true 2>/dev/null || {
		echo 'skipped: no view of the files of its own can be had here'
		exit 77
	}
	BANDTALLY_OWN_VIEW=yes exec unshare -m sh "$0" "$@"
fi
. "$(dirname "$0")/common"
command -v cc >/dev/null || skip 'no C compiler'
chmod 755 "$root"
mkfifo "$root/line"
cat >"$root/service.c" <<'C'
#include <errno.h>
#include <fcntl.h>
#include <grp.h>
#include <nss.h>
#include <string.h>
#include <unistd.h>
/* Whoever asks waits until somebody opens the line to write; then the stores' group is known, and no other. */
enum nss_status _nss_silent_getgrnam_r(const char *name, struct group *g, char *buffer, size_t size, int *why)
{
	static char *nobody[] = {NULL};
	close(open(LINE, O_RDONLY));
	if (strcmp(name, "bandtally-stores") != 0 || size < 64) {
		*why = ENOENT;
		return NSS_STATUS_NOTFOUND;
	}
	*g = (struct group){.gr_name = strcpy(buffer, name), .gr_passwd = buffer + strlen(name), .gr_gid = 64007, .gr_mem = nobody};
	return NSS_STATUS_SUCCESS;
}
C
cc -shared -fPIC -DLINE="\"$root/line\"" -o "$root/libnss_silent.so.2" "$root/service.c" 2>"$root/why" || fail "$(cat "$root/why")"
cp /etc/group "$root/group"
echo 'bandtally-count:x:64006:' >>"$root/group"
mount --bind "$root/group" /etc/group
printf 'passwd: files\ngroup: files silent\n' >"$root/nsswitch.conf"
mount --bind "$root/nsswitch.conf" /etc/nsswitch.conf
as() { # GROUP, and what it asks
	group=$1
	shift
	setpriv --reuid 65534 --regid 65534 --groups "$group" "$bin/bandtally" --data "$data" "$@"
}
start env LD_LIBRARY_PATH="$root"
as 64006 status >/dev/null || fail 'whose group is known may not ask'
! as 64007 status >/dev/null 2>&1 || fail 'a group that nobody knows may ask'
echo 'ok a service that does not answer holds up neither the start nor who is known without it'
timeout 5 sh -c 'exec 3>"$1"; sleep 0.3' sh "$root/line" || fail 'nobody asked the service'
soon 'what it says later is taken' 'as 64007 status'
# Again on SIGHUP: the service is silent once more, and what was known stays.
sed -i '/^bandtally-count:/d' "$root/group"
cat "$root/group" >/etc/group
echo 'bandtally-audit:x:64002:' >>/etc/group
kill -HUP "$daemon"
soon 'a group that came meanwhile is known after SIGHUP' 'as 64002 status'
as 64006 status >/dev/null || fail 'what was known is lost though nobody answered'
as 64007 status >/dev/null || fail 'what the service had said is lost'
bt status >/dev/null || fail 'the station waits'
timeout 5 sh -c 'exec 3>"$1"; sleep 0.3' sh "$root/line" || fail 'nobody asked the service again'
soon 'and a group that is gone when it answers may not ask any more' '! as 64006 status'
as 64007 status >/dev/null || fail 'what the service says is lost'
# Who asks holds nothing of the station's: it ends, and starts again, though the service is silent.
kill -HUP "$daemon"
stop
start env LD_LIBRARY_PATH="$root"
as 64002 status >/dev/null || fail 'whose group is known may not ask after another start'
echo 'ok who still asks keeps nothing from the next start'
