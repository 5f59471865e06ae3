#!/bin/bash
# A real CUPS with an IPP Everywhere printer behind it, both private to this test: a slip goes through, and
# every way in which a printer fails us becomes a state and a sentence.
#   print.sh PROGRAM     bandtally-print; documents come from labels/samples beside the project
# Exit 0 passed, 1 failed, 77 skipped (says why). Loopback and free ports only; ends only what it started.
set -u
program=${1:?program}
here=$(cd "$(dirname "$0")" && pwd)
samples=$here/../../labels/samples
queue=slips
. "$here/print-rig"

print() { "$program" "$@" >"$D/out" 2>"$D/err"; }
codes() { # of every page of the newest document
	local f
	f=$(ls "$D"/ctl/doc.* 2>/dev/null | tail -1)
	rm -f "$D"/page*
	pdftoppm -r 300 -gray "$f" "$D/page" && zbarimg -q "$D"/page*.pgm
}

print --printer "$direct" <"$samples/slip-a5.json"
code=$?
ok "a slip goes straight to a printer and is reported done" '[ $code = 0 ] && grep -q "^done: .*slip 0000001 copy 1" $D/out'
# It has A5 in none of its trays: the page is as large as what lies there, and the slip is cut from its corner.
ok "what arrives there is one page of the paper that lies in it" 'pdfinfo $D/ctl/doc.* | grep -q "^Page size: *6[0-9][0-9][.0-9]* x 79" && pdfinfo $D/ctl/doc.* | grep -q "^Pages: *1$"'

clear_paper
print --printer slips <"$samples/slip-a4.json"
code=$?
ok "a slip goes through a queue" '[ $code = 0 ] && [ $(documents) = 1 ]'
ok "the slip's own code is read back from the delivered paper" 'codes | grep -qx CODE-128:BTBC40000000010100010104'
ok "the signed summary is read back, whole" 'codes | grep -qxF "QR-Code:$(python3 -c "import json;print(json.load(open(\"$samples/slip-a4.json\"))[\"jws\"])")"'
cat >"$D/jobs.test" <<X
{
	OPERATION Get-Jobs
	GROUP operation-attributes-tag
	ATTR charset attributes-charset utf-8
	ATTR language attributes-natural-language en
	ATTR uri printer-uri \$uri
	ATTR name requesting-user-name bandtally
	ATTR keyword which-jobs completed
	ATTR keyword requested-attributes all
}
X
ok "the queue's job bears slip and copy, and nothing else" \
	'ipptool -tv "ipp://127.0.0.1:$cups_port/printers/slips" "$D/jobs.test" >"$D/jobs" 2>&1; grep -q "job-name (name[^)]*) = bandtally slip 0000001 copy 1$" "$D/jobs"'

# The child of the daemon.
coproc SERVE { exec "$program" --serve "$D" 2>"$D/log/serve"; }
own_pid=$SERVE_PID
exec 5>&"${SERVE[1]}" 6<&"${SERVE[0]}"
lines=$D/lines
: >"$lines"
(
	exec 5>&-
	eval "exec ${SERVE[1]}>&-"
	while IFS= read -r line <&6; do printf '%s %s\n' "$(date +%s%3N)" "$line" >>"$lines"; done
) &
order() { # id, to, sample, more
	python3 - "$@" >&5 <<'PY'
import json, sys
job = {"id": int(sys.argv[1]), "to": json.loads(sys.argv[2]), "document": json.load(open(sys.argv[3]))}
if len(sys.argv) > 4:
    job.update(json.loads(sys.argv[4]))
print(json.dumps({"v": 1, "job": job}))
PY
}
said() { grep "\"id\":$1," "$lines" | grep "\"state\":\"$2\"" | grep -q -- "${3:-}"; }
number() { grep "\"id\":$1," "$lines" | grep -o '"cups":[0-9]*' | tail -1 | cut -d: -f2; }
ms() { date +%s%3N; }

clear_paper
order 1 '{"printer":"slips"}' "$samples/slip-a5.json"
ok "served: sent, then done" 'until_true 20 "said 1 done"  && said 1 sent'
before=$(documents)
order 2 '{"printer":"slips"}' "$samples/slip-a5.json" "{\"again\":{\"cups\":$(number 1)}}"
ok "asked again with its number, the job is found and not sent twice" 'until_true 15 "said 2 done" && [ $(documents) = $before ]'
order 3 '{"printer":"slips"}' "$samples/slip-a5.json" '{"again":{"cups":0}}'
ok "asked again without a number, it is found by its title" 'until_true 15 "said 3 done" && [ $(documents) = $before ]'
order 4 '{"printer":"slips"}' "$samples/found-a5.json" '{"again":{"cups":99999}}'
ok "what the printer never had is sent" 'until_true 20 "said 4 done" && [ $(documents) = $((before + 1)) ]'

