#!/usr/bin/python3
"""A first start: `bandtally setup` at a terminal of its own and by options alone, what it leaves when it is stopped, and that
the station with what it wrote counts a scan.

  setup.py FOLDER-OF-PROGRAMS                  --printer FOLDER: the printer alone, with the one of tests/device/print-rig there
"""
import os, pathlib, pty, select, shutil, signal, subprocess, sys, tempfile, time

from a_station import PACK, SOURCE, Station

BIN = pathlib.Path(sys.argv[1]).resolve()
SHIPPED = SOURCE / "config"
running = []  # what a test that fails would leave: stations and terminals


def end_what_runs():
    for x in running:
        if isinstance(x, Station):
            x.daemon.terminate()  # of one that has ended that is nothing
            x.daemon.wait()
        elif x.pid:
            os.kill(x.pid, signal.SIGKILL)
            os.waitpid(x.pid, 0)
    running.clear()


class Terminal:
    """`bandtally setup` with a terminal as its own."""

    def __init__(self, data, *words, path=None, bin=BIN):
        self.said = ""
        self.pid, self.fd = pty.fork()
        if self.pid == 0:
            if path:
                os.environ["PATH"] = f"{path}:{os.environ['PATH']}"
            os.environ["TMPDIR"] = str(data.parent / "tmp")
            os.execv(bin / "bandtally", ["bandtally", "--data", str(data), "setup", *words])
        running.append(self)

    def wait(self, text, seconds=20):
        """Reads until it says this, from where the last wait ended; returns what stood before."""
        end = time.monotonic() + seconds
        while text not in self.said:
            assert time.monotonic() < end, f"it does not say '{text}': {self.said}"
            if select.select([self.fd], [], [], 0.1)[0]:
                try:
                    part = os.read(self.fd, 4096)
                except OSError:  # its end
                    part = b""
                assert part, f"it ended without '{text}': {self.said}"
                self.said += part.decode().replace("\r\n", "\n")
        before, self.said = self.said.split(text, 1)
        return before

    def answer(self, question, line):
        before = self.wait(question)
        self.wait(": ")
        os.write(self.fd, line.encode() + b"\n")
        return before

    def end(self, code):
        said = self.said
        while True:
            try:
                part = os.read(self.fd, 4096)
            except OSError:
                break
            if not part:
                break
            said += part.decode().replace("\r\n", "\n")
        status, self.pid = os.waitpid(self.pid, 0)[1], 0
        os.close(self.fd)
        assert os.WIFEXITED(status) and os.WEXITSTATUS(status) == code, f"it ended with {status:x}, not {code}: {said}"
        return said


class Fresh:
    """A data folder as an installation leaves it: settings as they are shipped, behind links."""

    def __init__(self, shipped=True):
        self.folder = tempfile.TemporaryDirectory(prefix="bandtally-setup-test-")
        root = pathlib.Path(self.folder.name)
        self.root, self.data, self.etc = root, root / "data", root / "etc"
        for folder in (self.data, self.etc, root / "tmp", root / "path"):
            folder.mkdir()
        if shipped:
            for name in ("station", "policy", "scanners", "labels"):
                text = (SHIPPED / f"{name}.ini").read_text()
                (self.etc / f"{name}.ini").write_text(text)
                (self.data / f"{name}.ini").symlink_to(self.etc / f"{name}.ini")

    def setup(self, *words):
        done = subprocess.run([BIN / "bandtally", "--data", self.data, "setup", *words], capture_output=True, text=True,
                              stdin=subprocess.DEVNULL, env={**os.environ, "TMPDIR": str(self.root / "tmp"),
                                                             "PATH": f"{self.root / 'path'}:{os.environ['PATH']}"})
        return done.returncode, done.stdout + done.stderr

    def files(self):
        """All that lies there, by name."""
        return {str(p.relative_to(self.root)): p.read_bytes() if p.is_file() else b"" for p in sorted(self.root.rglob("*"))}

    def program(self, name, text):
        (self.root / "path" / name).write_text(text)
        (self.root / "path" / name).chmod(0o755)

    def station(self, bin=BIN):
        """The real daemon on it."""
        s = Station.__new__(Station)
        s.folder, s.root, s.data, s.bin, s.owner = self.folder, self.root, self.data, bin, None
        s.log = open(self.root / "log", "w+")
        text = (self.data / "station.ini").read_text()
        (self.data / "station.ini").write_text(text.replace("start = yes", "start = no"))  # no board: its port is another's
        running.append(s)
        s.start()
        return s


