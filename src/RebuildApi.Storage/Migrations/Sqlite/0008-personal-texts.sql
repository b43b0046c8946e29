-- Texts that name a customer stand apart from the chain, each behind a salted seal in its entry, so that they can be erased and every hash still follows.
-- Entries of form 2 are written so. In those of form 1 such a text stands in the body; erasing it changes the body, and the erasure says to what.

ALTER TABLE entry ADD COLUMN form INTEGER NOT NULL DEFAULT 1;

CREATE TABLE personal (
    shop     TEXT    NOT NULL,
    sequence INTEGER NOT NULL,
    body     TEXT    NOT NULL,
    PRIMARY KEY (shop, sequence),
    FOREIGN KEY (shop, sequence) REFERENCES entry (shop, sequence)
);

CREATE TABLE erasure (
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
CREATE INDEX erasure_unit ON erasure (shop, unit);
CREATE TRIGGER erasure_is_not_changed BEFORE UPDATE ON erasure BEGIN SELECT RAISE(ABORT, 'erasure is append-only'); END;
CREATE TRIGGER erasure_is_not_removed BEFORE DELETE ON erasure BEGIN SELECT RAISE(ABORT, 'erasure is append-only'); END;

-- Which entries an erasure names: only their texts may go.
CREATE TABLE erased (
    shop     TEXT    NOT NULL,
    sequence INTEGER NOT NULL,
    entry    INTEGER NOT NULL,
    PRIMARY KEY (shop, sequence),
    FOREIGN KEY (shop, sequence) REFERENCES entry (shop, sequence),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);

CREATE TRIGGER personal_is_not_changed BEFORE UPDATE ON personal BEGIN SELECT RAISE(ABORT, 'personal is not changed'); END;
CREATE TRIGGER personal_is_not_removed BEFORE DELETE ON personal
WHEN NOT EXISTS (SELECT 1 FROM erased WHERE shop = OLD.shop AND sequence = OLD.sequence)
BEGIN SELECT RAISE(ABORT, 'no erasure names this text'); END;

DROP TRIGGER entry_is_not_changed;
CREATE TRIGGER entry_is_not_changed BEFORE UPDATE ON entry
WHEN OLD.form <> 1 OR NEW.form <> 1 OR NEW.hash <> OLD.hash OR NEW.sequence <> OLD.sequence
    OR NOT EXISTS (SELECT 1 FROM erased WHERE shop = OLD.shop AND sequence = OLD.sequence)
BEGIN SELECT RAISE(ABORT, 'entry is append-only'); END;
