#!/bin/sh
# Runs handheld-mock inside umockdev's environment.
#   handheld-mock.sh PROGRAM DRIVER
[ -x "$1" ] && command -v umockdev-wrapper >/dev/null || {
	echo 'skipped: umockdev is not installed: run config/setup --test'
	exit 77
}
# A sanitizer's library must come before umockdev's own.
asan=$(ldd "$1" | awk '/libasan/ { print $3 }')
[ -z "$asan" ] || export LD_PRELOAD="$asan"
exec umockdev-wrapper "$@"
