#!/usr/bin/python3
"""Printers that mean harm, or are broken, before a whole station each: whatever they answer, nothing ends, nothing hangs,
nothing odd is stored, and people are told.

  hostile-printer.py FOLDER-OF-PROGRAMS [NAME …]    all of them at once, or those
"""
import concurrent.futures, os, pathlib, pty, re, select, signal, socketserver, struct, sys, threading, time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "unit/labels"))
from a_station import SOURCE, Station
from printer import ABORTED, COMPLETED, GET_JOB, GET_JOBS, GET_PRINTER, PRINT_JOB, attribute, title_in

INTEGER, ENUM, TEXT, NAME, KEYWORD, NOTHING = 0x21, 0x23, 0x41, 0x42, 0x44, 0x13
PROCESSING = 5
MEMORY_MAX_KB = 160 * 1024
ODD = "\x1b[2J<b>\u202eevil\u0007\n" * 8


def number(value):
    return struct.pack(">i", value)


def answer(groups=b"", status=0, request=1, end=b"\x03"):
    return (struct.pack(">HHI", 0x0200, status, request) + b"\x01" + attribute(0x47, "attributes-charset", b"utf-8")
            + attribute(0x48, "attributes-natural-language", b"en") + groups + end)


def job(id=(INTEGER, number(7)), state=(ENUM, number(PROCESSING)), name=None, more=b""):
    told = b"\x02"
    for key, value in (("job-id", id), ("job-name", name), ("job-state", state)):
        told += attribute(value[0], key, value[1]) if value else b""
    return told + more


def http(body, head=""):
    return (f"HTTP/1.1 200 OK\r\nContent-Type: application/ipp\r\nContent-Length: {len(body)}\r\n{head}\r\n").encode() + body


def forever(piece):
    while True:
        yield piece


def slowly(data):
    for i in range(len(data)):
        yield data[i:i + 1]
        time.sleep(1)


class Printer(socketserver.ThreadingTCPServer):
    """Takes what is printed and says that it does, but for what `odd` says: (printer, operation, title) to bytes, to an
    iterable of them, or to None for the ordinary answer; b"" closes the connection without one. Where `odd` is None it
    drips the beginning of TLS."""
    daemon_threads, allow_reuse_address = True, True

    def __init__(self, odd):
        super().__init__(("127.0.0.1", 0), Answers)
        self.odd, self.titles, self.asked = odd, [], []
        threading.Thread(target=self.serve_forever, daemon=True).start()

    def handle_error(self, *_):
        pass

    def address(self):
        return f"ipp{'' if self.odd else 's'}://127.0.0.1:{self.server_address[1]}/ipp/print"

    def ordinary(self, operation):
        if operation == PRINT_JOB or operation == GET_JOB:
            title = self.titles[-1].encode() if self.titles else b""
            return http(answer(job(name=(NAME, title), state=(ENUM, number(COMPLETED)))))
        return http(answer())


class Answers(socketserver.StreamRequestHandler):
    def handle(self):
        for byte in slowly(b"\x16\x03\x03\x40\x00" + bytes(200)) if not self.server.odd else ():
            self.wfile.write(byte)
        while self.server.odd and self.one():
            pass

    def one(self):
        head = b""
        while not head.endswith(b"\r\n\r\n"):
            line = self.rfile.readline(65536)
            if not line:
                return False
            head += line
        size = int(re.search(rb"(?i)content-length: *(\d+)", head).group(1))
        body = self.rfile.read(size)
        operation = struct.unpack(">H", body[2:4])[0]
        printer = self.server
        if operation == PRINT_JOB:
            printer.titles.append(title_in(body))
        printer.asked.append(operation)
        said = printer.odd(printer, operation)
        if said is None:
            said = printer.ordinary(operation)
        for piece in [said] if isinstance(said, bytes) else said:
            self.wfile.write(piece)
        return len(said) > 0 if isinstance(said, bytes) else True


def at(operation, what):
    """Odd at that request alone."""
    return lambda printer, asked: (what() if callable(what) else what) if asked == operation else None


def always(what):
    return lambda printer, asked: what() if callable(what) else what


def lost_then(jobs):
    """The first answer to a job is lost, so that the station looks whether the printer has it: `jobs` is what it finds."""
    def odd(printer, asked):
        if asked == PRINT_JOB and len(printer.titles) == 1:
            return b""
        return (jobs() if callable(jobs) else jobs) if asked == GET_JOBS else None
    return odd


def endless_list():
    yield b"HTTP/1.1 200 OK\r\nContent-Type: application/ipp\r\nTransfer-Encoding: chunked\r\n\r\n"
    for piece in [answer(end=b"")] + [job(name=(NAME, b"x")) * 500] * 1000000:
        yield b"%x\r\n%s\r\n" % (len(piece), piece)


