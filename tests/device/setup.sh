#!/bin/bash
# A first start at a terminal with a real CUPS and an IPP Everywhere printer behind it: what CUPS offers is listed, the test page
# comes out of the printer, and the code that is read from that paper, typed back, is what is taken.
#   setup.sh FOLDER-OF-PROGRAMS
set -u
bin=${1:?folder}
queue=slips
. "$(dirname "$0")/print-rig"
python3 "$(dirname "$0")/../station/setup.py" "$bin" --printer "$D" || failures=1
exit "$failures"
