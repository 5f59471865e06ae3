#!/usr/bin/python3
"""Who may ask what of a station that runs as a user of its own, at the socket, by the command and at the page: one table of
users and requests, each cell tried. Who may not is told so, and nothing is recorded of it.

  who-may.py FOLDER-OF-PROGRAMS

Users and groups exist for this test alone, in a view of the files that nobody else has.
"""
import json, os, pathlib, re, shlex, shutil, socket, subprocess, sys

from a_station import SOURCE, Station

STATION, NOGROUP = 65534, 65534
GROUPS = {"count": 64006, "stores": 64007, "audit": 64002}
# Users by the one group that each is in.
USERS = {"count": 64004, "stores": 64005, "audit": 64001, "none": 64003, "root": 0}
# What is asked, and who may. A request at the socket says no more than its name, so that whoever may is told what it lacks;
# behind '#' stands what a command answers to those who may where it does not simply do it. {own}: a folder of the user's.
# A page is asked without a ticket, or with the one that 'bandtally board' gives the user, who may get none; 'closed': where
# station.ini says 'open = no'.
TABLE = """
socket scan                                            count root
socket type                                            count root
socket sheet                                           count audit root
socket board                                           count audit root
socket status                                          count stores audit root
socket case                                            count audit root
socket cases                                           count audit root
socket lines                                           count stores audit root
socket catalogue                                       stores root
socket staff                                           root
socket staff-file                                      root
socket withdraw                                        root
socket list-staff                                      count stores audit root
socket quarantine                                      stores root
socket release                                         stores root
socket stock                                           stores audit root
socket recall                                          stores audit root
socket used                                            stores audit root
socket shortfalls                                      stores audit root
socket bench                                           stores root
socket labels-write                                    stores root
socket labels-take                                     stores root
socket label                                           stores root
socket settle                                          root
socket retry                                           count stores root
socket copy                                            audit root
socket backed-up                                       audit root
socket audited                                         audit root
socket keep                                            audit root
socket report                                          audit root
command scan {awake}                                   count root
command scan --text 'case 1: a note'                   count root
command sheet                                          count audit root
command status                                         count stores audit root
command board --room 1                                 count audit root    # no ticket: all who reach this board may see it
command board 'audit'                                  audit root
command case list                                      count audit root
command case show 1                                    count audit root
command code (01)09506000134352                        count stores audit none root
command catalogue import {catalogue}                   stores root
command catalogue import --preview {catalogue}         stores root
command catalogue export                               count stores audit root
command catalogue check {catalogue}                    count stores audit none root
command staff add practitioner SCRUB-9                 root
command staff list                                     count stores audit root
command staff withdraw 2                               root
command staff import --preview {staff}                 root
command staff export                                   count stores audit root
command stock quarantine GREEN-M --why 'torn pouches'  stores root
command stock release GREEN-M --by 8 --and 9           stores root          # is not in use
command stock list                                     stores audit root
command stock earliest                                 stores audit root
command stock recall GREEN-M                           stores audit root
command stock shortfalls                               stores audit root
command stock found GREEN-M                            stores audit root
command stock receive GREEN-M --packs 1                stores root          # has no stores bench
command label pack --line GREEN-M --count 1 --pdf {own}/pack.pdf  stores root
command label digits --list                            count stores audit root
command label cards --pdf {own}/cards.pdf              count stores audit root
command label badges --list                            count stores audit root
command label scanner-check --pdf {own}/check.pdf      count stores audit root
command setup --site BC --name Site --station 0 --room 'Theatre 1'  root
command print list                                     count stores audit root
command print retry 1                                  count stores root
command audit verify                                   audit root
command audit slip no-slip                             audit root    # not signed|no slip|not a
command audit report --summary none --year 2026 --json    audit root
command audit case 1 --json                            audit root
command audit case 1 --people a-test --json            audit root
command audit sample 1 --seed 1 --json                 audit root    # cannot be drawn|kind
command audit trace --summary none --lot NONE --json      audit root
command audit trace --summary none --badge 1 --why x --json  audit root
command audit export --json                            audit root
command audit keep 1 --for x                           audit root
command audit archive --check                          audit root    # keep_years
command audit settle 999999 dealt-with                 root          # is not among
command backup {own}/copy.db                           audit root
command report-fault {own}/fault.txt                   audit root
command restore --check {backup}                       count stores audit none root
command restore {backup}                               nobody
page GET /                                             count stores audit none root
page GET /desk                                         count stores audit none root
page GET /events?room=1                                count stores audit none root
page GET /audit                                        nobody
page POST /keyed                                       nobody
page-ticket GET /audit                                 nobody
audit-ticket GET /audit                                audit root
audit-ticket POST /keyed                               nobody
page-ticket GET /events?room=1                         count stores audit none root
page-ticket POST /keyed                                count root
closed GET /events?room=1                              nobody
closed GET /events?desk=1                              nobody
closed GET /audit                                      nobody
closed POST /keyed                                     nobody
closed-ticket GET /events?room=1                       count audit root
closed-ticket POST /keyed                              count root
"""
DENIED = r"not allowed: your user|Permission denied|a station works in|^HTTP 403"


