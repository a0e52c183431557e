-- The book of a teaching week: more of students and horns; lending and upkeep; terms, timetable and lessons; routines
-- and practice. Half-open spans: the until date is the first day that it is no longer so.

ALTER TABLE studio ADD COLUMN currency TEXT NOT NULL DEFAULT '';

ALTER TABLE student ADD COLUMN year TEXT NOT NULL DEFAULT '';
ALTER TABLE student ADD COLUMN at_home TEXT
    CONSTRAINT "at home a student plays on a horn, the mouthpiece only or nothing"
        CHECK (at_home IN ('horn', 'mouthpiece only', 'nothing'));
ALTER TABLE student ADD COLUMN guardian_name TEXT NOT NULL DEFAULT '';
ALTER TABLE student ADD COLUMN guardian_phone TEXT NOT NULL DEFAULT '';
ALTER TABLE student ADD COLUMN guardian_e_mail TEXT NOT NULL DEFAULT '';
ALTER TABLE student ADD COLUMN goals TEXT NOT NULL DEFAULT '';
ALTER TABLE student ADD COLUMN since_date TEXT
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(since_date, '+0 days') IS since_date AND since_date BETWEEN '1900-01-01' AND '2199-12-31');

ALTER TABLE horn ADD COLUMN inventory_tag TEXT NOT NULL DEFAULT '';
ALTER TABLE horn ADD COLUMN belongs_to TEXT NOT NULL DEFAULT '';
ALTER TABLE horn ADD COLUMN case_text TEXT NOT NULL DEFAULT '';
ALTER TABLE horn ADD COLUMN locker TEXT NOT NULL DEFAULT '';
ALTER TABLE horn ADD COLUMN accessories TEXT NOT NULL DEFAULT '';
ALTER TABLE horn ADD COLUMN condition TEXT NOT NULL DEFAULT '';
ALTER TABLE horn ADD COLUMN value_money INTEGER;
ALTER TABLE horn ADD COLUMN value_currency TEXT
    CONSTRAINT "an amount has a currency" CHECK ((value_money IS NULL) = (value_currency IS NULL));
ALTER TABLE horn ADD COLUMN bought_on_date TEXT
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(bought_on_date, '+0 days') IS bought_on_date
           AND bought_on_date BETWEEN '1900-01-01' AND '2199-12-31');
ALTER TABLE horn ADD COLUMN bought_for_money INTEGER;
ALTER TABLE horn ADD COLUMN bought_for_currency TEXT
    CONSTRAINT "an amount has a currency" CHECK ((bought_for_money IS NULL) = (bought_for_currency IS NULL));

CREATE TABLE student_event (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    student_id INTEGER NOT NULL REFERENCES student (id),
    on_date TEXT NOT NULL,
    kind TEXT NOT NULL,
    remarks TEXT NOT NULL,
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(on_date, '+0 days') IS on_date AND on_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "an event is braces on or off, teeth, growth, illness or other"
        CHECK (kind IN ('braces on', 'braces off', 'teeth', 'growth', 'illness', 'other'))
) STRICT;
CREATE INDEX student_event_by_student ON student_event (student_id, on_date);

CREATE TABLE piece (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    student_id INTEGER NOT NULL REFERENCES student (id),
    title TEXT NOT NULL,
    composer TEXT NOT NULL,
    part TEXT NOT NULL,
    from_date TEXT NOT NULL,
    until_date TEXT,
    remarks TEXT NOT NULL,
    CONSTRAINT "a piece has a title" CHECK (trim(title) <> ''),
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(from_date, '+0 days') IS from_date AND from_date BETWEEN '1900-01-01' AND '2199-12-31'
           AND date(until_date, '+0 days') IS until_date),
    CONSTRAINT "a piece ends no earlier than it was begun" CHECK (until_date BETWEEN from_date AND '2199-12-31')
) STRICT;
CREATE INDEX piece_by_student ON piece (student_id, from_date);

CREATE TABLE mouthpiece (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    mark TEXT NOT NULL,
    size TEXT NOT NULL,
    horn_id INTEGER REFERENCES horn (id),
    owner_student_id INTEGER REFERENCES student (id),
    kept_in TEXT NOT NULL,
    condition TEXT NOT NULL,
    value_money INTEGER,
    value_currency TEXT,
    remarks TEXT NOT NULL,
    archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
    CONSTRAINT "a mouthpiece has a mark" CHECK (trim(mark) <> ''),
    CONSTRAINT "an amount has a currency" CHECK ((value_money IS NULL) = (value_currency IS NULL))
) STRICT;
CREATE INDEX mouthpiece_by_mark ON mouthpiece (archived, mark COLLATE NOCASE);
CREATE INDEX mouthpiece_by_horn ON mouthpiece (horn_id);
CREATE INDEX mouthpiece_by_owner ON mouthpiece (owner_student_id);