def endless_head():
    yield b"HTTP/1.1 200 OK\r\n"
    yield from forever(b"X-More: " + b"x" * 900 + b"\r\n")


def nested(depth):
    deep = attribute(0x34, "media-col", b"") + (attribute(0x4A, "", b"media-col") + attribute(0x34, "", b"")) * depth
    return http(answer(job(more=deep)))


def many(tag, key, value, count):
    return attribute(tag, key, value) + attribute(tag, "", value) * count


def http_status(line, head=""):
    return f"HTTP/1.1 {line}\r\nContent-Length: 0\r\n{head}\r\n".encode()


NO_NUMBER, UNREADABLE = "gave it no number", "what answers there cannot be read"
SILENT, COMES = "does not answer", "reports it done"
# Name of the printer: what it does, what the record keeps of the slip then, and how often it was asked meanwhile.
PRINTERS = {
    "a number below one": (at(PRINT_JOB, http(answer(job(id=(INTEGER, number(-5)))))), NO_NUMBER),
    "the least number": (at(PRINT_JOB, http(answer(job(id=(INTEGER, number(-2**31)))))), NO_NUMBER),
    "number nought": (at(PRINT_JOB, http(answer(job(id=(INTEGER, number(0)))))), NO_NUMBER),
    "a number that is a text": (at(PRINT_JOB, http(answer(job(id=(NAME, b"7"))))), NO_NUMBER),
    "a number of two bytes": (at(PRINT_JOB, http(answer(job(id=(INTEGER, b"\0\7"))))), NO_NUMBER),
    "no number": (at(PRINT_JOB, http(answer(job(id=(NOTHING, b""))))), NO_NUMBER),
    "no attributes": (at(PRINT_JOB, http(answer())), NO_NUMBER),
    "a name that is a number": (lost_then(http(answer(job(name=(INTEGER, number(1)))))), COMES),
    "a name that is nothing": (lost_then(http(answer(job(name=(NOTHING, b""))))), COMES),
    "a name in a language": (lost_then(http(answer(job(name=(0x36, b"\0\2en\x7f\xffx"))))), COMES),
    "numbers of other jobs": (lost_then(http(answer(b"".join(job(id=(INTEGER, number(i)), name=(NAME, b"x"))
                                                             for i in range(1, 9))))), COMES),
    "an endless list of jobs": (lost_then(endless_list), SILENT, 6),
    "a state that is none": (at(GET_JOB, http(answer(job(state=(ENUM, number(99)))))), "not finished yet"),
    "a state below nought": (at(GET_JOB, http(answer(job(state=(ENUM, number(-3)))))), "not finished yet"),
    "a state that is a text": (at(GET_JOB, http(answer(job(state=(TEXT, b"9"))))), "not finished yet"),
    "reasons that are numbers": (lambda printer, asked: http(answer(job())) if asked == GET_JOB else http(
        answer(b"\x04" + attribute(INTEGER, "printer-state-reasons", number(1)))) if asked == GET_PRINTER else None,
        "not finished yet"),
    "forty thousand reasons": (lambda printer, asked: http(answer(job())) if asked == GET_JOB else http(
        answer(b"\x04" + many(KEYWORD, "printer-state-reasons", b"media-jam", 40000))) if asked == GET_PRINTER else None,
        "paper is jammed"),
    "words that are not for people": (lambda printer, asked: http(answer(job(
        name=(NAME, printer.titles[-1].encode()),
        more=attribute(TEXT, "job-printer-state-message", ODD.encode()) + attribute(KEYWORD, "job-state-reasons",
                                                                                    ODD.encode()))))
        if asked == GET_JOB else None, "not finished yet"),
    "another job under our number": (at(GET_JOB, http(answer(job(name=(NAME, b"another"))))), "no longer knows"),
    "another job that it gave up": (at(GET_JOB, http(answer(job(state=(ENUM, number(ABORTED)))))), "without finishing it"),
    "collections in one another": (at(PRINT_JOB, lambda: nested(20000)), UNREADABLE),
    "a collection without its end": (at(PRINT_JOB, http(answer(job(more=attribute(0x34, "media-col", b""))))), UNREADABLE),
    "ends that began nowhere": (at(PRINT_JOB, http(answer(job(more=attribute(0x37, "", b"") * 3)))), UNREADABLE),
    "lengths beyond the end": (at(PRINT_JOB, http(answer(b"\x02" + struct.pack(">BH", 0x21, 0x7FFF) + b"job-id"))),
                               UNREADABLE),
    "lengths below nought": (at(PRINT_JOB, http(answer(b"\x02" + struct.pack(">BH", 0x21, 0xFFFF) + b"job-id"))),
                             UNREADABLE),
    "an answer without its end": (at(PRINT_JOB, http(answer(job(), end=b""))), UNREADABLE),
    "no IPP at all": (always(http(b"<html>" + os.urandom(5000))), UNREADABLE),
    "nothing in it": (always(http(b"")), UNREADABLE),
    "less than it says": (always(lambda: [b"HTTP/1.1 200 OK\r\nContent-Length: 99999999999\r\n\r\n" + answer()[:20]]), SILENT),
    "one byte a second": (always(lambda: slowly(http(answer()))), SILENT),
    "one byte of TLS a second": (None, SILENT),
    "an endless head": (always(endless_head), SILENT),
    "bytes without a line": (always(lambda: forever(b"x" * 4096)), SILENT),
    "a password that it wants": (always(http_status("401 Unauthorized", 'WWW-Authenticate: Basic realm="Your PIN"\r\n')),
                                 "refuses the job"),
    "another place that it names": (always(http_status("302 Found", "Location: http://127.0.0.1:9/\r\n")), SILENT),
    "encryption that it has not": (always(http_status("426 Upgrade Required", "Upgrade: TLS/1.2\r\nConnection: Upgrade\r\n")),
                                   "refuses the job"),
    "an expectation that nobody has": (always(http_status("417 Expectation Failed")), "refuses the job"),
    "an answer before its time": (always(lambda: forever(b"HTTP/1.1 100 Continue\r\n\r\n")), SILENT),
    "a status that is none": (at(PRINT_JOB, http(answer(status=0x7ABC))), "refuses the job"),
    "silence": (lambda printer, asked: time.sleep(60) or b"", SILENT),
}


