#!/usr/bin/python3
"""A damaged page of the record, whichever it is, with a snapshot and without: a check names it, and the station starts: on a new
record, with the damaged one kept aside as it was, or on this one, where it goes on as far as that goes and says so.

  damaged-pages.py FOLDER-OF-PROGRAMS
"""
import collections, concurrent.futures, glob, random, shutil, subprocess, sys, time

from a_station import PACK, Station

PAGE = 4096
AT_ONCE = 4
FILLS = {"zeroed": lambda was: bytes(PAGE), "noise": lambda was: random.Random(was).randbytes(PAGE)}
# Bytes of the first page by which SQLite and the station tell what the file is.
HEAD = {f"byte {at}": lambda was, at=at: was[:at] + bytes([was[at] ^ 0x41]) + was[at + 1:] for at in (0, 18, 47, 60)}


class Damaged:
    def __init__(self, station, whole):
        self.station, self.whole = station, whole
        self.pages = len((whole / "record.db").read_bytes()) // PAGE
        self.happened = collections.Counter()

    def lay(self, page, fill, snapshot):
        shutil.rmtree(self.station.data)
        shutil.copytree(self.whole, self.station.data)
        if not snapshot:
            (self.station.data / "snapshot").unlink()
        with open(self.station.data / "record.db", "r+b") as f:
            f.seek(page * PAGE)
            was = f.read(PAGE)
            f.seek(page * PAGE)
            f.write((FILLS | HEAD)[fill](was))

    def check(self):
        return subprocess.run([self.station.bin / "bandtallyd", "--data", self.station.data, "--check"], capture_output=True, text=True)

    def aside(self):
        return glob.glob(str(self.station.data / "record-damaged-*.db"))

    def start(self):
        """As Station.start(), which has more time."""
        s = self.station
        s.daemon = subprocess.Popen([s.bin / "bandtallyd", "--data", s.data], stderr=s.log, cwd=s.root)
        for _ in range(2000):
            assert s.daemon.poll() is None, "it does not start: " + s.said()[-500:]
            try:
                return s.ask(do="status")
            except (FileNotFoundError, ConnectionRefusedError):
                time.sleep(0.005)
        raise AssertionError("it does not answer: " + s.said()[-500:])

    def stop(self):
        self.station.daemon.kill()
        self.station.daemon.wait()

    def distrust(self):
        return self.station.ask(do="status")["status"]["distrust"]

    def used(self, codes):
        """What people at the table and elsewhere do with it; whether it took all that was to be stored."""
        took = [self.station.ask(do="scan", code=code)["verdict"] for code in codes]
        self.station.ask(do="cases")
        assert self.station.daemon.poll() is None, "the station ended"
        return "damaged" not in self.distrust() and "refused" not in took

    def look(self, page, fill, snapshot, codes):
        what = f"page {page + 1} {fill}, {'with' if snapshot else 'without'} a snapshot"
        self.lay(page, fill, snapshot)
        was = (self.station.data / "record.db").read_bytes()
        said = self.check()
        assert said.returncode == 1 and "not sound: " in said.stderr, f"{what}: a check says {said.stdout}{said.stderr}"
        assert (self.station.data / "record.db").read_bytes() == was, f"{what}: a check wrote"
        if fill in FILLS:
            assert self.station.bt("audit", "verify", "--file", str(self.station.data / "record.db"))[0] == 1, f"{what}: an audit calls it whole"
        self.start()
        if not self.aside() and not self.used(codes):
            self.stop() # what is on disk then is what a power cut would leave
            self.start()
            assert self.aside(), f"{what}: it could not count on it, and begins on it again"
            self.happened["at the next start, since it refused a scan"] += 1
        elif not self.aside():
            self.happened["not read yet"] += 1
        else:
            self.happened["at the start"] += 1
        if self.aside():
            assert len(self.aside()) == 1 and open(self.aside()[0], "rb").read() == was, f"{what}: what lies aside was changed"
            assert "record-damaged-" in self.distrust(), f"{what}: nobody is told"
        self.stop()


def a_station(bin):
    return Station(bin, "[board]\nstart = no\n", "[scans]\nburst_ms = 0\n")


def look_at_some(bin, whole, codes, some):
    station = a_station(bin)
    try:
        station.stop()
        damaged = Damaged(station, whole)
        for page, fill, snapshot in some:
            damaged.look(page, fill, snapshot, codes)
        return damaged.happened
    finally:
        station.leave()


def main(bin):
    station = a_station(bin)
    try:
        station.open_case()
        codes = [PACK.replace("S1", "S2"), station.codes()["CIRC-2"], station.codes()["FINAL COUNT"]]
        station.stop()
        whole = station.root / "whole"
        shutil.copytree(station.data, whole, ignore=shutil.ignore_patterns("socket"))
        damaged = Damaged(station, whole)
        assert damaged.pages > 10 and damaged.check().returncode == 0, damaged.check()
        all = [(page, fill, snapshot) for page in range(damaged.pages) for fill in FILLS | (HEAD if page == 0 else {}) for snapshot in (True, False)]
        with concurrent.futures.ThreadPoolExecutor(AT_ONCE) as pool: # most of the time is waited for programs that start
            done = [pool.submit(look_at_some, bin, whole, codes, all[i::AT_ONCE]) for i in range(AT_ONCE)]
            happened = sum((one.result() for one in done), collections.Counter())
        print(f"ok {damaged.pages} pages: put aside: {dict(happened)}")
    finally:
        station.leave()


main(sys.argv[1])
