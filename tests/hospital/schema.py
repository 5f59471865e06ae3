#!/usr/bin/python3
"""What the hospital's store takes, refuses and keeps, by itself: whoever calls it."""
import re
import subprocess
import time

import a_server
from a_server import Chain, SCHEMA, Server

a_server.skip_without()
ZERO = "decode(repeat('00',32),'hex')"
S1, S2 = "station-bc-01", "station-bc-02"
server = Server()


def ok(what, got, wanted):
    assert got == wanted, f"{what}: {got!r}, and not {wanted!r}"
    print("ok", what)


def refused(what, user, sql, why="permission denied"):
    said, wrong = server.ask(sql, user)
    assert why in wrong, f"{what}: {said!r} {wrong!r}"
    print("ok", what)


def begin(number, incarnation=1, seq=0, hash=ZERO, user=S1):
    return server.sql(f"SELECT bt.begin({number}, {incarnation}, {seq}, {hash})", user)


def send(chain, first, last, incarnation=1, user=S1, number=None):
    return server.sql(chain.call(first, last, incarnation, number), user)


def send_as(chain, at, number):
    return server.sql(chain.call(at, at, number=number), S2).split("|")[0]


def hello(incarnation, seq, user=S1, number=1):
    return server.sql(f"SELECT status, last_seq, incident FROM bt.hello({number}, {incarnation}, {seq}, 0, 'Room 1')", user)


def count(where="true"):
    return server.sql(f"SELECT count(*) FROM bt.event WHERE {where}")


def order():
    chain = Chain(1).fill(20)
    ok("a station that was never here begins", hello(1, 20), "begin||")
    ok("it cannot send before it began", send(chain, 1, 5).split("|")[0], "begin")
    ok("it begins", begin(1), "ok")
    ok("events are kept in their order", send(chain, 1, 5), "ok|5")
    ok("a gap is refused, with where to go on", send(chain, 8, 9), "gap|5")
    ok("what is sent twice is kept once", (send(chain, 1, 5), send(chain, 3, 8), count()), ("ok|5", "ok|8", "8"))
    ok("a batch of none is no batch", server.sql("SELECT status FROM bt.append(1,1,9,'{}','{}')", S1), "gap")
    ok("a text without its hash is no batch", server.sql("SELECT status FROM bt.append(1,1,9,'{x}','{}')", S1), "gap")
    return chain


def changed(chain):
    for name, change in (("a byte", lambda t: t.replace('"kind":"alive"', '"kind":"alivf"')),
                         ("no JSON", lambda t: "nothing"), ("another number", lambda t: t.replace('"seq":10', '"seq":11')),
                         ("no kind", lambda t: t.replace('"kind":"alive",', ""))):
        copy = Chain(1)
        copy.events, copy.hashes = list(chain.events), list(chain.hashes)
        copy.events[9] = change(copy.events[9])
        if name != "a byte":  # and with a hash that fits it
            copy.hashes[9] = a_server.hashlib.sha256(bytes.fromhex(copy.hashes[8]) + copy.events[9].encode()).hexdigest()
        ok(f"a changed event is refused with its batch: {name}", send(copy, 9, 12).split("|")[0], "changed")
    ok("nothing of it was kept", count(), "8")
    ok("it is noted once, and how often", server.sql("SELECT what, seq, times FROM bt.incident"), "changed|9|4")
    ok("the station hears of it", hello(1, 20), "ok|8|changed 9")
    ok("the true ones are kept", send(chain, 9, 20), "ok|20")
    server.sql("SELECT bt.settle(id) FROM bt.incident")
    ok("until it is settled", hello(1, 20), "ok|20|")


def fork(chain):
    other = chain.copy(15)
    other.seed = "another day"
    other.fill(10)
    ok("a record that was put back ends before what is here", hello(1, 15), "behind|20|behind 15")
    ok("another event under a number that is here is refused", send(other, 20, 25).split("|")[0], "fork")
    ok("it is refused again, and noted once", (send(other, 18, 25).split("|")[0], send(other, 20, 25).split("|")[0],
       server.sql("SELECT count(*) FROM bt.incident WHERE what = 'fork' AND seq = 20")), ("fork", "fork", "1"))
    numbers = ",".join(map(str, range(1, 26)))
    hashes = ",".join(f"'\\x{h}'" for h in other.hashes)
    ok("what both have is found",
       server.sql(f"SELECT bt.common(1, ARRAY[{numbers}]::bigint[], ARRAY[{hashes}]::bytea[])", S1), "15")
    ok("a further incarnation goes on behind it", begin(1, 2, 15, f"'\\x{other.hashes[14]}'"), "ok")
    ok("and only there", begin(1, 3, 16, f"'\\x{other.hashes[15]}'"), "fork")
    ok("an earlier one does not begin again", begin(1, 2, 15, f"'\\x{other.hashes[14]}'"), "fork")
    ok("it overlaps with what it shares", send(other, 15, 25, 2), "ok|25")
    ok("what was lost at the station stays", count("incarnation = 1"), "20")
    ok("both chains hold", server.sql("SELECT count(*) FROM bt.broken()"), "0")


