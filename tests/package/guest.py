"""A station's machine in the emulator: a fresh Debian with CUPS, on a disk of its own, which boots with systemd in qemu. Its root
does what it is told over a second serial line; a USB keyboard is a scanner. Needs root and Debian's mirror. By TCG:
BANDTALLY_ACCEL=kvm uses KVM, which inside another machine may start a guest that never comes up.

    disk = guest.disk(FOLDER, PACKAGES, also=["xinit"])   made once a set of packages; kept in FOLDER
    with guest.Machine(disk.copy("mine"), "mine") as m:
        m.ready(); m.run("apt-get install -y /packages/bandtally_*.deb"); m.plug(); m.type(code); m.picture("screen.png")
"""
import base64
import glob
import hashlib
import os
import shutil
import socket
import subprocess
import sys
import tempfile
import threading
import time

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.append(os.path.join(HERE, "..", "device"))
import qmp  # noqa: E402

SYSTEM = ("systemd-sysv udev dbus kmod iproute2 procps libpam-systemd linux-image-amd64 curl "
          "cups cups-client cups-ipp-utils cups-filters-core-drivers").split()
NEEDED = "qemu-system-x86_64 setpriv mmdebstrap mke2fs busybox cpio modprobe unshare".split()
os.environ["PATH"] += ":/usr/sbin:/sbin"


def skip(why):
    print("skipped: " + why)
    sys.exit(77)


def can_boot():
    if os.geteuid():
        skip("a Debian of its own needs root")
    for program in NEEDED:
        if not shutil.which(program):
            skip(program + " is not installed: run config/setup --test")


# --- the disk

ORDERS = r"""#!/bin/bash
# Each line is a number and an order in base64; its answer the number, how it ended and what it said.
stty -F /dev/ttyS1 raw -echo
exec 3<>/dev/ttyS1
echo '@0 0 ' >&3
while read -r number order <&3; do
	echo "$order" | base64 -d >/run/order
	bash /run/order </dev/null >/run/order.said 2>&1 3>&-
	echo "@$number $? $(base64 -w 0 /run/order.said)" >&3
done
"""
UNIT = """[Unit]
Description=Orders of the host, on the second serial line
RequiresMountsFor=/run
After=systemd-user-sessions.service
[Service]
Environment=HOME=/root
ExecStart=/usr/local/sbin/orders
[Install]
WantedBy=multi-user.target
"""
INIT = """#!/bin/busybox sh
B=/bin/busybox
$B mount -t proc proc /proc; $B mount -t sysfs sys /sys; $B mount -t devtmpfs dev /dev
%s
n=0; until [ -b /dev/vda ] || [ $n = 200 ]; do $B usleep 50000; n=$((n + 1)); done
$B mount -t ext4 -o rw /dev/vda /root
$B umount /proc /sys; $B mount --move /dev /root/dev
exec $B switch_root /root /lib/systemd/systemd
"""
# With processes, mounts and a name of its own: what it leaves running ends with it.
INSIDE = """mount -t proc proc "$1/proc"; mount -t sysfs -o ro sys "$1/sys"; mount -t tmpfs tmpfs "$1/run"
mount --rbind /dev "$1/dev"; hostname station; exec chroot "$1" /bin/sh -c "$2" """
# Quiet at boot: what Debian does daily by the clock would be in the way of figures.
MASKED = "systemd-networkd-wait-online.service apt-daily.timer apt-daily-upgrade.timer e2scrub_all.timer e2scrub_reap.service fstrim.timer"


def inside(root, command, log):
    with open(log, "ab") as said:
        done = subprocess.run(["unshare", "--mount", "--pid", "--fork", "--kill-child", "--uts", "--ipc", "sh", "-c", INSIDE, "sh",
                               root, "export DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 PATH=/usr/sbin:/usr/bin:/sbin:/bin; " + command],
                              stdin=subprocess.DEVNULL, stdout=said, stderr=said)
    if done.returncode:
        failed(log, "in the fresh Debian: " + command)


