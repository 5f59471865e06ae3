"""A private PostgreSQL for tests: its own folder, a Unix socket in it and a loopback port, ended by its pid."""
import hashlib, json, os, pathlib, pwd, shutil, signal, socket, subprocess, sys, tempfile, time

SOURCE = pathlib.Path(os.environ.get("BANDTALLY_SOURCE", pathlib.Path(__file__).resolve().parents[2]))
SCHEMA = SOURCE / "station/forward/schema.sql"
SETTINGS = """unix_socket_directories = '{root}'
unix_socket_permissions = 0777
shared_buffers = 64MB
max_connections = 60
wal_level = replica
wal_log_hints = on
wal_keep_size = 256MB
log_min_messages = warning
"""


def programs():
    """The folder of the server's programs, None where there is none."""
    places = sorted(pathlib.Path("/usr/lib/postgresql").glob("*/bin/postgres"), key=lambda p: -float(p.parts[-3]))
    return places[0].parent if places else None


def skip_without():
    if not programs() or not shutil.which("psql"):
        print("skipped: there is no PostgreSQL here (apt-get install postgresql)")
        sys.exit(77)


def free_port():
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        return s.getsockname()[1]


def as_server():
    """PostgreSQL runs as no root: whoever starts it, else its own user."""
    if os.getuid():
        return {}
    who = pwd.getpwnam("postgres")
    return {"user": who.pw_uid, "group": who.pw_gid, "extra_groups": []}


class Certificates:
    """An authority of its own, what it signs, and what it has taken back."""

    def __init__(self, server="DNS:localhost,IP:127.0.0.1"):
        self.folder = tempfile.TemporaryDirectory(prefix="bt-ca-")
        self.root = pathlib.Path(self.folder.name)
        self.root.chmod(0o755)
        self.openssl("req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-keyout", "ca.key",
                     "-out", "ca.crt", "-days", "30", "-subj", "/CN=authority")
        (self.root / "index.txt").touch()
        (self.root / "crlnumber").write_text("1000")
        (self.root / "ca.cnf").write_text("[ca]\ndefault_ca=c\n[c]\ndatabase=index.txt\ncrlnumber=crlnumber\n"
                                          "default_md=sha256\ndefault_crl_days=30\n")
        self.openssl("ca", "-config", "ca.cnf", "-gencrl", "-keyfile", "ca.key", "-cert", "ca.crt", "-out", "crl.pem")
        self.sign("server", server)

    def openssl(self, *words):
        done = subprocess.run(["openssl", *words], cwd=self.root, capture_output=True, text=True)
        assert done.returncode == 0, done.stderr

    def sign(self, name, also=None, days=30):
        """NAME.crt and NAME.key."""
        self.openssl("req", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-keyout", name + ".key",
                     "-out", name + ".csr", "-subj", f"/CN={name}", "-addext", f"subjectAltName={also or 'DNS:' + name}")
        self.openssl("x509", "-req", "-in", name + ".csr", "-CA", "ca.crt", "-CAkey", "ca.key", "-CAcreateserial", "-out",
                     name + ".crt", "-days", str(days), "-copy_extensions", "copy")
        (self.root / (name + ".key")).chmod(0o600)

    def revoke(self, name):
        words = ["ca", "-config", "ca.cnf", "-keyfile", "ca.key", "-cert", "ca.crt"]
        self.openssl(*words, "-revoke", name + ".crt")
        self.openssl(*words, "-gencrl", "-out", "crl.pem")

    def settings(self, root):
        """For a server, which gets its own copy of the key."""
        for name in ("server.key", "server.crt"):
            shutil.copy(self.root / name, root / name)
        if not os.getuid():
            os.chown(root / "server.key", as_server()["user"], as_server()["group"])
        return (f"ssl = on\nssl_cert_file = '{root}/server.crt'\nssl_key_file = '{root}/server.key'\n"
                f"ssl_ca_file = '{self.root}/ca.crt'\nssl_crl_file = '{self.root}/crl.pem'\n"
                "ssl_min_protocol_version = 'TLSv1.3'\n")

    def leave(self):
        self.folder.cleanup()


HBA = """local all all trust
local replication all trust
hostssl bt all {address}/32 cert
host all all all reject
"""