CREATE TABLE upkeep (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    horn_id INTEGER REFERENCES horn (id),
    mouthpiece_id INTEGER REFERENCES mouthpiece (id),
    work TEXT NOT NULL,
    noted_on_date TEXT NOT NULL,
    done_on_date TEXT,
    what TEXT NOT NULL,
    done_by TEXT NOT NULL,
    cost_money INTEGER,
    cost_currency TEXT,
    next_due_date TEXT,
    disinfected INTEGER NOT NULL CHECK (disinfected IN (0, 1)),
    CONSTRAINT "upkeep is of one horn or one mouthpiece" CHECK ((horn_id IS NULL) <> (mouthpiece_id IS NULL)),
    CONSTRAINT "work is a check, cleaning, disinfecting, greasing, a repair or other"
        CHECK (work IN ('checked', 'cleaned', 'disinfected', 'greased', 'repaired', 'other')),
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(noted_on_date, '+0 days') IS noted_on_date
           AND noted_on_date BETWEEN '1900-01-01' AND '2199-12-31'
           AND date(done_on_date, '+0 days') IS done_on_date
           AND date(next_due_date, '+0 days') IS next_due_date),
    CONSTRAINT "a date lies between 1900 and 2199" CHECK (done_on_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "a date lies between 1900 and 2199" CHECK (next_due_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "an amount has a currency" CHECK ((cost_money IS NULL) = (cost_currency IS NULL))
) STRICT;
CREATE INDEX upkeep_by_horn ON upkeep (horn_id, work, done_on_date);
CREATE INDEX upkeep_by_mouthpiece ON upkeep (mouthpiece_id, work, done_on_date);
CREATE INDEX upkeep_by_due_date ON upkeep (next_due_date) WHERE done_on_date IS NOT NULL;
CREATE INDEX upkeep_to_do ON upkeep (noted_on_date) WHERE done_on_date IS NULL;

CREATE TABLE loan (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    horn_id INTEGER NOT NULL REFERENCES horn (id),
    student_id INTEGER NOT NULL REFERENCES student (id),
    mouthpiece_id INTEGER REFERENCES mouthpiece (id),
    from_date TEXT NOT NULL,
    until_date TEXT,
    due_date TEXT,
    condition_out TEXT NOT NULL,
    condition_in TEXT NOT NULL,
    accessories TEXT NOT NULL,
    signed_on_date TEXT,
    remarks TEXT NOT NULL,
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(from_date, '+0 days') IS from_date AND from_date BETWEEN '1900-01-01' AND '2199-12-31'
           AND date(until_date, '+0 days') IS until_date AND date(due_date, '+0 days') IS due_date
           AND date(signed_on_date, '+0 days') IS signed_on_date),
    CONSTRAINT "a horn is brought back no earlier than it was lent"
        CHECK (until_date BETWEEN from_date AND '2199-12-31'),
    CONSTRAINT "a loan is due no earlier than it begins" CHECK (due_date BETWEEN from_date AND '2199-12-31'),
    CONSTRAINT "a date lies between 1900 and 2199" CHECK (signed_on_date BETWEEN '1900-01-01' AND '2199-12-31')
) STRICT;
CREATE INDEX loan_by_horn ON loan (horn_id, from_date);
CREATE INDEX loan_by_student ON loan (student_id, from_date);
CREATE INDEX loan_by_mouthpiece ON loan (mouthpiece_id);
-- One student at a time; spans that ended are held apart when a loan is filed.
CREATE UNIQUE INDEX loan_out ON loan (horn_id) WHERE until_date IS NULL;
CREATE INDEX loan_out_by_due_date ON loan (due_date) WHERE until_date IS NULL;

CREATE TABLE term (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    first_date TEXT NOT NULL,
    last_date TEXT NOT NULL,
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(first_date, '+0 days') IS first_date AND date(last_date, '+0 days') IS last_date
           AND first_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "a term ends no earlier than it begins" CHECK (last_date BETWEEN first_date AND '2199-12-31')
) STRICT;
CREATE INDEX term_by_date ON term (first_date);

