"""bandtally-forward alone, fed as the station feeds it: a chain of any length, and what it says. Also a wire that can be cut."""
import json, queue, socket, subprocess, threading, time

from a_server import Chain


class Feeder:
    def __init__(self, bin, certificates, ports, chain, incarnation=1, kept=None, lists=0, name=None, letters="bc"):
        name = name or f"station-{letters}-{chain.station:02d}"
        if not (certificates.root / f"{name}.crt").exists():
            certificates.sign(name)
        self.chain, self.incarnation, self.kept, self.lists = chain, incarnation, kept or {}, lists
        self.states, self.forks, self.entries, self.told = [], [], [], []  # told: each event that was said to be kept
        self.made_of, self.made, self.when_kept = None, [], lambda: None
        self.lock, self.after, self.to, self.contact = threading.Lock(), 0, 0, 0
        self.words = [f"{bin}/bandtally-forward", *(w for p in ports for w in ("--host", p if isinstance(p, str) else f"localhost:{p}")), "--database", "bt",
                      "--user", name, "--certificate", certificates.root / f"{name}.crt", "--key",
                      certificates.root / f"{name}.key", "--authority", certificates.root / "ca.crt"]
        self.start()

    def start(self):
        self.process = subprocess.Popen(self.words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        self.said, self.outbox = [], queue.SimpleQueue()
        threading.Thread(target=self.carry, args=(self.process, self.outbox), daemon=True).start()
        threading.Thread(target=self.hear, daemon=True).start()
        threading.Thread(target=lambda p: self.said.extend(p.stderr), args=(self.process,), daemon=True).start()
        self.introduce()

    def introduce(self):
        self.tell(station={"number": self.chain.station, "incarnation": self.incarnation, "seq": len(self.chain.events),
                           "rooms": "Theatre 1", "lists": self.lists, "kept": self.kept.get("seq", 0),
                           "hash": self.kept.get("hash", ""), "server": self.kept.get("server", ""),
                           "timeline": self.kept.get("timeline", 0)})

    @staticmethod
    def carry(process, outbox):
        """Whoever tells it something never waits for it, as the station does not: it may be telling us something."""
        try:
            while True:
                process.stdin.write(outbox.get())
                process.stdin.flush()
        except (BrokenPipeError, ValueError):
            pass

    def tell(self, **line):
        self.outbox.put(json.dumps({"v": 1, **line}).encode() + b"\n")

    def feed(self):
        """What is wanted and there."""
        self.lines()
        with self.lock:
            to = min(self.to, len(self.chain.events))
            for at in range(self.after, to, 500):
                self.outbox.put(b"".join(self.made[at:min(at + 500, to)]))
            self.after = max(self.after, to)

    def lines(self):
        """Each event as the station writes it; made before it is wanted, so that it takes no time then."""
        if self.made_of is not self.chain:
            self.made_of, self.made = self.chain, []
        for i in range(len(self.made), len(self.chain.events)):
            self.made.append(b'{"event":%s,"hash":"%s","seq":%d}\n' % (self.chain.events[i].encode(),
                                                                       self.chain.hashes[i].encode(), i + 1))

    def hear(self):
        for line in self.process.stdout:
            said = json.loads(line)
            if "want" in said:
                self.after, self.to = said["want"]["after"], said["want"]["to"]
                threading.Thread(target=self.feed, daemon=True).start()
            elif "hashes" in said:
                self.tell(hashes=[[n, self.chain.hashes[n - 1]] for n in said["hashes"] if n <= len(self.chain.hashes)])
            elif "kept" in said:
                self.kept = said["kept"]
                self.told.append(self.kept["seq"])
                if self.kept["seq"] == len(self.chain.events):
                    self.when_kept()
            elif "state" in said:
                self.states.append(said["state"]["code"])
            elif "fork" in said:
                self.forks.append(said["fork"]["seq"])
            elif "list" in said:
                self.entries.append((time.monotonic(), said["list"]))
                self.tell(took=said["list"]["version"])
            elif "lists" in said:
                self.contact = time.monotonic()

    def add(self, n):
        self.chain.fill(n)
        self.feed()

    def state(self):
        return self.states[-1] if self.states else ""

    def until(self, what, true, seconds=30):
        end = time.monotonic() + seconds
        while not true():
            said = b"".join(self.said).decode(errors="replace")[-1500:]
            assert time.monotonic() < end, f"not within {seconds} s: {what}: {self.kept} {self.states} {said}"
            time.sleep(0.02)
        print("ok", what, flush=True)

    def until_kept_quietly(self, seconds=60):
        end = time.monotonic() + seconds
        while self.kept.get("seq") != len(self.chain.events):
            assert time.monotonic() < end and self.process.poll() is None, f"not kept: {self.kept} {self.states} {self.said}"
            time.sleep(0.002)

    def until_kept(self, what, seconds=60):
        self.until(what, lambda: self.kept.get("seq") == len(self.chain.events), seconds)

    def leave(self):
        self.process.kill()
        self.process.wait()


def same(server, chain, incarnation=None):
    """Whether the store has each event of the chain once, to the byte, in whichever incarnation it was sent last."""
    where = f"AND e.incarnation = {incarnation}" if incarnation else ""
    there = server.sql("SELECT e.seq || ' ' || e.payload || ' ' || encode(e.hash, 'hex') FROM bt.event e JOIN bt.station s"
                       f" ON s.id = e.station WHERE s.number = {chain.station} {where} ORDER BY e.seq")
    here = "\n".join(f"{i + 1} {t} {h}" for i, (t, h) in enumerate(zip(chain.events, chain.hashes)))
    return there == here and server.sql("SELECT count(*) FROM bt.broken()") == "0"


def incidents(server):
    return server.sql("SELECT string_agg(what || ' ' || seq, ', ' ORDER BY id) FROM bt.incident")


class Wire:
    """A port in front of a server that can be held: then nothing goes through, and nobody is told."""

    def __init__(self, port):
        self.to, self.held, self.ends = port, threading.Event(), []
        self.listening = socket.socket()
        self.listening.bind(("127.0.0.1", 0))
        self.listening.listen(20)
        self.port = self.listening.getsockname()[1]
        threading.Thread(target=self.accept, daemon=True).start()

    def accept(self):
        while True:
            try:
                here, _ = self.listening.accept()
            except OSError:
                return
            there = socket.create_connection(("127.0.0.1", self.to))
            self.ends += [here, there]
            for a, b in ((here, there), (there, here)):
                threading.Thread(target=self.carry, args=(a, b), daemon=True).start()

    def carry(self, a, b):
        try:
            while data := a.recv(65536):
                while self.held.is_set():
                    time.sleep(0.02)
                b.sendall(data)
        except OSError:
            pass
        for s in (a, b):
            try:
                s.shutdown(socket.SHUT_RDWR)
            except OSError:
                pass

    def cut(self):
        for s in self.ends:
            try:
                s.shutdown(socket.SHUT_RDWR)
            except OSError:
                pass
        self.ends = []


class Deaf:
    """A port that answers nobody: its queue of connections is full."""

    def __init__(self):
        self.listening = socket.socket()
        self.listening.bind(("127.0.0.1", 0))
        self.listening.listen(0)
        self.port = self.listening.getsockname()[1]
        self.queue = []
        for _ in range(4):
            s = socket.socket()
            s.setblocking(False)
            s.connect_ex(("127.0.0.1", self.port))
            self.queue.append(s)
