-- Every key begins with the shop, so that branches can share a database and rows can be spread over machines by shop.
-- The chain (entry) holds every body once, in the order of commit. The other tables are its index: what is found by what.

CREATE TABLE entry (
    shop      TEXT    NOT NULL,
    sequence  INTEGER NOT NULL,
    at        TEXT    NOT NULL,
    actor     TEXT    NOT NULL,
    operation TEXT    NOT NULL,
    kind      TEXT    NOT NULL,
    unit      TEXT    NOT NULL,
    id        TEXT    NOT NULL,
    body      TEXT    NOT NULL,
    previous  TEXT    NOT NULL,
    hash      TEXT    NOT NULL,
    PRIMARY KEY (shop, sequence)
);
CREATE INDEX entry_unit ON entry (shop, unit, sequence);

CREATE TABLE unit (
    shop    TEXT    NOT NULL,
    id      TEXT    NOT NULL,
    stage   TEXT    NOT NULL,
    version INTEGER NOT NULL,
    entry   INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX unit_stage ON unit (shop, stage, id);

CREATE TABLE component (
    shop     TEXT    NOT NULL,
    id       TEXT    NOT NULL,
    revision INTEGER NOT NULL,
    unit     TEXT    NOT NULL,
    entry    INTEGER NOT NULL,
    PRIMARY KEY (shop, id, revision),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX component_unit ON component (shop, unit);

CREATE TABLE placement (
    shop      TEXT    NOT NULL,
    unit      TEXT    NOT NULL,
    position  TEXT    NOT NULL,
    place     INTEGER NOT NULL,
    role      TEXT    NOT NULL,
    component TEXT    NOT NULL,
    entry     INTEGER NOT NULL,
    PRIMARY KEY (shop, unit, position, place, role),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX placement_component ON placement (shop, component);

CREATE TABLE measurement (
    shop           TEXT    NOT NULL,
    id             TEXT    NOT NULL,
    unit           TEXT    NOT NULL,
    component      TEXT    NOT NULL,
    revision       INTEGER NOT NULL,
    characteristic TEXT    NOT NULL,
    supersedes     TEXT,
    entry          INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, component, revision) REFERENCES component (shop, id, revision),
    FOREIGN KEY (shop, supersedes) REFERENCES measurement (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX measurement_component ON measurement (shop, component, revision);
CREATE UNIQUE INDEX measurement_superseded_once ON measurement (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE finding (
    shop       TEXT    NOT NULL,
    id         TEXT    NOT NULL,
    unit       TEXT    NOT NULL,
    component  TEXT    NOT NULL,
    revision   INTEGER NOT NULL,
    supersedes TEXT,
    entry      INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, component, revision) REFERENCES component (shop, id, revision),
    FOREIGN KEY (shop, supersedes) REFERENCES finding (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX finding_component ON finding (shop, component, revision);
CREATE UNIQUE INDEX finding_superseded_once ON finding (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE trial (
    shop       TEXT    NOT NULL,
    id         TEXT    NOT NULL,
    unit       TEXT    NOT NULL,
    clearance  TEXT    NOT NULL,
    supersedes TEXT,
    entry      INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, supersedes) REFERENCES trial (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX trial_unit ON trial (shop, unit);
CREATE UNIQUE INDEX trial_superseded_once ON trial (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE decision (
    shop       TEXT    NOT NULL,
    id         TEXT    NOT NULL,
    unit       TEXT    NOT NULL,
    subject    TEXT    NOT NULL,
    supersedes TEXT,
    entry      INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, supersedes) REFERENCES decision (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX decision_unit ON decision (shop, unit);
CREATE UNIQUE INDEX decision_superseded_once ON decision (shop, supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE instrument (
    shop    TEXT    NOT NULL,
    id      TEXT    NOT NULL,
    version INTEGER NOT NULL,
    entry   INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);

-- Large texts by their hash: a snapshot that did not change is kept once however often it was judged.
CREATE TABLE content (
    shop   TEXT NOT NULL,
    sha256 TEXT NOT NULL,
    body   BLOB NOT NULL,
    PRIMARY KEY (shop, sha256)
);

CREATE TABLE judgement (
    shop      TEXT    NOT NULL,
    id        TEXT    NOT NULL,
    unit      TEXT    NOT NULL,
    purpose   TEXT    NOT NULL,
    snapshot  TEXT    NOT NULL,
    judgement TEXT    NOT NULL,
    entry     INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, unit) REFERENCES unit (shop, id),
    FOREIGN KEY (shop, snapshot) REFERENCES content (shop, sha256),
    FOREIGN KEY (shop, judgement) REFERENCES content (shop, sha256),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);
CREATE INDEX judgement_unit ON judgement (shop, unit, id);

CREATE TABLE idempotency (
    shop           TEXT    NOT NULL,
    actor          TEXT    NOT NULL,
    key            TEXT    NOT NULL,
    operation      TEXT    NOT NULL,
    request_sha256 TEXT    NOT NULL,
    status         INTEGER NOT NULL,
    content_type   TEXT    NOT NULL,
    headers        TEXT    NOT NULL,
    body           BLOB    NOT NULL,
    created        TEXT    NOT NULL,
    PRIMARY KEY (shop, actor, key)
);
CREATE INDEX idempotency_created ON idempotency (shop, created);

-- What the health check writes to, so that a full disk shows before a reading meets it.
CREATE TABLE probe (
    shop TEXT NOT NULL,
    body BLOB NOT NULL,
    PRIMARY KEY (shop)
);

CREATE TRIGGER entry_is_not_changed BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'entry is append-only'); END;
CREATE TRIGGER entry_is_not_removed BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'entry is append-only'); END;
CREATE TRIGGER component_is_not_changed BEFORE UPDATE ON component BEGIN SELECT RAISE(ABORT, 'component is append-only'); END;
CREATE TRIGGER component_is_not_removed BEFORE DELETE ON component BEGIN SELECT RAISE(ABORT, 'component is append-only'); END;
CREATE TRIGGER measurement_is_not_changed BEFORE UPDATE ON measurement BEGIN SELECT RAISE(ABORT, 'measurement is append-only'); END;
CREATE TRIGGER measurement_is_not_removed BEFORE DELETE ON measurement BEGIN SELECT RAISE(ABORT, 'measurement is append-only'); END;
CREATE TRIGGER finding_is_not_changed BEFORE UPDATE ON finding BEGIN SELECT RAISE(ABORT, 'finding is append-only'); END;
CREATE TRIGGER finding_is_not_removed BEFORE DELETE ON finding BEGIN SELECT RAISE(ABORT, 'finding is append-only'); END;
CREATE TRIGGER trial_is_not_changed BEFORE UPDATE ON trial BEGIN SELECT RAISE(ABORT, 'trial is append-only'); END;
CREATE TRIGGER trial_is_not_removed BEFORE DELETE ON trial BEGIN SELECT RAISE(ABORT, 'trial is append-only'); END;
CREATE TRIGGER decision_is_not_changed BEFORE UPDATE ON decision BEGIN SELECT RAISE(ABORT, 'decision is append-only'); END;
CREATE TRIGGER decision_is_not_removed BEFORE DELETE ON decision BEGIN SELECT RAISE(ABORT, 'decision is append-only'); END;
CREATE TRIGGER judgement_is_not_changed BEFORE UPDATE ON judgement BEGIN SELECT RAISE(ABORT, 'judgement is append-only'); END;
CREATE TRIGGER judgement_is_not_removed BEFORE DELETE ON judgement BEGIN SELECT RAISE(ABORT, 'judgement is append-only'); END;
CREATE TRIGGER content_is_not_changed BEFORE UPDATE ON content BEGIN SELECT RAISE(ABORT, 'content is append-only'); END;
CREATE TRIGGER content_is_not_removed BEFORE DELETE ON content BEGIN SELECT RAISE(ABORT, 'content is append-only'); END;