def failed(log, what):
    with open(log, errors="replace") as f:
        said = f.read()[-3000:]
    if any(sign in said for sign in ("resolve", "Unable to fetch", "Failed to fetch", "onnection")):
        skip("Debian's mirror does not answer")
    sys.exit("FAIL: %s\n%s" % (what, said))


def debian(folder):
    """A fresh Debian as a tar file, of this week; without an initrd of its own, for which its packing alone takes a minute."""
    tar, log = folder + "/debian.tar", folder + "/debian.log"
    if os.path.exists(tar) and time.time() - os.path.getmtime(tar) < 7 * 86400:
        return tar
    sources = "/etc/apt/sources.list"
    if not os.path.exists(sources) or not os.path.getsize(sources):
        sources = "/etc/apt/sources.list.d/debian.sources"
    with open(log, "wb") as said:
        if subprocess.run(["mmdebstrap", "--quiet", "--variant=minbase", "--mode=root", "--format=tar", "--include=" + ",".join(SYSTEM),
                           "--aptopt=Acquire::Languages \"none\"", "bookworm", tar + ".new", sources],
                          env={**os.environ, "INITRD": "No"}, stdin=subprocess.DEVNULL, stdout=said, stderr=said).returncode:
            failed(log, "no fresh Debian")
    os.rename(tar + ".new", tar)
    return tar


def furnish(root, packages, also, log):
    """The order line; the packages under /packages, not installed, and what they depend on, installed: natively, in seconds that
    are minutes in the emulator."""
    def write(path, text, mode=0o644):
        os.makedirs(os.path.dirname(root + path), exist_ok=True)
        with open(root + path, "w") as f:
            f.write(text)
        os.chmod(root + path, mode)
    write("/usr/local/sbin/orders", ORDERS, 0o755)
    write("/etc/systemd/system/orders.service", UNIT)
    write("/etc/fstab", "/dev/vda / ext4 rw 0 1\n")
    write("/etc/hostname", "station\n")
    write("/usr/sbin/policy-rc.d", "exit 101\n", 0o755)
    os.makedirs(root + "/packages")
    for package in packages:
        shutil.copy(package, root + "/packages/")
    inside(root, "apt-get update -qq", log)
    for package in glob.glob(root + "/packages/bandtally*.deb"):
        needs = subprocess.run(["dpkg-deb", "-f", package, "Depends"], capture_output=True, text=True, check=True).stdout.strip().split(", ")
        needs = ", ".join(n for n in needs if not n.startswith("bandtally"))
        inside(root, "apt-get satisfy -y -qq --no-install-recommends '%s'" % needs, log)
    if also:
        inside(root, "apt-get install -y -qq --no-install-recommends " + " ".join(also), log)
    inside(root, "apt-get clean; systemctl enable orders; systemctl mask " + MASKED, log)
    os.remove(root + "/usr/sbin/policy-rc.d")


def modules(root, *names):
    version, found = os.listdir(root + "/usr/lib/modules")[0], []
    for name in names:
        for line in subprocess.run(["modprobe", "-d", root, "-S", version, "--show-depends", name], capture_output=True, text=True).stdout.splitlines():
            words = line.split()
            if words[0] == "insmod" and words[1] not in found:
                found.append(words[1])
    return found


def make_initrd(root, out):
    """The smallest that mounts the disk and goes on into it."""
    with tempfile.TemporaryDirectory() as top:
        for name in "bin proc sys dev root lib".split():
            os.makedirs(top + "/" + name)
        shutil.copy(shutil.which("busybox"), top + "/bin/busybox")
        lines = []
        for module in modules(root, "virtio_pci", "virtio_blk", "ext4"):
            shutil.copy(module, top + "/lib/")
            lines.append("$B insmod /lib/" + os.path.basename(module))
        with open(top + "/init", "w") as f:
            f.write(INIT % "\n".join(lines))
        os.chmod(top + "/init", 0o755)
        files = subprocess.run(["find", "."], cwd=top, capture_output=True).stdout
        with open(out, "wb") as f:
            subprocess.run(["cpio", "-o", "-H", "newc", "--quiet"], cwd=top, input=files, stdout=f, check=True)


