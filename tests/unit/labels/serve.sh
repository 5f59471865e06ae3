#!/bin/sh
# bandtally-print as a child of the daemon and as a command, with files only: no printer, no root needed.
#   serve.sh PROGRAM SAMPLES
set -u
program=$1 samples=$2
D=$(mktemp -d /tmp/bandtally-serve.XXXXXX)
trap 'rm -rf "$D"' EXIT
failures=0
ok() {
	if eval "$2"; then echo "ok    $1"; else
		echo "FAIL  $1"
		failures=$((failures + 1))
	fi
}
document=$(tr -d '\n' <"$samples/slip-a5.json")
{
	echo 'this is no line'
	echo '{"v":1,"job":{"to":{"pdf":"x"}}}'
	echo "{\"v\":1,\"job\":{\"id\":1,\"to\":{\"pdf\":\"$D/1.pdf\"},\"document\":{\"v\":2,\"kind\":\"slip\"}}}"
	echo "{\"v\":1,\"job\":{\"id\":2,\"to\":{\"pdf\":\"$D/none/2.pdf\"},\"document\":$document}}"
	echo "{\"v\":1,\"job\":{\"id\":3,\"to\":{},\"document\":$document}}"
	echo "{\"v\":1,\"job\":{\"id\":4,\"to\":{\"printer\":\"a b\"},\"document\":$document}}"
	echo "{\"v\":1,\"job\":{\"id\":5,\"to\":{\"printer\":\"x\"},\"again\":{\"cups\":-1},\"document\":$document}}"
	echo "{\"v\":1,\"job\":{\"id\":8,\"to\":{\"printer\":\"ipp://127.0.0.1:1/ipp\"},\"document\":$document}}"
	echo '{"v":1,"withdraw":{"id":8}}'
	echo '{"v":1,"withdraw":{"id":9}}'
	head -c 1200000 /dev/zero | tr '\0' x
	echo
	echo "{\"v\":1,\"job\":{\"id\":6,\"to\":{\"pdf\":\"$D/6.pdf\"},\"document\":$document}}"
} | "$program" --serve "$D" >"$D/out" 2>"$D/err"
code=$?
said() { grep -q "\"id\":$1,.*\"state\":\"$2\".*$3" "$D/out"; }
ok "no line ends the program, the end of input does" '[ $code = 0 ]'
ok "three lines that name no job are faults" '[ $(grep -c "\"fault\"" $D/out) = 3 ]'
ok "the line that is too long says so" 'grep -q "longer than 1 MiB" $D/out'
ok "a document that is not right fails with the field" 'said 1 failed "is missing"'
ok "a file that cannot be written fails with the reason" 'said 2 failed "cannot be written"'
ok "a job that goes nowhere fails" 'said 3 failed "neither a file nor a printer"'
ok "a printer that is no name fails" 'said 4 failed "no queue"'
ok "an 'again' that is no number fails" 'said 5 failed "no job number"'
ok "a job that no printer has is withdrawn, and one that is not known is no fault" 'said 8 waiting "does not answer" && said 8 withdrawn "any more" && ! grep -q "\"id\":9" $D/out'
ok "a job after all that is written" 'said 6 written "1 page" && [ -s $D/6.pdf ]'
ok "nothing half written is left" '[ $(ls $D | grep -c part) = 0 ]'

"$program" --pdf "$D/c.pdf" <"$samples/slip-a5.json"
ok "the command writes the same file" 'cmp -s $D/c.pdf $D/6.pdf'
# The child of the daemon is confined: what comes in as a job cannot be put elsewhere, and no program is started.
mkdir "$D/in" "$D/out-of-it"
mkfifo "$D/jobs"
"$program" --serve "$D/in" <"$D/jobs" >"$D/confined" 2>"$D/err" &
server=$!
exec 3>"$D/jobs"
for place in in out-of-it; do
	echo "{\"v\":1,\"job\":{\"id\":7,\"to\":{\"pdf\":\"$D/$place/7.pdf\"},\"document\":$document}}" >&3
done
tries=100
until [ "$(grep -c '"id":7' "$D/confined")" = 2 ] || [ $((tries -= 1)) = 0 ]; do sleep 0.1; done
ok "it is filtered, and gains no privileges" \
	'grep -q "^Seccomp:[[:space:]]*2" /proc/$server/status && grep -q "^NoNewPrivs:[[:space:]]*1" /proc/$server/status'
exec 3>&-
wait $server
ok "beneath its folder it writes" '[ -s $D/in/7.pdf ]'
if grep -qw landlock /sys/kernel/security/lsm 2>/dev/null || [ "$(uname -r | cut -d. -f1)" -ge 6 ]; then
	ok "elsewhere it does not, and says so" '[ ! -e $D/out-of-it/7.pdf ] && grep -q "out-of-it.*cannot be written: Permission denied" $D/confined'
fi
"$program" --serve "$D/not-there" </dev/null 2>"$D/err"
ok "a folder that is not there is told" '[ $? = 1 ] && grep -q "No such file" $D/err'

"$program" --pdf "$D/d.pdf" </dev/null 2>"$D/err"
ok "an empty document fails with 1 and one sentence" '[ $? = 1 ] && [ $(wc -l <$D/err) = 1 ]'
"$program" --pdf 2>"$D/err"
ok "wrong words end with 2" '[ $? = 2 ]'
"$program" --pdf a --serve . 2>"$D/err"
ok "two ways at once end with 2" '[ $? = 2 ]'
"$program" --help >"$D/help"
ok "help helps" '[ $? = 0 ] && grep -q -- --printer $D/help'
BANDTALLY_FONTS=/nowhere "$program" --pdf "$D/e.pdf" <"$samples/slip-a5.json" 2>"$D/err"
ok "missing fonts are told, with the cure" '[ $? = 1 ] && grep -q BANDTALLY_FONTS $D/err'
echo "$failures failures"
[ $failures = 0 ]
