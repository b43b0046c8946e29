-- Which instrument took a reading, so that everything it read can be found without opening every unit.
DROP TRIGGER measurement_is_not_changed;
ALTER TABLE measurement ADD COLUMN instrument TEXT;
UPDATE measurement SET instrument =
    (SELECT json_extract(e.body, '$.taken.instrument') FROM entry e WHERE e.shop = measurement.shop AND e.sequence = measurement.entry);
CREATE TRIGGER measurement_is_not_changed BEFORE UPDATE ON measurement BEGIN SELECT RAISE(ABORT, 'measurement is append-only'); END;
CREATE INDEX measurement_instrument ON measurement (shop, instrument) WHERE instrument IS NOT NULL;

DROP TRIGGER trial_is_not_changed;
ALTER TABLE trial ADD COLUMN instrument TEXT;
UPDATE trial SET instrument =
    (SELECT json_extract(e.body, '$.taken.instrument') FROM entry e WHERE e.shop = trial.shop AND e.sequence = trial.entry);
CREATE TRIGGER trial_is_not_changed BEFORE UPDATE ON trial BEGIN SELECT RAISE(ABORT, 'trial is append-only'); END;
CREATE INDEX trial_instrument ON trial (shop, instrument) WHERE instrument IS NOT NULL;

CREATE TABLE calibration (
    shop       TEXT    NOT NULL,
    id         TEXT    NOT NULL,
    instrument TEXT    NOT NULL,
    entry      INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, instrument) REFERENCES instrument (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX calibration_instrument ON calibration (shop, instrument, entry);

CREATE TABLE study (
    shop       TEXT    NOT NULL,
    id         TEXT    NOT NULL,
    instrument TEXT    NOT NULL,
    entry      INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, instrument) REFERENCES instrument (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX study_instrument ON study (shop, instrument, entry);

CREATE TABLE comeback (
    shop       TEXT    NOT NULL,
    id         TEXT    NOT NULL,
    unit       TEXT    NOT NULL,
    supersedes TEXT,
    entry      INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, supersedes) REFERENCES comeback (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX comeback_unit ON comeback (shop, unit);
CREATE UNIQUE INDEX comeback_superseded_once ON comeback (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE policy (
    shop   TEXT    NOT NULL,
    number INTEGER NOT NULL,
    entry  INTEGER NOT NULL,
    PRIMARY KEY (shop, number),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);

CREATE TRIGGER calibration_is_not_changed BEFORE UPDATE ON calibration BEGIN SELECT RAISE(ABORT, 'calibration is append-only'); END;
CREATE TRIGGER calibration_is_not_removed BEFORE DELETE ON calibration BEGIN SELECT RAISE(ABORT, 'calibration is append-only'); END;
CREATE TRIGGER study_is_not_changed BEFORE UPDATE ON study BEGIN SELECT RAISE(ABORT, 'study is append-only'); END;
CREATE TRIGGER study_is_not_removed BEFORE DELETE ON study BEGIN SELECT RAISE(ABORT, 'study is append-only'); END;
CREATE TRIGGER comeback_is_not_changed BEFORE UPDATE ON comeback BEGIN SELECT RAISE(ABORT, 'comeback is append-only'); END;
CREATE TRIGGER comeback_is_not_removed BEFORE DELETE ON comeback BEGIN SELECT RAISE(ABORT, 'comeback is append-only'); END;
CREATE TRIGGER policy_is_not_changed BEFORE UPDATE ON policy BEGIN SELECT RAISE(ABORT, 'policy is append-only'); END;
CREATE TRIGGER policy_is_not_removed BEFORE DELETE ON policy BEGIN SELECT RAISE(ABORT, 'policy is append-only'); END;