class Disk:
    def __init__(self, folder, image):
        self.folder, self.image = folder, image
        self.kernel, self.initrd = folder + "/vmlinuz", folder + "/initrd"

    def copy(self, name):
        """Another disk with the same on it: what a machine does to it is kept, and this one stays as it was."""
        image = "%s/%s.img" % (self.folder, name)
        subprocess.run(["cp", "--sparse=always", self.image, image], check=True)
        return Disk(self.folder, image)


def known_by(packages, *more):
    known = hashlib.sha256(repr(more).encode())
    for path in [__file__, *sorted(packages)]:
        with open(path, "rb") as f:
            known.update(f.read())
    return known.hexdigest()[:12]


def disk(folder, packages, also=(), size="3G"):
    """A fresh Debian with these packages lying in /packages, not installed, but what they depend on; also: further Debian
    packages that are installed. Made once; kept in the folder."""
    can_boot()
    os.makedirs(folder, exist_ok=True)
    folder = os.path.abspath(folder)
    image = "%s/disk-%s.img" % (folder, known_by(packages, also, size, os.path.getmtime(debian(folder))))
    if os.path.exists(image):
        return Disk(folder, image)
    for old in glob.glob(folder + "/disk-*.img"):
        os.remove(old)
    root = tempfile.mkdtemp(prefix="root-", dir=folder)
    try:
        log = folder + "/disk.log"
        subprocess.run(["tar", "-x", "-C", root, "-f", debian(folder)], check=True)
        furnish(root, packages, also, log)
        shutil.copy(glob.glob(root + "/boot/vmlinuz-*")[0], folder + "/vmlinuz")
        make_initrd(root, folder + "/initrd")
        os.chmod(root, 0o755)
        subprocess.run(["mke2fs", "-q", "-t", "ext4", "-E", "lazy_itable_init=1,root_owner=0:0", "-d", root, image + ".new", size], check=True)
        os.rename(image + ".new", image)
    finally:
        shutil.rmtree(root, ignore_errors=True)
    return Disk(folder, image)


# --- the machine

