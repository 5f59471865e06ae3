"""A station that forwards to a hospital's store, for tests."""
import pathlib, sqlite3, sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "station"))
from a_station import PACK, Station  # noqa: E402


class HospitalStation(Station):
    def __init__(self, bin, certificates, servers, number, more="", rooms=1, policy=""):
        name = f"station-bc-{number:02d}"
        if not (certificates.root / f"{name}.crt").exists():
            certificates.sign(name)
        hosts = " ".join(f"localhost:{s.port}" for s in servers)
        also = "".join(f"[room {r}]\nname = Theatre {r}\n" for r in range(2, rooms + 1))
        self.number, self.known = number, {}
        super().__init__(bin, f"{also}[station]\nnumber = {number}\n[board]\nstart = no\n[hospital]\nstart = yes\nhosts = {hosts}\n"
                         f"certificate = {certificates.root}/{name}.crt\nkey = {certificates.root}/{name}.key\n"
                         f"authority = {certificates.root}/ca.crt\n{more}", policy)

    def codes_of(self, room):
        """What is scanned in a room, by what it means; asked for once."""
        if room not in self.known:
            self.bt("staff", "add", "--registered", "surgeon", "SURGEON-1")
            self.known[room] = {}
            for words in (("digits", "--room", str(room)), ("cards", "--room", str(room)), ("badges",)):
                for line in self.bt("label", *words, "--list")[1].splitlines():
                    if line.count("\t") >= 2:
                        code, _, meaning = line.split("\t")[:3]
                        self.known[room][meaning] = code
        return self.known[room]

    def whole_case(self, pack=PACK, room=1):
        """From the label to the sign-out."""
        codes = self.codes_of(room)
        for x in ("NEW CASE", "SCRUB-1", "CIRC-2", pack, "CIRC-2", "right index finger", "right index finger", "OFF",
                  "FINAL COUNT", "INTACT", "CIRC-2", "right index finger", "SURGEON-1"):
            said = self.ask(do="scan", code=codes.get(x, x), room=room)
            assert said.get("verdict") in ("accepted", "question"), f"{x}: {said}"

    def try_pack(self, pack, room=1):
        """What is said of it in a case that is then cancelled."""
        codes = self.codes_of(room)
        self.ask(do="scan", code=codes["NEW CASE"], room=room)
        said = self.ask(do="scan", code=pack, room=room)
        for card in ("CANCEL", "YES"):
            self.ask(do="scan", code=codes[card], room=room)
        return said

    def rows(self):
        """(seq, payload, hash) of the record."""
        holding, answer = self.ask_holding({"do": "copy"})
        with holding:
            db = sqlite3.connect(f"file:{answer['file']}?immutable=1", uri=True)
            rows = db.execute("SELECT seq, payload, lower(hex(hash)) FROM event ORDER BY seq").fetchall()
            db.close()
        return rows

    def last(self):
        return self.ask(do="status")["status"]["events"]

    def kept(self, server):
        said = server.sql("SELECT max(h.last_seq) FROM bt.head h JOIN bt.station s ON s.id = h.station"
                          f" WHERE s.number = {self.number}")
        return int(said or 0)

    def same(self, server):
        """Whether the store has each event of the record, once and to the byte, and nothing else."""
        there = server.sql("SELECT e.seq || ' ' || e.payload || ' ' || encode(e.hash, 'hex') FROM bt.event e"
                           f" JOIN bt.station s ON s.id = e.station WHERE s.number = {self.number} ORDER BY e.seq")
        here = "\n".join(f"{seq} {payload} {hash}" for seq, payload, hash in self.rows())
        return there == here and server.sql("SELECT count(*) FROM bt.broken()") == "0"

    def faults(self):
        return self.ask(do="status")["status"].get("faults", [])