class Server:
    def __init__(self, copy_of=None, standby="", settings="", certificates=None, address="127.0.0.1", station="127.0.0.1"):
        """At one address, for stations that come from another: both of this machine, or of a network of its own."""
        self.certificates, self.address = certificates, address
        self.folder = tempfile.TemporaryDirectory(prefix="bt-pg-")
        self.root = pathlib.Path(self.folder.name)
        self.data, self.port, self.process = self.root / "data", free_port(), None
        self.root.chmod(0o755)
        if not os.getuid():
            os.chown(self.root, as_server()["user"], as_server()["group"])
        if copy_of is None:
            self.run("initdb", "-D", self.data, "-U", "admin", "-E", "UTF8", "--locale=C.UTF-8", "-A", "trust", "--no-sync")
        else:
            # standby: the name by which the primary knows it
            name = f"host={copy_of.root} port={copy_of.port} user=admin application_name={standby or 'copy'}"
            self.run("pg_basebackup", "-d", name, "-D", self.data, "-c", "fast", "-X", "stream", *(["-R"] if standby else []))
        with open(self.data / "postgresql.conf", "a") as f:
            f.write(SETTINGS.format(root=self.root) + settings)
            if certificates:
                f.write(certificates.settings(self.root))
        if certificates:
            (self.data / "pg_hba.conf").write_text(HBA.format(address=station))
        self.start()
        if copy_of is None:
            self.sql("CREATE DATABASE bt", base="postgres")

    def run(self, program, *words):
        done = subprocess.run([programs() / program, *words], capture_output=True, text=True, cwd="/", **as_server())
        assert done.returncode == 0, f"{program}: {done.stderr}"
        return done.stdout

    def start(self):
        log = open(self.root / "log", "a")
        self.process = subprocess.Popen(
            [programs() / "postgres", "-D", self.data, "-p", str(self.port), "-c", f"listen_addresses={self.address}"],
            stdout=log, stderr=log, cwd="/", **as_server())
        end = time.monotonic() + 30
        while True:
            done = subprocess.run(["psql", "-XqAt", *self.where("admin", "postgres"), "-c", "SELECT 1"], capture_output=True)
            if done.returncode == 0:
                return
            assert self.process.poll() is None and time.monotonic() < end, "the server does not start: " + self.said()
            time.sleep(0.03)

    def said(self):
        return (self.root / "log").read_text(errors="replace")[-1500:]

    def end(self, how=signal.SIGINT):
        """SIGINT: fast; SIGQUIT: at once. Twice is fine."""
        if self.process and self.process.poll() is None:
            self.process.send_signal(how)
            self.process.wait(30)

    def kill(self):
        """As if the machine stopped: all its processes at once."""
        if self.process.poll() is None:
            pid = self.process.pid
            children = pathlib.Path(f"/proc/{pid}/task/{pid}/children").read_text().split()
            for one in [pid, *map(int, children)]:
                try:
                    os.kill(one, signal.SIGKILL)
                except ProcessLookupError:
                    pass
            self.process.wait()
            end = time.monotonic() + 10
            while any(pathlib.Path(f"/proc/{c}/exe").exists() for c in children) and time.monotonic() < end:
                time.sleep(0.01)

    def nice(self):
        """Gives way to all else on this machine; and so do the processes that it starts."""
        subprocess.run(["renice", "-n", "19", "-p", str(self.process.pid)], check=True, capture_output=True)

    def leave(self):
        self.end(signal.SIGQUIT)
        self.folder.cleanup()

    def where(self, user, base="bt"):
        return ["-h", str(self.root), "-p", str(self.port), "-U", user, "-d", base]

    def ask(self, sql, user="admin", base="bt"):
        """What psql answers, and what it complains of."""
        done = subprocess.run(["psql", "-XqAt", "-v", "ON_ERROR_STOP=1", *self.where(user, base)], input=sql,
                              capture_output=True, text=True)
        return done.stdout.strip(), done.stderr.strip()

    def sql(self, sql, user="admin", base="bt"):
        said, wrong = self.ask(sql, user, base)
        assert "ERROR" not in wrong and "FATAL" not in wrong, f"{sql[:200]}: {wrong}"
        return said

    def relay(self, bin, region, role):
        """What is here goes on to a region's store, once: the exit code, and what was said."""
        own = self.certificates.root
        done = subprocess.run([f"{bin}/bandtally-forward", "--once", "--from", f"localhost:{self.port}", "--host",
                               f"localhost:{region.port}", "--database", "bt", "--user", role, "--certificate", own / f"{role}.crt",
                               "--key", own / f"{role}.key", "--authority", own / "ca.crt"], capture_output=True, text=True)
        return done.returncode, done.stderr

    def make_store(self, *stations, site="BC"):
        done = subprocess.run(["psql", "-Xq", "-v", "ON_ERROR_STOP=1", *self.where("admin"), "-f", SCHEMA],
                              capture_output=True, text=True)
        assert done.returncode == 0 and not done.stderr, done.stderr
        for number in stations:
            self.sql(f"SELECT bt.add_station('{site}', {number})")


class Chain:
    """Events as a station makes them, hashed as its record does."""

    def __init__(self, station=1, seed=""):
        self.station, self.seed, self.events, self.hashes = station, seed, [], []

    def add(self, kind="alive", **fields):
        event = {"boot": 1, "boot_ms": 1000 + len(self.events), "kind": kind, "seq": len(self.events) + 1, "v": 2,
                 "wall_ms": 1795798993183 + len(self.events) * 1000, **fields}
        if self.station:
            event["station"] = self.station
        if self.seed:
            event["text"] = self.seed
        text = json.dumps(event, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
        before = bytes.fromhex(self.hashes[-1]) if self.hashes else bytes(32)
        self.events.append(text)
        self.hashes.append(hashlib.sha256(before + text.encode()).hexdigest())

    def fill(self, n):
        for _ in range(n):
            self.add()
        return self

    def copy(self, n):
        """The first n of it, as a backup of the station would have them."""
        other = Chain(self.station)
        other.events, other.hashes = self.events[:n], self.hashes[:n]
        return other

    def call(self, first, last, incarnation=1, number=None):
        def quoted(text):
            return "'" + text.replace("'", "''") + "'"

        texts = ",".join(quoted(t) for t in self.events[first - 1:last])
        hashes = ",".join(f"'\\x{h}'" for h in self.hashes[first - 1:last])
        number = self.station if number is None else number
        return f"SELECT status, last_seq FROM bt.append({number}, {incarnation}, {first}, ARRAY[{texts}]::text[], ARRAY[{hashes}]::bytea[])"
