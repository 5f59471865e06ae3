#!/usr/bin/python3
"""The station tells the service manager each second that it works, and asks to be killed where it no longer does; its programs are
not told where to, and a station that is stopped says nothing.

  watchdog.py FOLDER-OF-PROGRAMS
"""
import os, pathlib, shutil, signal, socket, sys, tempfile, time

from a_station import Station


def heard(manager, seconds):
    """What came within that time."""
    manager.settimeout(0.2)
    words, end = [], time.monotonic() + seconds
    while time.monotonic() < end:
        try:
            words.append(manager.recv(4096).decode())
        except socket.timeout:
            pass
    return words


def main(bin):
    folder = tempfile.mkdtemp(prefix="bandtally-notify-")
    where = folder + "/socket"
    manager = socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM)
    manager.bind(where)
    os.environ["NOTIFY_SOCKET"] = where
    station = Station(bin, "[board]\nport = 0\n")
    try:
        heard(manager, 1)
        words = heard(manager, 4)
        assert 3 <= len(words) <= 6 and set(words) == {"WATCHDOG_USEC=60000000\nWATCHDOG=1"}, words
        print("ok each second it says that it works, and when it is to be killed")
        children = station.children()
        assert children, "it has no programs"
        for child, _ in children:
            assert b"NOTIFY_SOCKET" not in pathlib.Path(f"/proc/{child}/environ").read_bytes(), child
        print("ok its programs are not told where")
        station.daemon.send_signal(signal.SIGSTOP)
        heard(manager, 1)
        assert heard(manager, 3) == [], "a station that hangs says that it works"
        station.daemon.send_signal(signal.SIGCONT)
        assert heard(manager, 3), "it goes on and does not say so"
        print("ok one that hangs says nothing")
        manager.close()
        os.unlink(where)
        time.sleep(2)
        assert station.bt("status")[0] == 0
        print("ok and it works on where nobody listens")
    finally:
        station.leave()
        shutil.rmtree(folder)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
