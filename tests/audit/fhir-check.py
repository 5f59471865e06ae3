#!/usr/bin/python3
"""A strict check of a Bundle by the table of R4's elements, and that it refuses each of the variants of it that have one fault.
    fhir-check.py ELEMENTS BUNDLE                 exit 0: nothing was found; else each fault is printed
    fhir-check.py ELEMENTS BUNDLE --variants      the bundle passes, and every variant with a fault does not

By the table: structure, cardinality, arrays, choices, required codes, what a reference may point to. Beside it: formats of
primitive types (hl7.org/fhir/R4/datatypes.html), the invariants per-1, qty-3, obs-6 and bdl-7, units of UCUM that an export
has, references within the Bundle. What is not in the table is refused, so that nothing passes unlooked at."""
import base64, copy, datetime, json, re, sys

elements, bundle_file = sys.argv[1:3]
TABLE = {}
for line in open(elements, encoding="utf-8"):
    if not line.startswith("#"):
        path, least, most, types, codes = (line.rstrip("\n").split("\t") + [""])[:5]
        TABLE[path] = (int(least), most, types, codes.split())
DATE = r"\d{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?"
TIME = r"([01]\d|2[0-3]):[0-5]\d:([0-5]\d|60)(\.\d+)?(Z|[+-]((0\d|1[0-3]):[0-5]\d|14:00))"
PRIMITIVE = {"string": r"[\s\S]+", "markdown": r"[\s\S]+", "uri": r"\S+", "url": r"\S+", "code": r"\S+(\s\S+)*", "date": DATE,
             "dateTime": rf"\d{{4}}(-\d\d)?|{DATE}|{DATE[:0]}\d{{4}}-\d\d-\d\dT{TIME}", "instant": rf"\d{{4}}-\d\d-\d\dT{TIME}",
             "base64Binary": r"[A-Za-z0-9+/]*={0,2}"}
NUMBERS = {"decimal", "unsignedInt", "integer"}
UCUM = {"min", "s", "h"}
faults = []


def say(at, what):
    faults.append(f"{at}: {what}")


def primitive(value, kind, at):
    if kind == "boolean" or kind in NUMBERS:
        want = bool if kind == "boolean" else (int, float) if kind == "decimal" else int
        if not isinstance(value, want) or (kind != "boolean" and isinstance(value, bool)):
            say(at, f"must be a JSON {'boolean' if kind == 'boolean' else 'number'}")
        return
    if not isinstance(value, str) or not re.fullmatch(PRIMITIVE[kind], value):
        return say(at, f"is no {kind}: {value!r}"[:100])
    if kind == "base64Binary":
        try:
            base64.b64decode(value, validate=True)
        except ValueError:
            say(at, "is no base64")
    if kind in ("date", "dateTime", "instant") and len(value) >= 10:
        try:
            datetime.date.fromisoformat(value[:10])
        except ValueError:
            say(at, f"no such day: {value}")


def reference(value, targets, at, bundle):
    if "reference" not in value:
        return
    there = [e["resource"]["resourceType"] for e in bundle["entry"] if e.get("fullUrl") == value["reference"]]
    if not there:
        say(at, "points to nothing in the Bundle")
    elif "Resource" not in targets and there[0] not in targets:
        say(at, f"may not point to a {there[0]}")


def invariants(value, kind, at):
    if kind == "Period" and value.get("start", "") and value.get("end", "") and value["start"] > value["end"]:
        say(at, "per-1: it ends before it begins")
    if kind == "Quantity":
        if "code" in value and "system" not in value:
            say(at, "qty-3: a code of a unit without a system")
        if value.get("system") == "http://unitsofmeasure.org" and value.get("code") not in UCUM:
            say(at, f"no unit of UCUM that is known here: {value.get('code')}")
    if kind == "Observation" and "dataAbsentReason" in value and any(k.startswith("value") for k in value):
        say(at, "obs-6: a reason why there is no value, and a value")


def names_of(path, types):
    """{name in JSON: type}: a choice has one for each type."""
    name = path.rsplit(".", 1)[1]
    if not name.endswith("[x]"):
        return {name: types}
    return {name[:-3] + t[0].upper() + t[1:]: t for t in types.split("|")}


def value_of(value, path, types, codes, at, bundle):
    kind = re.sub(r"[(].*", "", types)
    if types.startswith("#"):
        return complex_of(value, types[1:], types[1:], at, bundle)
    if kind in PRIMITIVE or kind in NUMBERS or kind == "boolean":
        primitive(value, kind, at)
        if codes and value not in codes:
            say(at, f"{value!r} is none of the codes that are required")
        return
    if kind == "Resource":
        return resource(value, at, bundle)
    complex_of(value, path if kind == "BackboneElement" else kind, kind, at, bundle)
    if kind == "Reference" and isinstance(value, dict):
        reference(value, re.findall(r"\w+", types)[1:], at, bundle)


