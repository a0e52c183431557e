-- How notes are named and written, for the studio and for a student; the studio's own sentences and picture.

ALTER TABLE studio ADD COLUMN naming TEXT NOT NULL DEFAULT 'english'
    CONSTRAINT "notes are named english, german or solfege" CHECK (naming IN ('english', 'german', 'solfege'));

-- Key of a reader of the horn's kind; empty: the kind's first.
ALTER TABLE student ADD COLUMN reader TEXT NOT NULL DEFAULT '';
ALTER TABLE student ADD COLUMN accidentals TEXT
    CONSTRAINT "accidentals are flats or sharps" CHECK (accidentals IN ('flats', 'sharps'));

-- A teacher's own wording of a sentence.
CREATE TABLE studio_text (
    sentence TEXT PRIMARY KEY,
    text TEXT NOT NULL,
    CONSTRAINT "a text belongs to a sentence" CHECK (sentence <> '')
) STRICT, WITHOUT ROWID;

CREATE TABLE studio_picture (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    type TEXT NOT NULL,
    bytes BLOB NOT NULL,
    CONSTRAINT "a picture is a PNG or a JPEG" CHECK (type IN ('png', 'jpeg')),
    CONSTRAINT "a picture has at most four million bytes" CHECK (length(bytes) BETWEEN 1 AND 4000000)
) STRICT;
