"""A worker that stays open: a record in, a line out, in order, as the guide to scale states it."""

import json
import subprocess
import threading

# Workers of this Python process by command line. Spark keeps its processes from one partition to the
# next, so that a worker starts once for each core.
_open = {}


class JobFailed(Exception):
    """The command line cannot be carried out: no record could be answered."""


def worker(argv, tries=3, patience=120):
    key = tuple(argv)
    if key not in _open:
        _open[key] = LineWorker(argv, tries, patience)
    return _open[key]


class LineWorker:
    """One `face-neck-fhir COMMAND --lines`, started again where it ends before its time.

    tries: how often a record may end a worker before it is kept back.
    patience: seconds that one record may take; then the worker is killed.
    """

    def __init__(self, argv, tries, patience):
        self.argv = list(argv)
        self.patience = patience
        self.tries = tries
        self.process = None

    def answers(self, lines):
        """The lines that answer these, as many and in the same order, all without line feed."""
        done = []
        failed = 0
        while len(done) < len(lines):
            before = len(done)
            done.extend(self._ask(lines[before:]))
            if len(done) == len(lines):
                break
            # Records are taken one after the other, so the first without an answer is the one.
            failed = 1 if len(done) > before else failed + 1
            if failed >= self.tries:
                done.append(kept_back(lines[len(done)]))
                failed = 0
        return done

    def _ask(self, lines):
        """Answers until the worker ends, or to all."""
        if self.process is None:
            self.process = subprocess.Popen(
                self.argv, stdin=subprocess.PIPE, stdout=subprocess.PIPE, bufsize=1 << 16
            )
        process = self.process
        found = []
        over = threading.Event()
        # Written from a thread of its own: both pipes can be full.
        writer = threading.Thread(target=_write, args=(process, lines), daemon=True)
        guard = threading.Thread(target=self._guard, args=(process, found, over), daemon=True)
        writer.start()
        guard.start()
        try:
            while len(found) < len(lines):
                line = process.stdout.readline()
                if not line.endswith(b"\n"):
                    self._ended(process)
                    break
                found.append(line[:-1].decode("utf-8"))
        finally:
            over.set()
            writer.join()
        return found

    def _guard(self, process, found, over):
        seen = 0
        while not over.wait(self.patience):
            if len(found) == seen:
                process.kill()
                return
            seen = len(found)

    def _ended(self, process):
        self.process = None
        code = process.wait()
        # A wrong call ends by itself, and each time; a signal is a worker that was killed.
        if code in (1, 2):
            raise JobFailed("%s ended with %d" % (" ".join(self.argv), code))


def _write(process, lines):
    try:
        for line in lines:
            process.stdin.write(line.encode("utf-8") + b"\n")
        process.stdin.flush()
    except OSError:
        pass  # the worker has ended, which the missing answers tell


def kept_back(line):
    """The answer to a record that ended every worker, in the form of all others that are kept back."""
    found = {
        "code": "internal-fault",
        "severity": "error",
        "message": "the record ended the worker each time",
        "path": [],
        "facts": {"reason": "record"},
    }
    entry = {"reason": "internal-fault", "issues": [found], "raw": line}
    try:
        named = {"id": json.loads(line)["id"]}
    except (ValueError, KeyError, TypeError):
        named = {}
    return json.dumps({**named, "quarantine": entry}, ensure_ascii=False, separators=(",", ":"))
