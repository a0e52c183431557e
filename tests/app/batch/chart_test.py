"""Charts of kinds and of a studio's horns: table, JSON, PDF, one note; own kinds of a teacher; every bad input."""

import json
import pathlib
import subprocess
import unittest

import jsonschema

from program import AS_OF, BatchTest

ROOT = pathlib.Path(__file__).parents[3]
SCHEMA = ROOT / "docs/schemas/lowledger.chart-1.schema.json"
KINDS = ROOT / "model/horns/kinds"


class Chart(BatchTest):
    def json_of(self, *words):
        chart = json.loads(self.done("chart", *words, "--json"))
        with open(SCHEMA, encoding="utf-8") as file:
            schema = json.load(file)
        jsonschema.Draft202012Validator.check_schema(schema)
        jsonschema.Draft202012Validator(schema).validate(chart)
        return chart

    def own_kind(self, file="mine.toml", **changes):
        """A studio's path with a kind of one's own beside it, bbb-tuba-3 with lines changed."""
        (self.folder / "kinds").mkdir(exist_ok=True)
        lines = (KINDS / "bbb-tuba-3.toml").read_text(encoding="utf-8").splitlines()
        for key, value in changes.items():
            at = next(i for i, line in enumerate(lines) if line.startswith(f"{key} = "))
            lines[at] = f"{key} = {value}"
        (self.folder / "kinds" / file).write_text("\n".join(lines) + "\n", encoding="utf-8")
        return self.folder / "mine.lowledger"

    def test_json_of_every_kind_and_reader(self):
        for line in self.done("kinds").splitlines():
            kind = line.split()[0]
            for reader in line.split("readers: ")[1].rstrip(")").split():
                chart = self.json_of(kind, "--reader", reader)
                self.assertEqual((chart["kind"], chart["reader"]["id"]), (kind, reader))
                self.assertGreater(len(chart["notes"]), 20)

    def test_json_holds_what_a_chart_teaches(self):
        notes = {note["note"]: note for note in self.json_of("bbb-tuba-3")["notes"]}
        # Common practice for a BBb tuba: D2 with 1 and 2, the third valve alone as its other fingering.
        self.assertEqual(notes["D2"]["usual"]["fingering"], "12")
        self.assertIn("3", [way["fingering"] for way in notes["D2"]["alternates"]])
        written = {note["note"]: note["written"] for note in
                   self.json_of("euphonium-4-comp", "--reader", "treble-b-flat")["notes"]}
        self.assertEqual(written["Bb3"], "C5")

    def test_slide_places_are_those_of_the_table(self):
        chart = self.json_of("bass-trombone-gb")
        seventh = [place for place in chart["slide_places"] if place["position"] == 7]
        self.assertEqual([place["within_reach"] for place in seventh], [True, False, False, False])
        self.assertIn("F+G♭", self.done("chart", "bass-trombone-gb"))
        self.assertIn("7: out of reach", self.done("chart", "tenor-trombone-f"))

    def test_table_and_note_for_people(self):
        table = self.done("chart", "bbb-tuba-4")
        self.assertRegex(table, r"(?m)^D2 +D2 +12 +\+13 +3 −14")
        self.assertIn("Written in bass clef.", table)
        note = self.done("chart", "bbb-tuba-4", "--note", "Db3")
        self.assertIn("usual: 2. 23 is better in tune", note)
        self.assertRegex(note, r"(?m)^23 +\d+ +\+2 ")

    def test_places_on_the_hand_slide_in_words(self):
        note = self.done("chart", "tenor-trombone-f", "--note", "D4")
        self.assertRegex(note, r"(?m)^p1 .* all the way in, where it stays flat$")
        self.assertRegex(note, r"(?m)^p4 .*\+2 .* a touch further out \(2\Wmm, 1/16\Win\)$")
        self.assertIn("out of reach", self.done("chart", "tenor-trombone-f", "--note", "C2"))
        for way in (note["usual"] for note in self.json_of("tenor-trombone-f")["notes"]):
            self.assertEqual(way["slide_offset_sixteenths_inch"], round(way["slide_offset_mm"] * 16 / 25.4))

    def test_pdf_is_sound_on_both_papers(self):
        for paper in ("a4", "letter"):
            pdf = self.folder / f"{paper}.pdf"
            self.done("chart", "tenor-trombone-f", "--paper", paper, "--into", pdf)
            subprocess.run(["qpdf", "--check", pdf], check=True, capture_output=True)
            text = subprocess.run(["pdftotext", "-layout", pdf, "-"], check=True, capture_output=True,
                                  encoding="utf-8").stdout
            self.assertIn("Where the positions lie", text)
            self.assertIn("out of reach", text)

    def test_horn_of_a_studio_has_its_own_leans(self):
        sample = self.make_sample()
        chart = self.json_of("--studio", sample, "--horn", "T-4", "--on", AS_OF)
        self.assertEqual(chart["horn"]["mark"], "T-4")
        self.assertGreater(chart["horn"]["takes_used"], 0)
        read = [note["usual"] for note in chart["notes"] if note["usual"]["takes"] > 0]
        self.assertTrue(read)
        self.assertTrue(all(way["own_lean_cents"] is not None for way in read))
        self.assertIn(chart["horn"]["student"], self.done("chart", "--studio", sample, "--horn", "t-4", "--on", AS_OF))

    def test_own_kind_joins_the_built_in_ones(self):
        studio = self.own_kind(id='"school-tuba"', name='"Our old tuba"')
        self.assertIn("school-tuba  ", self.done("kinds", "--studio", studio))
        self.assertNotIn("school-tuba", self.done("kinds"))
        self.assertIn("Our old tuba", self.done("chart", "school-tuba", "--studio", studio))

    def test_own_kind_replaces_none(self):
        studio = self.own_kind()
        self.assert_says(self.refused("kinds", "--studio", studio), "mine.toml", "bbb-tuba-3", "comes with the program")
        self.own_kind(id='"one"')
        self.own_kind(file="other.toml", id='"one"')
        self.assert_says(self.refused("kinds", "--studio", studio), "other.toml", "mine.toml", '"one"')

    def test_bad_own_kind_names_file_line_and_key(self):
        studio = self.own_kind(id='"one"', clef='"soprano"')
        self.assert_says(self.refused("kinds", "--studio", studio), "mine.toml", "line", "clef")

    def test_horn_whose_kind_is_not_there_opens_from_its_copy(self):
        sample = self.make_sample()
        copy = self.folder / "moved.lowledger"
        copy.write_bytes(sample.read_bytes())
        import sqlite3
        database = sqlite3.connect(copy)
        database.execute("UPDATE horn SET kind_id = 'gone' WHERE mark = 'T-4'")
        database.commit()
        database.close()
        from program import run
        finished = run("chart", "--studio", copy, "--horn", "T-4", "--on", AS_OF)
        self.assertEqual(finished.returncode, 0, finished.stderr)
        self.assertIn("BBb tuba", finished.stdout)
        self.assert_says(finished.stderr, '"gone"', "T-4", "copy in the studio")
        for words in (["settings", "--studio", copy, "--student", "Odysseas", "--on", AS_OF],
                      ["handouts", copy, "--into", self.folder / "one.pdf", "--student", "Odysseas", "--on", AS_OF]):
            with self.subTest(words[0]):
                finished = run(*words)
                self.assertEqual(finished.returncode, 0, finished.stderr)
                self.assert_says(finished.stderr, '"gone"', "T-4", "copy in the studio")

    def test_what_cannot_be_is_refused(self):
        self.assert_says(self.refused("chart", "kazoo"), "kazoo", "bbb-tuba-3")
        self.assert_says(self.refused("chart", "bbb-tuba-3", "--reader", "soprano"), "soprano", "bass")
        self.assert_says(self.refused("chart", "bbb-tuba-3", "--note", "H9"), "H9", "Bb2")
        self.assert_says(self.refused("chart", "bbb-tuba-3", "--note", "C7"), "C7", "no way")
        self.assert_says(self.refused("chart", "bbb-tuba-3", "--paper", "a5"), "a5", "letter")
        self.assert_says(self.refused("chart", "bbb-tuba-3", "--into", self.folder / "no/where/c.pdf"), "no/where")
        self.assert_says(self.refused("chart", "--studio", self.make_sample(), "--horn", "X"), '"X"', "T-4")
        self.refused("chart", code=2)
        self.refused("chart", "bbb-tuba-3", "--json", "--note", "Bb2", code=2)


if __name__ == "__main__":
    unittest.main()
