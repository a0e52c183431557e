-- Finding anything by its words. The index follows from the records and is no record itself: undo leaves it alone and
-- its changes are followed like all others. Triggers note which records have changed (in a schema that is not trusted
-- they may not write the index themselves), and before an edit ends model/store/search.cpp brings those up to date.
--
-- A row's id says which record it is and puts the newest first: day * 2^36 + kind * 2^32 + the record's id. Days count
-- from 1900-01-01; records without a day have 131071, so that they come before the others.

CREATE VIRTUAL TABLE record_search USING fts5 (text, tokenize = 'unicode61 remove_diacritics 2', prefix = '1 2 3');

-- Empty but during an edit.
CREATE TABLE search_stale (
    kind INTEGER NOT NULL,
    id INTEGER NOT NULL,
    -- As it is or was in the index.
    search_id INTEGER NOT NULL
) STRICT;

CREATE VIEW student_words AS SELECT
    id,
    (131071 << 36) | (1 << 32) | id AS search_id,
    trim(name || ' ' || called || ' ' || group_name || ' ' || year || ' ' || goals || ' ' || guardian_name
        || ' ' || remarks) AS text
FROM student;
CREATE TRIGGER student_filed AFTER INSERT ON student BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (1, NEW.id, (131071 << 36) | (1 << 32) | NEW.id);
END;
CREATE TRIGGER student_removed AFTER DELETE ON student BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (1, OLD.id, (131071 << 36) | (1 << 32) | OLD.id);
END;
CREATE TRIGGER student_changed AFTER UPDATE ON student BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (1, OLD.id, (131071 << 36) | (1 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (1, NEW.id, (131071 << 36) | (1 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM student_words WHERE text <> '';

CREATE VIEW horn_words AS SELECT
    id,
    (131071 << 36) | (2 << 32) | id AS search_id,
    trim(mark || ' ' || maker_and_model || ' ' || serial_number || ' ' || inventory_tag || ' ' || belongs_to
        || ' ' || locker || ' ' || case_text || ' ' || accessories || ' ' || condition || ' ' || remarks) AS text
FROM horn;
CREATE TRIGGER horn_filed AFTER INSERT ON horn BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (2, NEW.id, (131071 << 36) | (2 << 32) | NEW.id);
END;
CREATE TRIGGER horn_removed AFTER DELETE ON horn BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (2, OLD.id, (131071 << 36) | (2 << 32) | OLD.id);
END;
CREATE TRIGGER horn_changed AFTER UPDATE ON horn BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (2, OLD.id, (131071 << 36) | (2 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (2, NEW.id, (131071 << 36) | (2 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM horn_words WHERE text <> '';

CREATE VIEW mouthpiece_words AS SELECT
    id,
    (131071 << 36) | (3 << 32) | id AS search_id,
    trim(mark || ' ' || size || ' ' || kept_in || ' ' || condition || ' ' || remarks) AS text
FROM mouthpiece;
CREATE TRIGGER mouthpiece_filed AFTER INSERT ON mouthpiece BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (3, NEW.id, (131071 << 36) | (3 << 32) | NEW.id);
END;
CREATE TRIGGER mouthpiece_removed AFTER DELETE ON mouthpiece BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (3, OLD.id, (131071 << 36) | (3 << 32) | OLD.id);
END;
CREATE TRIGGER mouthpiece_changed AFTER UPDATE ON mouthpiece BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (3, OLD.id, (131071 << 36) | (3 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (3, NEW.id, (131071 << 36) | (3 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM mouthpiece_words WHERE text <> '';

CREATE VIEW student_group_words AS SELECT
    id,
    (131071 << 36) | (4 << 32) | id AS search_id,
    trim(name || ' ' || remarks) AS text
FROM student_group;
CREATE TRIGGER student_group_filed AFTER INSERT ON student_group BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (4, NEW.id, (131071 << 36) | (4 << 32) | NEW.id);
END;
CREATE TRIGGER student_group_removed AFTER DELETE ON student_group BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (4, OLD.id, (131071 << 36) | (4 << 32) | OLD.id);
END;
CREATE TRIGGER student_group_changed AFTER UPDATE ON student_group BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (4, OLD.id, (131071 << 36) | (4 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (4, NEW.id, (131071 << 36) | (4 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM student_group_words WHERE text <> '';

CREATE VIEW routine_words AS SELECT
    id,
    (131071 << 36) | (5 << 32) | id AS search_id,
    trim(title || ' ' || aim || ' ' || steps || ' ' || dose || ' ' || horns || ' ' || remarks) AS text
FROM routine;
CREATE TRIGGER routine_filed AFTER INSERT ON routine BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (5, NEW.id, (131071 << 36) | (5 << 32) | NEW.id);
END;
CREATE TRIGGER routine_removed AFTER DELETE ON routine BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (5, OLD.id, (131071 << 36) | (5 << 32) | OLD.id);
END;
CREATE TRIGGER routine_changed AFTER UPDATE ON routine BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (5, OLD.id, (131071 << 36) | (5 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (5, NEW.id, (131071 << 36) | (5 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM routine_words WHERE text <> '';

CREATE VIEW lesson_words AS SELECT
    id,
    (CAST(julianday(on_date) - 2415020.5 AS INTEGER) << 36) | (6 << 32) | id AS search_id,
    trim(done || ' ' || next || ' ' || private_remark) AS text
FROM lesson;
CREATE TRIGGER lesson_filed AFTER INSERT ON lesson BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (6, NEW.id, (CAST(julianday(NEW.on_date) - 2415020.5 AS INTEGER) << 36) | (6 << 32) | NEW.id);
END;
CREATE TRIGGER lesson_removed AFTER DELETE ON lesson BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (6, OLD.id, (CAST(julianday(OLD.on_date) - 2415020.5 AS INTEGER) << 36) | (6 << 32) | OLD.id);
END;
CREATE TRIGGER lesson_changed AFTER UPDATE ON lesson BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (6, OLD.id, (CAST(julianday(OLD.on_date) - 2415020.5 AS INTEGER) << 36) | (6 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (6, NEW.id, (CAST(julianday(NEW.on_date) - 2415020.5 AS INTEGER) << 36) | (6 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM lesson_words WHERE text <> '';

CREATE VIEW tuning_sheet_words AS SELECT
    id,
    (CAST(julianday(on_date) - 2415020.5 AS INTEGER) << 36) | (7 << 32) | id AS search_id,
    trim(mouthpiece || ' ' || remarks) AS text
FROM tuning_sheet;
CREATE TRIGGER tuning_sheet_filed AFTER INSERT ON tuning_sheet BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (7, NEW.id, (CAST(julianday(NEW.on_date) - 2415020.5 AS INTEGER) << 36) | (7 << 32) | NEW.id);
END;
CREATE TRIGGER tuning_sheet_removed AFTER DELETE ON tuning_sheet BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (7, OLD.id, (CAST(julianday(OLD.on_date) - 2415020.5 AS INTEGER) << 36) | (7 << 32) | OLD.id);
END;
CREATE TRIGGER tuning_sheet_changed AFTER UPDATE ON tuning_sheet BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (7, OLD.id, (CAST(julianday(OLD.on_date) - 2415020.5 AS INTEGER) << 36) | (7 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (7, NEW.id, (CAST(julianday(NEW.on_date) - 2415020.5 AS INTEGER) << 36) | (7 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM tuning_sheet_words WHERE text <> '';

CREATE VIEW piece_words AS SELECT
    id,
    (CAST(julianday(from_date) - 2415020.5 AS INTEGER) << 36) | (8 << 32) | id AS search_id,
    trim(title || ' ' || composer || ' ' || part || ' ' || remarks) AS text
FROM piece;
CREATE TRIGGER piece_filed AFTER INSERT ON piece BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (8, NEW.id, (CAST(julianday(NEW.from_date) - 2415020.5 AS INTEGER) << 36) | (8 << 32) | NEW.id);
END;
CREATE TRIGGER piece_removed AFTER DELETE ON piece BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (8, OLD.id, (CAST(julianday(OLD.from_date) - 2415020.5 AS INTEGER) << 36) | (8 << 32) | OLD.id);
END;
CREATE TRIGGER piece_changed AFTER UPDATE ON piece BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (8, OLD.id, (CAST(julianday(OLD.from_date) - 2415020.5 AS INTEGER) << 36) | (8 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (8, NEW.id, (CAST(julianday(NEW.from_date) - 2415020.5 AS INTEGER) << 36) | (8 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM piece_words WHERE text <> '';

CREATE VIEW student_event_words AS SELECT
    id,
    (CAST(julianday(on_date) - 2415020.5 AS INTEGER) << 36) | (9 << 32) | id AS search_id,
    trim(remarks) AS text
FROM student_event;
CREATE TRIGGER student_event_filed AFTER INSERT ON student_event BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (9, NEW.id, (CAST(julianday(NEW.on_date) - 2415020.5 AS INTEGER) << 36) | (9 << 32) | NEW.id);
END;
CREATE TRIGGER student_event_removed AFTER DELETE ON student_event BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (9, OLD.id, (CAST(julianday(OLD.on_date) - 2415020.5 AS INTEGER) << 36) | (9 << 32) | OLD.id);
END;
CREATE TRIGGER student_event_changed AFTER UPDATE ON student_event BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (9, OLD.id, (CAST(julianday(OLD.on_date) - 2415020.5 AS INTEGER) << 36) | (9 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (9, NEW.id, (CAST(julianday(NEW.on_date) - 2415020.5 AS INTEGER) << 36) | (9 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM student_event_words WHERE text <> '';

CREATE VIEW upkeep_words AS SELECT
    id,
    (CAST(julianday(noted_on_date) - 2415020.5 AS INTEGER) << 36) | (10 << 32) | id AS search_id,
    trim(what || ' ' || done_by) AS text
FROM upkeep;
CREATE TRIGGER upkeep_filed AFTER INSERT ON upkeep BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (10, NEW.id, (CAST(julianday(NEW.noted_on_date) - 2415020.5 AS INTEGER) << 36) | (10 << 32) | NEW.id);
END;
CREATE TRIGGER upkeep_removed AFTER DELETE ON upkeep BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (10, OLD.id, (CAST(julianday(OLD.noted_on_date) - 2415020.5 AS INTEGER) << 36) | (10 << 32) | OLD.id);
END;
CREATE TRIGGER upkeep_changed AFTER UPDATE ON upkeep BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (10, OLD.id, (CAST(julianday(OLD.noted_on_date) - 2415020.5 AS INTEGER) << 36) | (10 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (10, NEW.id, (CAST(julianday(NEW.noted_on_date) - 2415020.5 AS INTEGER) << 36) | (10 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM upkeep_words WHERE text <> '';

CREATE VIEW loan_words AS SELECT
    id,
    (CAST(julianday(from_date) - 2415020.5 AS INTEGER) << 36) | (11 << 32) | id AS search_id,
    trim(condition_out || ' ' || condition_in || ' ' || accessories || ' ' || remarks) AS text
FROM loan;
CREATE TRIGGER loan_filed AFTER INSERT ON loan BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (11, NEW.id, (CAST(julianday(NEW.from_date) - 2415020.5 AS INTEGER) << 36) | (11 << 32) | NEW.id);
END;
CREATE TRIGGER loan_removed AFTER DELETE ON loan BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (11, OLD.id, (CAST(julianday(OLD.from_date) - 2415020.5 AS INTEGER) << 36) | (11 << 32) | OLD.id);
END;
CREATE TRIGGER loan_changed AFTER UPDATE ON loan BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (11, OLD.id, (CAST(julianday(OLD.from_date) - 2415020.5 AS INTEGER) << 36) | (11 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (11, NEW.id, (CAST(julianday(NEW.from_date) - 2415020.5 AS INTEGER) << 36) | (11 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM loan_words WHERE text <> '';

CREATE VIEW assignment_words AS SELECT
    id,
    (CAST(julianday(from_date) - 2415020.5 AS INTEGER) << 36) | (12 << 32) | id AS search_id,
    trim(amount || ' ' || remarks) AS text
FROM assignment;
CREATE TRIGGER assignment_filed AFTER INSERT ON assignment BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (12, NEW.id, (CAST(julianday(NEW.from_date) - 2415020.5 AS INTEGER) << 36) | (12 << 32) | NEW.id);
END;
CREATE TRIGGER assignment_removed AFTER DELETE ON assignment BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (12, OLD.id, (CAST(julianday(OLD.from_date) - 2415020.5 AS INTEGER) << 36) | (12 << 32) | OLD.id);
END;
CREATE TRIGGER assignment_changed AFTER UPDATE ON assignment BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (12, OLD.id, (CAST(julianday(OLD.from_date) - 2415020.5 AS INTEGER) << 36) | (12 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (12, NEW.id, (CAST(julianday(NEW.from_date) - 2415020.5 AS INTEGER) << 36) | (12 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM assignment_words WHERE text <> '';

CREATE VIEW practice_entry_words AS SELECT
    id,
    (CAST(julianday(on_date) - 2415020.5 AS INTEGER) << 36) | (13 << 32) | id AS search_id,
    trim(remarks) AS text
FROM practice_entry;
CREATE TRIGGER practice_entry_filed AFTER INSERT ON practice_entry BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (13, NEW.id, (CAST(julianday(NEW.on_date) - 2415020.5 AS INTEGER) << 36) | (13 << 32) | NEW.id);
END;
CREATE TRIGGER practice_entry_removed AFTER DELETE ON practice_entry BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (13, OLD.id, (CAST(julianday(OLD.on_date) - 2415020.5 AS INTEGER) << 36) | (13 << 32) | OLD.id);
END;
CREATE TRIGGER practice_entry_changed AFTER UPDATE ON practice_entry BEGIN
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (13, OLD.id, (CAST(julianday(OLD.on_date) - 2415020.5 AS INTEGER) << 36) | (13 << 32) | OLD.id);
    INSERT INTO search_stale (kind, id, search_id)
    VALUES (13, NEW.id, (CAST(julianday(NEW.on_date) - 2415020.5 AS INTEGER) << 36) | (13 << 32) | NEW.id);
END;
INSERT INTO record_search (rowid, text) SELECT search_id, text FROM practice_entry_words WHERE text <> '';