def rights():
    tries = ("INSERT INTO bt.event SELECT * FROM bt.event", "UPDATE bt.event SET room = 9", "DELETE FROM bt.event",
             "TRUNCATE bt.event", "DROP TABLE bt.event", "UPDATE bt.head SET last_seq = 0", "CREATE TABLE bt.x()",
             "CREATE TABLE public.x()", "CREATE TEMP TABLE login(role name)", "SET ROLE bt_owner",
             "ALTER TABLE bt.event DISABLE TRIGGER no_change", "SET session_replication_role = replica",
             "COPY bt.event TO PROGRAM 'id'", "SELECT pg_read_file('/etc/passwd')", "INSERT INTO bt.login VALUES ('x','BC',1)")
    for user in (S1, "auditor", "stores"):
        said, wrong = server.ask("\\set ON_ERROR_STOP off\n" + "".join(f"{sql};\n" for sql in tries), user)
        errors = re.findall(r"^ERROR", wrong, re.M)
        assert len(errors) == len(tries) and not said, f"{user} may more than it should: {said} {wrong}"
    print("ok neither station nor reader nor stores may change anything but by the functions")
    refused("a station reads no event", S1, "SELECT * FROM bt.event")
    refused("a reader appends none", "auditor", "SELECT bt.append(1,1,1,'{x}','{x}')")
    refused("a station settles no incident", S1, "SELECT bt.settle(1)")
    refused("a station speaks for itself alone", S2, "SELECT bt.hello(1,1,1,0,'')", "does not speak for station 1")
    refused("a role that is no station's speaks for none", "auditor", "SELECT bt.hello(1,1,1,0,'')")


def readers():
    ok("the other station sends", (begin(2, user=S2), send(Chain(2).fill(3), 1, 3, user=S2)), ("ok", "ok|3"))
    other = Chain(2).fill(3)
    other.station = 1
    ok("a text of another station is refused", send_as(other.fill(1), 4, 2), "changed")
    ok("an auditor of all sees all", server.sql("SELECT count(DISTINCT station) FROM bt.event", "auditor"), "2")
    ok("one of a station sees that", server.sql("SELECT count(DISTINCT station), count(*) FROM bt.event", "of_two"), "1|3")
    ok("one of another site sees nothing", server.sql("SELECT count(*) FROM bt.event", "elsewhere"), "0")
    ok("incidents too", server.sql("SELECT count(*) FROM bt.incident", "of_two"), "1")


def tampering():
    for user, role in (("admin", ""), ("admin", "SET ROLE bt_owner;")):
        for sql in ("UPDATE bt.event SET room = 9", "DELETE FROM bt.event", "TRUNCATE bt.event"):
            refused(f"{role or user}: {sql} is refused", user, role + sql, "append-only")
    gone = "SET session_replication_role = replica; "
    ok("all chains hold before", server.sql("SELECT count(*) FROM bt.broken()"), "0")
    for what, sql in (("a changed text", "UPDATE bt.event SET payload = replace(payload, 'alive', 'olive') WHERE station = 2 AND seq = 2"),
                      ("one that is gone", "DELETE FROM bt.event WHERE station = 2 AND seq = 2"),
                      ("an end cut off", "DELETE FROM bt.event WHERE station = 2 AND seq = 3"),
                      ("a shared beginning that is gone", "DELETE FROM bt.event WHERE incarnation = 1 AND seq >= 15 AND station = 1")):
        ok(f"past the trigger: {what} is shown", server.sql(f"BEGIN; {gone}{sql}; SELECT count(*) > 0 FROM bt.broken(); ROLLBACK"), "t")


def region():
    server.sql("CREATE ROLE \"hospital-bc\" LOGIN IN ROLE bt_station; INSERT INTO bt.login VALUES ('hospital-bc', 'BC', NULL)")
    ok("a hospital speaks for each of its stations", (begin(7, user="hospital-bc"),
       send(Chain(7).fill(2), 1, 2, user="hospital-bc")), ("ok", "ok|2"))


