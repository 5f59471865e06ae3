"""A theatre in the emulated machine: what people scan there, and what the station says to it."""
import glob
import json
import os
import re
import subprocess
import sys
import tempfile
import time

import guest
sys.path.append(os.path.join(guest.HERE, "..", "soak"))
from people import own_code  # noqa: E402

APT = "DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends -o Dpkg::Options::=--force-confold "

STATION = 7  # as set_up() has it
SLOWNESS = "i=0; while [ $i -lt 300000 ]; do i=$((i + 1)); done"


class Theatre:
    def __init__(self, machine, codes=None):
        self.m, self.failed, self.last = machine, 0, ""
        self.codes = codes or {}

    def check(self, sentence, good, seen=""):
        self.failed += not good
        print(("ok " if good else "FAIL: ") + sentence + ("" if good or not seen else "\n   seen: %s" % seen), flush=True)
        return good

    def learn(self):
        """The codes as the station prints them: of cards, digits and people."""
        for what in ("cards", "digits", "badges"):
            for line in self.m.run("bandtally label %s --list" % what).splitlines():
                code, _, meaning = line.split("\t")
                self.codes[meaning] = code

    def sheet(self):
        return json.loads(self.m.run("bandtally sheet --json"))

    def said(self):
        """The newest answer, and how it was meant."""
        recent = self.sheet()["recent"]
        return (recent[0]["said"], recent[0]["verdict"]) if recent else ("", "")

    def until(self, sentence, true, seconds=60):
        """`true` gives what was seen, and whether it is so."""
        end = time.monotonic() + seconds
        while True:
            seen, good = true()
            if good or time.monotonic() > end:
                return self.check(sentence, good, seen)

    def answered(self, pattern):
        def look():
            said, verdict = self.said()
            return "%s: %s" % (verdict, said), bool(re.search(pattern, said))
        return look

    def scan(self, what, pattern, why=""):
        """By the scanner, as a person does it: not the same code again within two seconds, and then they look at the board."""
        code = self.codes.get(what, what)
        if code == self.last:
            time.sleep(2)
        self.last = code
        self.m.type(code)
        return self.until(why or "%s: '%s'" % (what, pattern), self.answered(pattern))

    def scanner_runs(self):
        self.m.plug()
        return self.scanner_listens("the scanner that is plugged in gets its program, which listens")

    def scanner_listens(self, sentence):
        """It has said which device is its own, and has heard the silence before a first code."""
        good = self.until(sentence, lambda: self.status(r'"device": *"/[^}]*"name": *"hand-1"', "--json"))
        time.sleep(1)
        return good

    def status(self, pattern, form=""):
        said = self.m.tried("bandtally status " + form)[1]
        return said, bool(re.search(pattern, said))

    def whole(self):
        code, said = self.m.tried("bandtally audit verify")
        return self.check("the record is whole: 'bandtally audit verify' holds", code == 0, said)

    def counted(self):
        """What must not be lost, whatever happens: the case, its items, digits and people, without their minutes."""
        view = self.sheet()
        return {"case": view["case"] and view["case"]["number"], "agreed": len(view["agreed"]),
                "items": [only(i, "number", "identity", "lot", "place", "digit", "condition", "shown") for i in view["items"]],
                "digits": [only(d, "number", "state", "forceps", "seen_bare") for d in view["digits"]],
                "team": [only(t, "name", "place") for t in view["team"]]}


def only(thing, *keys):
    return {k: thing[k] for k in keys}


def packages_on_disk(packages, folder):
    """A disk with the built package, and a second version of it."""
    built = glob.glob(packages + "/bandtally_*.deb")
    if not built:
        guest.skip("no package was built (package-builds)")
    guest.can_boot()
    with tempfile.TemporaryDirectory() as work:
        second = work + "/second.deb"
        subprocess.run(["sh", guest.HERE + "/second.sh", built[0], second], check=True)
        return guest.disk(folder, [built[0], second])


def slower(machine):
    """How many times slower the machine in emulation works than this one: what its seconds are worth."""
    def timed(run):
        began = time.monotonic()
        run()
        return time.monotonic() - began
    here = timed(lambda: subprocess.run(["sh", "-c", SLOWNESS], check=True))
    return timed(lambda: machine.run("sh -c '%s'" % SLOWNESS)) / here


def printer(m):
    """A printer of the house, to which the guest's CUPS prints."""
    m.run("mkdir -p /var/paper && systemd-run -q --unit=printer ippeveprinter -r off -k -d /var/paper -p 8631 "
          "-f application/pdf -c /bin/true Slips")
    m.run("until curl -s -o /dev/null http://localhost:8631/; do sleep 0.2; done", 60)


def install(t):
    t.m.run(APT + "/packages/bandtally_*.deb", 600)
    t.check("installed by apt, and the service runs", t.m.run("systemctl is-active bandtallyd").strip() == "active")


def set_up(t):
    """As the first start of a station of a fleet: nothing is asked."""
    printer(t.m)
    t.m.run("lpadmin -p slips -E -v ipp://localhost:8631/ipp/print -m everywhere", 120)
    code, said = t.m.tried("bandtally setup --site BC --name 'Hand unit' --station %d --room 'Theatre 1' --printer slips --paper a5 "
                           "--scanner 0627:0001:SN0001 --badges registered=2,surgeon=1 --yes" % STATION, 180)
    t.check("'bandtally setup' leaves a station that works", code == 0, said)
    t.m.run("bandtally catalogue import /usr/share/bandtally/catalogue.csv")
    t.m.run("bandtally label pack --line GREEN-M --lot T26 --expiry 2033-03-31 --count 2 --pdf /var/labels.pdf")


def slip_code(t, paper):
    """The code on the only slip that came out since it was asked for last, read from its picture; PAPER.pdf is the slip."""
    whole = "for f in /var/paper/*.pdf; do tail -c 9 \"$f\" 2>/dev/null | grep -q %%EOF && echo \"$f\"; done; true"
    t.until("the guest's CUPS has brought a slip to the printer",
            lambda: (lambda papers: (papers, len(papers.splitlines()) == 1))(t.m.run(whole)), 180)
    with open(paper + ".pdf", "wb") as f:
        f.write(t.m.fetch(t.m.run(whole).splitlines()[0]))
    t.m.run("mkdir -p /var/paper/read; mv /var/paper/*.pdf /var/paper/read/")  # not told by their times: clocks go wrong here
    for page in glob.glob(paper + "*.png"):
        os.remove(page)
    subprocess.run(["pdftoppm", "-r", "300", "-gray", "-png", paper + ".pdf", paper], check=True)
    read = subprocess.run(["zbarimg", "-q", "--raw", "-Sdisable", "-Scode128.enable", *glob.glob(paper + "*.png")],
                          capture_output=True, text=True).stdout
    codes = [c for c in read.split() if c.startswith("BTBC4")]
    t.check("its own code is read from the paper", len(codes) == 1, read)
    return codes[0] if codes else ""


def pack(t, number):
    return t.scan(own_code("PBC%02d%08d" % (STATION, number)), "Counted in: 1 finger tourniquet", "a pack, read from its label: counted in")


def opened(t, case, item):
    """With two people and a pack; when the case was opened."""
    t.scan("NEW CASE", "Case %d opened" % case)
    began = time.monotonic()
    t.scan("PRACT-1", "at the field")
    t.scan("PRACT-2", "circulating")
    pack(t, item)
    return began
