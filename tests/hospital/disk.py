#!/usr/bin/python3
"""No space left at the hospital's server, for its tables and for its log: refused, said, and all kept once there is room."""
import os, shutil, signal, subprocess, sys

import a_server
from a_feeder import Feeder, same
from a_server import Certificates, Chain, Server

a_server.skip_without()
if os.getuid():
    print("skipped: a small disk is mounted for this, which root may")
    sys.exit(77)
certificates = Certificates()
left, mounted = [certificates], []


def ok(what, got, wanted=True):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what, flush=True)


def mount(place, megabytes, *more):
    done = subprocess.run(["mount", "-t", "tmpfs", "-o", ",".join((f"size={megabytes}m", *more)), "none", place],
                          capture_output=True, text=True)
    if done.returncode:
        print("skipped: nothing can be mounted here: " + done.stderr)
        sys.exit(77)
    if place not in mounted:
        mounted.append(place)
    os.chown(place, a_server.as_server()["user"], a_server.as_server()["group"])
    os.chmod(place, 0o700)


def room(place, megabytes):
    subprocess.run(["mount", "-o", f"remount,size={megabytes}m", place], check=True)


def tables():
    s = Server(certificates=certificates)
    left.append(s)
    small = s.root / "small"
    small.mkdir()
    mount(small, 13)
    s.sql(f"CREATE TABLESPACE small LOCATION '{small}'", base="postgres")
    s.sql("ALTER DATABASE bt SET TABLESPACE small", base="postgres")
    s.make_store(1)
    f = Feeder(sys.argv[1], certificates, [s.port], Chain(1).fill(40000))
    left.append(f)
    f.until("that there is no space left is said", lambda: f.state() == "full", 60)
    kept = f.kept["seq"]
    ok("what was told as kept is there", int(s.sql("SELECT last_seq FROM bt.head")), kept)
    ok("and not all", 0 < kept < 40000)
    room(small, 200)
    f.until_kept("with room all is kept")
    ok("once and whole", same(s, f.chain))


def log():
    """The server ends itself then."""
    s = Server(certificates=certificates, settings="wal_keep_size = 1GB\nmax_wal_size = 4GB\n")
    left.append(s)
    s.make_store(1)
    s.end()
    small = s.root / "wal"
    small.mkdir()
    mount(small, 34)
    for one in (s.data / "pg_wal").iterdir():
        shutil.move(one, small / one.name)
    subprocess.run(["chown", "-R", f"--reference={s.data}", small], check=True)
    (s.data / "pg_wal").rmdir()
    (s.data / "pg_wal").symlink_to(small)
    s.start()
    f = Feeder(sys.argv[1], certificates, [s.port], Chain(1).fill(140000))
    left.append(f)
    f.until("that the server is gone is said", lambda: s.process.poll() is not None or f.state() in ("unreachable", "down", "full"), 120)
    f.until("the board hears of it", lambda: f.state() in ("unreachable", "down", "full"))
    kept = f.kept.get("seq", 0)
    room(small, 600)
    s.end(signal.SIGQUIT)  # it may be recovering, and a gentler end would wait for that
    s.start()
    ok("what was told as kept is there", int(s.sql("SELECT coalesce(max(last_seq), 0) FROM bt.head")) >= kept)
    f.until_kept("with room all is kept", 120)
    ok("once and whole", same(s, f.chain))


try:
    tables()
    log()
finally:
    for one in reversed(left):
        if hasattr(one, "end"):
            one.end()
    for place in mounted:
        subprocess.run(["umount", place])
    for one in reversed(left):
        one.leave()
