#!/usr/bin/python3
"""A station that gets a number and a store after cases left its record for an archive: what stayed is sent, and the store knows
what left."""
import pathlib, re, sqlite3, subprocess, sys, tempfile

import a_server
from a_server import Certificates, Server
from stations import HospitalStation, PACK, Station

a_server.skip_without()
certificates = Certificates()
server, region, later = (Server(certificates=certificates) for _ in range(3))
one = other = None


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


class OldStation(HospitalStation):
    """Its cases are four years old, and what may leave has left before it hears of a store."""

    def __init__(self, *words, archive_first=True):
        self.archive_first = archive_first
        super().__init__(*words)

    def start(self):
        if not (self.data / "record.db").exists():
            self.live_without_store()
        super().start()

    def live_without_store(self):
        settings = (self.data / "station.ini").read_text()
        (self.data / "station.ini").write_text(re.sub(r"\[hospital\].*", "", settings, flags=re.S))
        (self.data / "policy.ini").write_text("[record]\nkeep_years = 3\n")
        made = self.bin.parent / "tests" / "make-record"
        subprocess.run([made, self.data, "30", "0", "1500"], check=True)
        if self.archive_first:
            Station.start(self)
            self.stop()
            self.archive()
        (self.data / "station.ini").write_text(settings)

    def archive(self):
        with tempfile.TemporaryDirectory(prefix="bandtally-shelf-") as shelf:
            code, said = self.bt("audit", "archive", "--no-slips", shelf)
            assert code == 0, said
            self.cases_left = int(re.search(r"may leave: (\d+) do", said)[1])