def must(true, why):
    assert true, why


def a_scan_counts(fresh, room="Theatre 1", letters="HU"):
    s = fresh.station()
    try:
        s.set_up()
        code = s.codes()["NEW CASE"]
        must(code.startswith(f"BT{letters}"), f"the cards are of another site: {code}")
        must(s.ask(do="scan", code=code)["verdict"] in ("accepted", "question"), "a case is not opened")
        for what in ("SCRUB-1", "CIRC-2", PACK):
            said = s.ask(do="scan", code=s.codes().get(what, what))
            must(said["verdict"] in ("accepted", "question"), f"{what}: {said}")
        must("Finger tourniquet" in s.bt("sheet")[1] or "ourniquet" in s.bt("sheet")[1], "it is not on the sheet")
        must(room in s.bt("status")[1], f"no {room}: {s.bt('status')[1]}")
    finally:
        s.daemon.terminate()
        s.daemon.wait()


def at_a_terminal():
    f = Fresh()
    t = Terminal(f.data)
    asked = t.answer("two letters", "AB")
    must("[BC]" not in asked, "letters that nobody chose are offered")
    must("letters is 'AB': it must be two of" in t.answer("two letters", "HU"), "it does not say what is wrong with AB")
    t.answer("site is called", "Hand unit")
    t.answer("stations this is", "")
    t.answer("room 1 is called [Room 1]", "Theatre 1")
    t.answer("further room", "Minor procedures")
    must("is called so" in t.answer("further room", "Theatre 1") + t.answer("further room", ""), "two rooms of one name")
    t.answer("an address (ipp…), or none", "none")
    t.answer("Its paper: roll80, a6, a5 or a4", "a6")
    t.answer("VENDOR:PRODUCT, or none", "1209:B0C0")
    t.answer("or later [print]", "now")
    t.answer("none of print, have and later", "later")
    t.answer("(registered, or another practitioner), or none", "registered=2,surgeon=1")
    t.wait("written: ")
    t.wait("start it, then press Enter: ")
    s = f.station()
    os.write(t.fd, b"\n")
    for name in ("PRACT-1", "PRACT-2", "SURG-1"):
        t.wait(f": {name}\n")
    t.wait("bandtally label badges")
    must("bandtally label scanner-check" in t.end(0), "it does not say how the scanner is taught")
    must([p["name"] for p in s.ask(do="list-staff")["staff"]] == ["PRACT-1", "PRACT-2", "SURG-1"], "not those badges")
    scanners = (f.etc / "scanners.ini").read_text()
    code, said = f.setup("--scanner", "1209:b0c0", "--yes")
    must(code == 0 and (f.etc / "scanners.ini").read_text() == scanners, f"a scanner that is listed is listed again: {said}")
    must("start = no" in (f.etc / "station.ini").read_text(), "what another wrote meanwhile is gone")
    code, said = f.setup("--badges", "registered=3")
    must(code == 0 and said.count("badge 0") == 1 and "PRACT-3" in said, f"one that is there is made again: {said}")
    s.stop()
    must("[scanner hand-1]\nvendor = 1209\nproduct = b0c0\nroom = 1\n" in (f.etc / "scanners.ini").read_text(), "no scanner is listed")
    text = (f.etc / "station.ini").read_text()
    for line in ("letters = HU", "name = Hand unit", "number = 0", "paper = a6", "[room 1]\nname = Theatre 1", "[room 2]\nname = Minor procedures"):
        must(line in text, f"station.ini lacks {line}")
    for line in (SHIPPED / "station.ini").read_text().splitlines():
        must(not line.startswith("#") or line in text, f"a comment is gone: {line}")
    must((f.data / "station.ini").is_symlink(), "the link is gone")
    must(not list((f.root / "tmp").iterdir()), "something of it stays in the folder for a while")
    before = f.files()
    must("nothing is left to settle" in Terminal(f.data).end(0) and f.files() == before, "it asks twice")
    t = Terminal(f.data, "--again")
    t.answer("printed [HU]", "")
    t.wait("slips and cards [Hand unit]: ")
    os.write(t.fd, b"\x03")
    t.end(1)
    must(f.files() == before, "a question that was not answered changed something")
    a_scan_counts(f)


