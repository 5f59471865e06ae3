"""Debian's kernel in emulation (qemu, TCG), for the tests whose names begin with vm-.

The guest's root is this machine's own, read-only, so that every program of the build runs in it; a script of this
folder runs there as its only task and prints lines that begin with '@', which the test reads on the host. Needs the
packages of kind 'test'; the kernel comes by apt-get download into the build folder, once. Where something is absent
the test says 'skipped: …' and ends with 77.
"""
import os
import queue
import shutil
import subprocess
import sys
import threading
import time
import traceback

import qmp

HERE = os.path.dirname(os.path.abspath(__file__))
BIN, TESTS = (os.path.abspath(a) for a in sys.argv[1:3])
WORK = os.environ.get("BANDTALLY_VM") or os.path.join(os.path.dirname(BIN), "device")
KERNEL = os.path.join(WORK, "kernel")
LIMIT_S = 420
os.environ["PATH"] += ":/usr/sbin:/sbin"


def skip(why):
    print("skipped: " + why)
    sys.exit(77)


def out(*words, **options):
    return subprocess.run(words, capture_output=True, text=True, **options).stdout


def fetch_kernel():
    if os.path.isdir(KERNEL + "/boot"):
        return
    depends = out("apt-cache", "depends", "linux-image-amd64")
    names = [w for w in depends.split() if w.startswith("linux-image-")]
    if not names:
        skip("apt knows no kernel package: run apt-get update")
    if subprocess.run(["apt-get", "download", "-qq", names[-1]], cwd=WORK, capture_output=True).returncode:
        skip("the kernel package cannot be downloaded (no network?)")
    for deb in [f for f in os.listdir(WORK) if f.startswith("linux-image-") and f.endswith(".deb")]:
        subprocess.run(["dpkg", "-x", deb, "kernel"], cwd=WORK, check=True)
        os.remove(os.path.join(WORK, deb))


def modules(version, *names):
    found = []
    for name in names:
        for line in out("modprobe", "-d", KERNEL, "-S", version, "--show-depends", name).splitlines():
            words = line.split()
            if words and words[0] == "insmod" and words[1] not in found:
                found.append(words[1])
    return found


def make_initrd(version, script, needed):
    root = os.path.join(WORK, script + "-root")
    shutil.rmtree(root, ignore_errors=True)
    for folder in "bin proc sys host lib".split():
        os.makedirs(os.path.join(root, folder))
    shutil.copy(shutil.which("busybox"), root + "/bin/busybox")
    early = modules(version, "virtio_pci", "9p", "9pnet_virtio")
    lines = ["#!/bin/busybox sh", "/bin/busybox mount -t proc proc /proc"]
    for ko in early:
        shutil.copy(ko, root + "/lib/")
        lines.append("/bin/busybox insmod /lib/" + os.path.basename(ko))
    with open(os.path.join(WORK, script + ".modules"), "w") as f:
        f.write("\n".join(m for m in modules(version, *needed) if m not in early) + "\n")
    # The machine has a /tmp of its own; a project that lies in the host's is seen there all the same.
    kept = sorted({"/".join(p.split("/")[:3]) for p in (WORK, BIN, TESTS, HERE) if p.startswith("/tmp/")})
    for i in range(len(kept)):
        os.makedirs(os.path.join(root, "kept%d" % i))
    lines += ["/bin/busybox mount -t 9p -o trans=virtio,version=9p2000.L,ro,msize=524288,cache=loose host /host",
              *("/bin/busybox mount -o bind /host%s /kept%d" % (top, i) for i, top in enumerate(kept)),
              "for d in proc:proc sys:sysfs dev:devtmpfs tmp:tmpfs run:tmpfs; do",
              "/bin/busybox mount -t ${d#*:} none /host/${d%:*}; done",
              *("/bin/busybox mkdir -p /host%s; /bin/busybox mount -o bind /kept%d /host%s" % (top, i, top)
                for i, top in enumerate(kept)),
              "/bin/busybox chroot /host /bin/sh %s/%s.sh %s %s %s %s" % (HERE, script, WORK, BIN, TESTS, HERE),
              "echo @end", "/bin/busybox poweroff -f"]
    with open(root + "/init", "w") as f:
        f.write("\n".join(lines) + "\n")
    os.chmod(root + "/init", 0o755)
    with open(os.path.join(WORK, script + "-initrd"), "wb") as f:
        files = subprocess.run(["find", "."], cwd=root, capture_output=True).stdout
        subprocess.run(["cpio", "-o", "-H", "newc", "--quiet"], cwd=root, input=files, stdout=f, check=True)


