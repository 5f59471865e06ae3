#!/usr/bin/python3
"""While a case is open updates and restarts wait, and the board says what does; when nothing is open they may go on; and
whoever forces it is on record. logind and what shuts a machine down are played; tests/package has the real ones.

  held-back.py FOLDER-OF-PROGRAMS

/run is this test's own, in a view of the files that nobody else has.
"""
import os, pathlib, shutil, signal, subprocess, sys

from a_station import SOURCE, Station

RUN, PLANNED = pathlib.Path("/run"), pathlib.Path("/run/systemd/shutdown/scheduled")
# As long as it runs it is held.
INHIBIT = """#!/bin/sh
echo "$@" >>ROOT/locks
exec sleep 1000
"""
SHUTDOWN = """#!/bin/sh
echo "$1 $2" >>ROOT/orders
[ "$1" != -c ] || rm /run/systemd/shutdown/scheduled
"""
BANDTALLY = """#!/bin/sh
exec BIN/bandtally --data ROOT/data "$@"
"""
UPDATE, RESTART = "An update waits until no case is open.", "A restart waits until no case is open."


def own_view():
    if os.getuid() != 0 or not shutil.which("unshare") or subprocess.run(["unshare", "-m", "true"]).returncode:
        print("skipped: a /run of its own can be had by root only")
        sys.exit(77)
    if "BANDTALLY_OWN_VIEW" not in os.environ:
        os.environ["BANDTALLY_OWN_VIEW"] = "yes"
        os.execvp("unshare", ["unshare", "-m", sys.executable, *sys.argv])
    subprocess.run(["mount", "-t", "tmpfs", "tmpfs", "/run"], check=True)
    PLANNED.parent.mkdir(parents=True)


class Machine:
    def __init__(self, station):
        self.station, programs = station, station.root / "programs"
        programs.mkdir()
        for name, text in (("systemd-inhibit", INHIBIT), ("shutdown", SHUTDOWN), ("bandtally", BANDTALLY)):
            (programs / name).write_text(text.replace("ROOT", str(station.root)).replace("BIN", str(station.bin)))
            (programs / name).chmod(0o755)
        self.env = {**os.environ, "BANDTALLY_LOCK": f"{station.root}/data/lock", "PATH": f"{programs}:{os.environ['PATH']}"}
        self.hold = subprocess.Popen([SOURCE / "config/systemd/hold"], env=self.env, start_new_session=True)

    def locks(self):
        """Why the machine is held, a line each lock that is there."""
        mine = subprocess.run(["ps", "-o", "args=", "-s", str(self.hold.pid)], capture_output=True, text=True).stdout
        asked = self.station.root / "locks"
        return asked.read_text().splitlines()[-mine.count("sleep 1000"):] if "sleep 1000" in mine else []

    def orders(self):
        given = self.station.root / "orders"
        return given.read_text().splitlines() if given.exists() else []

    def may_stop(self):
        return subprocess.run([SOURCE / "config/debian/may-stop", "apt"], env=self.env, capture_output=True).returncode == 0

    def leave(self):
        os.killpg(self.hold.pid, signal.SIGTERM)
        self.hold.wait()


def waits(station):
    shown, status = station.ask(do="sheet", room=1)["view"], station.ask(do="status")["status"]
    return shown["waits"] if shown["waits"] == status["waits"] else "board and status differ, for a moment"


def held(station, machine):
    soon = lambda what, true: (station.until(what, true, 6), print("ok " + what))
    station.set_up()
    soon("nothing is held while nothing is open", lambda: not machine.locks() and machine.may_stop())
    station.scan_all("NEW CASE")
    soon("an open case holds the machine, and says which", lambda: len(machine.locks()) == 1 and "Theatre 1: case 1" in machine.locks()[0])
    assert "--what=shutdown:sleep:handle-lid-switch --mode=block" in machine.locks()[0], machine.locks()
    assert not waits(station), waits(station)
    assert not machine.may_stop()
    soon("what apt was to do waits, and the board says so", lambda: waits(station) == [UPDATE])
    PLANNED.write_text("USEC=1\nWARN_WALL=1\nMODE=reboot\n")
    soon("a planned restart is taken back and waits too", lambda: waits(station) == [UPDATE, RESTART] and not PLANNED.exists())
    assert f"NOTE: {RESTART}" in station.bt("status")[1]
    station.daemon.send_signal(signal.SIGKILL)
    station.daemon.wait()
    subprocess.run(["sleep", "2.5"])
    assert len(machine.locks()) == 1, "the daemon died, and the machine is held no more"
    station.start()
    soon("of that the next start knows as well", lambda: waits(station) == [UPDATE, RESTART])
    assert machine.orders() == ["-c bandtally: it waits until no case is open"], machine.orders()
    station.scan_all("CANCEL", "YES")
    soon("with nothing open nothing is held, and the restart is planned again",
         lambda: not machine.locks() and machine.orders()[1:] == ["-r +1"])
    soon("nothing waits any more", lambda: not waits(station) and not list(RUN.glob("bandtally-*")))


def forced(station, machine):
    soon = lambda what, true: (station.until(what, true, 6), print("ok " + what))
    station.scan_all("NEW CASE")
    soon("the next case holds it again", lambda: len(machine.locks()) == 1)
    (RUN / "bandtally-stop-anyway").touch()
    soon("who must, may", lambda: not machine.locks() and machine.may_stop())
    station.stop()
    station.start()
    assert [e["what"] for e in station.record() if e["kind"] == "station-away" and e.get("case") == 2] == ["forced", "back"]
    assert "in spite of its being held: forced" in station.bt("case", "show", "2")[1]
    print("ok and it is on record, and on the slip, that it was forced")


def does_not_say(station, machine):
    """A station that works and cannot be asked may have a case open."""
    (RUN / "bandtally-stop-anyway").unlink(missing_ok=True)
    (station.root / "data/socket").unlink()
    assert not machine.may_stop(), "a station that cannot be asked was taken away"
    assert "it works, but nobody can ask it" in station.bt("status")[1]
    station.stop()
    assert machine.may_stop(), "where none works, nothing waits"
    print("ok a station that does not say whether a case is open is not taken away")


def main(bin):
    own_view()
    station = Station(bin, "[board]\nstart = no\n", "[scans]\nburst_ms = 0\n")
    machine = Machine(station)
    try:
        held(station, machine)
        forced(station, machine)
        does_not_say(station, machine)
    finally:
        machine.leave()
        station.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