clear_paper
printer_down
order 5 '{"printer":"slips"}' "$samples/addendum-a5.json"
ok "printer down: the queue takes the job, and the sentence says that the printer does not answer" \
	'until_true 20 "said 5 waiting \"does not answer\""'
order 6 "{\"printer\":\"$direct\"}" "$samples/single-a6.json"
ok "printer down and no queue: waiting, not failed" 'until_true 12 "said 6 waiting \"does not answer\"" && ! said 6 failed'
printer_up
ok "printer up again: both come out, each once" 'until_true 60 "said 5 done && said 6 done" && [ $(documents) = 2 ]'

clear_paper
echo empty >"$D/ctl/mode"
order 7 '{"printer":"slips"}' "$samples/unresolved-a4.json"
ok "out of paper: waiting, and it says so" 'until_true 20 "said 7 waiting \"out of paper\""'
echo ok >"$D/ctl/mode"
ok "paper put in: done" 'until_true 30 "said 7 done"'

echo fail >"$D/ctl/mode"
order 8 "{\"printer\":\"$direct\"}" "$samples/badges.json"
ok "the printer gives up on a job: failed, and what to do" 'until_true 30 "said 8 failed \"then print again\""'
echo ok >"$D/ctl/mode"

cupsreject slips
order 9 '{"printer":"slips"}' "$samples/cards.json"
ok "a queue that rejects: waiting, with its cure" 'until_true 12 "said 9 waiting cupsaccept"'
cupsaccept slips
ok "the queue accepts again: done" 'until_true 40 "said 9 done"'

clear_paper
echo slow >"$D/ctl/mode"
order 10 '{"printer":"slips"}' "$samples/digit-cards.json"
until_true 20 '[ $(documents) -ge 1 ]'
printer_down
echo ok >"$D/ctl/mode"
printer_up
ok "printer killed in mid-job: never plainly 'done'; the sentence sends people to look for the paper" \
	'until_true 60 "said 10 \"\\(done\\|failed\\)\"" && said 10 "\\(done\\|failed\\)" "look for the paper\\|look that every page\\|print again"'
grep '"id":10,' "$lines" | tail -1 | grep -o '"text":.*'

kill -STOP "$printer_pid"
start=$(ms)
order 11 "{\"printer\":\"$direct\"}" "$samples/slip-a5.json"
order 12 "{\"pdf\":\"$D/after.pdf\"}" "$samples/slip-a5.json"
ok "a hung printer is reported 'waiting'" 'until_true 12 "said 11 waiting"'
took=$(($(grep '"id":11,' "$lines" | head -1 | cut -d' ' -f1) - start))
ok "… within 10 s ($took ms)" '[ $took -le 10000 ]'
ok "a later job to a file still goes" 'until_true 12 "said 12 written" && [ -s $D/after.pdf ]'
kill -CONT "$printer_pid"
ok "the printer goes on: done, and not printed twice" 'until_true 60 "said 11 done" && sleep 3 && [ $(codes | grep -c BTBC40000000010100010104) = 1 ]'

printf 'nonsense\n{"v":1}\n{"v":1,"job":{"id":13,"to":{"pdf":"/nowhere/x.pdf"},"document":{}}}\n' >&5
ok "bad lines give a fault or a failed state, and the program goes on" \
	'until_true 5 "said 13 failed" && [ $(grep -c "\"fault\"" $lines) = 2 ] && kill -0 $own_pid'
order 14 '{"printer":"no such queue"}' "$samples/slip-a5.json"
ok "a printer's name that is none is refused in one sentence" 'until_true 5 "said 14 failed \"no queue.s name\""'
order 15 '{"printer":"missing"}' "$samples/slip-a5.json"
ok "a queue that does not exist: failed" 'until_true 12 "said 15 failed \"no such queue\""'

kill "$cups_pid"
wait "$cups_pid" 2>/dev/null
cups_pid=
order 16 '{"printer":"slips"}' "$samples/slip-a5.json"
ok "print server down: waiting" 'until_true 12 "said 16 waiting \"does not answer\""'
exec 5>&-
eval "exec ${SERVE[1]}>&-"
ok "the end of input ends the program" 'until_true 15 "! kill -0 $own_pid 2>/dev/null"'
kill -0 "$own_pid" 2>/dev/null || own_pid=
echo "$failures failures"
[ "$failures" = 0 ]
