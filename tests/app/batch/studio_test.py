"""The sample studio, handouts, and studios that cannot be used."""

import os
import re
import shutil
import sqlite3
import subprocess
import unittest

from program import AS_OF, BatchTest, run


class SampleStudio(BatchTest):
    def test_same_date_and_seed_same_dump(self):
        again = self.folder / "again.lowledger"
        self.done("make-studio", again, "--as-of", AS_OF)
        dump = self.done("dump", self.make_sample())
        self.assertEqual(dump, self.done("dump", again))
        other = self.folder / "other.lowledger"
        self.done("make-studio", other, "--as-of", AS_OF, "--seed", "77")
        self.assertNotEqual(dump, self.done("dump", other))
        self.assertEqual(sorted(p.name for p in self.folder.iterdir()), ["again.lowledger", "other.lowledger"])

    def test_a_week_later_everything_is_a_week_later(self):
        later = self.folder / "later.lowledger"
        self.done("make-studio", later, "--as-of", "2026-12-02")
        dates = [
            [row[0] for row in sqlite3.connect(path).execute("SELECT on_date FROM tuning_sheet ORDER BY id")]
            for path in (self.make_sample(), later)
        ]
        self.assertEqual(len(dates[0]), len(dates[1]))
        self.assertLess(max(dates[0]), AS_OF)
        self.assertGreaterEqual(max(dates[0]), "2026-11-16", "the last sheets are in the last weeks before")
        self.assertEqual(max(dates[0]), "2026-11-20")
        self.assertEqual(max(dates[1]), "2026-11-27")

    def test_a_school_with_what_a_school_has(self):
        connection = sqlite3.connect(self.make_sample())
        self.addCleanup(connection.close)

        def count(sql):
            return connection.execute("SELECT count(*) FROM " + sql).fetchone()[0]

        self.assertIn("invented", connection.execute("SELECT name FROM studio").fetchone()[0])
        self.assertGreaterEqual(count("student"), 20)
        self.assertGreaterEqual(count("horn"), 12)
        self.assertGreaterEqual(count("horn WHERE maker_and_model = ''"), count("horn"))
        kinds = {row[0] for row in connection.execute("SELECT kind_id FROM horn")}
        self.assertLessEqual({"tenor-trombone", "tenor-trombone-f", "bass-trombone-gb", "euphonium-4-comp", "f-tuba-6"}, kinds)
        self.assertGreater(count("reading WHERE hand_position > 0 AND valves <> '0'"), 20, "trombones with their valves")
        self.assertEqual(count("student WHERE reader = 'treble-b-flat'"), 1)
        self.assertGreater(count("slide_position WHERE origin = 'moved'"), 4)
        self.assertGreater(count("given_settings WHERE moved_on_date IS NOT NULL"), 4)
        self.assertEqual(count("reading WHERE abs(cents) > 100"), 0)
        self.assertIn("is sound", self.done("check", self.make_sample()))

    def test_a_book_with_what_a_week_has(self):
        connection = sqlite3.connect(self.make_sample())
        self.addCleanup(connection.close)

        def count(sql):
            return connection.execute("SELECT count(*) FROM " + sql, {"day": AS_OF}).fetchone()[0]

        self.assertEqual(count("term"), 2)
        self.assertGreaterEqual(count("lesson WHERE on_date = :day"), 5)
        self.assertEqual(count("lesson WHERE on_date >= :day AND state <> 'planned'"), 0)
        self.assertEqual(count("lesson WHERE on_date < :day AND state = 'planned'"), 0)
        for state in ("missed with notice", "missed without notice", "moved", "cancelled"):
            self.assertGreater(count(f"lesson WHERE state = '{state}'"), 3, state)
        kept = count("lesson WHERE state = 'kept'")
        self.assertGreater(kept, 300)
        self.assertEqual(count("lesson WHERE state = 'kept' AND done <> '' AND next <> ''"), kept)
        self.assertEqual(
            count("tuning_sheet t WHERE NOT EXISTS (SELECT 1 FROM lesson l WHERE l.student_id = t.student_id"
                  " AND l.on_date = t.on_date AND l.state = 'kept')"), 0, "sheets are taken in lessons that were kept")
        self.assertEqual(count("loan WHERE until_date IS NULL AND due_date < :day"), 1)
        self.assertEqual(count("upkeep WHERE done_on_date IS NULL"), 1)
        self.assertEqual(count("upkeep WHERE next_due_date < :day"), 1)
        self.assertGreater(count("practice_entry"), 500)
        self.assertEqual(count("practice_entry WHERE on_date >= :day"), 0)
        phones = [row[0] for row in connection.execute("SELECT guardian_phone FROM student")]
        self.assertTrue(all(phone.startswith("555-01") for phone in phones))

    def test_nothing_is_overwritten_or_half_made(self):
        there = self.file("there.lowledger", "mine")
        self.assert_says(self.refused("make-studio", there, "--as-of", AS_OF), there, "another name")
        self.assertEqual(there.read_text(), "mine")
        self.assert_says(self.refused("make-studio", self.folder / "no/s.lowledger", "--as-of", AS_OF), "no")
        self.assert_says(self.refused("make-studio", self.folder / "s", "--as-of", "25.11.2026"), "25.11.2026")
        self.refused("make-studio", self.folder / "full.lowledger", "--as-of", AS_OF, limit_bytes=200_000)
        self.assertEqual([p.name for p in self.folder.iterdir()], ["there.lowledger"])


