#!/usr/bin/python3
"""The card SHOW CAMERA: for 20 s what the room's camera sees stands on the station's own screen, and nowhere else.
    camera.py FOLDER-OF-PROGRAMS
A camera of ours in place of scan-camera: asked for (SIGUSR1), it sends a picture that can be told from all else."""
import re, signal, socket, subprocess, sys, threading, time, urllib.request
from a_station import Station

MARK = "Q0FNRVJBTUFSSw=="  # what no file may hold
CAMERA = f"""#!/usr/bin/python3
import json, os, signal, sys, time
asked = [None]
signal.signal(signal.SIGUSR1, lambda *_: asked.__setitem__(0, time.monotonic()))
signal.signal(signal.SIGUSR2, lambda *_: asked.__setitem__(0, None))
def say(**line): print(json.dumps({{"v": 1, **line}}), flush=True)
say(hello={{"driver": "camera", "device": "none", "pictures": True}})
unasked = 0
while os.getppid() != 1:
    if asked[0] or unasked < 5:  # five that nobody asked for
        say(picture={{"jpeg": "{MARK}", "codes": [[100, 200, 300, 400, True]]}})
        unasked += not asked[0]
    time.sleep(0.15)
"""
READER = """#!/usr/bin/python3
import json, sys
print(json.dumps({"v": 1, "hello": {"driver": "reader", "device": "none"}}), flush=True)
while True:
    for line in open(sys.argv[1]):
        print(json.dumps({"v": 1, "scan": {"data": line.strip()}}), flush=True)
"""


class Page(threading.Thread):
    """What one page receives, as bytes."""

    def __init__(self, port, query, cookie=None):
        super().__init__(daemon=True)
        self.socket = socket.create_connection(("127.0.0.1", port))
        self.socket.sendall(f"GET /events{query} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n".encode() +
                            (f"Cookie: {cookie}\r\n".encode() if cookie else b"") + b"\r\n")
        self.got = b""
        self.start()

    def run(self):
        while more := self.socket.recv(65536):
            self.got += more

    def pictures(self):
        return self.got.count(MARK.encode())


class NoRedirect(urllib.request.HTTPRedirectHandler):
    def redirect_request(self, *_):
        return None


def cookie_of(station, *words):
    code, said = station.bt("board", *words)
    assert code == 0, said
    try:
        urllib.request.build_opener(NoRedirect).open(re.search(r"http://\S+", said)[0])
    except urllib.error.HTTPError as answer:
        return answer.headers["Set-Cookie"].split(";")[0]


def main(bin):
    port = socket.create_server(("127.0.0.1", 0)).getsockname()[1]
    station = Station(bin, "\n[board]\nstart = no\n")
    for name, text in (("camera", CAMERA), ("reader", READER)):
        (station.root / name).write_text(text)
        (station.root / name).chmod(0o755)
    lines = station.root / "lines"
    subprocess.run(["mkfifo", lines], check=True)
    lines_two = station.root / "lines-two"
    subprocess.run(["mkfifo", lines_two], check=True)
    station.stop()
    (station.data / "station.ini").write_text(
        f"[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n[board]\nstart = yes\nport = {port}\n"
        f"[driver camera]\ncommand = {station.root}/camera\nroom = 1\n"
        f"[driver hand]\ncommand = {station.root}/reader {lines}\nroom = 1\n"
        f"[driver hand-two]\ncommand = {station.root}/reader {lines_two}\nroom = 2\n")
    station.start()
    try:
        check(station, port, lines, lines_two)
    finally:
        station.leave()


def check(station, port, lines, lines_two):
    cards = [line.split("\t") for room in "12" for line in station.bt("label", "cards", "--room", room, "--list")[1].splitlines()]
    card = {int(c[1]): c[0] for c in cards if c[2] == "SHOW CAMERA"}

    def scan(code, to=lines):
        with open(to, "w") as f:
            f.write(code + "\n")

    def replies(page):
        return re.findall(rb'"recent":\[\{[^}]*"said":"([^"]*)"', page.got)

    station.until("the board runs", lambda: "the board is at" in station.said())
    own = Page(port, "?room=1", cookie_of(station))
    others = [Page(port, "?room=1"), Page(port, "?room=2", cookie_of(station, "--room", "2")),
              Page(port, "?desk=1")]
    time.sleep(1.5)
    assert own.pictures() == 0, "a picture that nobody asked for was shown"
    print("ok what nobody asked for is shown nowhere")

    scan(card[1])
    station.until("pictures come", lambda: own.pictures() > 3)
    began = time.monotonic()
    assert b"is kept nowhere" in own.got, own.got[-2000:]
    print("ok after the card they come, in a room without a case")
    time.sleep(2.5)
    scan(card[1])
    station.until("the card ends it", lambda: b"no longer shown" in own.got)
    before = own.pictures()
    time.sleep(1)
    assert own.pictures() == before, "it went on"
    print("ok the card again ends it")

    scan(next(c[0] for c in cards if c[1] == "1" and c[2] == "NEW CASE"))
    station.until("a case is open", lambda: b'"case":{' in own.got)
    time.sleep(2.5)
    scan(card[1])
    station.until("pictures come with a case open", lambda: own.pictures() > before + 3)
    began = time.monotonic()
    station.until("and end by themselves", lambda: time.monotonic() - began > 21, 40)
    before = own.pictures()
    time.sleep(1)
    assert own.pictures() == before, "they go on after 20 s"
    assert before > 50, before
    print("ok with a case open too, for 20 s")

    scan(card[2], lines_two)
    station.until("a room without a camera says so", lambda: b"No camera works in Theatre 2" in others[1].got)
    code, said = station.bt("scan", "--scanner", "hand", card[1])
    assert code == 3 and "where a scanner of its room reads it" in said, said
    print("ok no camera, and a typed card, are answered")

    for page in others:
        assert page.pictures() == 0 and b"event: picture" not in page.got, "shown elsewhere"
        assert b"event: view" in page.got
    print("ok no page without the room's ticket got a byte of it")
    code, said = station.bt("report-fault", "--messages", station.root / "log", station.root / "report")
    assert code == 0, said
    station.stop()
    for file in station.root.rglob("*"):
        if file.is_file() and file.name != "camera":
            assert MARK.encode() not in file.read_bytes(), f"kept in {file}"
    print("ok and nothing of it is kept")


main(sys.argv[1])
