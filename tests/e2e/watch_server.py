"""What `purgewright watch` answers to whom, and how it ends: watch_server.py PROGRAM JOB

Requests as any program may send them, by Python's own HTTP client; sockets as the kernel lists them (proc(5)).
"""

import http.client
import pathlib
import signal
import socket
import subprocess
import sys
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "browser"))
from watched import Watched  # noqa: E402

PROGRAM, JOB = sys.argv[1:3]
TEXT = pathlib.Path(JOB).read_text()
LOOPBACK = "0100007F"  # 127.0.0.1 as /proc/net/tcp writes it
LISTENING = "0A"


def listening(port):
    """Addresses on which the port is open, of both versions of IP."""
    found = []
    for table in ("/proc/net/tcp", "/proc/net/tcp6"):
        for line in pathlib.Path(table).read_text().splitlines()[1:]:
            _, local, _, state = line.split()[:4]
            address, number = local.split(":")
            if int(number, 16) == port and state == LISTENING:
                found.append(address)
    return found


class Server(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.watched = Watched(PROGRAM, {"logger.yaml": TEXT})
        cls.page = f"/{cls.watched.token}/1/"

    @classmethod
    def tearDownClass(cls):
        cls.watched.close()

    def ask(self, path=None, method="GET", host=None, body=None, **headers):
        connection = http.client.HTTPConnection("127.0.0.1", self.watched.port, timeout=20)
        connection.putrequest(method, path or self.page, skip_host=True)
        for name, value in {"Host": host or f"127.0.0.1:{self.watched.port}", **headers}.items():
            if value is not None:
                connection.putheader(name.replace("_", "-"), value)
        if body:
            connection.putheader("Content-Length", str(len(body)))
        connection.endheaders(body)
        answer = connection.getresponse()
        answer.text = answer.read().decode()
        connection.close()
        return answer

    def test_who_knows_the_address_gets_the_page(self):
        answer = self.ask()
        self.assertEqual(answer.status, 200)
        self.assertIn("<!DOCTYPE html>", answer.text)
        self.assertEqual(self.ask(host=f"localhost:{self.watched.port}").status, 200)
        self.assertEqual(self.ask(Origin=f"http://127.0.0.1:{self.watched.port}").status, 200)
        first = self.ask(f"/{self.watched.token}/")
        self.assertEqual((first.status, first.getheader("Location")), (303, "1/"))

    def test_headers_keep_the_page_to_itself(self):
        answer = self.ask()
        policy = answer.getheader("Content-Security-Policy")
        for rule in ("default-src 'none'", "connect-src 'self'", "frame-ancestors 'none'", "form-action 'none'"):
            self.assertIn(rule, policy)
        self.assertNotIn("unsafe", policy)
        self.assertEqual(answer.getheader("X-Content-Type-Options"), "nosniff")
        self.assertEqual(answer.getheader("Referrer-Policy"), "no-referrer")
        self.assertEqual(answer.getheader("Cache-Control"), "no-store")
        self.assertEqual(answer.getheader("Cross-Origin-Resource-Policy"), "same-origin")
        self.assertIsNone(answer.getheader("Access-Control-Allow-Origin"))

    def test_another_host_is_refused(self):
        for host in (f"example.net:{self.watched.port}", "127.0.0.1", f"127.0.0.1:{self.watched.port + 1}"):
            answer = self.ask(host=host)
            self.assertEqual(answer.status, 403, host)
            self.assertNotIn("logger", answer.text)

    def test_another_origin_is_refused(self):
        for origin in ("http://example.net", "null", f"http://127.0.0.1:{self.watched.port + 1}"):
            self.assertEqual(self.ask(Origin=origin).status, 403, origin)
        self.assertEqual(self.ask(Sec_Fetch_Site="cross-site").status, 403)

    def test_without_the_token_there_is_nothing(self):
        for path in ("/", "/1/", "/favicon.ico", "/" + "0" * 32 + "/1/", f"/{self.watched.token}", f"//{self.watched.token}/1/"):
            self.assertEqual(self.ask(path).status, 404, path)

    def test_only_get_is_taken(self):
        for method in ("POST", "PUT", "DELETE", "OPTIONS", "HEAD", "PATCH"):
            answer = self.ask(method=method, body=b"x=1" if method in ("POST", "PUT") else None)
            self.assertEqual(answer.status, 405, method)
            self.assertEqual(answer.getheader("Allow"), "GET")
        self.assertEqual(self.ask("/", method="POST").status, 404)

    def test_no_other_file_is_handed_out(self):
        for path in ("2/", "1/../../etc/passwd", "1/%2e%2e/%2e%2e/etc/passwd", "1//etc/passwd", "1/drawings/", "1/owner",
                     "1/drawings/..%2f..%2fowner", "1/assembly.step", "99999999999999999999/", "-1/", "1/news", "1/news?after=x"):
            self.assertEqual(self.ask(f"/{self.watched.token}/{path}").status, 404, path)

    def test_it_listens_on_loopback_alone(self):
        self.assertEqual(listening(self.watched.port), [LOOPBACK])

    def test_a_port_that_is_taken_is_named(self):
        other = subprocess.run([PROGRAM, "watch", JOB, "--port", str(self.watched.port)], capture_output=True, text=True,
                               timeout=30, check=False)
        self.assertEqual(other.returncode, 2)
        self.assertIn(f"port {self.watched.port} of 127.0.0.1 is not free", other.stderr)

    def test_half_a_request_holds_nobody_up(self):
        with socket.create_connection(("127.0.0.1", self.watched.port)) as half:
            half.sendall(b"GET / HT")
            self.assertEqual(self.ask().status, 200)


class End(unittest.TestCase):
    def test_ctrl_c_ends_it_cleanly_while_it_builds(self):
        for wait in (0.0, 1.0):
            watched = Watched(PROGRAM, {"logger.yaml": TEXT})
            self.addCleanup(watched.close)
            time.sleep(wait)
            status, took = watched.end()
            self.assertEqual((status, watched.said), (0, ""))
            self.assertLess(took, 5)
            self.assertEqual(watched.left(), [])
            self.assertEqual(listening(watched.port), [])
            self.assertEqual([p.name for p in watched.jobs.iterdir()], ["logger.yaml"])
            self.assertEqual(watched.paths[0].read_text(), TEXT)
            self.assertEqual([p.name for p in pathlib.Path(watched.folder.name).iterdir() if p.name not in ("jobs", "tmp")], [])

    def test_what_a_killed_run_leaves_the_next_removes(self):
        watched = Watched(PROGRAM, {"logger.yaml": TEXT})
        self.addCleanup(watched.close)
        watched.end(by=signal.SIGKILL)
        self.assertEqual(len(watched.left()), 1)
        again = subprocess.Popen([PROGRAM, "watch", str(watched.paths[0])], stdout=subprocess.PIPE, text=True,
                                 env={"TMPDIR": str(watched.temporary)})
        again.stdout.readline()
        self.assertEqual(len(watched.left()), 1)
        again.send_signal(signal.SIGINT)
        again.communicate(timeout=30)
        self.assertEqual((again.returncode, watched.left()), (0, []))

    def test_what_is_no_file_is_refused(self):
        for word, said in (("-", "a pipe is read once"), ("nowhere.yaml", "there is no such file"), ("/dev/null", "is no file")):
            done = subprocess.run([PROGRAM, "watch", word], capture_output=True, text=True, timeout=30, check=False)
            self.assertEqual(done.returncode, 2)
            self.assertIn(said, done.stderr)
            self.assertEqual(done.stdout, "")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1], verbosity=2)
