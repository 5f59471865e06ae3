#!/usr/bin/python3
"""The station is told to stop in the middle of a case: record, board and slip say so, and the next start that it is there
again; one that was killed was not stopped, and that is said too. Where nothing is open a stop is no news.

  stopped.py FOLDER-OF-PROGRAMS
"""
import json, signal, socket, sys, threading, time
import urllib.request

from a_station import Station

STOPPED = "The station was stopped by its administrator with a case open."


def free_port():
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        return s.getsockname()[1]


class Page(threading.Thread):
    """What a page of this room is sent, until its server ends."""

    def __init__(self, port, room):
        super().__init__(daemon=True)
        self.views, self.ended = [], 0
        self.feed = urllib.request.urlopen(f"http://127.0.0.1:{port}/events?room={room}", timeout=20)
        self.start()

    def run(self):
        for line in self.feed:
            if line.startswith(b"data: ") and b'"view"' in line:
                self.views.append(json.loads(line[6:])["view"])
        self.ended = time.monotonic()


def aways(station):
    return [(e["kind"], e.get("what"), e.get("case", 0)) for e in station.record() if e["kind"] in ("station-away", "stopped", "started")]


def notes(station):
    return station.bt("case", "show", "1")[1]


def check(sentence, true):
    assert true, sentence
    print("ok " + sentence)


def main(bin):
    port = free_port()
    station = Station(bin, f"[room 2]\nname = Theatre 2\n[board]\nstart = yes\nport = {port}\n", "[scans]\nburst_ms = 0\n")
    try:
        station.until("its board runs", lambda: "the board is at" in station.said())
        page = Page(port, 1)
        station.until("the page has its view", lambda: page.views)
        began = time.monotonic()
        station.stop()
        check("a stop with nothing open is done at once", time.monotonic() - began < 0.45)
        check("and is no news to the page", not any(v["stopped"] or v["distrust"] for v in page.views))
        station.start()
        check("nor to any case", aways(station) == [("started", None, 0), ("stopped", None, 0), ("started", None, 0)])

        station.open_case()
        station.until("its board runs", lambda: station.said().count("the board is at") == 2)
        pages = Page(port, 1), Page(port, 2)
        station.until("the pages have their views", lambda: all(p.views for p in pages))
        station.stop()
        station.until("the board has ended", lambda: all(p.ended for p in pages))
        for number, p in enumerate(pages, 1):
            check(f"the last word in room {number} is that it was stopped with a case open",
                  p.views[-1]["stopped"] and p.views[-1]["distrust"] == STOPPED)
        check("it is in the journal", STOPPED in station.said())
        station.start()
        check("the case says when it was stopped and that the station is there again", aways(station)[3:] == [
            ("station-away", "stopped", 1), ("stopped", None, 0), ("started", None, 0), ("station-away", "back", 1)])
        check("its slip says so", "was stopped by its administrator at" in notes(station) and "was there again at" in notes(station))
        told = station.ask(do="sheet", room=1)["view"]
        check("the room is told to look", "was away between" in told["recent"][0]["said"])
        check("and nothing stands against the station any more", not told["stopped"] and not told["distrust"])
        station.bt("scan", station.codes()["UNDO"])
        check("an UNDO takes back no stop", "was stopped by its administrator at" in notes(station))

        station.daemon.send_signal(signal.SIGKILL)
        station.daemon.wait()
        station.start()
        check("killed, it says that nobody had stopped it", aways(station)[7:] == [
            ("started", None, 0), ("station-away", "back-unstopped", 1)])
        check("and so does the slip", "nobody had stopped it" in notes(station))
        station.must_be_sound()
    finally:
        station.leave()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