def finish_terminal(t):
    t.wait("written: ")
    t.end(0)


def by_options():
    f = Fresh(shipped=False)
    code, said = f.setup("--site", "HU", "--name", "Hand unit", "--station", "7", "--room", "Theatre 1", "--room", "Theatre 2", "--printer", "none", "--scanner", "none", "--badges", "none")
    must(code == 0, said)
    must("number = 7" in (f.data / "station.ini").read_text(), "no number")
    before = f.files()
    code, said = f.setup("--badges", "surgeon=1")
    must(code == 1 and "the station must run" in said and f.files() == before, f"badges without a station: {said}")
    code, said = f.setup("--room", "Theatre 3")
    must(code == 0 and "[room 3]\nname = Theatre 3" in (f.data / "station.ini").read_text(), said)
    before = f.files()
    code, said = f.setup("--room", "Theatre 2", "--yes")
    must(code == 0 and "nothing is left" in said and f.files() == before, "a room that is there came twice: " + said)
    a_scan_counts(f)


def other_letters():
    """What was given out with the old ones is worth nothing then: that is said, and wants a word of its own."""
    f = Fresh()
    code, said = f.setup("--site", "HU", "--name", "Hand unit", "--station", "7", "--yes")
    must(code == 0 and "refused" not in said, f"nothing was given out yet: {said}")
    before = f.files()
    code, said = f.setup("--again", "--site", "BC", "--yes")
    must(code == 4 and "were HU and would be BC" in said and "every badge, card, digit card and label" in said and "--new-letters" in said, f"{code}: {said}")
    must(f.files() == before, "it changed something")
    code, said = f.setup("--again", "--site", "HU", "--yes")
    must(code == 0 and "refused" not in said, f"the same letters are no other ones: {code}: {said}")
    before = f.files()
    for answer, code in (("", 1), ("no", 1), ("yes", 0)):
        t = Terminal(f.data, "--site", "BC")
        t.wait("must be printed anew")
        t.answer("Is that meant?", answer)
        t.end(code)
        must(answer == "yes" or f.files() == before, "it changed something")
    code, said = f.setup("--again", "--site", "HU", "--new-letters", "--yes")
    must(code == 0 and "were BC and would be HU" in said and "letters = HU" in (f.etc / "station.ini").read_text(), f"{code}: {said}")
    (f.data / "settings-sound").mkdir()
    (f.data / "settings-sound/station.ini").write_text((f.etc / "station.ini").read_text())
    (f.etc / "station.ini").write_text("")
    code, said = f.setup("--site", "BC", "--name", "Hand unit", "--yes")
    must(code == 4 and "were HU and would be BC" in said, f"a file that was lost says nothing of its letters: {code}: {said}")
    code, said = f.setup("--site", "HU", "--name", "Hand unit", "--yes")
    must(code == 0, said)
    (f.data / "scanners.ini").unlink()
    os.mkfifo(f.data / "scanners.ini")
    code, said = f.setup("--again", "--yes")
    must(code == 1 and "scanners.ini" in said, f"a pipe is waited for, or taken: {code}: {said}")


