#!/usr/bin/python3
"""N stations with realistic lists through the real forwarder into one store.

  scale.py FOLDER-OF-PROGRAMS [--stations 10,100] [--events 1000]      a station's day is about 1,000 events: 2 rooms, 8 cases each"""
import argparse, os, pathlib, resource, sys, time

import a_server
from a_feeder import Feeder
from a_list import Day
from a_server import Certificates, Server

words = argparse.ArgumentParser()
words.add_argument("bin")
words.add_argument("--stations", default="10,100")
words.add_argument("--events", type=int, default=1000)
words = words.parse_args()
a_server.skip_without()
most = resource.getrlimit(resource.RLIMIT_NOFILE)[1]
resource.setrlimit(resource.RLIMIT_NOFILE, (most, most))


def memory(pid):
    """Private and shared kB that a process holds of its own."""
    text = pathlib.Path(f"/proc/{pid}/smaps_rollup").read_text()
    return int(text.split("Pss:")[1].split()[0])


def play(n):
    certificates = Certificates()
    server = Server(certificates=certificates,
                    settings=f"shared_buffers = 512MB\nmax_wal_size = 4GB\nmax_connections = {n + 50}\n")
    feeders = []
    try:
        server.make_store()
        numbers = [(letters, i) for letters in ("BC", "BD", "BE", "BF", "BG", "BH", "BI", "BJ", "BK", "BL", "BN") for i in range(100)][:n]
        days, sites = {}, []
        for letters, number in numbers:
            server.sql(f"SELECT bt.add_station('{letters}', {number})") if n <= 20 else sites.append((letters, number))
        if sites:
            server.sql("".join(f"SELECT bt.add_station('{a}', {b});" for a, b in sites))
        for letters, number in numbers:
            if number not in days:
                days[number] = Day(number, words.events)
        began = time.monotonic()
        for letters, number in numbers:
            feeders.append(Feeder(words.bin, certificates, [server.port], days[number], letters=letters.lower()))
        started = time.monotonic() - began
        while any(f.kept.get("seq") != words.events for f in feeders):
            assert time.monotonic() - began < 900, [f.states for f in feeders if f.kept.get("seq") != words.events][:5]
            time.sleep(0.01)
        seconds = time.monotonic() - began
        total = n * words.events
        lag = []
        for f in feeders[:: max(1, n // 20)]:
            f.chain = f.chain.part(len(f.chain.events))
            at = time.monotonic()
            f.add(1)
            f.until_kept_quietly()
            lag.append(time.monotonic() - at)
        size = int(server.sql("SELECT sum(pg_total_relation_size(c.oid)) FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace"
                              " WHERE n.nspname = 'bt' AND relkind = 'r'"))
        kept = int(server.sql("SELECT count(*) FROM bt.event"))
        pss = sum(memory(f.process.pid) for f in feeders) / n
        begun = time.monotonic()
        server.sql("SELECT count(*) FROM bt.months")
        print(f"{n} stations: {total} events in {seconds:.1f} s ({started:.1f} s to start all), {total / seconds:.0f} a second; one more event"
              f" kept after {sorted(lag)[len(lag) // 2] * 1000:.1f} ms (longest {max(lag) * 1000:.0f}); {size / kept:.0f} bytes an event in the"
              f" store, {size / kept * words.events * 250 / 1e6:.0f} MB a station and year of 250 days; {pss / 1024:.1f} MB a forwarder;"
              f" report {time.monotonic() - begun:.2f} s; load {os.getloadavg()[0]:.1f}", flush=True)
        assert kept == total + len(lag) and server.sql("SELECT count(*) FROM bt.broken()") == "0"
    finally:
        for f in feeders:
            f.leave()
        server.leave()
        certificates.leave()


for n in words.stations.split(","):
    play(int(n))
