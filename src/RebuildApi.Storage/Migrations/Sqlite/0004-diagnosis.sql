-- What was tried on a unit, what was confirmed to lie behind its complaint, and the counts that were accepted into a family's priors. All are an index
-- of the chain and are only ever added to.

CREATE TABLE test (
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
CREATE INDEX test_unit ON test (shop, unit);
CREATE INDEX test_about ON test (shop, about, entry);
CREATE TRIGGER test_is_not_changed BEFORE UPDATE ON test BEGIN SELECT RAISE(ABORT, 'test is append-only'); END;
CREATE TRIGGER test_is_not_removed BEFORE DELETE ON test BEGIN SELECT RAISE(ABORT, 'test is append-only'); END;

CREATE TABLE confirmation (
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
CREATE INDEX confirmation_unit ON confirmation (shop, unit);
CREATE INDEX confirmation_about ON confirmation (shop, about, entry);
CREATE TRIGGER confirmation_is_not_changed BEFORE UPDATE ON confirmation BEGIN SELECT RAISE(ABORT, 'confirmation is append-only'); END;
CREATE TRIGGER confirmation_is_not_removed BEFORE DELETE ON confirmation BEGIN SELECT RAISE(ABORT, 'confirmation is append-only'); END;

CREATE TABLE prior (
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
CREATE INDEX prior_unit ON prior (shop, unit);
CREATE INDEX prior_about ON prior (shop, about, entry);
CREATE TRIGGER prior_is_not_changed BEFORE UPDATE ON prior BEGIN SELECT RAISE(ABORT, 'prior is append-only'); END;
CREATE TRIGGER prior_is_not_removed BEFORE DELETE ON prior BEGIN SELECT RAISE(ABORT, 'prior is append-only'); END;