class Handouts(BatchTest):
    def test_one_file_with_a_bookmark_each(self):
        pdf = self.folder / "all.pdf"
        said = self.done("handouts", self.make_sample(), "--into", pdf, "--on", AS_OF)
        count = int(re.match(r"(\d+) handouts", said)[1])
        self.assertGreaterEqual(count, 20)
        text = pdf.read_bytes()
        self.assertTrue(text.startswith(b"%PDF-"))
        check = subprocess.run(["qpdf", "--check", pdf], capture_output=True, check=False)
        self.assertEqual(check.returncode, 0, check.stderr)
        pages = subprocess.run(["qpdf", "--show-npages", pdf], capture_output=True, check=True).stdout
        self.assertEqual(int(pages), count)
        words = subprocess.run(["pdftotext", pdf, "-"], capture_output=True, check=True).stdout.decode()
        for name in ("Zofia Wiśniowiecka-Mróz", "Πηνελόπη Καρδαμύλη", "Мирослава Дубовик"):
            self.assertIn(name, words)
        self.assertNotIn("Rosalind", words)

    def test_a_file_each_for_those_named(self):
        folder = self.folder / "handouts"
        words = ["handouts", self.make_sample(), "--into", folder, "--on", AS_OF, "--student", "Zosia", "Staszek"]
        self.done(*words, "--paper", "letter")
        names = sorted(p.name for p in folder.iterdir())
        self.assertEqual(
            names,
            [
                "Stanisław Źrebiński, T-9.pdf",
                "Stanisław Źrebiński, own (Stanisław).pdf",
                "Zofia Wiśniowiecka-Mróz, T-1.pdf",
            ],
        )
        size = subprocess.run(["pdfinfo", folder / names[2]], capture_output=True, check=True).stdout.decode()
        self.assertIn("612 x 792", size)
        before = [(folder / name).read_bytes() for name in names]
        self.done(*words, "--paper", "letter")
        self.assertEqual(before, [(folder / name).read_bytes() for name in names], "same data, same bytes")

    def test_nothing_is_half_written(self):
        sample = self.make_sample()
        self.assert_says(self.refused("handouts", sample, "--into", self.folder / "no/all.pdf"), self.folder / "no")
        self.assert_says(self.refused("handouts", sample, "--into", self.folder / "no/folder"), self.folder / "no")
        text = self.file("notes.txt", "mine")
        self.assert_says(self.refused("handouts", sample, "--into", text), text, "is a file")
        self.assert_says(self.refused("handouts", sample, "--into", self.folder, "--paper", "a3"), "a3", "letter")
        self.assert_says(self.refused("handouts", sample, "--into", self.folder, "--student", "Nobody"), "Nobody")
        self.assertEqual([p.name for p in self.folder.iterdir()], ["notes.txt"])
        old = self.file("old.pdf", "the one before")
        finished = run("handouts", sample, "--into", old, "--on", AS_OF, limit_bytes=20_000)
        self.assertEqual(finished.returncode, 1, finished.stderr)
        self.assertIn(str(old), finished.stderr)
        self.assertEqual(old.read_text(), "the one before")
        finished = run("handouts", sample, "--into", self.folder / "each", "--on", AS_OF, limit_bytes=20_000)
        self.assertEqual(finished.returncode, 1, finished.stderr)
        self.assertEqual(sorted(p.name for p in self.folder.iterdir()), ["notes.txt", "old.pdf"])


