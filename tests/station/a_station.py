"""A station of its own for tests in Python: real programs, a folder that goes with it, and what it says and keeps."""
import json, os, pathlib, re, shutil, socket, sqlite3, subprocess, tempfile, time

SOURCE = pathlib.Path(os.environ.get("BANDTALLY_SOURCE", pathlib.Path(__file__).resolve().parents[2]))
# What no text that is kept or logged may hold: control characters, and what turns the direction of text.
ODD_CHARACTERS = re.compile("[\x00-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]")
PACK = "(01)09506000134352(17)330331(10)T26(21)S1"


class Station:
    def __init__(self, bin, settings, policy="", instead=None, owner=None):
        """`settings` follow site and room in station.ini. `instead`: programs by name that take the place of the real
        ones, as their text. `owner`: the user that the station runs as, and that start() is left to the caller."""
        self.folder = tempfile.TemporaryDirectory(prefix="bandtally-station-")
        self.root = pathlib.Path(self.folder.name)
        self.data, self.bin = self.root / "data", pathlib.Path(bin)
        self.data.mkdir()
        (self.data / "station.ini").write_text(f"[site]\nletters = BC\n[room 1]\nname = Theatre 1\n{settings}")
        if policy:
            (self.data / "policy.ini").write_text(policy)
        if instead:
            self.put_in_place(instead)
        self.log = open(self.root / "log", "w+")
        self.owner = owner
        if owner is None:
            self.start()
        else:
            self.root.chmod(0o755)
            self.data.chmod(0o711)
            os.chown(self.data, owner, owner)

    def put_in_place(self, programs):
        real, self.bin = self.bin, self.root / "bin"
        self.bin.mkdir()
        for name in ("bandtallyd", "bandtally", "bandtally-print", "bandtally-board"):
            if name not in programs:
                shutil.copy(real / name, self.bin / name)
        for name, text in programs.items():
            (self.bin / name).write_text(text)
            (self.bin / name).chmod(0o755)

    def start(self):
        self.daemon = subprocess.Popen([self.bin / "bandtallyd", "--data", self.data], stderr=self.log, cwd=self.root,
                                       user=self.owner, group=self.owner, extra_groups=None if self.owner is None else [])
        self.until("the station starts", lambda: self.bt("status")[0] == 0)

    def stop(self):
        self.daemon.terminate()
        assert self.daemon.wait(20) == 0, "the station did not end in order: " + self.said()

    def leave(self):
        self.daemon.terminate()
        self.daemon.wait()
        self.folder.cleanup()

    def until(self, what, true, seconds=20):
        end = time.monotonic() + seconds
        while not true():
            assert time.monotonic() < end, f"not within {seconds} s: {what}: {self.said()[-1500:]}"
            time.sleep(0.05)

    def bt(self, *words):
        done = subprocess.run([self.bin / "bandtally", "--data", self.data, *words], capture_output=True)
        return done.returncode, (done.stdout + done.stderr).decode(errors="replace")

    def said(self):
        return (self.root / "log").read_text(errors="replace")

    def ask(self, **request):
        return self.ask_holding(request)[1]

    def ask_holding(self, request):
        s = socket.socket(socket.AF_UNIX)
        s.connect(str(self.data / "socket"))  # which waits for its turn, as with a time limit it would not
        s.settimeout(20)
        s.sendall(json.dumps(request).encode() + b"\n")
        return s, json.loads(s.makefile().readline())

    def codes(self):
        """Cards, badges and digits by what they mean."""
        found = {}
        for kind in ("digits", "badges", "cards"):
            for line in self.bt("label", kind, "--list")[1].splitlines():
                if line.count("\t") >= 2:
                    code, _, words = line.split("\t")[:3]
                    found[words] = code
        return found

    def scan_all(self, *what):
        codes = self.codes()
        for x in what:
            said = self.ask(do="scan", code=codes.get(x, x))
            assert said.get("verdict") in ("accepted", "question"), f"{x}: {said}"

    def set_up(self):
        self.bt("catalogue", "import", str(SOURCE / "config/catalogue.csv"))
        for name in ("SCRUB-1", "CIRC-2"):
            self.bt("staff", "add", "--registered", "practitioner", name)

    def open_case(self):
        """With a tourniquet counted in."""
        self.set_up()
        self.scan_all("NEW CASE", "SCRUB-1", "CIRC-2", PACK, "CIRC-2")

    def make_slip(self):
        """A case with a discrepancy, whose slip prints at once."""
        self.open_case()
        self.scan_all("FINAL COUNT", "NO")

    def children(self):
        """The programs of the station that run now, as (pid, name). Not from /proc's list of children, which may leave out
        some while others end."""
        listed = subprocess.run(["ps", "-o", "pid=,comm=", "--ppid", str(self.daemon.pid)], capture_output=True, text=True)
        return [(int(pid), name) for pid, name in (line.split(maxsplit=1) for line in listed.stdout.splitlines())]

    def child(self, name):
        """The pid of a program of the station, and the most memory in kB that it ever had; 0 where it does not run."""
        for pid, its_name in self.children():
            try:
                status = pathlib.Path(f"/proc/{pid}/status").read_text()
            except (FileNotFoundError, ProcessLookupError):  # it ended meanwhile
                continue
            peak = re.search(r"^VmHWM:\s*(\d+)", status, re.M)
            if its_name == name and peak:
                return pid, int(peak.group(1))
        return 0, 0

    def record(self):
        """The events, from a copy that the station hands out."""
        holding, answer = self.ask_holding({"do": "copy"})
        with holding:
            db = sqlite3.connect(f"file:{answer['file']}?immutable=1", uri=True)
            events = [json.loads(p) for (p,) in db.execute("SELECT payload FROM event ORDER BY seq")]
            db.close()
        return events

    def must_be_sound(self):
        """Nothing odd in record and log, the chain follows, and the station starts on it again."""
        for event in self.record():
            text = json.dumps(event, ensure_ascii=False)
            assert not ODD_CHARACTERS.search(text), "the record keeps an odd text: " + ascii(text)
            assert 0 <= event.get("ref", 0) <= 2**31 - 1, "the record keeps an odd number: " + text
        self.stop()
        odd = [line for line in self.said().split("\n") if line and (ODD_CHARACTERS.search(line) or ": " not in line)]
        assert not odd, "the log has an odd line: " + ascii(odd[0])
        code, said = self.bt("audit", "verify")
        assert code == 0, "the record is not sound: " + said
        self.start()