try:
    server.make_store(7)
    server.sql("SELECT bt.add_reader('auditor')")
    one = OldStation(sys.argv[1], certificates, [server], 7)
    ok("cases had left before there was a store", one.cases_left > 10)
    one.until("all that stayed is kept", lambda: one.kept(server) == one.last())
    ok("to the byte, and nothing is broken", one.same(server))
    numbers = {row[0] for row in one.rows()}
    stretches = [tuple(map(int, row.split("|"))) for row in
                 server.sql("SELECT first_seq, last_seq FROM bt.gone ORDER BY 1", "auditor").splitlines()]
    ok("what left is known as such, event by event",
       {n for first, last in stretches for n in range(first, last + 1)}, set(range(1, max(numbers) + 1)) - numbers)
    ok("with the event that says so, and its seal behind it", server.sql(
        "SELECT string_agg(kind, ',' ORDER BY seq) FROM bt.event WHERE seq >= (SELECT seq FROM bt.event WHERE kind = 'archived')"
    ).startswith("archived,sealed"))
    ok("nobody takes it for something that was changed", server.sql("SELECT count(*) FROM bt.incident"), "0")
    one.until("its lists come, and nothing is wrong with the store", lambda: not any("hospital" in f for f in one.faults()))
    one.set_up()
    one.whole_case()
    one.until("it goes on with it", lambda: one.kept(server) == one.last() and one.same(server))

    # An auditor's copy lacks what left, says so as the station's own record does, and holds.
    certificates.sign("auditor")
    copies = tempfile.TemporaryDirectory(prefix="bandtally-copies-")
    copy = pathlib.Path(copies.name) / "BC-07.db"

    def collect(server=server):
        name = certificates.root / "auditor"
        return one.bt("audit", "collect", copies.name, "--from", f"localhost:{server.port}", "--database", "bt", "--user", "auditor",
                      "--certificate", f"{name}.crt", "--key", f"{name}.key", "--authority", str(certificates.root / "ca.crt"))

    def tables(file):
        db = sqlite3.connect(f"file:{file}?mode=ro&immutable=1", uri=True)
        found = [db.execute(f"SELECT * FROM {t} ORDER BY 1").fetchall() for t in ("event", "gone", "left_case")]
        return found + [sorted(x[0] for x in db.execute("SELECT sql FROM sqlite_master WHERE type = 'trigger'"))]

    def own_tables():
        holding, answer = one.ask_holding({"do": "copy"})
        with holding:
            return tables(answer["file"])

    def verified(whose=one):
        return whose.bt("audit", "verify", "--file", str(copy))

    code, said = collect()
    ok(f"it is copied for an auditor: {said.strip()}", code, 0)
    ok("event by event, with what left and which cases, as its own record", tables(copy), own_tables())
    ok("and holds", verified()[0], 0)
    with tempfile.TemporaryDirectory() as shelf:
        own = pathlib.Path(shelf) / "own.db"
        assert one.bt("backup", str(own))[0] == 0
        for asked in (("report", "--year", "2026", "--csv"), ("export", "--json"), ("trace", "--line", "GREEN-M", "--json")):
            here, there = (one.bt("audit", *asked, "--file", str(f)) for f in (own, copy))
            said = [[line for line in text.splitlines() if not re.match(r"summary: |report: |trace: |.*\bmade |.*\"time\"", line)]
                    for _, text in (here, there)]
            ok(f"{asked[0]} says the same of both", (here[0], said[0]), (0, said[1]))

    # What leaves a station later is in the store, and in the copy, whose record says that it left.
    later.make_store(8)
    later.sql("SELECT bt.add_reader('auditor')")
    other = OldStation(sys.argv[1], certificates, [later], 8, archive_first=False)
    other.until("all of it is kept", lambda: other.kept(later) == other.last())
    before = {row[0] for row in other.rows()}
    other.stop()
    other.archive()
    other.start()
    other.until("and that some of it left", lambda: other.kept(later) == other.last())
    copy = copy.with_name("BC-08.db")
    ok("a second one is copied", collect(later)[0], 0)
    ok("with what left it since", before <= {row[0] for row in tables(copy)[0]} and before - {row[0] for row in other.rows()} != set())
    ok("and holds too", verified(other)[0], 0)
    other.leave()
    other = None

    certificates.sign("hospital-bc")
    server.sql("SELECT bt.add_reader('hospital-bc', 'BC')")
    region.make_store()
    region.sql("CREATE ROLE \"hospital-bc\" LOGIN IN ROLE bt_station; INSERT INTO bt.login VALUES ('hospital-bc', 'BC', NULL)")
    ok("a region is told what left, and gets what is behind it", (server.relay(sys.argv[1], region, "hospital-bc")[0], one.same(region)), (0, True))
    table = "SELECT first_seq, last_seq, hash FROM bt.gone ORDER BY 1"
    ok("as the hospital knows it", region.sql(table), server.sql(table))
    one.whole_case(PACK.replace("S1", "S2"))
    one.until("it goes on", lambda: one.kept(server) == one.last() and one.same(server))
    ok("and so does the region", (server.relay(sys.argv[1], region, "hospital-bc")[0], one.same(region)), (0, True))

    # Somebody says that something left which is there, or leaves out more than left.
    first, last = stretches[0]
    for harm in (f"UPDATE bt.gone SET last_seq = last_seq - 1 WHERE first_seq = {first}",
                 f"UPDATE bt.gone SET hash = sha256('') WHERE first_seq = {first}",
                 f"DELETE FROM bt.gone WHERE first_seq = {first}",
                 f"DELETE FROM bt.event WHERE seq = {last + 1}"):
        server.sql("ALTER TABLE bt.gone DISABLE TRIGGER USER; ALTER TABLE bt.event DISABLE TRIGGER USER;"
                   " CREATE TABLE bt.gone_was AS TABLE bt.gone; CREATE TABLE bt.event_was AS TABLE bt.event; " + harm)
        ok(f"found: {harm}", server.sql("SELECT count(*) > 0 FROM bt.broken()"), "t")
        server.sql("DELETE FROM bt.gone; INSERT INTO bt.gone TABLE bt.gone_was; DELETE FROM bt.event;"
                   " INSERT INTO bt.event TABLE bt.event_was; DROP TABLE bt.gone_was, bt.event_was")
    ok("and otherwise nothing", server.sql("SELECT count(*) FROM bt.broken()"), "0")
finally:
    for station in (one, other):
        if station:
            station.leave()
    server.leave()
    region.leave()
    later.leave()
    certificates.leave()
