#!/usr/bin/python3
"""One hop further: a hospital's store forwards to its region's by the same append function."""
import sys

import a_server
from a_feeder import Feeder, incidents, same
from a_server import Certificates, Chain, Server

a_server.skip_without()
certificates = Certificates()
hospital, region = Server(certificates=certificates), Server(certificates=certificates)
left = [certificates, hospital, region]


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


def feeder(chain, **words):
    left.append(Feeder(sys.argv[1], certificates, [hospital.port], chain, **words))
    return left[-1]


def relay():
    return hospital.relay(sys.argv[1], region, "hospital-bc")


try:
    certificates.sign("hospital-bc")
    hospital.make_store(1, 2, 3)
    hospital.sql("SELECT bt.add_reader('hospital-bc', 'BC')")
    region.make_store()
    region.sql("CREATE ROLE \"hospital-bc\" LOGIN IN ROLE bt_station; INSERT INTO bt.login VALUES ('hospital-bc', 'BC', NULL)")
    all = [feeder(Chain(n).fill(3000 + n)) for n in (1, 2, 3)]
    for f in all:
        f.until_kept("the hospital keeps it")
    ok("all is sent", relay()[0], 0)
    ok("the region has each, once and whole", [same(region, f.chain) for f in all], [True] * 3)
    one = all[0]
    one.chain = one.chain.copy(2000)
    one.chain.seed, one.incarnation = "another day", 2
    one.chain.fill(1500)
    one.introduce()
    one.until_kept("a station that was put back begins anew")
    all[1].add(500)
    all[1].until_kept("another goes on")
    ok("all is sent again", relay()[0], 0)
    ok("both incarnations are there", region.sql("SELECT incarnation, base_seq, last_seq FROM bt.head WHERE station ="
       " (SELECT id FROM bt.station WHERE number = 1) ORDER BY 1"), "1|0|3001\n2|2000|3500")
    ok("and whole", region.sql("SELECT count(*) FROM bt.broken()"), "0")
    region.sql("SET session_replication_role = replica; UPDATE bt.head SET last_hash = '\\x00' WHERE last_seq = 3502")
    all[1].add(1)
    all[2].add(10)
    for f in all:
        f.until_kept("the hospital goes on")
    code, said = relay()
    ok("a conflict is said", (code, "station 2" in said), (1, True))
    ok("and stops none of the others", region.sql("SELECT h.last_seq FROM bt.head h JOIN bt.station s ON s.id = h.station"
       " WHERE s.number = 3"), str(len(all[2].chain.events)))
    ok("the region has noted it", "fork" in incidents(region))
finally:
    for x in reversed(left):
        x.leave()
