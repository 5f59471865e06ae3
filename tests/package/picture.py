#!/usr/bin/python3
"""What stands on a screen, of Xvfb (-fbdir, XWD) or of a guest (PPM), as a picture for a person, and held to another.
    picture.py SCREEN OUT.png [LIKE.png-OF-BEFORE]      fails where it is blank, or another picture than LIKE"""
import struct, sys, zlib

def screen(path):
    """width, height, and the picture's bytes, three a pixel"""
    raw = open(path, "rb").read()
    if raw[:2] == b"P6":
        head = raw.split(maxsplit=4)[:4]
        width, height = int(head[1]), int(head[2])
        return width, height, raw[-3 * width * height:]
    head = struct.unpack(">25I", raw[:100])
    width, height, line, begins = head[4], head[5], head[12], head[0] + head[19] * 12
    rgb = bytearray(3 * width * height)
    for colour in range(3):  # stored as blue, green, red, nothing
        rows = b"".join(raw[begins + y * line + 2 - colour:begins + y * line + 4 * width:4] for y in range(height))
        rgb[colour::3] = rows
    return width, height, bytes(rgb)

def write_png(path, width, height, rgb):
    def part(kind, data): return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
    rows = b"".join(b"\0" + rgb[3 * width * y:3 * width * (y + 1)] for y in range(height))
    with open(path, "wb") as out:
        out.write(b"\x89PNG\r\n\x1a\n" + part(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)) +
                  part(b"IDAT", zlib.compress(rows, 6)) + part(b"IEND", b""))

def read_png(path):
    raw = open(path, "rb").read()
    width, height = struct.unpack(">II", raw[16:24])
    at, data = 8, b""
    while at < len(raw):
        size, kind = struct.unpack(">I4s", raw[at:at + 8])
        data += raw[at + 8:at + 8 + size] if kind == b"IDAT" else b""
        at += size + 12
    rows = zlib.decompress(data)
    return b"".join(rows[(3 * width + 1) * y + 1:(3 * width + 1) * (y + 1)] for y in range(height))

def spots(rgb):
    """The picture in places: every 7th pixel (prime to the width), so that no clock weighs more than its size."""
    return [rgb[i:i + 3] for i in range(0, len(rgb) - 3, 21)]

def main():
    width, height, rgb = screen(sys.argv[1])
    write_png(sys.argv[2], width, height, rgb)
    found = spots(rgb)
    most = max(found.count(c) for c in set(found[::50])) / len(found)
    print(f"   {sys.argv[2]}: {width} x {height}, {len(set(found))} colours, {100 * most:.0f} % are one")
    if len(set(found)) < 8:
        sys.exit("FAIL: nothing stands on the screen")
    if len(sys.argv) > 3:
        before = spots(read_png(sys.argv[3]))
        other = sum(a != b for a, b in zip(found, before)) / len(found)
        print(f"   {100 * other:.1f} % are otherwise than in {sys.argv[3]}")
        if len(found) != len(before) or other > 0.05:
            sys.exit("FAIL: another picture stands on the screen")

main()