def own_view():
    """The rest runs where users and groups of the test are in /etc."""
    if os.getuid() != 0 or not shutil.which("unshare") or subprocess.run(["unshare", "-m", "true"]).returncode:
        print("skipped: users of its own can be had by root only")
        sys.exit(77)
    if "BANDTALLY_OWN_VIEW" not in os.environ:
        os.environ["BANDTALLY_OWN_VIEW"] = "yes"
        os.execvp("unshare", ["unshare", "-m", sys.executable, *sys.argv])


def add_users(folder):
    for name, lines in (("passwd", [f"bt-{u}:x:{i}:{NOGROUP}::/:/bin/sh" for u, i in USERS.items() if i]),
                        ("group", [f"bandtally-{g}:x:{i}:bt-{g}" for g, i in GROUPS.items()])):
        copy = folder / name
        copy.write_text(pathlib.Path("/etc", name).read_text() + "\n".join(lines) + "\n")
        subprocess.run(["mount", "--bind", copy, f"/etc/{name}"], check=True)


def groups_of(user):
    return [GROUPS[user]] if user in GROUPS else []


def rows():
    for line in TABLE.strip().splitlines():
        asked, said = (line.split("#") + [""])[:2]
        words, who = re.match(r"(.*?)((?: +(?:count|stores|audit|none|root|nobody))+) *$", asked).groups()
        yield words.strip(), set(who.split()), said.strip()


def free_port():
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        return s.getsockname()[1]