def badges_with_letters_as_shipped():
    f = Fresh()
    s = f.station()
    s.bt("staff", "add", "--registered", "practitioner", "SCRUB-1")
    code, said = f.setup("--site", "HU", "--name", "Hand unit", "--yes")
    must(code == 4 and "were BC and would be HU" in said, f"a badge was given out: {code}: {said}")
    s.daemon.terminate()
    s.daemon.wait()


def given_twice():
    f = Fresh()
    before = f.files()
    for option, value in (("site", "HU"), ("name", "Hand unit"), ("station", "1"), ("printer", "none"), ("paper", "a5"), ("scanner", "none"), ("sheet", "later"), ("badges", "none")):
        code, said = f.setup(f"--{option}", value, f"--{option}", value)
        must(code == 2 and f"--{option} is given twice" in said and f.files() == before, f"{option}: {code}: {said}")


def an_answer_is_missing():
    f = Fresh()
    before = f.files()
    for words, option in (((), "site"), (("--yes",), "site"), (("--site", "HU"), "name"), (("--site", "HU", "--name", "Hand unit"), "station"),
                          (("--site", "HU", "--name", "Hand unit", "--station", "1"), "room"),
                          (("--site", "HU", "--name", "Hand unit", "--station", "1", "--room", "Theatre 1"), "printer"),
                          (("--site", "HU", "--name", "Hand unit", "--station", "1", "--room", "Theatre 1", "--printer", "none"), "scanner"),
                          (("--site", "HU", "--name", "Hand unit", "--station", "1", "--room", "Theatre 1", "--printer", "none", "--scanner", "none"),
                           "badges")):
        code, said = f.setup(*words)
        must(code == 4 and f"--{option} is missing" in said and said.count("\n") == 1, f"{words}: {code}: {said}")
        must(f.files() == before, f"{words} changed something")
    code, said = f.setup("--site", "HU", "--name", "Hand unit", "--yes")
    must(code == 0 and "[room 1]\nname = Room 1" in (f.etc / "station.ini").read_text(), f"what is offered is not taken: {said}")


def an_answer_will_not_do():
    f = Fresh()
    before = f.files()
    good = {"site": "HU", "name": "Hand unit", "station": "1", "room": "Theatre 1", "printer": "none", "paper": "a5", "scanner": "1209:b0c0", "sheet": "later",
            "badges": "none"}
    for option, bad, why in (("site", "HA", "must be two of"), ("name", "x\ny", "cannot stand"),
                             ("station", "100", "from 0 to 99"), ("room", "R" * 180, "shorten it"), ("room", "\x07", "U+0007"),
                             ("printer", "x\ny", "cannot stand"), ("paper", "a7", "roll80, a6, a5, a4"),
                             ("sheet", "now", "none of print, have and later"), ("scanner", "/dev/null", "no device that is plugged in"), ("scanner", "12x9:b0c0", "four hexadecimal digits"),
                             ("badges", "surgeon=51", "how many"), ("badges", "Dr=1", "how many"), ("badges", "surgeon=1x", "how many")):
        words = [w for o, v in {**good, option: bad}.items() for w in (f"--{o}", v)]
        code, said = f.setup(*words)
        must(code == 2 and why in said and f"--{option}: " in said, f"{option} {bad!r}: {code}: {said}")
        must(f.files() == before, f"{option} {bad!r} changed something")
    rooms = [w for n in range(17) for w in ("--room", f"Theatre {n}")]
    code, said = f.setup("--site", "HU", "--name", "Hand unit", "--station", "1", *rooms)
    must(code == 2 and "more than 16 rooms" in said and f.files() == before, said)
    (f.etc / "policy.ini").write_text("[reminders]\nfirst_reminder_min = soon\n")
    code, said = f.setup("--yes")
    must(code == 1 and "policy.ini line 2" in said and "mend that first" in said, said)


