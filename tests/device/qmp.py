"""How QEMU is spoken to: its sockets, and its orders (QMP)."""
import json
import socket
import time


def connect(path):
    """A socket that QEMU makes as it starts."""
    for _ in range(200):
        try:
            s = socket.socket(socket.AF_UNIX)
            s.connect(path)
            return s
        except OSError:
            time.sleep(0.05)
    raise OSError("qemu does not answer at " + path)


def order(line, name, arguments):
    """What it answers to an order."""
    line.write(json.dumps({"execute": name, "arguments": arguments}) + "\n")
    line.flush()
    while True:
        answer = json.loads(line.readline())
        if "return" in answer:
            return answer["return"]
        if "error" in answer:
            raise RuntimeError(answer["error"])
