-- From stage to stage, what was signed on the way, photos, labels, and parts that were taken out. All are an index of the chain and are only ever added to.
-- Looking and reading are no stage of their own any more: units that were there are at the teardown.

UPDATE unit SET stage = 'teardown' WHERE stage = 'inspection';

-- Where a part has been: only placements are looked at. An index by the part they name would not be used: behind a policy of rows the engine first sees
-- whose a row is, and only then looks into its body.
CREATE INDEX entry_placed ON entry (shop, sequence) WHERE kind = 'placement';

CREATE TABLE stage (
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
CREATE INDEX stage_unit ON stage (shop, unit);
CREATE INDEX stage_about ON stage (shop, about, entry);
CREATE INDEX stage_entry ON stage (shop, entry);
CREATE TRIGGER stage_is_not_changed BEFORE UPDATE ON stage FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER stage_is_not_removed BEFORE DELETE ON stage FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TABLE sign_off (
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
CREATE INDEX sign_off_unit ON sign_off (shop, unit);
CREATE INDEX sign_off_about ON sign_off (shop, about, entry);
CREATE INDEX sign_off_entry ON sign_off (shop, entry);
CREATE TRIGGER sign_off_is_not_changed BEFORE UPDATE ON sign_off FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER sign_off_is_not_removed BEFORE DELETE ON sign_off FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TABLE attachment (
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
CREATE INDEX attachment_unit ON attachment (shop, unit);
CREATE INDEX attachment_about ON attachment (shop, about, entry);
CREATE INDEX attachment_entry ON attachment (shop, entry);
CREATE TRIGGER attachment_is_not_changed BEFORE UPDATE ON attachment FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER attachment_is_not_removed BEFORE DELETE ON attachment FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TABLE label (
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
CREATE INDEX label_unit ON label (shop, unit);
CREATE INDEX label_about ON label (shop, about, entry);
CREATE INDEX label_entry ON label (shop, entry);
CREATE TRIGGER label_is_not_changed BEFORE UPDATE ON label FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER label_is_not_removed BEFORE DELETE ON label FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TABLE removal (
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
CREATE INDEX removal_unit ON removal (shop, unit);
CREATE INDEX removal_about ON removal (shop, about, entry);
CREATE INDEX removal_entry ON removal (shop, entry);
CREATE TRIGGER removal_is_not_changed BEFORE UPDATE ON removal FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER removal_is_not_removed BEFORE DELETE ON removal FOR EACH ROW EXECUTE FUNCTION append_only();
