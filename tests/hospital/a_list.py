"""A list of ordinary cases as a station records them: events of real kinds and lengths, in any number."""
import hashlib, json

from a_server import Chain

# The ordinary case, as bandtallyd writes it: kind, then what it holds beside case, room and times.
JWS = "eyJhbGciOiJFZERTQSIsImtpZCI6ImZFUVlJWWl1RmI1S1U5TGYzTmNYekNoM3VReDJnc0FOdWM4VE5OYTExcHMifQ." * 4
THING = {"expiry": 20330331, "identity_kind": "pack", "line": "GREEN-M", "name": "finger tourniquet, green, M", "role": "tourniquet",
         "single_use": 1}
POINT = "Tourniquets, forceps and all other items are accounted for, or not applicable."
ORDINARY = [("case-opened", {}), ("joined", {"person": 1, "text": "SCRUB-1", "what": "field", "answer": -1, "first": True}),
            ("joined", {"person": 2, "text": "CIRC-2", "what": "circulating", "answer": -2, "first": True}),
            ("item-in", {"item": 1, "n": 1, "thing": THING, "first": True}),
            ("item-in", {"item": 2, "n": 1, "thing": {"line": "FORCEPS", "name": "artery forceps, curved", "role": "forceps"},
                         "first": True}),
            ("count-agreed", {"n": 2, "other": 2, "person": 1, "what": "initial", "answer": -2, "first": True}),
            ("digit-on", {"digit": 2, "first": True}), ("item-on", {"digit": 2, "item": 1}), ("forceps-on", {"digit": 2, "item": 2}),
            *[("alive", {})] * 20, ("reminded", {"digit": 2, "n": 20}), ("acknowledged", {"digit": 2, "person": 2}),
            ("asked", {"digit": 2, "what": "off", "first": True}), ("item-off", {"digit": 2, "item": 1, "answer": 40, "first": True}),
            ("asked", {}), ("digit-off", {"digit": 2}), ("count-started", {"what": "final", "answer": 50, "first": True}),
            ("item-shown", {"item": 1, "n": 1, "other": "intact", "what": "shown", "answer": 41, "first": True}),
            ("item-shown", {"item": 2, "n": 1, "what": "mark", "first": True}),
            ("count-agreed", {"n": 2, "other": 2, "person": 1, "what": "final", "answer": -2, "first": True}),
            ("digit-seen-bare", {"digit": 2, "person": 2, "first": True}),
            ("joined", {"person": 3, "text": "SURGEON-1", "what": "surgeon", "answer": -3, "first": True}),
            ("signed-out", {"person": 3}), *[("sign-out-point", {"n": n, "text": POINT, "what": "yes"}) for n in range(1, 6)],
            ("item-used", {"item": 1, "n": 1, "thing": THING}), ("case-ended", {"what": "reconciled", "answer": -3}),
            ("slip-queued", {"n": 1, "other": 1, "proof": 884523, "text": "en", "what": "reconciliation"}),
            ("sealed", {"ref": 74, "seal": {"jws": JWS}}), ("slip-state", {"n": 1, "other": 1, "what": "written"}),
            ("slip-state", {"n": 1, "other": 1, "what": "seen"})]


class Day(Chain):
    """Cases one after the other, each with its own pack, in two rooms."""

    def __init__(self, station, events, start_ms=1764547200000):
        super().__init__(station)
        self.wall, self.start = start_ms, start_ms
        self.fill(events)

    def fill(self, n):
        for _ in range(n):
            at = len(self.events)
            case, place = at // len(ORDINARY) + 1, at % len(ORDINARY)
            kind, more = ORDINARY[place]
            self.wall += 40000
            if "thing" in more and more["thing"].get("single_use"):
                more = {**more, "thing": {**more["thing"], "identity": f"09506000134352:{self.station}-{case}", "lot": f"L{case // 40}"}}
            of_case = {} if kind == "alive" else {"case": case, "room": 1 + case % 2}
            self.put({"boot": 1, "boot_ms": self.wall - self.start, "kind": kind, "seq": at + 1, "utc": 60, "v": 2, "wall_ms": self.wall,
                      **of_case, **more})
        return self

    def put(self, event):
        if self.station:
            event["station"] = self.station
        text = json.dumps(event, sort_keys=True, separators=(",", ":"))
        before = bytes.fromhex(self.hashes[-1]) if self.hashes else bytes(32)
        self.events.append(text)
        self.hashes.append(hashlib.sha256(before + text.encode()).hexdigest())

    def part(self, n):
        """The first n of it."""
        other = Chain(self.station)
        other.events, other.hashes = self.events[:n], self.hashes[:n]
        return other

    def copy_rows(self):
        rows = []
        for i, (text, hash) in enumerate(zip(self.events, self.hashes)):
            e = json.loads(text)
            payload = text.replace("\\", "\\\\")
            rows.append(f"{self.station}\t1\t{i + 1}\t{e.get('case', 0)}\t{e['kind']}\t{e.get('room', 0)}\t{e['wall_ms']}\t{payload}\t\\\\x{hash}\n")
        return rows
