"""Runs lowledger-batch as a process, for the tests beside this file. LOWLEDGER_BATCH names the program."""

import os
import pathlib
import subprocess
import tempfile
import unittest

PROGRAM = os.environ["LOWLEDGER_BATCH"]
DATA = pathlib.Path(__file__).parent / "data"
AS_OF = "2026-11-25"


def run(*words, limit_bytes=None, out=subprocess.PIPE, cwd=None):
    """The finished process; limit_bytes is the largest file it may write."""

    def limit():
        import resource
        import signal

        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (limit_bytes, limit_bytes))

    return subprocess.run(
        [PROGRAM, *map(str, words)],
        stdout=out,
        stderr=subprocess.PIPE,
        encoding="utf-8",
        timeout=120,
        cwd=cwd,
        check=False,
        preexec_fn=limit if limit_bytes is not None else None,
    )


class BatchTest(unittest.TestCase):
    """Gives each test an empty folder and one sample studio for all."""

    sample_folder = None

    @classmethod
    def setUpClass(cls):
        cls.sample_folder = tempfile.TemporaryDirectory()
        cls.sample = pathlib.Path(cls.sample_folder.name) / "sample.lowledger"

    @classmethod
    def tearDownClass(cls):
        cls.sample_folder.cleanup()

    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)

    def make_sample(self):
        if not self.sample.exists():
            self.done("make-studio", self.sample, "--as-of", AS_OF)
        return self.sample

    def file(self, name, content):
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
        return path

    def done(self, *words, **how):
        finished = run(*words, **how)
        self.assertEqual(finished.returncode, 0, finished.stderr)
        return finished.stdout

    def refused(self, *words, code=1, **how):
        """What it says on the error stream; nothing may be on the other."""
        finished = run(*words, **how)
        self.assertEqual(finished.returncode, code, (finished.stdout, finished.stderr))
        self.assertFalse(finished.stdout)
        self.assertTrue(finished.stderr.endswith("\n"))
        return finished.stderr

    def assert_says(self, sentence, *parts):
        for part in parts:
            self.assertIn(str(part), sentence)
        self.assertRegex(sentence.rstrip(), r"[.!)]$")
        self.assertNotIn("SQL", sentence)