def stopped_on_the_way():
    for last in (b"\x03", b"\x04", "HUP"):
        f = Fresh()
        before = f.files()
        t = Terminal(f.data)
        t.answer("two letters", "HU")
        t.answer("site is called", "Hand unit")
        t.wait("stations this is")
        t.wait(": ")
        if last == "HUP":
            os.kill(t.pid, signal.SIGHUP)
        else:
            os.write(t.fd, last)
        must("nothing was changed" in t.end(1), "it does not say what was left")
        must(f.files() == before, f"stopped by {last!r} it left something")


def systemd_starts_it_anew():
    f = Fresh()
    f.program("systemctl", f"""#!/bin/sh
case $1 in
show) echo "ExecStart={{ argv[]=/usr/bin/bandtallyd --data {f.data} --head /x ; }}" ;;
restart) echo "$2" >>{f.root}/restarted; kill -TERM $(cat {f.root}/pid); exit 0 ;;
esac
""")
    s = f.station()
    (f.root / "pid").write_text(str(s.daemon.pid))
    s.set_up()
    must(s.ask(do="scan", code=s.codes()["NEW CASE"])["verdict"] in ("accepted", "question"), "no case")
    code, said = f.setup("--site", "BC", "--name", "Hand unit", "--station", "0", "--room", "Theatre 1", "--printer", "none", "--scanner", "none", "--badges", "none")
    must(code == 0 and "A case is open" in said and not (f.root / "restarted").exists(), f"an open case is not waited for: {said}")
    s.stop()
    # What starts it anew leaves it running: here it runs already.
    s.start()
    f.program("systemctl", (f.root / "path/systemctl").read_text().replace("kill -TERM", "true"))
    for x in ("CANCEL", "YES"):
        s.ask(do="scan", code=s.codes()[x])
    code, said = f.setup("--name", "Hand surgery")
    must("bandtallyd.service" in (f.root / "restarted").read_text() if code == 0 else False, said)
    must("the station runs with these settings" in said, said)
    s.stop()


def code_on_paper(rig, before):
    """What a scanner reads of the page that came out of the printer since."""
    end = time.monotonic() + 30
    while time.monotonic() < end:
        new = set((rig / "ctl").glob("doc.*")) - before
        if new:
            subprocess.run(["pdftoppm", "-r", "200", "-png", new.pop(), rig / "page"], check=True)
            read = subprocess.run(["zbarimg", "-q", "--raw", *rig.glob("page*.png")], capture_output=True, text=True).stdout
            must(read.count("\n") == 1, f"not one code on the page: {read}")
            return read.strip()
        time.sleep(0.1)
    raise AssertionError("no page came out of the printer")


def a_printer_proves_itself(rig):
    f = Fresh()
    words = ("--site", "HU", "--name", "Hand unit", "--station", "1", "--room", "Theatre 1", "--scanner", "none", "--badges", "none")
    t = Terminal(f.data, *words)
    before = set((rig / "ctl").glob("doc.*"))
    must("1  slips" in t.answer("or none", "nowhere"), "what CUPS offers is not listed")
    t.answer("no queue 'nowhere'", "1")
    t.answer("Its paper", "a6")
    t.wait("done: ")
    first = code_on_paper(rig, before)
    t.answer("Scan the code", "BTHU61064")
    t.wait("not the code of this page")
    t.answer("'no' where none comes", "no")
    before = set((rig / "ctl").glob("doc.*"))
    t.answer("or none [slips]", "")
    t.answer("Its paper: roll80, a6, a5 or a4 [a6]", "")
    t.wait("done: ")
    second = code_on_paper(rig, before)
    must(second.startswith("BTHU6"), f"no code of ours: {second}")
    if first != second:  # one time in ninety they are the same
        t.answer("Scan the code", first)
        t.wait("not the code of this page")
    t.answer("'no' where none comes", f"{second[:4]} {second[4:]}".lower())
    finish_terminal(t)
    text = (f.etc / "station.ini").read_text()
    must("\nqueue = slips\n" in text.split("[labels]")[0] and "\npaper = a6\n" in text, "the printer is not in station.ini")
    before = f.files()
    t = Terminal(f.data, "--printer", "slips")
    t.answer("Its paper", "")
    t.answer("Scan the code", "no")
    must("did not come" in t.end(1) and f.files() == before, "a printer that was not proven is taken")
    code, said = f.setup("--printer", "none", "--scanner", "none", "--badges", "none")
    must(code == 0 and "\nqueue = slips" not in (f.etc / "station.ini").read_text(), f"the printer cannot be taken away: {said}")
    code, said = f.setup("--printer", "later")
    must(code == 0 and "CUPS has no queue 'later' now" in said, said)


