#!/usr/bin/python3
"""What `bandtally-print --fields` prints is the contract: each sample keeps to it, by what is printed and nothing else, and a
field of it is known to the program. fields.py BANDTALLY-PRINT FOLDER-OF-SAMPLES"""
import json, pathlib, re, subprocess, sys

program, samples = sys.argv[1], pathlib.Path(sys.argv[2])


def run(*words, given=None):
    return subprocess.run([program, *words], input=given, capture_output=True, text=True)


def tables():
    """{kind: {field: (required, type, limits, below)}}, as they are printed."""
    kinds, stack = {}, []
    for line in run("--fields").stdout.splitlines():
        if head := re.fullmatch(r"([a-z-]+): \S.*", line):
            stack = [kinds.setdefault(head[1], {})]
        elif row := re.fullmatch(r"((?:  )+)(\w+)( \*)? +(.+)", line):
            depth, below = len(row[1]) // 2, {}
            del stack[depth:]
            stack[depth - 1][row[2]] = (bool(row[3]), row[4], below)
            stack.append(below)
        elif line:
            sys.exit(f"no line of a table: {line!r}")
    return kinds


def keeps(value, kind, below, path):
    if m := re.match(r"text (\d+)-(\d+)", kind):
        assert isinstance(value, str) and int(m[1]) <= len(value) <= int(m[2]), path
    elif m := re.match(r"int (\d+)-(\d+)", kind):
        assert isinstance(value, int) and int(m[1]) <= value <= int(m[2]), path
    elif m := re.match(r"\[(text 1-\d+|object)\] (\d+)-(\d+)", kind):
        assert isinstance(value, list) and int(m[2]) <= len(value) <= int(m[3]), path
        for i, one in enumerate(value):
            keeps(one, m[1], below, f"{path}[{i}]")
    elif kind.startswith("object"):
        object_keeps(value, below, path)
    elif kind.startswith("bool"):
        assert isinstance(value, bool), path
    elif kind.startswith(("code", "time")):
        assert isinstance(value, str) and value, path
    else:  # one of the words
        assert value in re.split(r" or ", re.split(r"  ", kind)[0].strip()), path


def object_keeps(value, fields, path):
    for name in value:
        assert name in fields, f"{path}.{name}: is not in the table"
        keeps(value[name], fields[name][1], fields[name][2], f"{path}.{name}")
    for name, (required, _, _) in fields.items():
        assert not required or name in value, f"{path}.{name}: is missing"


kinds = tables()
seen = set()
for file in sorted(samples.glob("*.json")):
    sample = json.loads(file.read_text())
    object_keeps(sample, kinds[sample["kind"]], file.name)
    seen.add(sample["kind"])
    # The program reads the same tables: without a required field, and with one that no table has, it refuses.
    for name, (required, _, _) in kinds[sample["kind"]].items():
        if required:
            said = run("--check", given=json.dumps({k: v for k, v in sample.items() if k != name}))
            assert said.returncode == 1 and f"'{name}'" in said.stderr, (file.name, name, said)
    assert run("--check", given=json.dumps(sample | {"nothing": 1})).returncode == 1
    one = run("--fields", sample["kind"]).stdout
    assert one.startswith(sample["kind"] + ": ") and one in run("--fields").stdout
assert seen == set(kinds), f"without a sample: {set(kinds) - seen}"
said = run("--fields", "letter")
assert said.returncode == 1 and all(kind in said.stderr for kind in kinds), said
print(f"{len(kinds)} kinds, each with a sample that keeps to what is printed")
