#!/usr/bin/python3
"""Barcodes that mean harm: as a scanner sends them, as the command enters them, and printed and read by the camera. Each is
refused in a sentence that repeats nothing of it, nothing of it is kept or logged, and no case changes.

  hostile-codes.py FOLDER-OF-PROGRAMS FOLDER-OF-TEST-PROGRAMS
"""
import json, string, subprocess, sys, time

from a_station import PACK, Station

MARK = "ZQ7X"  # stands in each, and in no word of the station
# As bytes; what is printed as well stands with its symbol.
CODES = {
    "screen": (b"\x1b[2J\x1b[1;1H" + b"ZQ7X", "code128"),
    "line": (b"ZQ7X\nbandtallyd: all is well", "qr"),
    "carriage": (b"ZQ7X\r\rOFF\r", "code128"),
    "separator": (b"\x1d", "code128"),
    "separators": (b"\x1d" * 9 + b"ZQ7X\x1d", "matrix"),
    "turns": ("\u202eZQ7X\u202c".encode(), "qr"),
    "hidden": ("ZQ\u200b7X\ufeffZQ7X".encode(), "qr"),
    "page": (b"<script>fetch('/keyed?ZQ7X')</script><img src=x onerror=alert(1)>", "qr"),
    "settings": (b"ZQ7X\n[site]\nletters = XX\n[driver x]\ncommand = /bin/sh", "qr"),
    "quotes": (b'{"v":1,"scan":{"data":"ZQ7X"}}\n{"v":1,"fault":{"code":"lost","text":"ZQ7X"}}', "qr"),
    "format": (b"%s%n%n%n%1000000dZQ7X", "matrix"),
    "table": (b"=cmd|'/c ZQ7X'!A0", "qr"),
    "query": (b"'; DROP TABLE event; -- ZQ7X", "matrix"),
    "shell": (b"$(reboot)`ZQ7X`; rm -rf /", "code128"),
    "path": (b"../../../../etc/shadow ZQ7X", "qr"),
    "address": (b"https://example.org/ZQ7X?01=09506000134352", "qr"),
    "long": (b"ZQ7X" * 60, "qr"),
    "picture": ("\U0001f600".encode() * 40 + b"ZQ7X", "qr"),
    "patient": (b"(8018)950600012345678997(8019)1^ZQ7X^MARY^19610203", "matrix"),
    "message": (b"\x0bMSH|^~\\&|ZQ7X|\rPID|1||123^^^ZQ7X", "qr"),
    "half": (b"]C1", "code128"),
    "aim": (b"]d2]d2]d2ZQ7X", "matrix"),
    "badge": (b"BTBC3000001ZQ7X", "code128"),
    "card": (b"BTBC1ZQ7X9999999999999999999", "code128"),
    "bracket": (b"(01)ZQ7X(01)ZQ7X(10)", "qr"),
    "numbers": (b"(01)99999999999999(17)999999(10)ZQ7X", "matrix"),
    "nul": (b"ZQ7X\0OFF", None),
    "bytes": (bytes(range(128, 256)) + b"ZQ7X", None),
    "longest": (b"ZQ7X" * 1000, None),
}


def check(sentence, good, saw=""):
    print(("ok    " if good else "FAIL  ") + sentence + ("" if good else f": {saw}"), flush=True)
    return bool(good)


def leaves_nothing(station, how, before):
    """After the codes: of their words nothing, and of a case nothing but what was there."""
    events = station.record()
    kept = [e for e in events if MARK in json.dumps(e)]
    changed = [e for e in events[before:] if e["kind"] not in ("refused", "slip-state", "scanner-fault", "scans-held",
                                                               "scans-dropped")]
    seen = json.dumps(station.ask(do="sheet", room=1)) + json.dumps(station.ask(do="status"))
    good = check(f"{how}: nothing of them is kept", not kept, kept[:2])
    good &= check(f"{how}: no case changes", not changed, changed[:2])
    good &= check(f"{how}: nothing of them is shown", MARK not in seen, seen)
    return check(f"{how}: nothing of them is logged", MARK not in station.said(), station.said()[-500:]) and good