BOOK_PAGES = ("class", "day", "inventory", "repairs", "summaries", "notes", "loans", "cards")


class Pages(BatchTest):
    def test_of_a_class_or_group_only(self):
        sample = self.make_sample()
        pdf = self.folder / "class.pdf"
        self.done("pages", "class", sample, "--into", pdf, "--on", AS_OF, "--group", "Year 8")
        words = subprocess.run(["pdftotext", pdf, "-"], capture_output=True, check=True).stdout.decode()
        self.assertIn("Class list, Year 8", words)
        self.assertIn("Gwydion Prys-Hale", words)
        self.assertNotIn("Zofia", words)
        self.done("pages", "class", sample, "--into", pdf, "--on", AS_OF, "--group", "Beginner tubas")
        self.assert_says(
            self.refused("pages", "class", sample, "--into", pdf, "--on", AS_OF, "--group", "Year 99"), "Year 99", "Year 8"
        )

    def test_every_page_prints_whole(self):
        sample = self.make_sample()
        for what in ("strips", "charts", "forms", "pass", "settings", *BOOK_PAGES):
            with self.subTest(what):
                pdf = self.folder / f"{what}.pdf"
                self.done("pages", what, sample, "--into", pdf, "--on", AS_OF, "--student", "Zosia", "--large-print")
                check = subprocess.run(["qpdf", "--check", pdf], capture_output=True, check=False)
                self.assertEqual(check.returncode, 0, check.stderr)

    def test_a_file_each_with_the_names_of_whose_it_is(self):
        sample = self.make_sample()
        self.done("pages", "summaries", sample, "--into", self.folder / "s", "--on", AS_OF, "--student", "Zosia", "Ambrose")
        self.assertEqual(
            sorted(p.name for p in (self.folder / "s").iterdir()),
            ["Ambrose Tull, Second term.pdf", "Zofia Wiśniowiecka-Mróz, Second term.pdf"],
        )
        self.done("pages", "cards", sample, "--into", self.folder / "c", "--on", AS_OF, "--horn", "T-1", "e-1")
        self.assertEqual(sorted(p.name for p in (self.folder / "c").iterdir()), ["E-1.pdf", "T-1.pdf"])

    def test_a_term_and_days_that_there_are_not(self):
        sample = self.make_sample()
        words = [sample, "--into", self.folder / "x.pdf", "--on", AS_OF]
        self.assert_says(self.refused("pages", "summaries", *words, "--term", "Third"), "Third", "Second term")
        self.assert_says(self.refused("pages", "summaries", *words[:-1], "2031-01-01"), "2031-01-01", "--term")
        self.assert_says(self.refused("pages", "notes", *words, "--from", "1.9."), "--from 1.9.", "2026-11-25")
        self.refused("pages", "notes", *words, "--from", "2026-11-25", "--until", "2026-09-01")
        self.assertFalse((self.folder / "x.pdf").exists())

    def test_a_place_that_cannot_be_written_is_named_and_nothing_half_made(self):
        sample = self.make_sample()
        for place in ("/proc/class.pdf", "/proc/pages", self.folder / "no/class.pdf"):
            with self.subTest(place):
                said = self.refused("pages", "class", sample, "--into", place, "--on", AS_OF)
                self.assert_says(said, str(place).removesuffix("/class.pdf"))
        self.assertEqual(list(self.folder.iterdir()), [])

    def test_a_pdf_that_is_open_elsewhere_is_replaced_whole(self):
        pdf = self.folder / "class.pdf"
        pdf.write_text("the one before")
        with pdf.open() as reader:
            self.done("pages", "class", self.make_sample(), "--into", pdf, "--on", AS_OF)
            self.assertEqual(reader.read(), "the one before", "who has it open reads on in the old one")
        self.assertTrue(pdf.read_bytes().startswith(b"%PDF-"))

    def test_a_bad_kind_of_ones_own_hides_no_page(self):
        studio = self.folder / "studio.lowledger"
        shutil.copyfile(self.make_sample(), studio)
        (self.folder / "kinds").mkdir()
        (self.folder / "kinds" / "broken.toml").write_text("id = 3\n")
        self.done("handouts", studio, "--into", self.folder / "h.pdf", "--on", AS_OF, "--student", "Zosia")
        connection = sqlite3.connect(studio)
        connection.execute("UPDATE horn SET kind_id = 'gone'")
        connection.commit()
        connection.close()
        finished = run("handouts", studio, "--into", self.folder / "h.pdf", "--on", AS_OF, "--student", "Zosia")
        self.assertEqual(finished.returncode, 0, finished.stderr)
        self.assert_says(finished.stderr, "broken.toml", "the copy in the studio is used")

    def test_what_no_font_can_draw_is_named(self):
        path = self.folder / "studio.lowledger"
        shutil.copyfile(self.make_sample(), path)
        connection = sqlite3.connect(path)
        connection.execute("UPDATE student SET name = 'Zosia \U0001F3BA' WHERE name LIKE 'Zofia W%'")
        connection.commit()
        connection.close()
        for words in (["handouts"], ["pages", "forms"]):
            with self.subTest(words):
                finished = run(*words, path, "--into", self.folder / "out.pdf", "--on", AS_OF, "--student", "Zosia")
                self.assertEqual(finished.returncode, 0, finished.stderr)
                self.assert_says(finished.stderr, "\U0001F3BA", '"Zosia \U0001F3BA"', "an empty box")

    def test_a_section_pass_has_one_to_five_notes(self):
        sample = self.make_sample()
        words = ["pages", "pass", sample, "--into", self.folder / "pass.pdf", "--on", AS_OF]
        self.assert_says(self.refused(*words, "--notes", "H7"), "H7", "Bb2")
        self.assert_says(self.refused(*words, "--notes", "C2", "D2", "E2", "F2", "G2", "A2"), "five")
        old = self.file("old.pdf", "the one before")
        for what in ("strips", "charts", "forms", "pass", "settings", *BOOK_PAGES):
            finished = run("pages", what, sample, "--into", old, "--on", AS_OF, limit_bytes=10_000)
            self.assertEqual(finished.returncode, 1, finished.stderr)
            self.assertIn(str(old), finished.stderr)
        self.assertEqual(old.read_text(), "the one before")
        self.assertEqual([p.name for p in self.folder.iterdir()], ["old.pdf"])


