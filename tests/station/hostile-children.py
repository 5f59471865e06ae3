#!/usr/bin/python3
"""The station's own programs as enemies: in the place of the board's, the printer's and a scanner's stands one that writes
whatever it likes. The count goes on, nothing odd is kept or logged, no case changes by it, and the station starts again.

  hostile-children.py FOLDER-OF-PROGRAMS
"""
import json, re, sys, time

from a_station import PACK, Station

# Waits for the lines, writes them once, and stays.
PROGRAM = """#!/usr/bin/python3
import os, time
lines = os.path.join(os.path.dirname(os.path.dirname(os.path.abspath(__file__))), "%s.lines")
%s
while not os.path.exists(lines):
    time.sleep(0.05)
if not os.path.exists(lines + ".done"):
    with open(lines, "rb") as all:
        while part := all.read(65536):
            while part:
                part = part[os.write(1, part):]
    open(lines + ".done", "w").close()
while os.read(0, 65536):
    pass
time.sleep(3600)
"""
HELLO = 'os.write(1, b\'{"v":1,"hello":{"driver":"odd","device":"x"}}\\n\')'
ODD_TEXTS = ["\x1b[2J\x1b]0;x\x07", "a\nbandtallyd: the record is lost", "\u202eevil", "x" * 3000, "\u00e9" * 900, "\ud800",
             "\0", "<script>alert(1)</script>", "%s%n%n%n", "\ufeff", "'; DROP TABLE event; --", "\U0001f600" * 300, ""]
ODD_NUMBERS = [-1, 0, -5, 100, 2**31, 2**32 + 1, 2**63 - 1, -2**63, 1.5, True, None, "1", [1], {"a": 1}]
# What no line of any program may look like.
NO_LINES = [b"", b"nonsense", b"null", b"7", b"[]", b'"x"', b"{}", b'{"v":1}', b'{"v":2,"scan":{}}', b"[" * 100000,
            b'{"v":1' * 2000, b"x" * (3 << 20), bytes(range(256)).replace(b"\n", b""), b"\xff\xfe", b'{"v":1,"v":1}',
            b'{"v":1e999}', b'{"v":' + b"9" * 400 + b"}", b'{"v":1} {"v":1}', b'{"v":1,"scan":7,"job":7,"keyed":7,"fault":7}']


def lines(*objects):
    return b"".join(json.dumps(o).encode() + b"\n" for o in objects)


def board_lines(code):
    """Nothing of it has a ticket, and so nothing is entered; the last place where it says to be is none."""
    odd = ODD_TEXTS + ODD_NUMBERS
    keyed = [{"room": n, "code": code, "id": "k", "cookie": "A" * 43} for n in ODD_NUMBERS]
    keyed += [{"room": 1, "code": t, "id": t, "cookie": t} for t in odd + ["A" * 8000]]
    keyed += [{"room": 1, "code": code, "id": "k", "cookie": t} for t in odd] + [{"room": 1, "code": code}]
    tickets = [{"id": t, "ticket": t} for t in odd] + [{"id": "t", "ticket": "A" * 43}]
    places = [{"port": n, "elsewhere": n} for n in ODD_NUMBERS] + [{"port": 70000}]
    return lines(*({"v": 1, "keyed": k} for k in keyed + odd), *({"v": 1, "ticket": t} for t in tickets + odd),
                 *({"v": 1, "open": t} for t in odd + ["a" * 64]), *({"v": 1, "listening": x} for x in odd[:5] + places))


def print_lines():
    """Slip 1, copy 1 is job 101. Nobody has read its code, so nothing here makes it seen."""
    jobs = [{"id": 101, "state": "sent", "pages": 1, "cups": n, "text": "slip: sent"} for n in ODD_NUMBERS]
    jobs += [{"id": n, "state": "done", "cups": 7, "text": "slip: done"} for n in ODD_NUMBERS + [102, 100, 10**12]]
    jobs += [{"id": 101, "state": s, "cups": 7, "text": "x: y"} for s in ["seen", "queued", "", "void", *ODD_NUMBERS, *ODD_TEXTS]]
    for t in ODD_TEXTS:
        jobs += [{"id": 101, "state": s, "cups": 7, "pages": 1, "text": f"slip: {t}"} for s in ("waiting", "sent")]
    return lines(*({"v": 1, "job": j} for j in jobs + ODD_NUMBERS),
                 *({"v": 1, "fault": {"code": t, "text": t}} for t in ODD_TEXTS + ODD_NUMBERS),
                 *({"v": 1, "picture": {"id": t, "pictures": [t], "fault": t}} for t in ODD_TEXTS + ODD_NUMBERS),
                 *({"v": 1, "picture": t} for t in ODD_TEXTS + ODD_NUMBERS))