CREATE TABLE holiday (
    term_id INTEGER NOT NULL REFERENCES term (id),
    -- Its place among the term's holidays, from 0.
    place INTEGER NOT NULL,
    first_date TEXT NOT NULL,
    last_date TEXT NOT NULL,
    name TEXT NOT NULL,
    PRIMARY KEY (term_id, place),
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(first_date, '+0 days') IS first_date AND date(last_date, '+0 days') IS last_date
           AND first_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "a holiday ends no earlier than it begins" CHECK (last_date BETWEEN first_date AND '2199-12-31')
) STRICT, WITHOUT ROWID;

CREATE TABLE student_group (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    remarks TEXT NOT NULL,
    archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
    CONSTRAINT "a group has a name" CHECK (trim(name) <> '')
) STRICT;
CREATE INDEX student_group_by_name ON student_group (archived, name COLLATE NOCASE);

CREATE TABLE group_member (
    group_id INTEGER NOT NULL REFERENCES student_group (id),
    -- The place in which they are called, from 0.
    place INTEGER NOT NULL,
    student_id INTEGER NOT NULL REFERENCES student (id),
    from_date TEXT NOT NULL,
    until_date TEXT,
    PRIMARY KEY (group_id, place),
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(from_date, '+0 days') IS from_date AND from_date BETWEEN '1900-01-01' AND '2199-12-31'
           AND date(until_date, '+0 days') IS until_date),
    CONSTRAINT "a student leaves a group no earlier than they joined"
        CHECK (until_date BETWEEN from_date AND '2199-12-31')
) STRICT, WITHOUT ROWID;
CREATE INDEX group_member_by_student ON group_member (student_id);

CREATE TABLE timetable_slot (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    term_id INTEGER NOT NULL REFERENCES term (id),
    student_id INTEGER REFERENCES student (id),
    group_id INTEGER REFERENCES student_group (id),
    -- 1 is Monday.
    weekday INTEGER NOT NULL,
    starts_minute INTEGER NOT NULL,
    length_minutes INTEGER NOT NULL,
    every_weeks INTEGER NOT NULL,
    from_date TEXT,
    until_date TEXT,
    room TEXT NOT NULL,
    CONSTRAINT "a lesson is one student's or one group's" CHECK ((student_id IS NULL) <> (group_id IS NULL)),
    CONSTRAINT "a week has seven days" CHECK (weekday BETWEEN 1 AND 7),
    CONSTRAINT "a day goes from 0:00 to 23:59" CHECK (starts_minute BETWEEN 0 AND 1439),
    CONSTRAINT "a lesson takes between 1 and 600 minutes" CHECK (length_minutes BETWEEN 1 AND 600),
    CONSTRAINT "a lesson comes back within 1 to 8 weeks" CHECK (every_weeks BETWEEN 1 AND 8),
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(from_date, '+0 days') IS from_date AND date(until_date, '+0 days') IS until_date),
    CONSTRAINT "a date lies between 1900 and 2199" CHECK (from_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "a date lies between 1900 and 2199" CHECK (until_date BETWEEN '1900-01-01' AND '2199-12-31')
) STRICT;
CREATE INDEX timetable_slot_by_term ON timetable_slot (term_id, weekday, starts_minute);
CREATE INDEX timetable_slot_by_student ON timetable_slot (student_id);
CREATE INDEX timetable_slot_by_group ON timetable_slot (group_id);

CREATE TABLE lesson (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    student_id INTEGER REFERENCES student (id),
    group_id INTEGER REFERENCES student_group (id),
    slot_id INTEGER REFERENCES timetable_slot (id),
    on_date TEXT NOT NULL,
    starts_minute INTEGER NOT NULL,
    length_minutes INTEGER NOT NULL,
    room TEXT NOT NULL,
    state TEXT NOT NULL,
    make_up_owed INTEGER NOT NULL CHECK (make_up_owed IN (0, 1)),
    instead_of_lesson_id INTEGER REFERENCES lesson (id),
    done TEXT NOT NULL,
    next TEXT NOT NULL,
    private_remark TEXT NOT NULL,
    CONSTRAINT "a lesson is one student's or one group's" CHECK ((student_id IS NULL) <> (group_id IS NULL)),
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(on_date, '+0 days') IS on_date AND on_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "a day goes from 0:00 to 23:59" CHECK (starts_minute BETWEEN 0 AND 1439),
    CONSTRAINT "a lesson takes between 1 and 600 minutes" CHECK (length_minutes BETWEEN 1 AND 600),
    CONSTRAINT "a lesson is planned, kept, missed with or without notice, moved or cancelled"
        CHECK (state IN ('planned', 'kept', 'missed with notice', 'missed without notice', 'moved', 'cancelled')),
    CONSTRAINT "a lesson does not stand for itself" CHECK (instead_of_lesson_id <> id)
) STRICT;
CREATE INDEX lesson_by_date ON lesson (on_date, starts_minute);
CREATE INDEX lesson_by_student ON lesson (student_id, on_date, starts_minute);
CREATE INDEX lesson_by_group ON lesson (group_id, on_date, starts_minute);
CREATE INDEX lesson_by_slot ON lesson (slot_id);
CREATE INDEX lesson_by_original ON lesson (instead_of_lesson_id);
CREATE INDEX lesson_owed ON lesson (on_date, starts_minute) WHERE make_up_owed = 1;

