"""Settings from a CSV sheet and from a studio: the table, the JSON, and every bad sheet."""

import json
import math
import pathlib
import re
import unittest

import jsonschema

from objective import designed_length, objective, played
from program import AS_OF, BatchTest

SCHEMA = pathlib.Path(__file__).parents[3] / "docs/schemas/lowledger.settings-1.schema.json"
KINDS = pathlib.Path(__file__).parents[3] / "model/horns/kinds"
SHEET = """note,fingering,cents,take
Bb1,0,38,1
A1,2,34,1
Ab1,1,9,1
Db2,23,-4,1
F2,0,41,1
Bb2,0,36,1
Bb1,0,42,2
A1,2,30,2
Ab1,1,"8,5",2
Db2,23,-9,2
F2,0,35,2
Bb2,0,39,2
"""
SLIDES = "slide,position,least,travel\nmain,10,5,70\nfirst,10,3,50\nsecond,5,2,25\nthird,25,3,70\n"


class Settings(BatchTest):
    def sheet_words(self, sheet=SHEET, slides=SLIDES, kind="bbb-tuba-3"):
        words = ["settings", "--sheet", self.file("sheet.csv", sheet), "--kind", kind, "--on", AS_OF]
        if slides is not None:
            words += ["--slides", self.file("slides.csv", slides)]
        return words

    def json_of(self, *words):
        settings = json.loads(self.done(*words, "--json"))
        with open(SCHEMA, encoding="utf-8") as file:
            schema = json.load(file)
        jsonschema.Draft202012Validator.check_schema(schema)
        jsonschema.Draft202012Validator(schema).validate(settings)
        return settings

    def check_objective(self, settings):
        told = settings["objective"]
        for position, key in (("now_mm", "before_square_cents"), ("recommended_mm", "after_square_cents")):
            self.assertAlmostEqual(objective(settings, position) / told[key], 1.0, delta=1e-9, msg=position)
        self.assertAlmostEqual(sum(note["weight"] for note in settings["notes"]), 1.0, delta=1e-12)
        certificate = settings["certificate"]
        self.assertTrue(certificate["closed"], certificate)
        self.assertLessEqual(certificate["bound_square_cents"], told["after_square_cents"] * (1 + 1e-9))

    def test_json_of_a_sheet_recomputes_its_objective(self):
        settings = self.json_of(*self.sheet_words())
        self.check_objective(settings)
        main = settings["slides"][0]
        self.assertEqual((main["slide"], main["advice"], main["now_mm"]), ("main", "move", 10))
        self.assertGreater(main["change_mm"], 0, "a sharp horn is pulled")
        self.assertLess(settings["objective"]["after_square_cents"], settings["objective"]["before_square_cents"])
        self.assertEqual(len(settings["sheets"][0]["readings"]), 12)

    def test_json_with_the_teachers_hand(self):
        settings = self.json_of(*self.sheet_words(), "--fix", "main", "--step", "0", "--level", "advanced")
        self.check_objective(settings)
        self.assertEqual(settings["slides"][0]["advice"], "fixed")
        self.assertEqual(settings["slides"][0]["change_mm"], 0)
        self.assertEqual(settings["constants"]["step_mm"], 0)
        self.assertEqual(settings["for"]["level"], "advanced")

    def test_json_of_every_kind_recomputes_its_objective(self):
        kinds = [line.split()[0] for line in self.done("kinds").splitlines()]
        self.assertIn("bbb-tuba-4", kinds)
        for kind in kinds:
            chart = json.loads(self.done("chart", kind, "--json"))
            read = [note for note in chart["notes"] if note["usual"]["partial"] in (2, 3, 4, 6)]
            sheet = "note,fingering,cents\n" + "".join(
                f"{note['note']},{note['usual']['fingering']},{(7 * at) % 31 - 9}\n" for at, note in enumerate(read))
            with self.subTest(kind):
                settings = self.json_of(*self.sheet_words(sheet, slides=None, kind=kind))
                self.check_objective(settings)
                self.check_hand_slide(settings, is_trombone="p" in read[0]["usual"]["fingering"])

    def check_hand_slide(self, settings, is_trombone):
        """Ways are weighed, and places given, with first a little out; offsets bring the notes in tune."""
        home = settings["constants"]["hand_slide_home_mm"]
        if not is_trombone:
            self.assertIsNone(settings["hand_slide"])
            self.assertEqual(home, 0)
            return
        self.assertGreater(home, 0)
        believed = {(note["note"], note["fingering"]): note for note in settings["profile"]["notes"]}
        for note in settings["notes"]:
            for way in note["ways"]:
                lowered = 1200 * math.log2(1 + 2 * home / designed_length(settings, way["fingering"]))
                expected = believed[note["note"], way["fingering"]]["lean_for_slides_cents"] - lowered
                self.assertAlmostEqual(way["estimate_cents"], expected, delta=1e-6)
        for place in settings["hand_slide"]["notes"]:
            position, down = played(place["fingering"])
            first = designed_length(settings, f"p1{''.join('+' + valve for valve in sorted(down))}")
            self.assertAlmostEqual(place["plain_mm"], home + first / 2 * (2 ** ((position - 1) / 12) - 1), delta=1e-6)
            self.assertAlmostEqual(place["offset_mm"], place["out_mm"] - place["plain_mm"], delta=1e-9)
            self.assertLessEqual(place["out_mm"], settings["hand_slide"]["end_mm"])
            self.assertGreaterEqual(place["out_mm"], 0)
            self.assertEqual(place["reach"] == "there", place["left_cents"] == 0)

    def test_a_sharp_trombone_is_pulled_until_first_can_be_played_a_little_out(self):
        sheet = "note,fingering,cents,take\n" + "".join(f"{note},p1,40,{take}\n" for note in ("Bb2", "F3", "Bb3", "F4") for take in (1, 2, 3))
        slides = "slide,position,least,travel\nmain,15,5,65\n"
        for level, home, kappa in (("beginner", 3, 0.1), ("middle", 10, 0.2), ("advanced", 12, 0.3)):
            words = self.sheet_words(sheet, slides, kind="tenor-trombone") + ["--level", level]
            settings = self.json_of(*words)
            self.assertEqual(settings["hand_slide"]["home_mm"], home)
            self.assertGreater(settings["slides"][0]["change_mm"], 0, level)
            places = {note["note"]: note for note in settings["hand_slide"]["notes"]}
            self.assertLess(places["D4"]["out_mm"], places["Bb3"]["out_mm"], "the fifth partial is flat")
            self.assertIn("hand slide all the way in", self.done(*words))
            # With the band's note at zero it reads sharp by just what first played out takes off.
            settings = self.json_of(*words, "--band-note-at-zero", "--step", "0")
            closed = (1 - kappa) * 1200 * math.log2(1 + 2 * home / settings["tube"]["open_mm"])
            self.assertAlmostEqual(settings["card"]["band_note"]["reading_cents"], 0, delta=0.05)
            self.assertAlmostEqual(settings["card"]["steps"][0]["aim_cents"], closed, delta=0.05)

    def test_a_teachers_own_kind_by_file_or_folder(self):
        text = re.sub(r'(?m)^id = "bbb-tuba-3"', 'id = "old-tuba"', (KINDS / "bbb-tuba-3.toml").read_text(encoding="utf-8"))
        text = re.sub(r'(?m)^name = ".*"$', 'name = "Our old tuba"', text, count=1)
        file = self.file("kinds/old.toml", text)
        plain = self.done(*self.sheet_words())
        self.assertEqual(plain.replace("BBb tuba, three valves", "Our old tuba"), self.done(*self.sheet_words(kind=str(file))))
        self.assertIn("Our old tuba", self.done(*self.sheet_words(kind="old-tuba"), "--kinds", file.parent))
        self.assert_says(self.refused(*self.sheet_words(kind="old-tuba")), "old-tuba", "bbb-tuba-3")
        self.assert_says(self.refused(*self.sheet_words(kind="kazoo"), "--kinds", file.parent), "kazoo", "old-tuba")
        self.assert_says(self.refused(*self.sheet_words(), "--kinds", file), file, "folder")
        self.assert_says(self.refused(*self.sheet_words(kind=str(file) + ".toml")), "old.toml.toml")
        self.file("kinds/old.toml", text.replace("designed_mm = 20", "designed_mm = -20"))
        self.assert_says(self.refused(*self.sheet_words(kind=str(file))), "old.toml", "line", "designed_mm", "0 to 2000")

    def test_unknown_positions_give_relative_advice(self):
        settings = self.json_of(*self.sheet_words(slides=None))
        self.assertFalse(any(slide["position_known"] for slide in settings["slides"]))
        self.assertIn("unknown", self.done(*self.sheet_words(slides=None)))

    def test_table_says_what_to_do(self):
        table = self.done(*self.sheet_words())
        self.assertIn("Pull the main slide", table)
        self.assertRegex(table, r"(?m)^main +10 +\d+  pull \d+ ")
        self.assertIn("Weighted mean lean", table)

    def test_student_of_a_studio(self):
        sample = self.make_sample()
        settings = self.json_of("settings", "--studio", sample, "--student", "Zosia", "--on", AS_OF)
        self.check_objective(settings)
        self.assertEqual(settings["for"]["kind"], "bbb-tuba-3")
        said = self.refused("settings", "--studio", sample, "--student", "Nobody")
        self.assert_says(said, "Nobody", sample, "Ambrose Tull")
        said = self.refused("settings", "--studio", sample, "--student", "Staszek", "--on", AS_OF)
        self.assert_says(said, "T-9", "--horn MARK")
        said = self.refused("settings", "--studio", sample, "--student", "Zosia", "--horn", "T-99")
        self.assert_says(said, "T-99", "T-1")

    def test_settings_given_out_in_the_sample_are_valid_too(self):
        import sqlite3

        with open(SCHEMA, encoding="utf-8") as file:
            validator = jsonschema.Draft202012Validator(json.load(file))
        connection = sqlite3.connect(f"file:{self.make_sample()}?mode=ro", uri=True)
        self.addCleanup(connection.close)
        given = [json.loads(row[0]) for row in connection.execute("SELECT json FROM given_settings")]
        self.assertGreater(len(given), 15)
        for settings in given:
            validator.validate(settings)
            self.check_objective(settings)

    def test_good_odd_files(self):
        for name, sheet in {
            "mark and CRLF": b"\xef\xbb\xbfnote,fingering,cents\r\nBb2,0,-7\r\n",
            "semicolons": "note;fingering;cents\nBb2;0;-7,5\n",
            "quotes and blank lines": '\n"note","fingering","cents"\n\n"Bb2","0","-7,5"\n,,\n',
        }.items():
            with self.subTest(name):
                self.assertIn("readings used: 1", self.done(*self.sheet_words(sheet)))

    def test_bad_sheets_name_file_line_and_column(self):
        head = "note,fingering,cents\n"
        for sheet, parts in {
            head + "Bb2,0,seven\n": ("line 2", "column cents"),
            head + "Bb2,0,700\n": ("line 2", "column cents"),
            head + "Bb2,0,1\nBb2,9,1\n": ("line 3", "column fingering"),
            head + "Bb2,0,1\nBb2,2,1\n": ("line 3", "column fingering", "Bb2"),
            head + "Bb2,0,1\nF2,0,1\nBb2,0,3\n": ("line 4", "line 2", "take"),
            head + "H2,0,1\n": ("line 2", "column note", "H2"),
            head + "Bb2,0,7,5\n": ("line 2", "quotation marks"),
            head + 'Bb2,0,"7\n': ("line 2", "never closed"),
            "note,cents\nBb2,1\n": ("line 1", "fingering", "missing"),
            "note,fingering,cents,mood\n": ("line 1", "mood"),
            "note,note,fingering,cents\n": ("line 1", "twice"),
            head: ("no reading",),
            "": ("is empty",),
        }.items():
            with self.subTest(sheet):
                self.assert_says(self.refused(*self.sheet_words(sheet)), self.folder / "sheet.csv", *parts)
        said = self.refused(*self.sheet_words("note,fingering,cents\nZoë,0,1\n".encode("latin-1")))
        self.assert_says(said, self.folder / "sheet.csv", "line 2", "UTF-8")

    def test_bad_slides_name_file_line_and_column(self):
        head = "slide,position,least,travel\n"
        for slides, parts in {
            head + "fourth,10,3,90\n": ("line 2", "column slide", "main"),
            head + "main,out,5,70\n": ("line 2", "column position"),
            head + "main,80,5,70\n": ("line 2", "column position"),
            head + "main,10,75,70\n": ("line 2", "column least"),
            head + "main,10,5,70\nmain,10,5,70\n": ("line 3", "line 2"),
        }.items():
            with self.subTest(slides):
                self.assert_says(self.refused(*self.sheet_words(slides=slides)), self.folder / "slides.csv", *parts)

    def test_bad_words_on_the_command_line(self):
        sheet = self.file("sheet.csv", SHEET)
        usual = ["settings", "--sheet", sheet, "--kind", "bbb-tuba-3"]
        self.assert_says(self.refused("settings", "--sheet", sheet, "--kind", "kazoo"), "kazoo", "bbb-tuba-3")
        self.assert_says(self.refused(*usual, "--level", "genius"), "genius", "beginner")
        self.assert_says(self.refused(*usual, "--on", "yesterday"), "yesterday", "2026-11-25")
        self.assert_says(self.refused(*usual, "--fix", "fourth"), "fourth")
        self.assert_says(self.refused(*usual, "--room", "400"), "--room")
        self.assert_says(self.refused(*usual, "--tuner-a4", "44"), "--tuner-a4")
        missing = self.folder / "none.csv"
        self.assert_says(self.refused("settings", "--sheet", missing, "--kind", "bbb-tuba-3"), missing)
        self.assert_says(self.refused("settings", "--sheet", self.folder, "--kind", "bbb-tuba-3"), "folder")
        self.refused("settings", code=2)
        self.refused("settings", "--sheet", sheet, code=2)
        self.refused("settings", "--sheet", sheet, "--kind", "bbb-tuba-3", "--studio", "x", code=2)
        self.refused("tune", code=2)
        self.refused(code=2)

    def test_a_full_device_is_told(self):
        with open("/dev/full", "w", encoding="utf-8") as full:
            self.refused(*self.sheet_words(), "--json", out=full)


if __name__ == "__main__":
    unittest.main()
