-- Texts that name a customer stand apart from the chain, each behind a salted seal in its entry, so that they can be erased and every hash still follows.
-- Entries of form 2 are written so. In those of form 1 such a text stands in the body; erasing it changes the body, and the erasure says to what.

ALTER TABLE entry ADD COLUMN form BIGINT NOT NULL DEFAULT 1;

CREATE TABLE personal (
    shop     TEXT COLLATE "C"    NOT NULL,
    sequence BIGINT NOT NULL,
    body     TEXT COLLATE "C"    NOT NULL,
    PRIMARY KEY (shop, sequence),
    FOREIGN KEY (shop, sequence) REFERENCES entry (shop, sequence)
);

CREATE TABLE erasure (
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
CREATE INDEX erasure_unit ON erasure (shop, unit);
CREATE TRIGGER erasure_is_not_changed BEFORE UPDATE ON erasure FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER erasure_is_not_removed BEFORE DELETE ON erasure FOR EACH ROW EXECUTE FUNCTION append_only();

-- Which entries an erasure names: only their texts may go.
CREATE TABLE erased (
    shop     TEXT COLLATE "C"    NOT NULL,
    sequence BIGINT NOT NULL,
    entry    BIGINT NOT NULL,
    PRIMARY KEY (shop, sequence),
    FOREIGN KEY (shop, sequence) REFERENCES entry (shop, sequence),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);

CREATE FUNCTION personal_is_kept() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NOT EXISTS (SELECT 1 FROM erased WHERE shop = OLD.shop AND sequence = OLD.sequence) THEN
        RAISE EXCEPTION 'no erasure names this text';
    END IF;
    RETURN OLD;
END $$;

CREATE TRIGGER personal_is_not_changed BEFORE UPDATE ON personal FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER personal_is_not_removed BEFORE DELETE ON personal FOR EACH ROW EXECUTE FUNCTION personal_is_kept();

CREATE FUNCTION entry_is_kept() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF OLD.form <> 1 OR NEW.form <> 1 OR NEW.hash <> OLD.hash OR NEW.sequence <> OLD.sequence
        OR NOT EXISTS (SELECT 1 FROM erased WHERE shop = OLD.shop AND sequence = OLD.sequence) THEN
        RAISE EXCEPTION 'entry is append-only';
    END IF;
    RETURN NEW;
END $$;

DROP TRIGGER entry_is_not_changed ON entry;
CREATE TRIGGER entry_is_not_changed BEFORE UPDATE ON entry FOR EACH ROW EXECUTE FUNCTION entry_is_kept();