def run(bin, name):
    odd, words, *times = PRINTERS[name]
    printer = Printer(odd)
    station = Station(bin, f"[board]\nstart = no\n[printer]\nqueue = {printer.address()}\n")
    try:
        station.make_slip()
        pid, end, slowest, found = station.child("bandtally-print")[0], time.monotonic() + 60, 0, False
        while not found and time.monotonic() < end:
            began = time.monotonic()
            states = [e for e in station.record() if e["kind"] == "slip-state"]
            slowest = max(slowest, time.monotonic() - began)
            said = [line for line in station.said().splitlines() if "printing: slip " in line]
            found = any(words in s for s in said) and len(printer.asked) >= sum(times)
            time.sleep(0.2)
        now, memory = station.child("bandtally-print")
        assert "bandtally-print ended" not in station.said() and now == pid, "its program ended: " + station.said()
        assert memory < MEMORY_MAX_KB, f"its program took {memory} kB"
        assert found, f"not said: '{words}' but {said}"
        assert all("text" not in e for e in states), "a printer's words are in the record"
        assert slowest < 5, f"an answer took {slowest:.1f} s"
        station.must_be_sound()
        return ""
    except AssertionError as e:
        return str(e)
    finally:
        station.leave()
        printer.shutdown()


def asks_at_terminal(bin):
    """What the program says at a terminal of its own before a printer that wants a password."""
    printer = Printer(always(http_status("401 Unauthorized", 'WWW-Authenticate: Basic realm="Your PIN"\r\n')))
    pid, terminal = pty.fork()
    if pid == 0:
        os.dup2(os.open(SOURCE / "labels/samples/slip-a5.json", os.O_RDONLY), 0)
        os.execv(bin + "/bandtally-print", ["bandtally-print", "--wait", "5", "--printer", printer.address()])
    said = b""
    while select.select([terminal], [], [], 20)[0]:
        try:
            said += os.read(terminal, 4096)
        except OSError:  # it has ended
            break
        if b"assword" in said:
            break
    os.kill(pid, signal.SIGKILL)
    os.waitpid(pid, 0)
    printer.shutdown()
    return "" if b"refuses the job" in said and b"assword" not in said else str(said)


def main(bin, names):
    failures = 0
    with concurrent.futures.ThreadPoolExecutor(12) as pool:
        for name, why in zip(names, pool.map(lambda n: run(bin, n), names)):
            failures += bool(why)
            print(("FAIL  " if why else "ok    ") + name + (": " + why if why else ""), flush=True)
    why = asks_at_terminal(bin)
    failures += bool(why)
    print(("FAIL  " + why if why else "ok   ") + " nobody is asked for a password at a terminal")
    print(f"{len(names)} printers, {failures} failures")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2:] or list(PRINTERS)))