DEVICE = """P: /devices/pci0000:00/usb1/1-{n}/1-{n}:1.0/input/input{n}
E: SUBSYSTEM=input
A: name={name}\\n

P: /devices/pci0000:00/usb1/1-{n}/1-{n}:1.0/input/input{n}/event{n}
N: input/event{n}
E: DEVNAME=/dev/input/event{n}
E: SUBSYSTEM=input
E: ID_INPUT=1
E: ID_INPUT_KEY=1
E: ID_VENDOR_ID={vendor}
E: ID_MODEL_ID=b0c0
E: ID_SERIAL_SHORT=SN{n}
E: MAJOR=13
E: MINOR={n}

"""
KEYBOARD = DEVICE.format(n=71, name="A keyboard", vendor="120a")
SCANNER = DEVICE.format(n=72, name="A scanner", vendor="1209")


TEACHABLE = """#!/usr/bin/python3
# In the place of scan-handheld, and of the check in which the station starts it anew: that needs a device's own node (device-station-vm).
import json, pathlib, sys, time
sheet, profile = pathlib.Path("ROOT/sheet"), pathlib.Path("ROOT/data/profiles/1209-b0c0-SN72.ini")
said = lambda **more: print(json.dumps({"v": 1, "hello": {"driver": "handheld", "device": sys.argv[2], **more}}), flush=True)
said(**({} if profile.exists() else {"uncertain": "undecided: its layout"}))
while True:
    time.sleep(0.05)
    if sheet.exists():
        whole = sheet.read_text() == "whole"
        sheet.unlink()
        if whole:
            profile.write_text("layout = us\\n")
        said(**({} if whole else {"uncertain": "its end was not read"}))
"""


class Plugged(Fresh):
    """Programs that see what umockdev has."""

    def __init__(self):
        super().__init__()
        self.bin, self.plugged = self.root / "bin", self.root / "plugged"
        self.bin.mkdir()
        for name in ("bandtally", "bandtally-print"):
            shutil.copy(BIN / name, self.bin)
        (self.bin / "bandtallyd").write_text(
            "#!/bin/sh\n# A sanitizer's library wants to be the first, which umockdev's is.\n"
            "export ASAN_OPTIONS=${ASAN_OPTIONS:+$ASAN_OPTIONS:}verify_asan_link_order=0\n"
            f"exec umockdev-run -d {self.plugged} -- {self.root}/real/bandtallyd \"$@\"\n")
        (self.root / "real").mkdir()
        shutil.copy(BIN / "bandtallyd", self.root / "real")
        for name, text in (("scan-handheld", TEACHABLE.replace("ROOT", str(self.root))), ("bandtally-print", "#!/usr/bin/python3\nimport sys\nfor line in sys.stdin:\n    pass\n")):
            (self.root / "real" / name).write_text(text)
            (self.root / "real" / name).chmod(0o755)
        (self.bin / "bandtallyd").chmod(0o755)


NO_QUESTIONS = ("--site", "HU", "--name", "Hand unit", "--station", "1", "--room", "Theatre 1", "--printer", "none", "--paper", "a5", "--badges", "none")


