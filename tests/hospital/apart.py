#!/usr/bin/python3
"""Station and store on machines of their own, as the kernel sees it: a network between two namespaces, which is cut where neither
end can see it, and which loses its store's address. Needs root; nothing of it touches the network of this machine."""
import contextlib, ctypes, os, pathlib, subprocess, sys, time

import a_server
from a_feeder import Feeder, same
from a_server import Certificates, Chain, Server

a_server.skip_without()
STORE, STATION, MIDDLE = (f"bt-{x}-{os.getpid()}" for x in ("store", "station", "middle"))
STORE_AT, STATION_AT = "10.77.0.1", "10.77.0.2"
libc = ctypes.CDLL(None, use_errno=True)
left = []


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


def ip(*words, of=None):
    done = subprocess.run(["ip", *(["-n", of] if of else []), *words], capture_output=True, text=True)
    if done.returncode:
        print(f"skipped: no network of its own can be made here: ip {' '.join(words)}: {done.stderr.strip()}")
        sys.exit(77)


@contextlib.contextmanager
def inside(name):
    """What is started meanwhile is there."""
    def go(path):
        with open(path) as f:
            assert libc.setns(f.fileno(), 0) == 0, os.strerror(ctypes.get_errno())
    here = os.open("/proc/thread-self/ns/net", os.O_RDONLY)
    go(f"/run/netns/{name}")
    try:
        yield
    finally:
        assert libc.setns(here, 0) == 0
        os.close(here)


def make_network():
    """The station, a switch, the store. A port of the switch that goes down is seen by neither of them."""
    for name in (STORE, STATION, MIDDLE):
        ip("netns", "add", name)
        ip("link", "set", "lo", "up", of=name)
    ip("link", "add", "switch", "type", "bridge", of=MIDDLE)
    ip("link", "set", "switch", "up", of=MIDDLE)
    for name, address, port in ((STORE, STORE_AT, "to-store"), (STATION, STATION_AT, "to-station")):
        ip("link", "add", "net", "netns", name, "type", "veth", "peer", "name", port, "netns", MIDDLE)
        ip("addr", "add", f"{address}/24", "dev", "net", of=name)
        ip("link", "set", "net", "up", of=name)
        ip("link", "set", port, "master", "switch", "up", of=MIDDLE)


def cut():
    ip("link", "set", "switch", "down", of=MIDDLE)


def mend():
    ip("link", "set", "switch", "up", of=MIDDLE)


def feeder(chain):
    with inside(STATION):
        left.append(Feeder(sys.argv[1], certificates, [f"{STORE_AT}:{server.port}"], chain))
    return left[-1]


def silence():
    """Nothing comes and nobody is told, in the middle of much: as when a switch loses its power."""
    f = feeder(Chain(1).fill(20000))
    f.until("it sends", lambda: f.told)
    cut()
    f.add(500)
    f.until("that no answer comes is said", lambda: f.state() in ("slow", "unreachable"), 60)
    kept = f.kept["seq"]
    time.sleep(2)
    ok("nothing is taken for kept meanwhile", f.kept["seq"], kept)
    ok("and nothing that the store does not have", int(server.sql("SELECT max(last_seq) FROM bt.head")) >= kept)
    mend()
    f.until_kept("it goes on when the network carries again", 120)
    ok("once and whole", same(server, f.chain))
    f.until("and nothing is wrong", lambda: f.state() == "", 60)
    f.leave()


def long_silence():
    """So long that the station gives the connection up: the store holds nothing for it that would keep it away."""
    f = feeder(Chain(2).fill(100))
    f.until_kept("it is kept")
    cut()
    f.add(50)
    f.until("the store is given up", lambda: f.state() == "unreachable", 120)
    mend()
    f.until_kept("the next connection takes it all", 120)
    ok("once and whole", same(server, f.chain))
    f.leave()


def no_address():
    f = feeder(Chain(3).fill(100))
    f.until_kept("it is kept")
    ip("addr", "del", f"{STORE_AT}/24", "dev", "net", of=STORE)
    f.add(50)
    f.until("that nobody is there is said", lambda: f.state() in ("slow", "unreachable"), 60)
    ip("addr", "add", f"{STORE_AT}/24", "dev", "net", of=STORE)
    f.until_kept("all is kept when it is back", 120)
    ok("once and whole", same(server, f.chain))
    f.leave()


def leave():
    for one in reversed(left):
        one.leave()
    for name in (STORE, STATION, MIDDLE):
        if pathlib.Path(f"/run/netns/{name}").exists():
            subprocess.run(["ip", "netns", "del", name])


if os.getuid():
    print("skipped: a network of its own needs root")
    sys.exit(77)
try:
    make_network()
    certificates = Certificates(f"DNS:localhost,IP:{STORE_AT}")
    left.append(certificates)
    with inside(STORE):
        server = Server(certificates=certificates, address=STORE_AT, station=STATION_AT)
    left.append(server)
    server.make_store(1, 2, 3)
    silence()
    long_silence()
    no_address()
finally:
    leave()
