#!/usr/bin/python3
"""Figures of the way to a hospital's store, each beside its reference in the same run.

  bench.py FOLDER-OF-PROGRAMS [--json] [--only copy,one,recall,report,collect,backlog,growth] [--rounds 5] [--events 40000] [--cases 16000]"""
import argparse, json, os, signal, statistics, subprocess, sys, tempfile, threading, time

import a_server
from a_feeder import Feeder
from a_server import Certificates, Server
from a_list import Day
from stations import HospitalStation

words = argparse.ArgumentParser()
words.add_argument("bin")
words.add_argument("--json", action="store_true")
words.add_argument("--only", default="copy,one,recall,report,collect")
words.add_argument("--rounds", type=int, default=5)
words.add_argument("--events", type=int, default=40000)
words.add_argument("--cases", type=int, default=16000, help="of a record that is all a backlog")
words = words.parse_args()
a_server.skip_without()
certificates = Certificates()
SETTINGS = "shared_buffers = 512MB\nmax_wal_size = 4GB\ncheckpoint_timeout = 15min\nmax_connections = 200\n"
server = Server(certificates=certificates, settings=SETTINGS)
found, left = [], [certificates, server]


def tell(name, value, unit, goal, met, reference=None, ratio=None):
    found.append({"name": name, "value": round(value, 4), "unit": unit, "reference": reference, "ratio": ratio, "goal": goal,
                  "met": met})
    if not words.json:
        print(f"{name}: {value:.4g} {unit}" + (f", {ratio:.2f} of {reference:.4g}" if ratio else "") +
              f"; wanted {goal}: {'met' if met else 'NOT MET'}; load {os.getloadavg()[0]:.1f}", flush=True)


def percentile(all, p):
    return sorted(all)[min(len(all) - 1, int(len(all) * p))]