def at_once():
    """Two stations send the same item, each before the other's is kept."""
    thing = {"identity": "item:00000777", "line": "GREEN-M", "lot": "T9", "single_use": "1"}
    calls = []
    for number in (8, 9):
        begin(number, user="hospital-bc")
        chain = Chain(number)
        chain.add("item-used", case=1, item=1, n=1, thing=thing)
        calls.append(chain.call(1, 1))
    first = subprocess.Popen(["psql", "-XqAt", *server.where("hospital-bc")], stdin=subprocess.PIPE, text=True)
    first.stdin.write(f"BEGIN; {calls[0]};\n")
    first.stdin.flush()
    end = time.monotonic() + 20
    while server.sql("SELECT count(*) FROM pg_stat_activity WHERE state = 'idle in transaction'") == "0" and time.monotonic() < end:
        time.sleep(0.05)
    second = subprocess.Popen(["psql", "-XqAt", *server.where("hospital-bc"), "-c", calls[1]], stdout=subprocess.PIPE, text=True)
    while server.sql("SELECT count(*) FROM pg_stat_activity WHERE wait_event_type = 'Lock'") == "0" and time.monotonic() < end:
        time.sleep(0.05)
    first.communicate("COMMIT;\n", timeout=20)
    ok("the second waits for the first, and is kept", second.communicate(timeout=20)[0].strip(), "ok|1")
    ok("that it is one item in two rooms is noted", server.sql("SELECT count(*) FROM bt.incident WHERE what = 'twice'"), "1")
    ok("and goes to every station", server.sql("SELECT body::json->>'identity' FROM bt.list WHERE kind = 'twice'"), "item:00000777")


def numbered():
    """A station that got its number after it had begun to work."""
    server.sql("SELECT bt.add_station('BC', 5), bt.add_station('BC', 6)")
    chain = Chain(0).fill(4)
    chain.station = 5
    chain.fill(4)
    begin(5, user="station-bc-05")
    ok("what a station did before it had its number is kept", send(chain, 1, 3, user="station-bc-05"), "ok|3")
    ok("and what it did since", send(chain, 4, 8, user="station-bc-05"), "ok|8")
    chain.station = 0
    chain.fill(1)
    ok("what an archive added to it says none", send(chain, 9, 9, user="station-bc-05", number=5), "ok|9")
    chain.station = 4
    chain.fill(1)
    ok("from then on no event says another number", send(chain, 10, 10, user="station-bc-05", number=5).split("|")[0], "changed")
    again = Chain(0).fill(4)
    again.station = 6
    begin(6, user="station-bc-06")
    ok("the same record is not another station's", send(again, 1, 4, user="station-bc-06").split("|")[0], "fork")
    again = Chain(0, "of its own").fill(4)
    again.station = 6
    ok("one of its own is", send(again, 1, 4, user="station-bc-06"), "ok|4")


def asked_once(chain):
    """Whoever asks is looked up once a call, and not once for each station that is known here: a thousand of them ask all day."""
    here = ",".join(f"decode('{h}','hex')" for h in chain.hashes[:2])
    for call in ("hello(1,1,20,0,'Room 1')", f"common(1,'{{1,2}}',ARRAY[{here}])", f"begin(1,1,0,{ZERO})", f"append(1,1,1,'{{x}}',ARRAY[{ZERO}])",
                 f"lost(1,1,1,{ZERO})", "lists(1,0,500)", "took(1,0)"):
        said = server.sql(f"BEGIN; SET LOCAL track_functions = 'pl'; SET LOCAL SESSION AUTHORIZATION '{S1}'; SELECT bt.{call};"
                          "RESET SESSION AUTHORIZATION; SELECT 'calls', pg_stat_get_xact_function_calls('bt.station_of(int)'::regprocedure); ROLLBACK")
        ok(f"who calls {call.split('(')[0]} is looked up once", said.splitlines()[-1], "calls|1")


def steps():
    text = SCHEMA.read_text()
    before = server.sql("SELECT string_agg(step::text, ',' ORDER BY step) FROM bt.version")
    server.make_store()
    ok("made again it stays as it is", server.sql("SELECT string_agg(step::text, ',' ORDER BY step) FROM bt.version"), before)
    ok("each step is there", before, ",".join(str(i + 1) for i in range(text.count("INSERT INTO version VALUES"))))


try:
    server.make_store(1, 2)
    server.sql("SELECT bt.add_reader('auditor'), bt.add_reader('of_two', 'BC', 2), bt.add_reader('elsewhere', 'KL');"
               "CREATE ROLE stores LOGIN IN ROLE bt_stores")
    made = order()
    changed(made)
    fork(made)
    rights()
    readers()
    tampering()
    region()
    at_once()
    numbered()
    asked_once(made)
    steps()
finally:
    server.leave()