CREATE TABLE attendance (
    lesson_id INTEGER NOT NULL REFERENCES lesson (id),
    student_id INTEGER NOT NULL REFERENCES student (id),
    -- The place in which they were called, from 0.
    place INTEGER NOT NULL,
    state TEXT NOT NULL,
    PRIMARY KEY (lesson_id, student_id),
    CONSTRAINT "a student was present, late, or missed with or without notice"
        CHECK (state IN ('present', 'late', 'missed with notice', 'missed without notice'))
) STRICT, WITHOUT ROWID;
CREATE INDEX attendance_by_student ON attendance (student_id, lesson_id);

CREATE TABLE routine (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    key TEXT NOT NULL,
    title TEXT NOT NULL,
    aim TEXT NOT NULL,
    -- Each on a line of its own.
    steps TEXT NOT NULL,
    dose TEXT NOT NULL,
    length_minutes INTEGER,
    -- Words with a space between.
    levels TEXT NOT NULL,
    -- Each on a line of its own.
    horns TEXT NOT NULL,
    music TEXT NOT NULL,
    remarks TEXT NOT NULL,
    archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
    CONSTRAINT "a routine has a title" CHECK (trim(title) <> ''),
    CONSTRAINT "a routine takes between 1 and 600 minutes" CHECK (length_minutes BETWEEN 1 AND 600)
) STRICT;
CREATE INDEX routine_by_title ON routine (archived, title COLLATE NOCASE);

CREATE TABLE assignment (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    routine_id INTEGER NOT NULL REFERENCES routine (id),
    student_id INTEGER REFERENCES student (id),
    group_id INTEGER REFERENCES student_group (id),
    from_date TEXT NOT NULL,
    until_date TEXT,
    -- Monday is 1, Tuesday 2, Wednesday 4, ...
    weekdays INTEGER NOT NULL,
    amount TEXT NOT NULL,
    remarks TEXT NOT NULL,
    ending TEXT NOT NULL,
    follows_assignment_id INTEGER REFERENCES assignment (id),
    CONSTRAINT "an assignment is one student's or one group's"
        CHECK ((student_id IS NULL) <> (group_id IS NULL)),
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(from_date, '+0 days') IS from_date AND from_date BETWEEN '1900-01-01' AND '2199-12-31'
           AND date(until_date, '+0 days') IS until_date),
    CONSTRAINT "an assignment ends no earlier than it begins"
        CHECK (until_date BETWEEN from_date AND '2199-12-31'),
    CONSTRAINT "an assignment is for one day of the week at least" CHECK (weekdays BETWEEN 1 AND 127),
    CONSTRAINT "an assignment ends at its time, renewed, changed or stopped"
        CHECK (ending IN ('at its time', 'renewed', 'changed', 'stopped'))
) STRICT;
CREATE INDEX assignment_by_student ON assignment (student_id, from_date);
CREATE INDEX assignment_by_group ON assignment (group_id, from_date);
CREATE INDEX assignment_by_routine ON assignment (routine_id);
CREATE INDEX assignment_by_earlier ON assignment (follows_assignment_id);

CREATE TABLE practice_entry (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    student_id INTEGER NOT NULL REFERENCES student (id),
    on_date TEXT NOT NULL,
    assignment_id INTEGER REFERENCES assignment (id),
    length_minutes INTEGER,
    remarks TEXT NOT NULL,
    CONSTRAINT "a date lies between 1900 and 2199"
        CHECK (date(on_date, '+0 days') IS on_date AND on_date BETWEEN '1900-01-01' AND '2199-12-31'),
    CONSTRAINT "a day's practice takes between 1 and 1440 minutes" CHECK (length_minutes BETWEEN 1 AND 1440)
) STRICT;
CREATE INDEX practice_entry_by_student ON practice_entry (student_id, on_date);
CREATE UNIQUE INDEX practice_entry_by_assignment ON practice_entry (assignment_id, student_id, on_date);
