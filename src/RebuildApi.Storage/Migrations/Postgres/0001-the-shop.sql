-- Every key begins with the shop, so that branches can share a database and rows can be spread over machines by shop.
-- The chain (entry) holds every body once, in the order of commit. The other tables are its index: what is found by what.

-- Texts are compared byte by byte, as in the other engine, so that pages and chains come in the same order whatever the database's language.

CREATE FUNCTION append_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION '% is append-only', TG_TABLE_NAME;
END $$;

-- By the name that the other engine has for it, so that both are asked in the same words.
CREATE FUNCTION json_extract(body TEXT, path TEXT) RETURNS TEXT LANGUAGE sql IMMUTABLE STRICT PARALLEL SAFE AS $$
    SELECT body::json #>> string_to_array(substr(path, 3), '.')
$$;

-- A shop that is being taken over from a file, and the hash of that file's first line. It is not opened until that is done.
CREATE TABLE importing (
    shop TEXT COLLATE "C" NOT NULL,
    file TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (shop)
);

CREATE TABLE entry (
    shop      TEXT COLLATE "C"    NOT NULL,
    sequence  BIGINT NOT NULL,
    at        TEXT COLLATE "C"    NOT NULL,
    actor     TEXT COLLATE "C"    NOT NULL,
    operation TEXT COLLATE "C"    NOT NULL,
    kind      TEXT COLLATE "C"    NOT NULL,
    unit      TEXT COLLATE "C"    NOT NULL,
    id        TEXT COLLATE "C"    NOT NULL,
    body      TEXT COLLATE "C"    NOT NULL,
    previous  TEXT COLLATE "C"    NOT NULL,
    hash      TEXT COLLATE "C"    NOT NULL,
    PRIMARY KEY (shop, sequence)
);
CREATE INDEX entry_unit ON entry (shop, unit, sequence);

