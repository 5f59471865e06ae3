#!/usr/bin/python3
"""Cut and half-open connections, a host that does not answer, a slow server, a standby that is gone: nothing is taken for
kept that is not, and there are words for it."""
import os, pathlib, signal, sys, time

import a_server
from a_feeder import Deaf, Feeder, Wire, same
from a_server import Certificates, Chain, Server

a_server.skip_without()
certificates = Certificates()
server = Server(certificates=certificates)
left = [certificates, server]


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


def feeder(chain, *ports):
    left.append(Feeder(sys.argv[1], certificates, ports, chain))
    return left[-1]


def backend(f):
    """The process of the server that serves it."""
    name = f"station-bc-{f.chain.station:02d}"
    return [int(p) for p in server.sql(f"SELECT pid FROM pg_stat_activity WHERE usename = '{name}' ORDER BY backend_start").split()]


def cut():
    wire = Wire(server.port)
    f = feeder(Chain(1).fill(8000), wire.port)
    for _ in range(4):
        f.until("it sends", lambda: f.told)
        wire.cut()
        f.told.clear()
        f.add(500)
    f.until_kept("all is kept after four cuts")
    ok("once and whole", same(server, f.chain))
    f.leave()


def half_open():
    """Both ends believe in it, and nothing goes through."""
    wire = Wire(server.port)
    f = feeder(Chain(2).fill(100), wire.port)
    f.until_kept("it is kept")
    wire.held.set()
    f.add(5)
    f.until("that no answer comes is said", lambda: f.state() in ("slow", "unreachable"), 40)
    ok("nothing was taken for kept", f.kept["seq"], 100)
    wire.held.clear()
    f.until_kept("it goes on when the wire carries again", 90)
    ok("once and whole", same(server, f.chain))
    f.until("and nothing is wrong", lambda: f.state() == "")
    f.leave()


def deaf():
    """A host that does not answer at all stands first."""
    one = Deaf()
    f = feeder(Chain(3).fill(10), one.port, server.port)
    f.until_kept("the next host is reached", 20)
    f.leave()
    f = feeder(Chain(4).fill(10), one.port)
    f.until("where there is no other it is said", lambda: f.state() == "unreachable", 20)
    f.leave()


def slow():
    f = feeder(Chain(5).fill(10), server.port)
    f.until_kept("it is kept")
    (pid,) = backend(f)
    os.kill(pid, signal.SIGSTOP)
    try:
        f.add(5)
        f.until("a server that does not answer is said to be slow", lambda: f.state() == "slow", 40)
        ok("nothing was taken for kept", f.kept["seq"], 10)
    finally:
        os.kill(pid, signal.SIGCONT)
    f.until_kept("when it answers all is kept")
    f.until("and nothing is wrong", lambda: f.state() == "")
    f.leave()


def standby():
    """It is waited for, and is gone. Somebody ends the wait: kept on one machine is not kept."""
    f = feeder(Chain(6).fill(10), server.port)
    f.until_kept("it is kept")
    server.sql("ALTER SYSTEM SET synchronous_standby_names = 'nobody'", base="postgres")
    server.sql("SELECT pg_reload_conf()")
    time.sleep(0.5)
    f.add(5)
    f.until("that the standby is waited for is said", lambda: f.state() == "standby", 40)
    ok("nothing was taken for kept", f.kept["seq"], 10)
    server.sql(f"SELECT pg_cancel_backend({backend(f)[0]})")
    time.sleep(3)
    ok("nor when the wait was ended", f.kept["seq"], 10)
    server.sql("ALTER SYSTEM RESET synchronous_standby_names", base="postgres")
    server.sql("SELECT pg_reload_conf()")
    f.until_kept("once the rule is lifted all is kept", 90)
    ok("once and whole", same(server, f.chain))
    f.leave()


try:
    server.make_store(1, 2, 3, 4, 5, 6)
    cut()
    half_open()
    deaf()
    slow()
    standby()
finally:
    for one in reversed(left):
        one.leave()