def start(script, *needed):
    """A machine that runs tests/device/SCRIPT.sh with these kernel modules."""
    for tool in "qemu-system-x86_64 busybox cpio modprobe depmod udevadm dpkg apt-get".split():
        if not shutil.which(tool):
            skip(tool + " is not installed: run config/setup --test")
    if "statically" not in out("file", "-L", shutil.which("busybox")) and "not a dynamic" not in \
            subprocess.run(["ldd", shutil.which("busybox")], capture_output=True, text=True).stderr:
        skip("busybox is not static: install busybox-static")
    os.makedirs(WORK, exist_ok=True)
    fetch_kernel()
    version = os.listdir(KERNEL + "/lib/modules")[0]
    subprocess.run(["depmod", "-b", KERNEL, version], check=True)
    make_initrd(version, script, needed)
    return Machine(version, script)


class Machine:
    def __init__(self, version, script):
        self.lines, self.log, self.started, self.failed = queue.Queue(), [], time.time(), False
        sockets = os.path.join("/tmp", "bandtally-vm-%d" % os.getpid())
        self.qmp_path, self.serial_path = sockets + ".qmp", sockets + ".serial"
        self.process = subprocess.Popen(
            ["qemu-system-x86_64", "-machine", "q35", "-accel", "tcg,thread=multi", "-cpu", "Nehalem", "-smp", "2",
             "-m", "768", "-nodefaults", "-no-user-config", "-display", "none", "-no-reboot",
             "-kernel", KERNEL + "/boot/vmlinuz-" + version, "-initrd", os.path.join(WORK, script + "-initrd"),
             "-append", "console=ttyS0 quiet panic=-1 tsc=unstable mitigations=off",
             "-serial", "stdio", "-qmp", "unix:%s,server=on,wait=off" % self.qmp_path,
             "-chardev", "socket,id=line,path=%s,server=on,wait=off" % self.serial_path,
             "-device", "isa-serial,chardev=line,index=1", "-device", "qemu-xhci,id=xhci",
             "-virtfs", "local,path=/,mount_tag=host,security_model=none,readonly=on,multidevs=remap"],
            stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
        threading.Thread(target=self.read, daemon=True).start()
        self.qmp = qmp.connect(self.qmp_path).makefile("rw")
        self.qmp.readline()
        self.order("qmp_capabilities")
        self.line = qmp.connect(self.serial_path)

    def read(self):
        for raw in self.process.stdout:
            text = raw.decode(errors="replace").rstrip()
            self.log.append("%6.2f %s" % (time.time() - self.started, text))
            self.lines.put(text)
        self.lines.put(None)

    def order(self, name, **arguments):
        return qmp.order(self.qmp, name, arguments)

    def wait(self, *parts, seconds=120):
        """The next line that holds all parts; None when it does not come."""
        until = min(self.started + LIMIT_S, time.time() + seconds)
        while True:
            try:
                left = until - time.time()
                text = self.lines.get(timeout=max(0.1, left))
            except queue.Empty:
                return None
            if text is None or all(p in text for p in parts):
                return text

    def check(self, what, good):
        self.failed |= not good
        print(("ok     " if good else "FAILED ") + what, flush=True)

    def plug(self, name="scanner", serial="SN0001"):
        self.order("device_add", driver="usb-kbd", id=name, bus="xhci.0", serial=serial)

    def pull(self, name="scanner"):
        self.order("device_del", id=name)

    def type(self, text, hold_ms=20):
        """QEMU's own queue loses keys that are shorter than 16 ms."""
        for c in text:
            names = {"\n": ["ret"], "-": ["minus"]}.get(c, ["shift", c.lower()] if c.isupper() else [c])
            self.order("send-key", keys=[{"type": "qcode", "data": n} for n in names], **{"hold-time": hold_ms})
            time.sleep(hold_ms * 1.5 / 1000)

    def run(self, *parts):
        """Runs the parts of a test with this machine, ends it, and ends the test."""
        try:
            for part in parts:
                part(self)
        except Exception:
            traceback.print_exc()
            self.failed = True
        self.process.terminate()
        self.process.wait()
        for path in (self.qmp_path, self.serial_path):
            if os.path.exists(path):
                os.remove(path)
        if self.failed or os.environ.get("VERBOSE"):
            print("\n".join(line for line in self.log if '"data":"95060000010' not in line))
        print("%.0f s" % (time.time() - self.started))
        sys.exit(1 if self.failed else 0)
