#!/usr/bin/python3
"""A station that gets a store after cases left its record for an archive: what stayed is sent, and the store knows what left."""
import pathlib, re, subprocess, sys, tempfile

import a_server
from a_server import Certificates, Server
from stations import HospitalStation, PACK, Station

a_server.skip_without()
certificates = Certificates()
server, region = Server(certificates=certificates), Server(certificates=certificates)
one = None


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


class OldStation(HospitalStation):
    """Its cases are four years old, and what may leave has left before it hears of a store."""

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
    server.make_store(0)
    server.sql("SELECT bt.add_reader('auditor')")
    one = OldStation(sys.argv[1], certificates, [server], 0)
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
    if one:
        one.leave()
    server.leave()
    region.leave()
    certificates.leave()
