-- What was tried on a unit, what was confirmed to lie behind its complaint, and the counts that were accepted into a family's priors. All are an index
-- of the chain and are only ever added to.

CREATE TABLE test (
    shop    TEXT COLLATE "C"    NOT NULL,
    id      TEXT COLLATE "C"    NOT NULL,
    unit    TEXT COLLATE "C",
    about   TEXT COLLATE "C",
    version BIGINT NOT NULL,
    entry   BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX test_unit ON test (shop, unit);
CREATE INDEX test_about ON test (shop, about, entry);
CREATE TRIGGER test_is_not_changed BEFORE UPDATE ON test FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER test_is_not_removed BEFORE DELETE ON test FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TABLE confirmation (
    shop    TEXT COLLATE "C"    NOT NULL,
    id      TEXT COLLATE "C"    NOT NULL,
    unit    TEXT COLLATE "C",
    about   TEXT COLLATE "C",
    version BIGINT NOT NULL,
    entry   BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX confirmation_unit ON confirmation (shop, unit);
CREATE INDEX confirmation_about ON confirmation (shop, about, entry);
CREATE TRIGGER confirmation_is_not_changed BEFORE UPDATE ON confirmation FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER confirmation_is_not_removed BEFORE DELETE ON confirmation FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TABLE prior (
    shop    TEXT COLLATE "C"    NOT NULL,
    id      TEXT COLLATE "C"    NOT NULL,
    unit    TEXT COLLATE "C",
    about   TEXT COLLATE "C",
    version BIGINT NOT NULL,
    entry   BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX prior_unit ON prior (shop, unit);
CREATE INDEX prior_about ON prior (shop, about, entry);
CREATE TRIGGER prior_is_not_changed BEFORE UPDATE ON prior FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER prior_is_not_removed BEFORE DELETE ON prior FOR EACH ROW EXECUTE FUNCTION append_only();
