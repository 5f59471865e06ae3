#!/usr/bin/python3
"""A real station, its forwarder, and a real PostgreSQL over TLS: what is counted is there, once and whole."""
import sys, time

import a_server
from a_server import Certificates, Server
from stations import HospitalStation

a_server.skip_without()
certificates = Certificates()
server = Server(certificates=certificates)
stations = []


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what)


def station(number, **words):
    stations.append(HospitalStation(sys.argv[1], certificates, [server], number, **words))
    return stations[-1]


try:
    server.make_store(1, 2)
    server.sql("SELECT bt.add_reader('auditor')")
    one = station(1)
    one.set_up()
    one.until("all is kept", lambda: one.kept(server) == one.last())
    ok("what the record has is there, to the byte", one.same(server))
    one.whole_case()
    # Its slip is printed meanwhile, and further events come of that.
    one.until("the case as well", lambda: one.kept(server) == one.last() and one.same(server))
    one.until("nothing is wrong", lambda: one.faults() == [])
    ok("the case stands in one row", server.sql("SELECT room, single, outcome, items, lots, digits, stretches, at_least,"
       " discrepancies, slips, found_after FROM bt.cases", "auditor"), "1|f|reconciled|1|{T26}|1|1|f|0|1|0")
    ok("and is what its events say", server.sql("SELECT count(*) FROM bt.summary_differs()"), "0")
    there = server.sql("SELECT count(*), max(seq) FROM bt.event WHERE kind <> 'alive'")
    steps = [line.split("\t") for line in one.bt("label", "practice", "--list")[1].splitlines()]
    said = [one.ask(do="scan", code=code, room=1).get("said", "") for code, _, which in (x[:3] for x in steps) if which.startswith("1.")]
    ok("a case is practised", (len(said) > 10, "ended reconciled" in said[-1]), (True, True))
    one.until("it goes on with what it has", lambda: one.kept(server) == one.last())
    ok("of which the store hears nothing", server.sql("SELECT count(*), max(seq) FROM bt.event WHERE kind <> 'alive'"), there)
    server.sql("UPDATE bt.case_summary SET longest_s = 999")
    ok("a row that says otherwise is shown", server.sql("SELECT case_no FROM bt.summary_differs()", "auditor"), "1")
finally:
    for s in stations:
        s.leave()
    server.leave()
    certificates.leave()
