#!/usr/bin/python3
"""Several stations audited together: copies of their records from the hospital's store, and what is said of them is what each
station's own record says."""
import hashlib, json, os, pathlib, sqlite3, subprocess, sys, tempfile

import a_server
from a_feeder import Feeder
from a_server import Certificates, Chain, Server

a_server.skip_without()
bin = pathlib.Path(sys.argv[1])
certificates = Certificates()
server = Server(certificates=certificates)
folder = tempfile.TemporaryDirectory(prefix="bandtally-central-")
root = pathlib.Path(folder.name)
os.environ.update(XDG_CACHE_HOME=str(root / "cache"), XDG_DATA_HOME=str(root / "data"), BANDTALLY_DATA=str(root / "none"))
left = [certificates, server, folder]


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


def bt(*words):
    done = subprocess.run([bin / "bandtally", "--data", root / "none", *words], capture_output=True, text=True)
    return done.returncode, done.stdout, done.stderr


def collect(into="copies"):
    name = certificates.root / "auditor"
    return bt("audit", "collect", root / into, "--from", f"localhost:{server.port}", "--database", "bt", "--user", "auditor",
              "--certificate", f"{name}.crt", "--key", f"{name}.key", "--authority", certificates.root / "ca.crt")


def copy(number):
    return root / "copies" / f"BC-{number:02d}.db"


def rows(file):
    db = sqlite3.connect(f"file:{file}?immutable=1", uri=True)
    found = db.execute("SELECT seq, case_no, kind, key, payload, lower(hex(hash)) FROM event ORDER BY seq").fetchall()
    db.close()
    return found