def complex_of(value, path, kind, at, bundle):
    if not isinstance(value, dict) or not value:
        return say(at, "must be an object with something in it")
    rows = {p: r for p, r in TABLE.items() if p.rsplit(".", 1)[0] == path}
    if not rows:
        return say(at, f"{path} is not in the table")
    invariants(value, kind, at)
    known = {"resourceType"} if path[0].isupper() and "." not in path else set()
    for p, (least, most, types, codes) in rows.items():
        names = names_of(p, types)
        known |= names.keys()
        here = [n for n in names if n in value]
        if len(here) > 1:
            say(at, f"more than one of {p}")
        if not here:
            if least:
                say(at, f"{p} is missing")
            continue
        name, given = here[0], value[here[0]]
        if (most != "1") != isinstance(given, list):
            say(f"{at}.{name}", "must be an array" if most != "1" else "must be no array")
            continue
        if isinstance(given, list) and not given:
            say(f"{at}.{name}", "an empty array")
        for i, one in enumerate(given if isinstance(given, list) else [given]):
            value_of(one, p, names[name], codes, f"{at}.{name}[{i}]", bundle)
    for extra in value.keys() - known:
        say(at, f"unknown element {extra}")


def resource(value, at, bundle):
    kind = value.get("resourceType") if isinstance(value, dict) else None
    complex_of(value, kind or "?", kind, at, bundle)


def check(bundle):
    faults.clear()
    resource(bundle, "Bundle", bundle)
    urls = [e.get("fullUrl") for e in bundle.get("entry", [])]
    if len(set(urls)) < len(urls):
        say("Bundle", "bdl-7: a fullUrl twice")
    return list(faults)


def first(b, kind):
    return next(e["resource"] for e in b["entry"] if e["resource"]["resourceType"] == kind)


def device(b):
    return next(e["resource"] for e in b["entry"] if "udiCarrier" in e["resource"])


def put(owner, key, value):
    owner[key] = value


VARIANTS = [
    ("a status that is no code", lambda b: put(first(b, "Procedure"), "status", "done")),
    ("no subject", lambda b: first(b, "Procedure").pop("subject")),
    ("an element of another release", lambda b: put(device(b), "udi", {"name": "x"})),
    ("an object where an array belongs", lambda b: put(device(b), "udiCarrier", device(b)["udiCarrier"][0])),
    ("an array where one value belongs", lambda b: put(first(b, "Observation"), "status", ["final"])),
    ("two values of one choice", lambda b: put(first(b, "Observation"), "valueString", "32 min")),
    ("a type that the choice does not have", lambda b: put(first(b, "Observation"), "effectiveRange", {})),
    ("a date of another form", lambda b: put(device(b), "expirationDate", "31.12.2028")),
    ("a day that does not exist", lambda b: put(device(b), "expirationDate", "2027-02-30")),
    ("a time without a zone", lambda b: put(first(b, "Observation")["effectivePeriod"], "start", "2026-03-02T10:02:11")),
    ("a day where an instant belongs", lambda b: put(first(b, "Provenance"), "recorded", "2026-03-02")),
    ("a number as text", lambda b: put(first(b, "Observation")["valueQuantity"], "value", "32.5")),
    ("no base64", lambda b: put(first(b, "DocumentReference")["content"][0]["attachment"], "data", "not base64!")),
    ("a document without content", lambda b: first(b, "DocumentReference").pop("content")),
    ("an empty array", lambda b: put(first(b, "Procedure"), "bodySite", [])),
    ("a provenance of nobody", lambda b: first(b, "Provenance").pop("agent")),
    ("a signature without type", lambda b: first(b, "Provenance")["signature"][0].pop("type")),
    ("a way of entry that is no code", lambda b: put(device(b)["udiCarrier"][0], "entryType", "scan")),
    ("a kind of bundle that is none", lambda b: put(b, "type", "report")),
    ("a period that runs backwards", lambda b: put(first(b, "Procedure")["performedPeriod"], "end", "2000-01-01T08:00:00+00:00")),
    ("a unit without its system", lambda b: first(b, "Observation")["valueQuantity"].pop("system")),
    ("a value and why there is none", lambda b: put(first(b, "Observation"), "dataAbsentReason", {"text": "x"})),
    ("a unit that UCUM has not", lambda b: put(first(b, "Observation")["valueQuantity"], "code", "minutes")),
    ("a reference to nothing", lambda b: put(first(b, "Observation")["device"], "reference", "urn:uuid:99999999-9999-4999-8999-999999999999")),
    ("a reference to what it may not be", lambda b: put(first(b, "Observation")["device"], "reference", first(b, "Observation")["partOf"][0]["reference"])),
    ("one name for two entries", lambda b: put(b["entry"][2], "fullUrl", b["entry"][1]["fullUrl"])),
    ("base64 that ends in its middle", lambda b: put(first(b, "DocumentReference")["content"][0]["attachment"], "data", "QUJDR")),
    ("an empty object", lambda b: put(first(b, "Procedure"), "code", {})),
    ("a resource that R4 has not", lambda b: put(first(b, "Procedure"), "resourceType", "Operation")),
    ("an empty text", lambda b: put(first(b, "Procedure")["code"], "text", "")),
]

whole = json.load(open(bundle_file, encoding="utf-8"))
found = check(whole)
if "--variants" not in sys.argv:
    print("\n".join(found) or "nothing was found")
    sys.exit(bool(found))
assert not found, found
control = copy.deepcopy(whole)
first(control, "Procedure")["subject"] = {"display": "x"}  # legal: a reference may be a display alone
assert not check(control), faults
missed = []
for name, break_it in VARIANTS:
    broken = copy.deepcopy(whole)
    break_it(broken)
    if not check(broken):
        missed.append(name)
print(f"{len(VARIANTS) - len(missed)} of {len(VARIANTS)} variants with one fault are refused")
sys.exit(f"passed: {missed}" if missed else 0)