CREATE TABLE unit (
    shop    TEXT COLLATE "C"    NOT NULL,
    id      TEXT COLLATE "C"    NOT NULL,
    stage   TEXT COLLATE "C"    NOT NULL,
    version BIGINT NOT NULL,
    entry   BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX unit_stage ON unit (shop, stage, id);

CREATE TABLE component (
    shop     TEXT COLLATE "C"    NOT NULL,
    id       TEXT COLLATE "C"    NOT NULL,
    revision BIGINT NOT NULL,
    unit     TEXT COLLATE "C"    NOT NULL,
    entry    BIGINT NOT NULL,
    PRIMARY KEY (shop, id, revision),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX component_unit ON component (shop, unit);

CREATE TABLE placement (
    shop      TEXT COLLATE "C"    NOT NULL,
    unit      TEXT COLLATE "C"    NOT NULL,
    position  TEXT COLLATE "C"    NOT NULL,
    place     BIGINT NOT NULL,
    role      TEXT COLLATE "C"    NOT NULL,
    component TEXT COLLATE "C"    NOT NULL,
    entry     BIGINT NOT NULL,
    PRIMARY KEY (shop, unit, position, place, role),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX placement_component ON placement (shop, component);

CREATE TABLE measurement (
    shop           TEXT COLLATE "C"    NOT NULL,
    id             TEXT COLLATE "C"    NOT NULL,
    unit           TEXT COLLATE "C"    NOT NULL,
    component      TEXT COLLATE "C"    NOT NULL,
    revision       BIGINT NOT NULL,
    characteristic TEXT COLLATE "C"    NOT NULL,
    supersedes     TEXT COLLATE "C",
    entry          BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, component, revision) REFERENCES component (shop, id, revision),
    FOREIGN KEY (shop, supersedes) REFERENCES measurement (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX measurement_component ON measurement (shop, component, revision);
CREATE UNIQUE INDEX measurement_superseded_once ON measurement (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE finding (
    shop       TEXT COLLATE "C"    NOT NULL,
    id         TEXT COLLATE "C"    NOT NULL,
    unit       TEXT COLLATE "C"    NOT NULL,
    component  TEXT COLLATE "C"    NOT NULL,
    revision   BIGINT NOT NULL,
    supersedes TEXT COLLATE "C",
    entry      BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, component, revision) REFERENCES component (shop, id, revision),
    FOREIGN KEY (shop, supersedes) REFERENCES finding (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX finding_component ON finding (shop, component, revision);
CREATE UNIQUE INDEX finding_superseded_once ON finding (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE trial (
    shop       TEXT COLLATE "C"    NOT NULL,
    id         TEXT COLLATE "C"    NOT NULL,
    unit       TEXT COLLATE "C"    NOT NULL,
    clearance  TEXT COLLATE "C"    NOT NULL,
    supersedes TEXT COLLATE "C",
    entry      BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, supersedes) REFERENCES trial (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX trial_unit ON trial (shop, unit);
CREATE UNIQUE INDEX trial_superseded_once ON trial (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE decision (
    shop       TEXT COLLATE "C"    NOT NULL,
    id         TEXT COLLATE "C"    NOT NULL,
    unit       TEXT COLLATE "C"    NOT NULL,
    subject    TEXT COLLATE "C"    NOT NULL,
    supersedes TEXT COLLATE "C",
    entry      BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, supersedes) REFERENCES decision (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX decision_unit ON decision (shop, unit);
CREATE UNIQUE INDEX decision_superseded_once ON decision (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE instrument (
    shop    TEXT COLLATE "C"    NOT NULL,
    id      TEXT COLLATE "C"    NOT NULL,
    version BIGINT NOT NULL,
    entry   BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);

-- Large texts by their hash: a snapshot that did not change is kept once however often it was judged.
CREATE TABLE content (
    shop   TEXT COLLATE "C" NOT NULL,
    sha256 TEXT COLLATE "C" NOT NULL,
    body   BYTEA NOT NULL,
    PRIMARY KEY (shop, sha256)
);

CREATE TABLE judgement (
    shop      TEXT COLLATE "C"    NOT NULL,
    id        TEXT COLLATE "C"    NOT NULL,
    unit      TEXT COLLATE "C"    NOT NULL,
    purpose   TEXT COLLATE "C"    NOT NULL,
    snapshot  TEXT COLLATE "C"    NOT NULL,
    judgement TEXT COLLATE "C"    NOT NULL,
    entry     BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, snapshot) REFERENCES content (shop, sha256),
    FOREIGN KEY (shop, judgement) REFERENCES content (shop, sha256),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX judgement_unit ON judgement (shop, unit, id);

CREATE TABLE idempotency (
    shop           TEXT COLLATE "C"    NOT NULL,
    actor          TEXT COLLATE "C"    NOT NULL,
    key            TEXT COLLATE "C"    NOT NULL,
    operation      TEXT COLLATE "C"    NOT NULL,
    request_sha256 TEXT COLLATE "C"    NOT NULL,
    status         BIGINT NOT NULL,
    content_type   TEXT COLLATE "C"    NOT NULL,
    headers        TEXT COLLATE "C"    NOT NULL,
    body           BYTEA    NOT NULL,
    created        TEXT COLLATE "C"    NOT NULL,
    PRIMARY KEY (shop, actor, key)
);
CREATE INDEX idempotency_created ON idempotency (shop, created);

-- What the health check writes to, so that a full disk shows before a reading meets it.
CREATE TABLE probe (
    shop TEXT COLLATE "C" NOT NULL,
    body BYTEA NOT NULL,
    PRIMARY KEY (shop)
);

CREATE TRIGGER entry_is_not_changed BEFORE UPDATE ON entry FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER entry_is_not_removed BEFORE DELETE ON entry FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER component_is_not_changed BEFORE UPDATE ON component FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER component_is_not_removed BEFORE DELETE ON component FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER measurement_is_not_changed BEFORE UPDATE ON measurement FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER measurement_is_not_removed BEFORE DELETE ON measurement FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER finding_is_not_changed BEFORE UPDATE ON finding FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER finding_is_not_removed BEFORE DELETE ON finding FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER trial_is_not_changed BEFORE UPDATE ON trial FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER trial_is_not_removed BEFORE DELETE ON trial FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER decision_is_not_changed BEFORE UPDATE ON decision FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER decision_is_not_removed BEFORE DELETE ON decision FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER judgement_is_not_changed BEFORE UPDATE ON judgement FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER judgement_is_not_removed BEFORE DELETE ON judgement FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER content_is_not_changed BEFORE UPDATE ON content FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER content_is_not_removed BEFORE DELETE ON content FOR EACH ROW EXECUTE FUNCTION append_only();
