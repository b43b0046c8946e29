-- Which instrument took a reading, so that everything it read can be found without opening every unit.
DROP TRIGGER measurement_is_not_changed ON measurement;
ALTER TABLE measurement ADD COLUMN instrument TEXT COLLATE "C";
UPDATE measurement SET instrument =
    (SELECT json_extract(e.body, '$.taken.instrument') FROM entry e WHERE e.shop = measurement.shop AND e.sequence = measurement.entry);
CREATE TRIGGER measurement_is_not_changed BEFORE UPDATE ON measurement FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE INDEX measurement_instrument ON measurement (shop, instrument) WHERE instrument IS NOT NULL;

DROP TRIGGER trial_is_not_changed ON trial;
ALTER TABLE trial ADD COLUMN instrument TEXT COLLATE "C";
UPDATE trial SET instrument =
    (SELECT json_extract(e.body, '$.taken.instrument') FROM entry e WHERE e.shop = trial.shop AND e.sequence = trial.entry);
CREATE TRIGGER trial_is_not_changed BEFORE UPDATE ON trial FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE INDEX trial_instrument ON trial (shop, instrument) WHERE instrument IS NOT NULL;

CREATE TABLE calibration (
    shop       TEXT COLLATE "C"    NOT NULL,
    id         TEXT COLLATE "C"    NOT NULL,
    instrument TEXT COLLATE "C"    NOT NULL,
    entry      BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, instrument) REFERENCES instrument (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX calibration_instrument ON calibration (shop, instrument, entry);

CREATE TABLE study (
    shop       TEXT COLLATE "C"    NOT NULL,
    id         TEXT COLLATE "C"    NOT NULL,
    instrument TEXT COLLATE "C"    NOT NULL,
    entry      BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, instrument) REFERENCES instrument (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX study_instrument ON study (shop, instrument, entry);

CREATE TABLE comeback (
    shop       TEXT COLLATE "C"    NOT NULL,
    id         TEXT COLLATE "C"    NOT NULL,
    unit       TEXT COLLATE "C"    NOT NULL,
    supersedes TEXT COLLATE "C",
    entry      BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, supersedes) REFERENCES comeback (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX comeback_unit ON comeback (shop, unit);
CREATE UNIQUE INDEX comeback_superseded_once ON comeback (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE policy (
    shop   TEXT COLLATE "C"    NOT NULL,
    number BIGINT NOT NULL,
    entry  BIGINT NOT NULL,
    PRIMARY KEY (shop, number),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);

CREATE TRIGGER calibration_is_not_changed BEFORE UPDATE ON calibration FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER calibration_is_not_removed BEFORE DELETE ON calibration FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER study_is_not_changed BEFORE UPDATE ON study FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER study_is_not_removed BEFORE DELETE ON study FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER comeback_is_not_changed BEFORE UPDATE ON comeback FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER comeback_is_not_removed BEFORE DELETE ON comeback FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER policy_is_not_changed BEFORE UPDATE ON policy FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER policy_is_not_removed BEFORE DELETE ON policy FOR EACH ROW EXECUTE FUNCTION append_only();
