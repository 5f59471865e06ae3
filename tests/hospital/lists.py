#!/usr/bin/python3
"""What comes back from the hospital: recalls, catalogue, staff, and items that were in two cases."""
import sys, time

import a_server
from a_server import Certificates, Server
from stations import HospitalStation, PACK

a_server.skip_without()
certificates = Certificates()
server = Server(certificates=certificates)
stations = []


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


def stores(sql):
    return server.sql(sql, "stores")


def said_last(station, room=1):
    return [e for e in station.record() if e["kind"] in ("quarantined", "released")]


def recall(one, two):
    began = time.monotonic()
    version = stores("SELECT bt.recall('BC', 'GREEN-M', 'T26', 'valve')")
    for s in (one, two):
        s.until("it is in quarantine", lambda s=s: said_last(s))
    ok("a recall is there within ten seconds", time.monotonic() - began < 10)
    event = said_last(one)[-1]
    ok("with line, lot, reason, origin and version", (event["thing"]["line"], event["thing"]["lot"], event["text"]),
       ("GREEN-M", "T26", f"valve (hospital list of stores, no. {version})"))
    said = one.try_pack(PACK)
    ok("a pack of that lot is refused for that reason", (said["verdict"], "valve" in said["said"]), ("refused", True))
    one.until("the store hears that it was taken over", lambda: stores("SELECT count(*) FROM bt.recall_waiting") == "0")
    two.stop()
    stores("SELECT bt.recall('BC', 'GREEN-L', '', 'colour')")
    one.until("the station that is there takes over the next", lambda: len(said_last(one)) == 2)
    one.until("the store says which rooms have not",
              lambda: stores("SELECT string_agg(station || ' ' || rooms, ';') FROM bt.recall_waiting") == "2 Theatre 1, Theatre 2")
    stores("SELECT bt.release('BC', 'GREEN-M', 'T26', 'looked at')")
    two.start()
    two.until("it follows when it is back", lambda: [e["kind"] for e in said_last(two)] == ["quarantined", "quarantined", "released"])
    one.until("the other too", lambda: len(said_last(one)) == 3)


def lines_and_staff(one, two):
    line = [l for l in one.bt("catalogue", "export")[1].splitlines() if l.strip()]
    head, green = next(l for l in line if "key" in l), next(l for l in line if l.startswith("GREEN-S"))
    csv = head + "\n" + green.replace("GREEN-S", "GREEN-X").replace("09506000134345", "09506000134444") + "\n"
    stores(f"SELECT bt.publish('BC', 'line', json_build_object('csv', $${csv}$$)::text)")
    stores("SELECT bt.publish('BC', 'staff', '{\"number\":7,\"name\":\"SCRUB-7\",\"kind\":\"practitioner\",\"registered\":true}')")
    for s in (one, two):
        s.until("a line of the catalogue is there", lambda s=s: "GREEN-X" in s.bt("catalogue", "export")[1])
        s.until("a person is there", lambda s=s: "SCRUB-7" in s.bt("staff", "list")[1])
    stores("SELECT bt.publish('BC', 'withdraw', '{\"number\":7}')")
    for s in (one, two):
        s.until("and withdrawn", lambda s=s: [e for e in s.record() if e["kind"] == "staff-withdrawn"])
    before = len(one.record())
    stores("SELECT bt.publish('BC', 'withdraw', '{\"number\":7}')")
    top = server.sql("SELECT max(version) FROM bt.list")
    one.until("what is so already is taken over", lambda: server.sql("SELECT min(version) FROM bt.took") == top)
    ok("and is no event", len(one.record()), before)


def woken(one):
    """Who is not concerned asks nothing. The poll behind it comes every eight seconds."""
    def asked():
        return server.sql("SELECT query_start FROM pg_stat_activity WHERE usename = 'station-bc-01' AND query ~ 'bt.(lists|took)'")

    def news(site):
        before = asked()
        one.until("it has just asked", lambda: asked() not in ("", before))
        time.sleep(2)
        before = asked()
        server.sql(f"SELECT bt.publish_as('{site}', 'withdraw', '{{\"number\":7}}', 'stores')")
        time.sleep(1)
        return asked() not in ("", before)
    ok("news of another site wake no station of this one", news("BD"), False)
    one.until("news of its own do", lambda: news("BC"))


def twice(one, two):
    """While both were apart."""
    server.end()
    pack = PACK.replace("T26", "T27")
    for s in (one, two):
        s.whole_case(pack)
        s.until("the board says that the store is gone", lambda s=s: s.faults())
    ok("the count went on", [s.last() > 80 for s in (one, two)], [True, True])
    server.start()
    for s in (one, two):
        s.until("both are told", lambda s=s: "was counted in two cases" in s.said(), 60)
        s.until("all is kept", lambda s=s: s.kept(server) == s.last(), 60)
        ok("once and whole", s.same(server))
    ok("the store has noted it", server.sql("SELECT count(*) FROM bt.incident WHERE what = 'twice'"), "1")


def used(one, two):
    """What was used at one station is not counted in at the other, and that is known after a start."""
    pack = PACK.replace("T26", "T29").replace("S1", "S40")
    assert pack != PACK
    one.whole_case(pack)
    one.until("it is kept", lambda: one.kept(server) == one.last())
    two.until("the other hears of it", lambda: server.sql("SELECT (SELECT max(version) FROM bt.list WHERE kind = 'used') <= (SELECT min(version) FROM bt.took)") == "t")
    two.stop()
    two.start()
    said = two.try_pack(pack)
    ok("it is not counted in there", (said["verdict"], "of station 01" in said["said"]), ("refused", True))
    ok("where it was used it is known by the record", "of station" in one.try_pack(pack)["said"], False)


def old_lists():
    """A station that never heard of the hospital, and whose policy wants stores to be asked then."""
    server.end()
    s = HospitalStation(sys.argv[1], certificates, [server], 3, policy="[stores]\nask_when_lists_old = yes\n")
    stations.append(s)
    s.set_up()
    said = s.try_pack(PACK)
    ok("a pack is counted in, and stores are to be asked about it", (said["verdict"], "ask stores" in said["said"]), ("accepted", True))
    ok("which is owed", [e["what"] for e in s.record() if e["kind"] == "owed"], ["stores-asked-of-recalls"])
    server.start()
    server.sql("SELECT bt.add_station('BC', 3)")
    s.until("the lists come", lambda: s.faults() == [], 60)
    said = s.try_pack(PACK.replace("T26", "T28"))
    ok("then nobody is to be asked", "ask stores" in said["said"], False)


try:
    server.make_store(1, 2)
    server.sql("SELECT bt.add_keeper('stores', 'BC')")
    for number in (1, 2):
        s = HospitalStation(sys.argv[1], certificates, [server], number, rooms=2)
        stations.append(s)
        ok("before the first contact the board says that there are no lists", any("never received" in f for f in s.faults()) or s.kept(server) > 0)
        s.set_up()
        s.until("then it says nothing", lambda s=s: s.faults() == [])
    recall(*stations)
    lines_and_staff(*stations)
    used(*stations)
    woken(stations[0])
    twice(*stations)
    old_lists()
finally:
    for s in stations:
        s.leave()
    server.leave()
    certificates.leave()