def processor(pid):
    """Seconds of a processor that a process has used."""
    fields = open(f"/proc/{pid}/stat").read().rsplit(")", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def copy_of(day):
    """Seconds, and those of the server's processor, that COPY takes of the same rows into the same table without its checks, 2,000 a transaction."""
    server.sql("DROP TABLE IF EXISTS bt.copied; CREATE TABLE bt.copied (LIKE bt.event INCLUDING ALL)")
    rows = day.copy_rows()
    parts = ["".join(rows[i:i + 2000]) for i in range(0, len(rows), 2000)]
    psql = subprocess.Popen(["psql", "-XqAt", *server.where("admin")], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    psql.stdin.write("SELECT pg_backend_pid();\n")
    psql.stdin.flush()
    pid = int(psql.stdout.readline())
    began, used = time.monotonic(), processor(pid)
    for part in parts:
        psql.stdin.write("COPY bt.copied FROM STDIN;\n" + part + "\\.\n")
    psql.stdin.write("SELECT 1;\n")
    psql.stdin.flush()
    psql.stdout.readline()
    seconds, used = time.monotonic() - began, processor(pid) - used
    psql.stdin.close()
    psql.wait()
    return seconds, used


def forwarded(day):
    """Seconds, and those of the server's processor, from the first event's way down the pipe to the last one's acknowledgement."""
    f = Feeder(words.bin, certificates, [server.port], day.part(1))
    f.until_kept_quietly()
    f.chain = day
    f.lines()
    pid = int(server.sql(f"SELECT pid FROM pg_stat_activity WHERE usename = 'station-bc-{day.station:02d}'"))
    began, used = time.monotonic(), processor(pid)
    f.feed()
    f.until_kept_quietly(300)
    seconds, used = time.monotonic() - began, processor(pid) - used
    f.leave()
    return seconds, used


def copy():
    of_copy(10, 1764547200000, "of last year")
    of_copy(20, int(time.time() * 1000) - words.events * 40000, "of this month, of which each used item is told to the other stations")


def of_copy(first, start_ms, when):
    pairs = []
    for i in range(first, first + words.rounds):
        day = Day(i, words.events, start_ms)
        server.sql(f"SELECT bt.add_station('BC', {i}); CHECKPOINT")
        pairs.append((copy_of(day), forwarded(day), copy_of(day)))
    for i, what in ((0, f"events forwarded, {when}"), (1, f"events forwarded by a second of the server's processor, {when}")):
        copied = statistics.median(2 * words.events / (a[i] + c[i]) for a, _, c in pairs)
        ratio = statistics.median((a[i] + c[i]) / 2 / b[i] for a, b, c in pairs)
        tell(what, statistics.median(words.events / b[i] for _, b, _ in pairs), "a second", "at least 0.5 of COPY", ratio >= 0.5,
             copied, ratio)


def one():
    server.sql("SELECT bt.add_station('BC', 40)")
    f = Feeder(words.bin, certificates, [server.port], Day(40, 400))
    f.until_kept_quietly()
    took = []
    for _ in range(300):
        event = threading.Event()
        f.when_kept = event.set
        began = time.monotonic()
        f.add(1)
        event.wait(10)
        took.append((time.monotonic() - began) * 1000)
        time.sleep(0.01)
    f.leave()
    median = statistics.median(took)
    tell("one event alone acknowledged, median", median, "ms", "at most 5 ms", median <= 5)
    tell("one event alone acknowledged, p99", percentile(took, 0.99), "ms", "none", True)


def recall():
    """From the commit at the store to each of 40 forwarders' word to its station."""
    feeders = []
    for i in range(40):
        server.sql(f"SELECT bt.add_station('BC', {50 + i})")
        feeders.append(Feeder(words.bin, certificates, [server.port], Day(50 + i, 30)))
        left.append(feeders[-1])
    for f in feeders:
        f.until_kept_quietly(120)
        while not f.contact:
            time.sleep(0.01)
    server.sql("SELECT bt.add_keeper('stores')")
    took, last = [], []
    for i in range(30):
        began = time.monotonic()
        server.sql(f"SELECT bt.recall('BC', 'GREEN-M', 'L{i}', 'x')", "stores")
        while any(len(f.entries) <= i for f in feeders) and time.monotonic() - began < 20:
            time.sleep(0.002)
        all = [f.entries[i][0] - began for f in feeders]
        took += all
        last.append(max(all))
        time.sleep(0.2)
    for f in feeders:
        f.leave()
    tell("recall to 40 stations, p99", percentile(took, 0.99), "s", "at most 1 s", percentile(took, 0.99) <= 1)
    tell("recall to 40 stations, the last of them, median", statistics.median(last), "s", "none", True)


def collect():
    """Copies for an auditor of what the store has by then, beside the same rows read by psql."""
    certificates.sign("collector")
    server.sql("SELECT bt.add_reader('collector')")
    events = int(server.sql("SELECT count(*) FROM bt.event"))
    if not events:
        day = Day(90, words.events)
        server.sql("SELECT bt.add_station('BC', 90)")
        forwarded(day)
        events = words.events
    began = time.monotonic()
    subprocess.run(["psql", "-XqAt", *server.where("collector"), "-c", "COPY (SELECT station, seq, payload, hash FROM bt.event) TO STDOUT"],
                   stdout=subprocess.DEVNULL, check=True)
    read = time.monotonic() - began
    with tempfile.TemporaryDirectory(prefix="bandtally-copies-") as folder:
        key = certificates.root / "collector"
        began = time.monotonic()
        done = subprocess.run([words.bin + "/bandtally", "audit", "collect", folder, "--from", f"localhost:{server.port}", "--database", "bt",
                               "--user", "collector", "--certificate", f"{key}.crt", "--key", f"{key}.key", "--authority",
                               certificates.root / "ca.crt"], capture_output=True, text=True)
        seconds = time.monotonic() - began
    assert done.returncode == 0, done.stderr
    tell(f"audit collect, {events} events of {len(done.stdout.splitlines())} stations", events / seconds, "a second", "none", True,
         events / read, read / seconds)


class OldStation(HospitalStation):
    """Years of work before it hears of a store: all of it is a backlog."""

    def start(self):
        if not (self.data / "record.db").exists():
            subprocess.run([self.bin.parent / "tests" / "make-record", self.data, str(words.cases), "0", "300"], check=True)
        super().start()


def backlog():
    """Scans while it goes out, beside scans while the store is away; the server gives way to them, as on a machine of its own."""
    server.sql("SELECT bt.add_station('BC', 7)")
    server.end()
    s = OldStation(words.bin, certificates, [server], 7)
    left.append(s)
    card = s.codes_of(1)["STEP DONE"]  # nothing asks for it: it is refused, which is an event

    def scans(n):
        took = []
        for _ in range(n):
            began = time.monotonic()
            s.ask(do="scan", code=card, room=1)
            took.append((time.monotonic() - began) * 1000)
        return statistics.median(took)

    scans(300)
    ratios, alone, sent = [], [], 0
    for _ in range(words.rounds):
        alone.append(scans(1000))
        server.start()
        server.nice()
        before = s.kept(server)
        while s.kept(server) < before + 2000:
            time.sleep(0.05)
        beside = scans(1000)
        now = s.kept(server)
        assert now < s.last() - 2000, "the backlog came to its end too early"
        sent += now - before
        server.end(signal.SIGQUIT)
        ratios.append(beside / alone[-1])
    print(f"{s.last()} events in the record, {sent} of them sent beside scans", flush=True)
    tell("a scan to its answer beside a backlog", statistics.median(alone) * statistics.median(ratios), "ms", "at most 1.05",
         statistics.median(ratios) <= 1.05, statistics.median(alone), statistics.median(ratios))
    server.start()


def growth():
    """What a batch and one event cost, and what an event takes of the disk, as the store grows."""
    rows = [row.split("\t", 3)[3] for row in Day(1, 50000).copy_rows()]
    for millions in (0, 1, 5, 20):
        server.sql("INSERT INTO bt.station (site, number) SELECT 'KL', n FROM generate_series(0, 39) n ON CONFLICT DO NOTHING")
        have = int(server.sql("SELECT count(*) FROM bt.event WHERE station IN (SELECT id FROM bt.station WHERE site = 'KL')"))
        ids = server.sql("SELECT id FROM bt.station WHERE site = 'KL' ORDER BY number").split()
        while have < millions * 1000000:  # the same list in each station in turn, without checks: only the size matters
            station, first = ids[have // 50000 % 40], have // 2000000 * 50000
            text = "".join(f"{station}\t1\t{first + i}\t{row}" for i, row in enumerate(rows, 1))
            copied = subprocess.run(["psql", "-XqAt", *server.where("admin"), "-c", "COPY bt.event FROM STDIN"], input=text, text=True,
                                    capture_output=True)
            assert copied.returncode == 0, copied.stderr
            have += 50000
        server.sql("VACUUM ANALYZE bt.event; CHECKPOINT")
        number = 90 + millions.bit_length()
        server.sql(f"SELECT bt.add_station('BC', {number})")
        events = int(server.sql("SELECT count(*) FROM bt.event"))
        seconds, _ = forwarded(Day(number, words.events))
        tell(f"events forwarded, behind {events / 1e6:.1f} million", words.events / seconds, "a second", "none", True)
        events, size = events + words.events, int(server.sql("SELECT pg_total_relation_size('bt.event')"))
        tell(f"bytes an event with its indexes, {events / 1e6:.1f} million", size / events, "B", "none", True)


def report():
    """A year of 40 rooms: as many cases as 20 million events make, and one year of them asked for."""
    server.sql("INSERT INTO bt.station (site, number) SELECT 'KL', n FROM generate_series(0, 19) n ON CONFLICT DO NOTHING")
    server.sql("""INSERT INTO bt.case_summary SELECT s.id, g, 1 + g % 2, false, 1764547200000 + g::bigint * 1893000, 1764547200000 + g::bigint * 1893000 + 3000000,
      'reconciled', 60, 2, ARRAY['L' || g / 40], 1, 1, 600 + (g * 7919) % 3000, false, (g % 50 = 0)::int, 1, 0, 0, 0, 1, 1, 0
      FROM bt.station s, generate_series(1, 16667) g WHERE s.site = 'KL'; ANALYZE bt.case_summary""")
    server.sql("SELECT bt.add_reader('auditor')")
    took = []
    for _ in range(5):
        began = time.monotonic()
        rows = server.sql("SELECT count(*), sum(cases) FROM (SELECT * FROM bt.months WHERE site = 'KL') m", "auditor")
        took.append(time.monotonic() - began)
    tell(f"report of {rows.split('|')[1]} cases, a row a room and month", statistics.median(took), "s", "at most 2 s",
         statistics.median(took) <= 2)


try:
    server.make_store()
    for name in words.only.split(","):
        globals()[name]()
finally:
    for x in reversed(left):
        x.leave()
if words.json:
    print(json.dumps(found))
