-- A studio as version 1 of the file held it, records and all.
PRAGMA application_id = 1282894951;
PRAGMA user_version = 1;
BEGIN TRANSACTION;
CREATE TABLE given_settings (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    student_id INTEGER NOT NULL REFERENCES student (id),
    horn_id INTEGER NOT NULL REFERENCES horn (id),
    sheet_id INTEGER REFERENCES tuning_sheet (id),
    on_date TEXT NOT NULL,
    engine TEXT NOT NULL,
    json TEXT NOT NULL,
    moved_on_date TEXT,
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(on_date, '+0 days') IS on_date AND on_date BETWEEN '1900-01-01' AND '2199-12-31'
           AND date(moved_on_date, '+0 days') IS moved_on_date),
    CONSTRAINT "settings are kept as JSON" CHECK (json LIKE '%{%}%')
) STRICT;
INSERT INTO "given_settings" VALUES(1,1,1,1,'2026-11-25','0.1.0','{"format": "lowledger.settings/1"}','2026-11-26');
CREATE TABLE horn (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    kind_id TEXT NOT NULL,
    kind_text TEXT NOT NULL,
    mark TEXT NOT NULL,
    owner_student_id INTEGER REFERENCES student (id),
    maker_and_model TEXT NOT NULL,
    serial_number TEXT NOT NULL,
    remarks TEXT NOT NULL,
    archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
    CONSTRAINT "a horn has a kind" CHECK (kind_id <> '')
) STRICT;
INSERT INTO "horn" VALUES(1,'an-invented-kind','id = "an-invented-kind"
name = ''with \ and ♭''
','E-1',1,'none, none','0007','dent in the bow',1);
INSERT INTO "horn" VALUES(2,'an-invented-kind','','T-4',NULL,'','','',0);
CREATE TABLE horn_slide (
    horn_id INTEGER NOT NULL REFERENCES horn (id),
    slide TEXT NOT NULL,
    -- The slide's place in the kind's order, from 0.
    place INTEGER NOT NULL,
    least_mm REAL NOT NULL,
    travel_mm REAL NOT NULL,
    stuck INTEGER NOT NULL CHECK (stuck IN (0, 1)),
    PRIMARY KEY (horn_id, slide),
    CONSTRAINT "a slide has a key" CHECK (slide <> ''),
    CONSTRAINT "a slide's least lies between 0 and its travel" CHECK (least_mm BETWEEN 0 AND travel_mm),
    CONSTRAINT "a slide's travel is at most 2000 mm" CHECK (travel_mm <= 2000)
) STRICT, WITHOUT ROWID;
INSERT INTO "horn_slide" VALUES(1,'first',1,2.0,60.0,0);
INSERT INTO "horn_slide" VALUES(1,'main',0,0.0,95.0,0);
INSERT INTO "horn_slide" VALUES(1,'second',2,0.0,25.0,1);
INSERT INTO "horn_slide" VALUES(2,'first',1,2.0,60.0,0);
INSERT INTO "horn_slide" VALUES(2,'main',0,0.0,95.0,0);
INSERT INTO "horn_slide" VALUES(2,'second',2,0.0,25.0,0);
CREATE TABLE horn_use (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    student_id INTEGER NOT NULL REFERENCES student (id),
    horn_id INTEGER NOT NULL REFERENCES horn (id),
    from_date TEXT NOT NULL,
    until_date TEXT,
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(from_date, '+0 days') IS from_date AND from_date BETWEEN '1900-01-01' AND '2199-12-31'
           AND date(until_date, '+0 days') IS until_date),
    CONSTRAINT "a horn is given back no earlier than it was taken"
        CHECK (until_date BETWEEN from_date AND '2199-12-31')
) STRICT;
INSERT INTO "horn_use" VALUES(1,2,2,'2026-09-01','2026-12-31');
INSERT INTO "horn_use" VALUES(2,1,1,'2026-09-01',NULL);
CREATE TABLE reading (
    sheet_id INTEGER NOT NULL REFERENCES tuning_sheet (id),
    -- Sounding pitch; 69 is A4.
    note_midi INTEGER NOT NULL,
    -- Valves down, '0' or their numbers in order.
    valves TEXT NOT NULL,
    -- Of the hand slide, 1 closed; 0 on a horn without one.
    hand_position INTEGER NOT NULL,
    -- 0 where it was not said.
    partial INTEGER NOT NULL,
    take INTEGER NOT NULL,
    cents REAL NOT NULL,
    -- The reading's place on the sheet, from 0.
    place INTEGER NOT NULL,
    PRIMARY KEY (sheet_id, note_midi, valves, hand_position, partial, take),
    CONSTRAINT "a note lies between 0 and 127 in MIDI" CHECK (note_midi BETWEEN 0 AND 127),
    CONSTRAINT "valves are 0 or numbers from 1 to 8"
        CHECK (valves = '0' OR (valves <> '' AND valves NOT GLOB '*[^1-8]*')),
    CONSTRAINT "a hand slide has seven positions" CHECK (hand_position BETWEEN 0 AND 7),
    CONSTRAINT "a partial lies between 1 and 32" CHECK (partial BETWEEN 0 AND 32),
    CONSTRAINT "takes count from 1 to 99" CHECK (take BETWEEN 1 AND 99),
    CONSTRAINT "a reading lies within an octave" CHECK (cents BETWEEN -1200 AND 1200)
) STRICT, WITHOUT ROWID;
INSERT INTO "reading" VALUES(1,34,'0',0,2,1,-50.0,5);
INSERT INTO "reading" VALUES(1,41,'124',0,3,1,12.5,1);
INSERT INTO "reading" VALUES(1,41,'13',0,3,2,28.0,4);
INSERT INTO "reading" VALUES(1,44,'1',0,4,1,0.1,2);
INSERT INTO "reading" VALUES(1,46,'0',0,4,1,-7.0,0);
INSERT INTO "reading" VALUES(1,46,'0',0,4,2,-6.0,3);
INSERT INTO "reading" VALUES(1,53,'1',6,5,3,3.0,6);
CREATE TABLE sheet_position (
    sheet_id INTEGER NOT NULL REFERENCES tuning_sheet (id),
    slide TEXT NOT NULL,
    position_mm REAL NOT NULL,
    PRIMARY KEY (sheet_id, slide),
    CONSTRAINT "a slide has a key" CHECK (slide <> ''),
    CONSTRAINT "a slide stands between 0 and 2000 mm" CHECK (position_mm BETWEEN 0 AND 2000)
) STRICT, WITHOUT ROWID;
INSERT INTO "sheet_position" VALUES(1,'first',3.33333333333333314829e-01);
INSERT INTO "sheet_position" VALUES(1,'main',20.0);
CREATE TABLE slide_position (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    horn_id INTEGER NOT NULL,
    slide TEXT NOT NULL,
    on_date TEXT NOT NULL,
    position_mm REAL NOT NULL,
    origin TEXT NOT NULL,
    FOREIGN KEY (horn_id, slide) REFERENCES horn_slide (horn_id, slide),
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(on_date, '+0 days') IS on_date AND on_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "a slide stands between 0 and 2000 mm" CHECK (position_mm BETWEEN 0 AND 2000),
    CONSTRAINT "a position is from the start, measured, moved or from a repair"
        CHECK (origin IN ('start', 'measured', 'moved', 'repair'))
) STRICT;
INSERT INTO "slide_position" VALUES(1,1,'main','2026-09-01',20.0,'measured');
CREATE TABLE student (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    called TEXT NOT NULL,
    group_name TEXT NOT NULL,
    level TEXT NOT NULL,
    tolerance_cents REAL,
    remarks TEXT NOT NULL,
    archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
    CONSTRAINT "a student has a name" CHECK (trim(name) <> ''),
    CONSTRAINT "a level is beginner, middle or advanced" CHECK (level IN ('beginner', 'middle', 'advanced')),
    CONSTRAINT "a tolerance is above 0 and at most 100 cents"
        CHECK (tolerance_cents > 0 AND tolerance_cents <= 100)
) STRICT;
INSERT INTO "student" VALUES(1,'Łucja O''Brien-Ζήση','Lu','Year 8; "B" band','advanced',7.25,'first line
second line; DROP TABLE student; --',1);
INSERT INTO "student" VALUES(2,'Mara Lindqvist','','','beginner',NULL,'',0);
CREATE TABLE studio (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    name TEXT NOT NULL,
    teacher TEXT NOT NULL,
    school TEXT NOT NULL,
    a4_hz REAL NOT NULL,
    usual_room_celsius REAL NOT NULL,
    paper TEXT NOT NULL,
    accidentals TEXT NOT NULL,
    CONSTRAINT "A4 lies between 380 and 500 Hz" CHECK (a4_hz BETWEEN 380 AND 500),
    CONSTRAINT "a room is between -30 and 60 C" CHECK (usual_room_celsius BETWEEN -30 AND 60),
    CONSTRAINT "paper is a4 or letter" CHECK (paper IN ('a4', 'letter')),
    CONSTRAINT "accidentals are flats or sharps" CHECK (accidentals IN ('flats', 'sharps'))
) STRICT;
INSERT INTO "studio" VALUES(1,'Invented studio','A. Teacher','No School At All',442.0,19.5,'letter','sharps');
CREATE TABLE tuning_sheet (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    student_id INTEGER NOT NULL REFERENCES student (id),
    horn_id INTEGER NOT NULL REFERENCES horn (id),
    on_date TEXT NOT NULL,
    mouthpiece TEXT NOT NULL,
    warm INTEGER NOT NULL CHECK (warm IN (0, 1)),
    tuner_seen INTEGER NOT NULL CHECK (tuner_seen IN (0, 1)),
    mute INTEGER NOT NULL CHECK (mute IN (0, 1)),
    room_celsius REAL,
    tuner_a4_hz REAL NOT NULL,
    remarks TEXT NOT NULL,
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(on_date, '+0 days') IS on_date AND on_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "a room is between -30 and 60 C" CHECK (room_celsius BETWEEN -30 AND 60),
    CONSTRAINT "A4 lies between 380 and 500 Hz" CHECK (tuner_a4_hz BETWEEN 380 AND 500)
) STRICT;
INSERT INTO "tuning_sheet" VALUES(1,1,1,'2026-11-25','the deep one',0,1,1,17.5,441.0,'a draughty hall');
INSERT INTO "tuning_sheet" VALUES(2,2,2,'2026-11-25','',1,0,0,NULL,440.0,'');
CREATE INDEX student_by_name ON student (archived, name COLLATE NOCASE);
CREATE INDEX horn_by_mark ON horn (archived, mark COLLATE NOCASE);
CREATE INDEX horn_by_owner ON horn (owner_student_id);
CREATE INDEX slide_position_by_slide ON slide_position (horn_id, slide, on_date);
CREATE INDEX slide_position_by_date ON slide_position (horn_id, on_date);
CREATE INDEX horn_use_by_date ON horn_use (from_date);
CREATE INDEX horn_use_by_student ON horn_use (student_id, from_date);
CREATE INDEX horn_use_by_horn ON horn_use (horn_id, from_date);
CREATE INDEX tuning_sheet_by_student ON tuning_sheet (student_id, on_date);
CREATE INDEX tuning_sheet_by_horn ON tuning_sheet (horn_id, on_date);
CREATE INDEX given_settings_by_student ON given_settings (student_id, on_date);
CREATE INDEX given_settings_by_horn ON given_settings (horn_id, on_date);
CREATE INDEX given_settings_by_sheet ON given_settings (sheet_id);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('student',2);
INSERT INTO "sqlite_sequence" VALUES('horn',2);
INSERT INTO "sqlite_sequence" VALUES('slide_position',1);
INSERT INTO "sqlite_sequence" VALUES('horn_use',2);
INSERT INTO "sqlite_sequence" VALUES('tuning_sheet',2);
INSERT INTO "sqlite_sequence" VALUES('given_settings',1);
COMMIT;