def entered(bin):
    """By the command, and at the socket where it takes no such bytes."""
    station, good = Station(bin, "[board]\nstart = no\n"), True
    try:
        station.open_case()
        before = len(station.record())
        for name, (code, _) in CODES.items():
            text = code.decode("utf-8", "replace").replace("\0", "")  # which JSON and the command line do not take
            said = station.ask(do="scan", code=text)
            answer = station.bt("scan", "--", text)[1]
            if said.get("verdict", "refused") != "refused" or MARK in json.dumps(said) or MARK in answer:
                good &= check(f"entered: {name} is refused and not repeated", False, (said, answer))
        good &= leaves_nothing(station, "entered", before)
        station.must_be_sound()
    finally:
        station.leave()
    return good


SCANNER = """#!/usr/bin/python3
import os, time
os.write(1, b'{"v":1,"hello":{"driver":"odd","device":"x"}}\\n')
while not os.path.exists("codes"):
    time.sleep(0.05)
if not os.path.exists("codes.done"):
    for line in open("codes", "rb"):
        os.write(1, line)
    open("codes.done", "w").close()
time.sleep(3600)
"""


def scanned(bin):
    """As a scanner's program sends them."""
    settings = "[board]\nstart = no\n[driver odd]\ncommand = scan-odd\nroom = 1\n"
    station, good = Station(bin, settings, "[scans]\nburst_ms = 0\n", {"scan-odd": SCANNER}), True
    try:
        station.open_case()
        before = len(station.record())
        lines = [{"v": 1, "scan": {"hex": code.hex(), "aim": aim}} for code, _ in CODES.values() for aim in ("]C0", "]Q3", "]d2")
                 if len(code) < 2000]
        (station.root / "new").write_text("".join(json.dumps(x) + "\n" for x in lines))
        (station.root / "new").rename(station.root / "codes")
        station.until("they are sent", (station.root / "codes.done").exists)
        station.until("they are refused", lambda: len(station.record()) > before)
        time.sleep(1)
        good &= leaves_nothing(station, "scanned", before)
        station.must_be_sound()
    finally:
        station.leave()
    return good


def photographed(bin, tools):
    """Printed, seen by a camera, read by both of its decoders."""
    printed = {n: (code, kind) for n, (code, kind) in CODES.items() if kind}
    pictures = string.ascii_letters[:len(printed)]  # short names: a line of station.ini has an end
    settings = f"[board]\nstart = no\n[driver camera]\ncommand = scan-camera --image {' '.join(pictures)}\nroom = 1\n"
    once = f'#!/bin/sh\nwhile [ ! -e go ]; do sleep 0.05; done\n"{bin}/scan-camera" "$@" | tee seen\ntouch done\nexec sleep 3600\n'
    station, good = Station(bin, settings, "[scans]\nburst_ms = 0\n", {"scan-camera": once}), True
    try:
        drawn = "".join(f"{picture} {kind} {code.hex()}\n" for picture, (code, kind) in zip(pictures, printed.values()))
        subprocess.run([tools + "/draw-symbols", station.root], input=drawn, text=True, check=True)
        station.open_case()
        before = len(station.record())
        (station.root / "go").touch()
        station.until("the pictures are read", (station.root / "done").exists, 90)
        seen = [json.loads(l) for l in (station.root / "seen").read_text().splitlines()]
        files = {x["scan"]["file"] for x in seen if "scan" in x}
        missing = [n for picture, n in zip(pictures, printed) if picture not in files]
        good &= check(f"photographed: the camera reads each of {len(printed)}", not missing, missing)
        time.sleep(1)
        good &= leaves_nothing(station, "photographed", before)
        said = station.ask(do="scan", code=station.codes()["AWAKE PATIENT"])
        good &= check("photographed: the count goes on", said.get("verdict") == "accepted", said)
        station.must_be_sound()
    finally:
        station.leave()
    return good


def main(bin, tools):
    good = True
    for attack in (lambda: entered(bin), lambda: scanned(bin), lambda: photographed(bin, tools)):
        try:
            good &= attack()
        except AssertionError as e:
            good = check("the station is sound", False, e)
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