class Machine:
    """A guest from power on until it is ended; what it says on its console is kept in FOLDER/NAME.console."""

    def __init__(self, disk, name, memory_mb=1024, rtc="base=utc", append="", screen="1280x720"):
        kvm = os.environ.get("BANDTALLY_ACCEL") == "kvm"
        self.sockets = tempfile.mkdtemp(prefix="bandtally-guest-")
        width, height = screen.split("x")
        accel = ["-accel", "kvm", "-cpu", "host"] if kvm else ["-accel", "tcg,thread=multi,tb-size=512", "-cpu", "Nehalem"]
        clock = "" if kvm else "tsc=unstable "
        self.console = "%s/%s.console" % (disk.folder, name)
        self.log = open(self.console, "ab")
        self.began = time.monotonic()
        self.process = subprocess.Popen(
            ["setpriv", "--pdeathsig", "KILL",  # it does not outlive a test that is cut off
             "qemu-system-x86_64", "-machine", "q35", *accel, "-smp", "2", "-m", str(memory_mb), "-nodefaults", "-no-user-config",
             "-display", "none", "-no-reboot", "-kernel", disk.kernel, "-initrd", disk.initrd, "-rtc", rtc,
             "-append", "root=/dev/vda rw console=ttyS0 panic=-1 mitigations=off quiet systemd.show_status=1 " + clock + append,
             "-drive", "if=none,id=disk,file=%s,format=raw,cache=writeback" % disk.image, "-device", "virtio-blk-pci,drive=disk",
             "-serial", "stdio", "-qmp", "unix:%s/qmp,server=on,wait=off" % self.sockets,
             "-chardev", "socket,id=line,path=%s/line,server=on,wait=off" % self.sockets, "-device", "isa-serial,chardev=line,index=1",
             "-device", "qemu-xhci,id=xhci", "-device", "virtio-rng-pci", "-device", "virtio-vga,xres=%s,yres=%s" % (width, height)],
            stdin=subprocess.DEVNULL, stdout=self.log, stderr=self.log)
        self.qmp = qmp.connect(self.sockets + "/qmp").makefile("rw")
        self.qmp.readline()
        self.order("qmp_capabilities")
        self.line = qmp.connect(self.sockets + "/line")
        self.heard, self.number = b"", 0

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.cut()

    def order(self, name, **arguments):
        """To QEMU itself."""
        return qmp.order(self.qmp, name, arguments)

    def answer(self, number, seconds):
        until = time.monotonic() + seconds
        while True:
            *lines, self.heard = self.heard.split(b"\n")
            for text in lines:
                words = text.strip().split(b" ")
                if words[0] == b"@%d" % number:
                    return int(words[1]), base64.b64decode(words[2] if len(words) > 2 else b"")
            self.line.settimeout(max(0.01, until - time.monotonic()))
            try:
                more = self.line.recv(1 << 16)
            except socket.timeout:
                more = b""
            if not more:
                raise TimeoutError("the machine did not answer within %d s: see %s" % (seconds, self.console))
            self.heard += more

    def ready(self, seconds=400):
        """Waits until it takes orders; in how many seconds from power on it did."""
        self.answer(0, seconds)
        return time.monotonic() - self.began

    def tried(self, command, seconds=120):
        """(how it ended, what it said). What the command leaves running must not hold its output: >/dev/null 2>&1 &."""
        self.number += 1
        self.line.sendall(b"%d %s\n" % (self.number, base64.b64encode(command.encode())))
        code, said = self.answer(self.number, seconds)
        return code, said.decode(errors="replace")

    def run(self, command, seconds=120):
        """What it said; an order that fails ends the test."""
        code, said = self.tried(command, seconds)
        if code:
            raise RuntimeError("%s\nended with %d: %s" % (command, code, said))
        return said

    def fetch(self, path):
        """A file of the guest, as bytes."""
        return base64.b64decode(self.run("base64 -w 0 '%s'" % path))

    def plug(self, name="scanner", serial="SN0001"):
        """A scanner: QEMU's USB keyboard, vendor 0627, product 0001."""
        self.order("device_add", driver="usb-kbd", id=name, bus="xhci.0", serial=serial)

    def pull(self, name="scanner"):
        self.order("device_del", id=name)

    def type(self, text, hold_ms=20):
        """With Enter. QEMU's own queue loses keys that are shorter than 16 ms."""
        for c in text + "\n":
            names = {"\n": ["ret"], "-": ["minus"]}.get(c, ["shift", c.lower()] if c.isupper() else [c])
            self.order("send-key", keys=[{"type": "qcode", "data": n} for n in names], **{"hold-time": hold_ms})
            time.sleep(hold_ms * 1.5 / 1000)

    def picture(self, path, form="png"):
        """What its screen shows."""
        self.order("screendump", filename=os.path.abspath(path), format=form)

    def off(self, seconds=120):
        """In order, as by its button; in how many seconds."""
        began = time.monotonic()
        self.line.sendall(b"0 %s\n" % base64.b64encode(b"systemctl poweroff"))
        self.process.wait(seconds)
        return time.monotonic() - began

    def cut(self):
        """The plug is pulled: what the guest had not brought to its disk is lost."""
        self.process.kill()
        self.process.wait()
        self.log.close()
        shutil.rmtree(self.sockets, ignore_errors=True)
