#!/usr/bin/python3
"""A printer that answers as it is told, on a free port of the loopback, and bandtally-print before it.

  printer.py PROGRAM SAMPLES

The printer speaks as much IPP (RFC 8010, 8011) as the program asks for. Checked is what a print system may do to a
slip: a job that it gave up is sent again, and one whose answer was lost is not printed twice.
"""
import http.server, json, pathlib, re, ssl, struct, subprocess, sys, tempfile, threading

PRINT_JOB, CANCEL_JOB, GET_JOB, GET_JOBS, GET_PRINTER = 0x02, 0x08, 0x09, 0x0A, 0x0B
PENDING, CANCELED, ABORTED, COMPLETED = 3, 7, 8, 9


def attribute(tag, name, value):
    return struct.pack(">BH", tag, len(name)) + name.encode() + struct.pack(">H", len(value)) + value


def job_group(job):
    return (b"\x02" + attribute(0x21, "job-id", struct.pack(">i", job["id"]))
            + attribute(0x42, "job-name", job["name"].encode())
            + attribute(0x23, "job-state", struct.pack(">i", job["state"])))


def title_in(body):
    """The job-name of a request, "" where it has none."""
    at = body.find(b"job-name")
    size = struct.unpack(">H", body[at + 8:at + 10])[0] if at > 0 else 0
    return body[at + 10:at + 10 + size].decode() if at > 0 else ""


class Printer(http.server.ThreadingHTTPServer):
    """`tls`: "" none, "first" before any word, or "upgrade": it asks for it (RFC 2817)."""

    def __init__(self, tls="", folder=""):
        super().__init__(("127.0.0.1", 0), Answers)
        self.jobs, self.printed, self.lose_answer, self.tls, self.media = [], [], False, tls, b""
        self.begins, self.keeps = COMPLETED, False
        if tls:
            self.context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
            self.context.load_cert_chain(*certificate(folder))
        threading.Thread(target=self.serve_forever, daemon=True).start()

    def handle_error(self, *_):
        pass  # a connection that the program left

    def address(self):
        return f"ipp{'s' if self.tls == 'first' else ''}://127.0.0.1:{self.server_address[1]}/ipp/print"


def certificate(folder):
    files = folder + "/certificate.pem", folder + "/key.pem"
    subprocess.run(["openssl", "req", "-x509", "-newkey", "rsa:2048", "-nodes", "-subj", "/CN=127.0.0.1", "-days", "2",
                    "-out", files[0], "-keyout", files[1]], check=True, capture_output=True)
    return files


