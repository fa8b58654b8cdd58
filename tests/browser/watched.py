"""`purgewright watch` as a process, its job in a folder of its own: for the tests of what it serves."""

import os
import pathlib
import signal
import subprocess
import tempfile
import time


class Watched:
    """The program at work on copies of jobs; `address` is what it printed."""

    def __init__(self, program, jobs, *options):
        self.folder = tempfile.TemporaryDirectory()
        self.jobs = pathlib.Path(self.folder.name) / "jobs"
        self.temporary = pathlib.Path(self.folder.name) / "tmp"
        self.jobs.mkdir()
        self.temporary.mkdir()
        self.paths = []
        for name, text in jobs.items():
            self.paths.append(self.jobs / name)
            self.paths[-1].write_text(text)
        self.process = subprocess.Popen(
            [program, "watch", *[str(p) for p in self.paths], *options], stdout=subprocess.PIPE, stderr=subprocess.PIPE,
            text=True, env={**os.environ, "TMPDIR": str(self.temporary)}, cwd=self.folder.name)
        self.address = self.process.stdout.readline().strip()
        if not self.address:
            raise AssertionError(self.process.stderr.read())
        self.port = int(self.address.split(":")[2].split("/")[0])
        self.token = self.address.split("/")[3]

    def save(self, text, job=0, by_rename=False):
        """When it was saved, in seconds since 1970."""
        path = self.paths[job]
        if by_rename:
            other = path.with_suffix(".new")
            other.write_text(text)
            saved = time.time()
            os.replace(other, path)
            return saved
        saved = time.time()
        path.write_text(text)
        return saved

    def end(self, by=signal.SIGINT):
        """Its exit status, and how long it took to end."""
        begin = time.monotonic()
        if self.process.poll() is None:
            self.process.send_signal(by)
        self.said = self.process.communicate(timeout=30)[1]
        return self.process.returncode, time.monotonic() - begin

    def left(self):
        return sorted(p.name for p in self.temporary.iterdir())

    def close(self):
        if self.process.poll() is None:
            self.process.kill()
            self.process.communicate()
        self.folder.cleanup()
