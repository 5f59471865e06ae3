#!/usr/bin/python3
"""A station that is put back, two with one certificate, certificates that are over, a clock that is wrong."""
import sys, time

import a_server
from a_feeder import Feeder, incidents, same
from a_server import Certificates, Chain, Server

a_server.skip_without()
certificates = Certificates()
left = [certificates]


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


def feeder(chain, **words):
    left.append(Feeder(sys.argv[1], certificates, [server.port], chain, **words))
    return left[-1]


def restored():
    """Its record ends before what the store has; then it has written other events; then it knows, and begins anew."""
    f = feeder(Chain(1).fill(5000))
    f.until_kept("a record is kept")
    f.leave()
    whole = f.chain
    f.chain, f.kept, f.states = whole.copy(4000), {}, []
    f.start()
    f.until("a record that ends too early is said to be behind", lambda: f.state() == "behind" and f.forks == [5000])
    f.leave()
    f.chain.seed, f.forks = "another day", []
    f.chain.fill(1500)
    f.start()
    f.until("a fork is found and said", lambda: f.state() == "fork" and f.forks == [5000])
    ok("nothing of it was kept", server.sql("SELECT count(*), max(incarnation) FROM bt.event"), "5000|1")
    f.incarnation = 2
    f.introduce()
    f.until_kept("a further incarnation goes on behind what both have")
    ok("from there", server.sql("SELECT base_seq, last_seq FROM bt.head WHERE incarnation = 2"), "4000|5500")
    ok("both are whole", server.sql("SELECT count(*) FROM bt.broken()"), "0")
    ok("the centre has both incidents", incidents(server), "behind 4000, fork 5000")
    f.add(1)
    f.until_kept("it goes on")
    f.until("until it is settled the board says so", lambda: f.state() == "incident")
    f.leave()


def two():
    """With one certificate: the second is refused."""
    one, other = feeder(Chain(2).fill(100)), Chain(2, "other")
    one.until_kept("the first station is kept")
    second = feeder(other.fill(200))
    second.until("the second is refused", lambda: second.state() == "fork")
    one.add(100)
    one.until_kept("the first goes on")
    ok("only the first is there", same(server, one.chain))
    for f in (one, second):
        f.leave()


def changed():
    chain = Chain(3).fill(50)
    chain.events[29] = chain.events[29].replace("alive", "alivf")
    f = feeder(chain)
    f.until("a changed event is refused and said", lambda: f.state() == "changed")
    ok("nothing from there on", server.sql("SELECT max(seq) FROM bt.event WHERE station = 3"), "")
    f.leave()


def certificate():
    """Withdrawn while connected: whoever withdraws it ends the connection as well."""
    f = feeder(Chain(4).fill(10))
    f.until_kept("with its certificate it is let in")
    certificates.revoke("station-bc-04")
    server.run("pg_ctl", "-D", server.data, "reload")
    time.sleep(0.3)
    server.sql("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE usename = 'station-bc-04'")
    f.add(10)
    f.until("a withdrawn certificate is refused and said", lambda: f.state() == "certificate")
    ok("nothing came with it", server.sql("SELECT max(seq) FROM bt.event WHERE station = 4"), "10")
    f.leave()
    certificates.sign("station-bc-05")
    certificates.openssl("x509", "-req", "-in", "station-bc-05.csr", "-CA", "ca.crt", "-CAkey", "ca.key", "-out",
                         "station-bc-05.crt", "-days", "-1")
    f = feeder(Chain(5).fill(10))
    f.until("one whose time is over is refused and said", lambda: f.state() == "certificate")
    f.leave()
    certificates.sign("station-bc-77")
    f = feeder(Chain(5).fill(10), name="station-bc-77")
    f.until("one that names no role is refused and said", lambda: f.state() in ("refused", "certificate"))
    f.leave()


def clock():
    """The server's answer to a station whose clock is ahead."""
    is_now = server.sql("SELECT pg_get_functiondef('bt.hello'::regproc)")
    server.sql(is_now.replace("p_wall_ms - (", "p_wall_ms + 3600000 - ("))
    f = feeder(Chain(6).fill(10))
    f.until("a clock that is an hour ahead is said", lambda: f.state() == "clock")
    f.until_kept("and events are kept all the same")
    f.leave()


server = Server(certificates=certificates)
left.append(server)
try:
    server.make_store(1, 2, 3, 4, 5, 6)
    restored()
    two()
    changed()
    certificate()
    clock()
finally:
    for one in reversed(left):
        one.leave()