def a_scanner_is_plugged_in():
    """bandtallyd sees what umockdev has: a keyboard, and a scanner as soon as it is there."""
    if not shutil.which("umockdev-run"):
        print("skipped: umockdev is not installed: config/setup --test")
        return
    f = Plugged()
    f.plugged.write_text(KEYBOARD)
    t = Terminal(f.data, *NO_QUESTIONS, bin=f.bin)
    must("1  120a:b0c0 A keyboard, /dev/input/event71" in t.answer("or none", ""), "what is plugged in is not listed")
    t.answer("Nothing came", "/dev/input/event99")
    t.wait("no device that is plugged in")
    f.plugged.write_text(KEYBOARD + SCANNER)
    t.answer("or none", "")
    t.wait("1209:b0c0 A scanner")
    t.answer("or later", "later")
    finish_terminal(t)
    listed = (f.etc / "scanners.ini").read_text()
    must("[scanner hand-1]\nvendor = 1209\nproduct = b0c0\nserial = SN72\nroom = 1\n" in listed, "it is not listed: " + listed[-200:])
    must("vendor = 120a" not in listed, "the keyboard is listed")
    before = f.files()
    t = Terminal(f.data, "--scanner", "/dev/input/event72", "--sheet", "later", bin=f.bin)
    must("nothing is left" in t.end(0) and f.files() == before, "a scanner that is listed is listed again")
    t = Terminal(f.data, "--scanner", "/dev/input/event71", "--sheet", "later", bin=f.bin)
    t.wait("written: ")
    t.end(0)
    must("[scanner hand-2]\nvendor = 120a" in (f.etc / "scanners.ini").read_text(), "a second one is not listed")


def the_sheet_is_scanned():
    """Beside the station that was just set up: it waits for the plug, for a sheet that is scanned to its end, and says what became of it."""
    if not shutil.which("umockdev-run"):
        print("skipped: umockdev is not installed: config/setup --test")
        return
    f = Plugged()
    f.plugged.write_text(KEYBOARD + SCANNER)
    t = Terminal(f.data, *NO_QUESTIONS, "--scanner", "1209:b0c0:SN72", bin=f.bin)
    t.answer("or later [print]", "have")
    t.wait("start it, then press Enter: ")
    f.plugged.write_text(KEYBOARD)
    s = f.station(f.bin)
    os.write(t.fd, b"\n")
    t.wait("Plug scanner hand-1 in.")
    s.stop()
    f.plugged.write_text(KEYBOARD + SCANNER)
    s.start()
    t.wait("undecided: its layout")
    t.wait("Scan the sheet with scanner hand-1")
    (f.root / "sheet").write_text("not to its end")
    t.wait("its end was not read")
    t.wait("Scan the sheet with scanner hand-1")
    (f.root / "sheet").write_text("whole")
    t.wait("scanner hand-1 is learned")
    t.end(0)
    must((f.data / "profiles/1209-b0c0-SN72.ini").read_text() == "layout = us\n", "no profile")
    t = Terminal(f.data, "--scanner", "/dev/input/event72", "--sheet", "have", bin=f.bin)
    t.wait("Scan the sheet with scanner hand-1")
    os.write(t.fd, b"\x03")
    must("was not scanned to its end" in t.end(1), "stopped, it does not say what is left")
    s.stop()


if "--printer" in sys.argv:
    try:
        a_printer_proves_itself(pathlib.Path(sys.argv[3]))
    finally:
        end_what_runs()
    print("ok a printer proves itself")
    sys.exit(0)
for test in (at_a_terminal, by_options, other_letters, badges_with_letters_as_shipped, given_twice, an_answer_is_missing, an_answer_will_not_do, stopped_on_the_way, systemd_starts_it_anew, a_scanner_is_plugged_in, the_sheet_is_scanned):
    try:
        test()
    finally:
        end_what_runs()
    print("ok", test.__name__.replace("_", " "), flush=True)
