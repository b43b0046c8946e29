-- From stage to stage, what was signed on the way, photos, labels, and parts that were taken out. All are an index of the chain and are only ever added to.
-- Looking and reading are no stage of their own any more: units that were there are at the teardown.

UPDATE unit SET stage = 'teardown' WHERE stage = 'inspection';

-- Where a part has been: by the part that each placement names.
CREATE INDEX entry_placed ON entry (shop, json_extract(body, '$.component'), sequence) WHERE kind = 'placement';

CREATE TABLE stage (
    shop    TEXT    NOT NULL,
    id      TEXT    NOT NULL,
    unit    TEXT,
    about   TEXT,
    version INTEGER NOT NULL,
    entry   INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX stage_unit ON stage (shop, unit);
CREATE INDEX stage_about ON stage (shop, about, entry);
CREATE INDEX stage_entry ON stage (shop, entry);
CREATE TRIGGER stage_is_not_changed BEFORE UPDATE ON stage BEGIN SELECT RAISE(ABORT, 'stage is append-only'); END;
CREATE TRIGGER stage_is_not_removed BEFORE DELETE ON stage BEGIN SELECT RAISE(ABORT, 'stage is append-only'); END;

CREATE TABLE sign_off (
    shop    TEXT    NOT NULL,
    id      TEXT    NOT NULL,
    unit    TEXT,
    about   TEXT,
    version INTEGER NOT NULL,
    entry   INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX sign_off_unit ON sign_off (shop, unit);
CREATE INDEX sign_off_about ON sign_off (shop, about, entry);
CREATE INDEX sign_off_entry ON sign_off (shop, entry);
CREATE TRIGGER sign_off_is_not_changed BEFORE UPDATE ON sign_off BEGIN SELECT RAISE(ABORT, 'sign_off is append-only'); END;
CREATE TRIGGER sign_off_is_not_removed BEFORE DELETE ON sign_off BEGIN SELECT RAISE(ABORT, 'sign_off is append-only'); END;

CREATE TABLE attachment (
    shop    TEXT    NOT NULL,
    id      TEXT    NOT NULL,
    unit    TEXT,
    about   TEXT,
    version INTEGER NOT NULL,
    entry   INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX attachment_unit ON attachment (shop, unit);
CREATE INDEX attachment_about ON attachment (shop, about, entry);
CREATE INDEX attachment_entry ON attachment (shop, entry);
CREATE TRIGGER attachment_is_not_changed BEFORE UPDATE ON attachment BEGIN SELECT RAISE(ABORT, 'attachment is append-only'); END;
CREATE TRIGGER attachment_is_not_removed BEFORE DELETE ON attachment BEGIN SELECT RAISE(ABORT, 'attachment is append-only'); END;

CREATE TABLE label (
    shop    TEXT    NOT NULL,
    id      TEXT    NOT NULL,
    unit    TEXT,
    about   TEXT,
    version INTEGER NOT NULL,
    entry   INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX label_unit ON label (shop, unit);
CREATE INDEX label_about ON label (shop, about, entry);
CREATE INDEX label_entry ON label (shop, entry);
CREATE TRIGGER label_is_not_changed BEFORE UPDATE ON label BEGIN SELECT RAISE(ABORT, 'label is append-only'); END;
CREATE TRIGGER label_is_not_removed BEFORE DELETE ON label BEGIN SELECT RAISE(ABORT, 'label is append-only'); END;

CREATE TABLE removal (
    shop    TEXT    NOT NULL,
    id      TEXT    NOT NULL,
    unit    TEXT,
    about   TEXT,
    version INTEGER NOT NULL,
    entry   INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX removal_unit ON removal (shop, unit);
CREATE INDEX removal_about ON removal (shop, about, entry);
CREATE INDEX removal_entry ON removal (shop, entry);
CREATE TRIGGER removal_is_not_changed BEFORE UPDATE ON removal BEGIN SELECT RAISE(ABORT, 'removal is append-only'); END;
CREATE TRIGGER removal_is_not_removed BEFORE DELETE ON removal BEGIN SELECT RAISE(ABORT, 'removal is append-only'); END;