class BadStudio(BatchTest):
    def each_verb(self, path):
        yield ["dump", path]
        yield ["check", path]
        yield ["settings", "--studio", path, "--student", "Zosia"]
        yield ["handouts", path, "--into", self.folder / "out.pdf"]

    def all_refuse(self, path, *parts):
        for words in self.each_verb(path):
            with self.subTest(words[0]):
                self.assert_says(self.refused(*words), path, *parts)
        self.assertFalse((self.folder / "out.pdf").exists())

    def copy(self):
        path = self.folder / "studio.lowledger"
        shutil.copyfile(self.make_sample(), path)
        return path

    def test_no_studio(self):
        self.all_refuse(self.folder / "none.lowledger")

    def test_not_a_studio(self):
        self.all_refuse(self.file("shopping.lowledger", "milk, eggs\n" * 200))

    def test_damaged(self):
        path = self.copy()
        whole = path.read_bytes()
        path.write_bytes(whole[:100] + bytes(4000) + whole[4100:])
        self.all_refuse(path)

    def test_newer(self):
        path = self.copy()
        connection = sqlite3.connect(path)
        version = connection.execute("PRAGMA user_version").fetchone()[0]
        connection.execute(f"PRAGMA user_version = {version + 1}")
        connection.close()
        self.all_refuse(path)

    def test_read_only_is_read_and_left_alone(self):
        path = self.copy()
        before = path.read_bytes()
        path.chmod(0o444)
        self.folder.chmod(0o555)
        self.addCleanup(self.folder.chmod, 0o755)
        self.assertIn("Ambrose Tull", self.done("dump", path))
        self.assertIn("is sound", self.done("check", path))
        self.assertEqual(path.read_bytes(), before)

    def test_open_elsewhere(self):
        path = self.copy()
        writer = sqlite3.connect(path, isolation_level=None)
        self.addCleanup(writer.close)
        writer.execute("BEGIN EXCLUSIVE")
        finished = run("check", path)
        self.assertEqual(finished.returncode, 1, finished.stdout)
        self.assert_says(finished.stderr, path)
        writer.execute("ROLLBACK")
        self.assertIn("is sound", self.done("check", path))


if __name__ == "__main__":
    unittest.main()
