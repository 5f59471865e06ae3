"""The people of two rooms, who do what the station asks for, and err: whoever plays a case says one by one what is scanned."""
import hashlib, hmac, random

# What somebody takes who stands in the room of an ordinary case: not what ends it early, or says that it is otherwise.
NOT_SO = {"no-operation", "nothing-used", "no-badge", "not-all-points", "unlisted", "no-code"}
# They do not know what is true, and take another way where the ordinary one leads nowhere: that each truth leads to an end is
# the theatre's to show.
PATIENT_FOR, LONGEST = 40, 500  # scans


def own_code(body):
    """With its check digits (ISO/IEC 7064 MOD 97-10)."""
    number = int("".join(str(int(c, 36)) for c in body + "00"))
    return f"{body}{98 - number % 97:02}"


def slip_code(key, number, copy):
    """As the station's key makes it (DEVELOPERS.md)."""
    mac = hmac.new(hmac.new(key, b"slip", hashlib.sha256).digest(), f"BC|00|{number:07}|{copy:02}".encode(), hashlib.sha256)
    return own_code(f"BTBC400{number:07}{copy:02}{int.from_bytes(mac.digest()[:8], 'big') % 999999 + 1:06}")


USUAL = {"field": "SCRUB-1", "operator": "SCRUB-1", "circulating": "CIRC-2", "surgeon": "SURG-3", "charge": "CHARGE-4"}
NAMES = ("SCRUB-1", "CIRC-2", "SURG-3", "CHARGE-4", "RELIEF-5", "RELIEF-6")


class Case:
    """One case of one room. `scan(room, code)` and `write(room, text)` answer as the station does; each step is a turn of the
    generator, so that two rooms go on beside each other."""
    serial = 0

    def __init__(self, station, room, chance):
        self.station, self.room, self.chance = station, room, chance
        self.packs = chance.choice((1, 1, 1, 2, 3))
        self.digits = chance.sample(station.digits, self.packs)
        self.on = 0
        self.scans = 0
        self.trail = []  # what was done, and what was answered

    def pack(self):
        Case.serial += 1
        self.packs -= 1
        return f"(01)09506000134352(17)450331(10)T26(21)S{Case.serial}"

    def choose(self, deeds):
        fits = [d for d in deeds if d["truth"] not in NOT_SO and (self.packs > 0 or d["truth"] != "to-count-in")] or deeds
        return self.chance.choice(deeds) if self.chance.random() < (0.03 if self.scans < PATIENT_FOR else 0.5) else fits[0]

    def who(self, place, team):
        """Who has the place; nobody yet: who usually does, else somebody who has none."""
        there = {t["name"]: t["place"] for t in team}
        has = [name for name in there if place and there[name] == place]
        free = [name for name in (USUAL.get(place), *NAMES) if name and name not in there]
        return (has + free)[0]

    def code_of(self, deed, view):
        """What is scanned, or (text,) that is typed."""
        kind = deed["kind"]
        if kind == "card":
            return self.station.card(self.room, deed["card"])
        if kind == "digit":
            if "digit" in deed:
                return self.station.card(self.room, deed["digit"])
            self.on += 1
            return self.station.card(self.room, self.digits[self.on % len(self.digits)])
        if kind == "badge":
            return self.station.badges[self.who(deed.get("place", ""), view["team"])]
        if kind == "type":
            return (f"INC-{self.chance.randrange(10**6)}",)
        return self.pack()  # of a pack, or of a mark that nobody can read

    def play(self):
        answer = self.station.scan(self.room, self.station.card(self.room, "NEW CASE"))
        while True:
            yield
            view = self.station.view(self.room)
            if not view["case"] and self.scans:
                return
            deeds = answer.get("deeds") or view["deeds"]
            if not deeds:
                return
            self.scans += 1
            steps = [s for s, before in zip(self.trail, ["", *self.trail]) if s != before]
            assert self.scans < LONGEST, f"a case does not end: {view['next']}\n" + "\n".join(steps[-24:])
            deed = self.choose(deeds)
            done = self.code_of(deed, view)
            answer = self.station.write(self.room, done[0]) if isinstance(done, tuple) else self.station.scan(self.room, done)
            self.trail.append(f"{deed['truth']}, {deed['kind']} {deed.get('card', deed.get('digit', deed.get('place', '')))}: {answer.get('said')}")