class Answers(http.server.BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"

    def log_message(self, *_):
        pass

    def setup(self):
        if self.server.tls == "first":
            self.request = self.server.context.wrap_socket(self.request, server_side=True)
        super().setup()

    def do_OPTIONS(self):
        self.send_response_only(101)
        self.send_header("Connection", "Upgrade")
        self.send_header("Upgrade", "TLS/1.2")
        self.end_headers()
        self.request = self.server.context.wrap_socket(self.request, server_side=True)
        super().setup()
        self.nothing(200)

    def nothing(self, status, *headers):
        self.send_response(status)
        for name, value in (("Content-Length", "0"), *headers):
            self.send_header(name, value)
        self.end_headers()

    def do_POST(self):
        body = self.rfile.read(int(self.headers["Content-Length"]))
        if self.server.tls == "upgrade" and not isinstance(self.request, ssl.SSLSocket):
            return self.nothing(426, ("Connection", "Upgrade"), ("Upgrade", "TLS/1.2"))
        operation, number = struct.unpack(">HI", body[2:8])
        printer, groups, status = self.server, b"", 0
        if operation == PRINT_JOB:
            printer.printed.append(title_in(body))
            printer.pages = body[body.find(b"%PDF"):]
            printer.asked_media = printer.media in body
            printer.jobs.append({"id": len(printer.jobs) + 1, "name": title_in(body), "state": printer.begins})
            groups = job_group(printer.jobs[-1])
            if printer.lose_answer:
                printer.lose_answer = False
                self.close_connection = True
                return
        elif operation == CANCEL_JOB:
            asked = struct.unpack(">i", body[body.find(b"job-id") + 8:][:4])[0]
            for j in printer.jobs if not printer.keeps else []:
                j["state"] = CANCELED if j["id"] == asked else j["state"]
            status = 0x0403 if printer.keeps else 0  # not authorized
        elif operation == GET_JOBS:
            ended = b"not-completed" not in body
            groups = b"".join(job_group(j) for j in printer.jobs if (j["state"] >= 7) == ended)
        elif operation == GET_JOB:
            asked = struct.unpack(">i", body[body.find(b"job-id") + 8:][:4])[0]
            found = [j for j in printer.jobs if j["id"] == asked]
            groups, status = (job_group(found[0]), 0) if found else (b"", 0x0406)
        elif operation == GET_PRINTER and printer.media:
            groups = b"\x04" + attribute(0x44, "media-default", printer.media) + attribute(0x44, "media-ready", printer.media)
        answer = (struct.pack(">HHI", 0x0200, status, number) + b"\x01"
                  + attribute(0x47, "attributes-charset", b"utf-8")
                  + attribute(0x48, "attributes-natural-language", b"en") + groups + b"\x03")
        self.send_response(200)
        self.send_header("Content-Type", "application/ipp")
        self.send_header("Content-Length", str(len(answer)))
        self.end_headers()
        self.wfile.write(answer)


def serve(program, folder, printer, document, again=None):
    """Hands one job over and returns its last state."""
    job = {"id": 101, "to": {"printer": printer.address()}, "document": document}
    if again is not None:
        job["again"] = {"cups": again}
    child = subprocess.Popen([program, "--serve", folder], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    timer = threading.Timer(40, child.kill)
    timer.start()
    child.stdin.write(json.dumps({"v": 1, "job": job}) + "\n")
    child.stdin.flush()
    state = ""
    while state not in ("done", "failed"):
        line = child.stdout.readline()
        if not line:
            break
        state = json.loads(line).get("job", {}).get("state", state)
    child.stdin.close()
    child.wait()
    timer.cancel()
    return state


def withdraw(program, folder, printer, document):
    """Hands one job over, and withdraws it while it waits: what was said of it from then on."""
    child = subprocess.Popen([program, "--serve", folder], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    timer = threading.Timer(40, child.kill)
    timer.start()
    told = []

    def until(states):
        while line := child.stdout.readline():
            told.append(json.loads(line)["job"])
            if told[-1]["state"] in states:
                return

    for line in ({"job": {"id": 101, "to": {"printer": printer.address()}, "document": document}}, {"withdraw": {"id": 101}}):
        child.stdin.write(json.dumps({"v": 1, **line}) + "\n")
        child.stdin.flush()
        until(("sent",) if "job" in line else ("withdrawn", "waiting"))
    if told[-1]["state"] == "waiting":
        printer.jobs[0]["state"] = COMPLETED
        until(("done", "withdrawn"))
    child.stdin.close()
    child.wait()
    timer.cancel()
    return [(x["state"], x.get("why")) for x in told]


def main(program, samples):
    document = json.loads(pathlib.Path(samples, "slip-a5.json").read_text())
    failures = []

    def ok(sentence, true, said):
        print(("ok    " if true else "FAIL  ") + sentence + ("" if true else f": {said}"))
        if not true:
            failures.append(sentence)

    with tempfile.TemporaryDirectory() as folder:
        printer = Printer()
        ok("a slip is printed", serve(program, folder, printer, document) == "done", printer.printed)
        ok("once", len(printer.printed) == 1, printer.printed)
        title = printer.printed[0]
        ok("one that the printer has is not sent again", serve(program, folder, printer, document, 0) == "done"
           and len(printer.printed) == 1, printer.printed)
        printer.jobs = [{"id": 1, "name": title, "state": ABORTED}]
        ok("one that the printer gave up is", serve(program, folder, printer, document, 0) == "done"
           and len(printer.printed) == 2, printer.printed)
        printer.jobs = [{"id": 1, "name": title, "state": ABORTED}]
        ok("and by its number", serve(program, folder, printer, document, 1) == "done"
           and len(printer.printed) == 3, printer.printed)
        printer.jobs, printer.printed, printer.lose_answer = [], [], True
        ok("a slip whose answer was lost comes to its end", serve(program, folder, printer, document) == "done",
           printer.printed)
        ok("and is on paper once", len(printer.printed) == 1, printer.printed)
        printer = Printer()
        printer.begins = PENDING
        said = withdraw(program, folder, printer, document)
        ok("a job that waits is withdrawn", said == [("sent", None), ("withdrawn", None)]
           and printer.jobs[0]["state"] == CANCELED, (said, printer.jobs))
        printer = Printer()
        printer.begins, printer.keeps = PENDING, True
        said = withdraw(program, folder, printer, document)
        ok("one that the printer keeps is said, and followed to its end",
           said == [("sent", None), ("waiting", "keeps"), ("done", None)], said)
        # 216 x 279 mm lie in the tray: the slip is cut from the corner of that, and never stands in its middle.
        printer = Printer()
        printer.media = b"na_letter_8.5x11in"
        ok("a slip of A5 is printed on letter paper", serve(program, folder, printer, document) == "done"
           and printer.asked_media, printer.printed)
        box = re.search(rb"/MediaBox \[ ?0 0 ([\d.]+) ([\d.]+) ?\]", printer.pages)
        ok("as a page of that size", box and [round(float(x)) for x in box.groups()] == [612, 792], box and box.groups())
        for tls, sentence in (("first", "a printer in TLS prints it"), ("upgrade", "so does one that asks for TLS")):
            printer = Printer(tls, folder)
            ok(sentence, serve(program, folder, printer, document) == "done" and len(printer.printed) == 1, printer.printed)
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2]))