def half_year(number):
    """Half a year that a station of that number recorded: its record's file, and the chain."""
    at = root / f"station-{number}"
    at.mkdir()
    subprocess.run([bin.parent / "tests" / "half-year", at, str(7 + number)], check=True, capture_output=True)
    db = sqlite3.connect(at / "record.db")
    chain, before = Chain(number), bytes(32)
    db.executescript("DROP TRIGGER event_no_update")
    for seq, text in db.execute("SELECT seq, payload FROM event ORDER BY seq").fetchall():
        event = json.loads(text)
        if number:
            event["station"] = number
        text = json.dumps(event, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
        before = hashlib.sha256(before + text.encode()).digest()
        db.execute("UPDATE event SET payload = ?, hash = ? WHERE seq = ?", (text, before, seq))
        chain.events.append(text)
        chain.hashes.append(before.hex())
    db.execute("CREATE TRIGGER event_no_update BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'the record is append-only'); END")
    db.commit()
    db.close()
    return at / "record.db", chain


def feeder(chain, **words):
    left.append(Feeder(bin, certificates, [server.port], chain, **words))
    return left[-1]


def report(*words):
    code, said, wrong = bt("audit", "report", "--from", "2026-11-01", "--to", "2027-06-30", "--json", *words)
    assert code == 0, wrong
    made = json.loads(said)
    del made["time"]
    return made


def sections(document, without=()):
    return {s["name"]: {k: v for k, v in s.items()} for s in document["sections"] if s["name"] not in without}


def figure(document, section, name):
    return next(f for f in sections(document)[section]["figures"] if f["name"] == name)


def table(document, section):
    return [row["cells"] for row in sections(document)[section]["tables"][0]["rows"]]


try:
    certificates.sign("auditor")
    server.make_store(0, 1, 2)
    server.sql("SELECT bt.add_reader('auditor')")
    own = {}
    for number in (0, 1):
        own[number], chain = half_year(number)
        feeder(chain).until_kept(f"the store keeps half a year of station {number}")
    third = feeder(Chain(2).fill(3000))
    third.until_kept("and the marks of a third")
    code, said, wrong = collect()
    ok("all of them are copied", (code, [line.split()[0] for line in said.splitlines()]), (0, ["BC-00", "BC-01", "BC-02"]))
    for number in (0, 1):
        ok(f"station {number}: every event, its hash, and what it is found by", rows(copy(number)) == rows(own[number]))
        for words in (("report", "--year", "2027", "--json"), ("report", "--quarter", "2027-1", "--csv"), ("verify", "--indexes"),
                      ("sample", "5", "--seed", "1", "--json"), ("trace", "--line", "GREEN-M", "--json"), ("export", "--json")):
            here, there = (bt("audit", *words, "--file", f) for f in (own[number], copy(number)))
            cleared = [(c, [x for x in o.splitlines() if '"time"' not in x and "made " not in x]) for c, o, _ in (here, there)]
            ok(f"station {number}: {' '.join(words[:3])} says the same of both", cleared[0] == cleared[1] and (words[0] == "verify" or here[0] == 0))

    one = root / "one"
    one.mkdir()
    (one / "BC-01.db").write_bytes(copy(1).read_bytes())
    alone, both = report("--file", own[1]), report("--central", one)
    own_rooms = ("rooms", "signs", "stations")
    ok("of one station alone each figure, table and chart is that of its record", sections(both, own_rooms), sections(alone, own_rooms))
    ok("its rooms are named with it", [[f"{r[0]} (BC-01)", *r[1:]] for r in table(alone, "rooms")], table(both, "rooms"))

    each = [report("--file", own[number]) for number in (0, 1)]
    both = report("--central", root / "copies")
    for section, name in (("cases", "cases"), ("cases", "reconciled"), ("cases", "unresolved"), ("discrepancies", "discrepancy")):
        ok(f"together: {name} is the sum", figure(both, section, name)["x"], sum(figure(d, section, name)["x"] for d in each))
    ok("each room of each", sorted(r[0] for r in table(both, "rooms")),
       sorted(f"{r[0]} (BC-{n:02d})" for n in (0, 1) for r in table(each[n], "rooms")))
    ok("and how far each goes", [(r[0], int(r[2]), r[4]) for r in table(both, "stations")],
       [(f"BC-{n:02d}", len(rows(copy(n))), rows(copy(n))[-1][5][:16]) for n in (0, 1, 2)])
    code, _, wrong = bt("audit", "report", "--year", "2027", "--json", "--central", root / "copies", "--room", "1")
    ok("one room of several stations is not asked for so", (code, "room" in wrong), (2, True))

    third.add(200)
    third.until_kept("a station goes on")
    code, said, wrong = collect()
    ok("only what is new is fetched", [line.split(", ")[1] for line in said.splitlines()], ["0 of them new", "0 of them new", "200 of them new"])
    third.chain = third.chain.copy(2000)
    third.chain.seed, third.incarnation = "another day", 2
    third.chain.fill(1500)
    third.introduce()
    third.until_kept("a station was put back to an older state, and begins anew")
    code, said, wrong = collect()
    ok("its copy is what its record is now", [(r[4], r[5]) for r in rows(copy(2))] == list(zip(third.chain.events, third.chain.hashes)))
    ok("what was copied before is kept beside it", len(rows(f"{copy(2)}.before-1")), 3200)
    copy(0).write_bytes(b"not a record")
    ok("a copy that is damaged is made anew", (collect()[0], rows(copy(0)) == rows(own[0])), (0, True))

    third.add(300)
    third.until_kept("more of it comes")
    server.sql("SET session_replication_role = replica; UPDATE bt.event SET payload = replace(payload, 'another day', 'some other day') WHERE"
               " seq = 3600 AND station = (SELECT id FROM bt.station WHERE number = 2)")
    code, said, wrong = collect()
    ok("an event that was changed in the store is not taken for the station's", (code, "event 3600 of the store does not follow" in wrong), (1, True))
    ok("what stands before it stays", len(rows(copy(2))) <= 3599 and len(rows(copy(2))) >= 3500)
    code, said, wrong = bt("audit", "report", "--year", "2027", "--json", "--central", root / "nothing")
    ok("a folder that is not there", (code, "audit collect" in wrong), (1, True))
    server.end()
    code, said, wrong = collect()
    ok("a store that does not answer", (code, "cannot be copied" in wrong), (1, True))
finally:
    for x in reversed(left):
        x.cleanup() if x is folder else x.leave()