class Users:
    def __init__(self, station, closed):
        self.station, self.closed = station, closed
        self.places = {"awake": station.codes()["AWAKE PATIENT"], "catalogue": station.root / "catalogue.csv",
                       "staff": station.root / "staff.csv",
                       "backup": station.root / "backup.db"}
        shutil.copy(SOURCE / "config/catalogue.csv", self.places["catalogue"])
        self.places["staff"].write_text("name,kind,number\nSCRUB-1,practitioner,1\n")
        assert station.bt("backup", str(self.places["backup"]))[0] == 0
        self.places["backup"].chmod(0o644)
        for user, uid in USERS.items():
            (station.root / user).mkdir(mode=0o755)
            os.chown(station.root / user, uid, -1)

    def connect(self, user, family, address):
        os.setgroups(groups_of(user))
        os.setresgid(-1, NOGROUP if USERS[user] else 0, -1)
        os.setresuid(-1, USERS[user], -1)
        try:
            s = socket.socket(family)
            s.connect(address)
            s.settimeout(20)
            return s
        finally:
            os.setresuid(-1, 0, -1)
            os.setresgid(-1, 0, -1)

    def at_socket(self, user, request):
        with self.connect(user, socket.AF_UNIX, str(self.station.data / "socket")) as s:
            try:
                s.sendall(b'{"do":"%s"}\n' % request.encode())
            except BrokenPipeError:
                pass  # turned away before
            return 0, s.makefile().readline()

    def cookie(self, user, station, page):
        """What the user's browser has once it followed the address; "" where there is none."""
        address = re.search(r"(?m)^http\S+$", self.by_command(user, f"board {page}", station)[1])
        if not address:
            return ""
        address = address.group(0)
        with self.connect(user, socket.AF_INET, ("127.0.0.1", station.port)) as s:
            path = "/" + address.split("/", 3)[3]
            s.sendall(f"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{station.port}\r\n\r\n".encode())
            head = s.makefile("rb").read1(65536).decode()
        return re.search(r"(?im)^set-cookie: *([^;\r]+)", head).group(1)

    def at_page(self, user, kind, words):
        station = self.closed if kind.startswith("closed") else self.station
        cookie = self.cookie(user, station, "audit" if kind == "audit-ticket" else "--room 1") if kind.endswith("-ticket") else ""
        body = json.dumps({"room": 1, "code": self.places["awake"]}) if words.startswith("POST") else ""
        head = [f"{words} HTTP/1.1", f"Host: 127.0.0.1:{station.port}", f"Content-Length: {len(body)}"]
        head += [f"Origin: http://127.0.0.1:{station.port}", "Content-Type: application/json"] if body else []
        head += [f"Cookie: {cookie}"] if cookie else []
        with self.connect(user, socket.AF_INET, ("127.0.0.1", station.port)) as s:
            s.sendall(("\r\n".join(head) + "\r\n\r\n" + body).encode())
            said = s.makefile("rb").read1(65536).decode()
        status = said.split(" ")[1]
        return (0 if status[0] == "2" else 1), f"HTTP {status} {said[-200:]}"

    def by_command(self, user, words, station=None):
        station = station or self.station
        words = [w.format(own=self.station.root / user, **self.places) for w in shlex.split(words.replace("(", r"\(").replace(")", r"\)"))]
        done = subprocess.run([station.bin / "bandtally", "--data", station.data, *words], capture_output=True, text=True,
                              user=USERS[user], group=NOGROUP if USERS[user] else 0,
                              extra_groups=groups_of(user), cwd=self.station.root / user,
                              env={**os.environ, "XDG_CACHE_HOME": str(self.station.root / user), "XDG_DATA_HOME": str(self.station.root / user)})
        return done.returncode, done.stdout + done.stderr

    def ask(self, user, row):
        kind, words = row.split(" ", 1)
        if kind == "socket":
            return self.at_socket(user, words)
        return self.by_command(user, words) if kind == "command" else self.at_page(user, kind, words)

    def may(self, user, row, said):
        """Whether it does what is asked, or says what it says to those who may."""
        code, answer = self.ask(user, row)
        if re.search(DENIED, answer):
            return False, answer
        return code in (0, 3, 4) or (said and re.search(said, answer) is not None), answer


def names_known(station):
    """Each request that the station and the command know, as they say themselves."""
    source = (SOURCE / "station/run/socket.c").read_text()
    yield from ("socket " + n for n in re.findall(r'^    \{"([a-z-]+)", RIGHT_.*, request_', source, re.M))
    yield from ("command " + n for n in re.findall(r"^  ([a-z-]+) +", station.bt("--help")[1], re.M))


def main(bin):
    own_view()
    failures, tried = [], 0
    board = "[board]\nstart = yes\nport = %d\n"
    ports = free_port(), free_port()
    station = Station(bin, board % ports[0], owner=STATION)
    closed = Station(bin, board % ports[1] + "open = no\n", owner=STATION)
    add_users(station.root)
    try:
        for s, s.port in zip((station, closed), ports):
            s.start()
            s.make_slip()
            s.until("its board runs", lambda: "the board is at" in s.said())
        users = Users(station, closed)
        table = list(rows())
        for name in names_known(station):
            if not any((row + " ").startswith(name + " ") for row, _, _ in table):
                failures.append(f"'{name}' is not in the table")
        station.until("its slip is written", lambda: "written" in station.bt("print", "list")[1])
        before = len(station.record())
        for row, who, said in table:
            for user in sorted(USERS.keys() - who):
                tried += 1
                code, answer = users.ask(user, row)
                if not re.search(DENIED, answer):
                    failures.append(f"{user} may '{row}': {answer}")
        new = station.record()[before:]
        if new:
            failures.append(f"something is recorded of what nobody may: {new}")
        for row, who, said in table:
            for user in sorted(who & USERS.keys()):
                tried += 1
                may, answer = users.may(user, row, said)
                if not may:
                    failures.append(f"{user} may not '{row}': {answer}")
    finally:
        station.leave()
        closed.leave()
    for why in failures:
        print("FAIL  " + why.strip())
    print(f"{tried} of {len(table) * len(USERS)} cells tried, {len(failures)} failures")
    return 1 if failures or tried != len(table) * len(USERS) else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
