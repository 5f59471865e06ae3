#!/usr/bin/python3
"""A spare in the place of a dead station, by the steps of bandtally-spare(8): it began with a record and a key of its own."""
import re, shutil, subprocess, sys

from a_station import PACK, Station

if not shutil.which("pdftotext"):
    print("skipped: pdftotext is not installed (poppler-utils)")
    sys.exit(77)


def ok(what, good, seen=""):
    assert good, f"FAIL: {what}: {seen}"
    print("ok", what, flush=True)


def whole_case(s, serial):
    s.scan_all("NEW CASE", "SCRUB-1", "CIRC-2", PACK.replace("S1", serial), "CIRC-2", "right index finger", "right index finger", "OFF",
               "FINAL COUNT", "INTACT", "CIRC-2", "right index finger", "SURGEON-1")


def slip_code(s, number):
    paper = s.data / f"slips/slip-{number:07d}-copy-1.pdf"
    s.until("the slip is printed", lambda: paper.exists() and paper.read_bytes().rstrip().endswith(b"%%EOF"))
    return re.search("BTBC4[0-9]{19}", subprocess.run(["pdftotext", paper, "-"], capture_output=True, text=True).stdout).group()


def go(dead, spare):
    kept = spare.root / "kept"
    kept.mkdir()
    dead.set_up()
    dead.bt("staff", "add", "--registered", "surgeon", "SURGEON-1")
    whole_case(dead, "S1")
    before = slip_code(dead, 1)
    dead.until("its first slip is seen", lambda: dead.ask(do="scan", code=before, room=1)["verdict"] == "accepted")
    ok("the night's copy", dead.bt("backup", str(kept / "record-1.db"))[0] == 0)
    for name in ("station.key", "station.ini", "station.pub.json"):
        shutil.copy(dead.data / name, kept)
    whole_case(dead, "S2")
    newest = slip_code(dead, 2)
    dead.daemon.kill()
    dead.daemon.wait()

    spare.stop()
    shutil.copy(kept / "station.ini", spare.data)
    code, said = spare.bt("restore", str(kept / "record-1.db"))
    ok("the copy is the spare's record", code == 0 and "it is the record of this data folder now" in said, said)
    shutil.copy(kept / "station.key", spare.data)
    spare.start()
    ok("it says that another record was put in place", "Another record was put in place" in spare.bt("status")[1], spare.bt("status")[1])
    said = spare.ask(do="scan", code=newest, room=1)["said"]
    ok("what the dead one printed after the copy is told as that", "newer than this record" in said, said)
    event = re.search(r"audit settle (\d+)", spare.bt("status")[1])
    ok("and how that is settled", event)
    ok("it is settled", spare.bt("audit", "settle", event.group(1), "a spare since 14:20; slip 2 is in the notes")[0] == 0)
    ok("then it is trusted", "DO NOT TRUST" not in spare.bt("status")[1], spare.bt("status")[1])
    whole_case(spare, "S3")
    spare.until("the next slip is printed", lambda: list((spare.data / "slips").glob("slip-*")))
    number = int(next((spare.data / "slips").glob("slip-*")).name.split("-")[1])
    ok("the next slip has a number behind those that were given out", number > 2, number)
    code, said = spare.bt("audit", "verify", "--key", str(kept / "station.pub.json"))
    ok("its record is whole, by the key of the dead one", code == 0, said)


stations = [Station(sys.argv[1], f"[station]\nnumber = {n}\n[board]\nstart = no\n") for n in (7, 0)]
try:
    go(*stations)
finally:
    for station in stations:
        station.leave()
