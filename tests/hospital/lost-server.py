#!/usr/bin/python3
"""A server that is killed, put back, replaced, or comes back: nothing is lost, nothing doubled, and there are words for it."""
import os, pathlib, shutil, signal, sys, time

import a_server
from a_feeder import Feeder, incidents, same
from a_server import Certificates, Chain, Server

a_server.skip_without()
certificates = Certificates()
left = [certificates]


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


def server(**words):
    left.append(Server(certificates=certificates, **words))
    return left[-1]


def feeder(chain, servers, **words):
    left.append(Feeder(sys.argv[1], certificates, [s.port for s in servers], chain, **words))
    return left[-1]


def killed():
    """In mid-batch, three times."""
    s = server()
    s.make_store(1)
    f = feeder(Chain(1).fill(15000), [s])
    for _ in range(3):
        before = f.kept.get("seq", 0)
        f.until("it sends", lambda: f.kept.get("seq", 0) > before)
        if f.kept["seq"] == len(f.chain.events):
            f.add(20000)
        s.kill()
        f.until("the board says that it is gone", lambda: f.state() in ("unreachable", "down"))
        s.start()
    f.until_kept("all is kept after three kills")
    ok("each event is there once, and the chain holds", same(s, f.chain))
    ok("nothing is wrong in the end", f.state(), "")
    ok("what was told as kept only rises", f.told, sorted(f.told))
    return s, f


def put_back(s, f):
    """The folder of an hour ago."""
    old = Server(copy_of=s, certificates=certificates)
    left.append(old)
    old.end()
    f.add(3000)
    f.until_kept("more is kept")
    known = f.kept["seq"]
    s.kill()
    shutil.rmtree(s.data)
    shutil.move(old.data, s.data)
    with open(s.data / "postgresql.conf", "a") as conf:
        conf.write(f"unix_socket_directories = '{s.root}'\n")
    (s.data / "postmaster.pid").unlink(missing_ok=True)
    s.start()
    lost = s.sql("SELECT last_seq FROM bt.head")
    assert int(lost) < known
    f.until("the store hears what it has lost", lambda: incidents(s) == f"lost {known}")
    f.until("the board hears of it", lambda: "incident" in f.states)
    f.until("it is sent again", lambda: int(s.sql("SELECT last_seq FROM bt.head")) == len(f.chain.events))
    ok("each event is there once, and the chain holds", same(s, f.chain))
    f.leave()
    f.start()
    f.add(1)
    f.until_kept("after its own start it goes on")
    s.sql("SELECT bt.settle(id) FROM bt.incident")


def replaced():
    """A standby that lacks the last transactions is promoted; then the old primary comes back."""
    first = server()
    first.make_store(2)
    second = server(copy_of=first, standby="second")
    f = feeder(Chain(2).fill(5000), [first, second])
    f.until_kept("the first machine keeps all")
    second.kill()  # it falls behind
    f.add(3000)
    f.until_kept("the first machine goes on alone")
    known = f.kept["seq"]
    first.kill()
    second.start()
    second.sql("SELECT pg_promote(true, 20)", base="postgres")
    ok("the second lacks the last ones", int(second.sql("SELECT coalesce(max(last_seq), 0) FROM bt.head")) < known)
    f.until("they are sent again", lambda: int(second.sql("SELECT coalesce(max(last_seq), 0) FROM bt.head")) == known)
    ok("nothing is lost, nothing doubled", same(second, f.chain))
    ok("the second machine has noted it", incidents(second), f"lost {known}")
    f.until("the later timeline is known", lambda: f.kept.get("timeline") == 2 or f.add(1))
    second.end()
    first.start()  # and takes writes, as if nothing had been
    f.add(10)
    f.until("the old machine that came back is not used", lambda: f.state() == "old-server")
    time.sleep(1)
    ok("and gets nothing", int(first.sql("SELECT last_seq FROM bt.head")), known)
    second.start()
    f.until_kept("the true one is found again")
    ok("nothing is lost, nothing doubled there", same(second, f.chain))


try:
    put_back(*killed())
    replaced()
finally:
    for one in reversed(left):
        one.leave()
