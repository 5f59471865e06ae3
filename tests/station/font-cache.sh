#!/bin/sh
# Where the machine has no cache of fonts, the printing program keeps one of its own, confined as it is, and says nothing.
#   font-cache.sh FOLDER-OF-PROGRAMS
set -eu
bin=$1
. "$(dirname "$0")/common"
mkdir "$root/cache"
grep -v '<cachedir>' "$source/config/fonts/fonts.conf" >"$root/fonts.conf"
export BANDTALLY_FONTS="$root/fonts.conf" XDG_CACHE_HOME="$root/cache"
start
soon 'a cache of fonts is kept' 'ls "$root"/cache/fontconfig/*.cache-*'
stop
[ "$(ls "$root/cache")" = fontconfig ] || fail "something else lies beside it: $(ls "$root/cache")"
! grep -q Fontconfig "$root/log" || fail 'the font library could not write'
echo 'ok nothing is said of it'