def driver_lines():
    hellos = [{"driver": t, "device": t, "uncertain": t} for t in ODD_TEXTS + ODD_NUMBERS]
    hellos += [{"driver": "odd", "device": t[:200], "uncertain": t[:400]} for t in ODD_TEXTS]
    scans = [{"data": t, "aim": "]C0"} for t in ODD_TEXTS] + [{"data": "x", "aim": t} for t in ODD_TEXTS]
    scans += [{"data": n, "hex": n} for n in ODD_NUMBERS] + [{"hex": t} for t in ["0", "zz", "00" * 2000, "1b5b324a", "e280ae"]]
    scans += [{"data": "x", "file": t} for t in ODD_TEXTS]
    faults = [{"code": "mad", "text": "\x1b[2J\u202e" + "\u00e9" * 150 + "\nbandtallyd: all is well"}]
    faults += [{"code": c, "text": t} for c in ("lost", "open", "mad", "uncertain", *ODD_TEXTS) for t in ODD_TEXTS]
    # A fault of a scanner is kept once in ten seconds: the first is.
    return lines(*({"v": 1, "fault": f} for f in faults), *({"v": 1, "hello": h} for h in hellos),
                 *({"v": 1, "scan": s} for s in scans), {"v": 1, "hello": {"driver": "odd", "device": "x"}, "scan": {"data": "x"}})


# What may be in the record because of such lines: that something was refused, and that a program is at fault.
HARMLESS = {"refused", "scanner-fault", "slip-state"}


def check(sentence, good, saw=""):
    print(("ok    " if good else "FAIL  ") + sentence + ("" if good else f": {saw}"), flush=True)
    return bool(good)


def attack(station, name, lines):
    """Lets the program of that name say them all. What the record has of it, and the slowest answer meanwhile in ms."""
    path, slowest, before = station.root / f"{name}.lines", 0, len(station.record())
    done = station.root / f"{name}.lines.done"
    (station.root / "new").write_bytes(lines)
    (station.root / "new").rename(path)
    end = time.monotonic() + 90
    while not done.exists():
        assert time.monotonic() < end, "its lines are not read: " + station.said()[-1000:]
        began = time.monotonic()
        assert station.ask(do="status")["ok"]
        slowest = max(slowest, (time.monotonic() - began) * 1000)
        time.sleep(0.01)
    time.sleep(0.5)
    station.ask(do="status")
    return station.record()[before:], slowest


def run(bin, name, settings, lines):
    """One enemy before a station with an open case and a slip that nobody has seen."""
    program = PROGRAM % (name, HELLO if name == "scan-odd" else "")
    station = Station(bin, settings, "[scans]\nburst_ms = 0\n", {name: program})
    good = True
    try:
        station.make_slip()
        pid = station.daemon.pid
        events, slowest = attack(station, name, lines + b"\n".join(NO_LINES) + b"\n")
        kinds = {e["kind"] for e in events} - HARMLESS
        good &= check(f"{name}: no line changes the case", not kinds, [e for e in events if e["kind"] in kinds][:2])
        good &= check(f"{name}: nor makes a slip seen", not [e for e in events if e.get("what") == "seen"])
        good &= check(f"{name}: the count is answered meanwhile", slowest < 1000, f"after {slowest:.0f} ms")
        said = station.ask(do="scan", code=station.codes()["AWAKE PATIENT"])
        good &= check(f"{name}: and goes on", said.get("verdict") == "accepted" and station.daemon.poll() is None, said)
        address = station.ask(do="board", room=1).get("address", "http://127.0.0.1:1/ticket/")
        port = int(re.match(r"http://127\.0\.0\.1:(-?[0-9]+)/ticket/", address).group(1))
        good &= check(f"{name}: nobody is sent to a place that is none", 0 < port < 65536, address)
        station.must_be_sound()
        good &= check(f"{name}: nothing odd is kept or logged, and the station starts on it again", True)
    except AssertionError as e:
        good = check(f"{name}", False, e)
    finally:
        station.leave()
    return good


def main(bin):
    off = "[board]\nstart = no\n"
    good = run(bin, "bandtally-board", "[board]\nstart = yes\n", board_lines(PACK))
    good &= run(bin, "bandtally-print", off, print_lines())
    good &= run(bin, "scan-odd", off + "[driver odd]\ncommand = bin/scan-odd\nroom = 1\n", driver_lines())
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
