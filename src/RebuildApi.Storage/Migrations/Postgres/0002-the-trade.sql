-- The shop's own records: prices, the shelf, plans, quotes, invoice lines. Each table has the same columns, and is an index of the chain as the
-- others are. "about" is what else a row is looked for by: the kind of a part, the quote of an approval.

CREATE TABLE rates (
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

CREATE TABLE part (
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
CREATE INDEX part_about ON part (shop, about, id);

CREATE TABLE stock (
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
CREATE INDEX stock_about ON stock (shop, about, id);

CREATE TABLE reservation (
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
CREATE INDEX reservation_unit ON reservation (shop, unit, id);
CREATE INDEX reservation_about ON reservation (shop, about, id);

CREATE TABLE machining (
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
CREATE INDEX machining_unit ON machining (shop, unit, id);

CREATE TABLE plan (
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
CREATE INDEX plan_unit ON plan (shop, unit, id);

CREATE TABLE plan_choice (
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
CREATE INDEX plan_choice_unit ON plan_choice (shop, unit, id);

CREATE TABLE quote (
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
CREATE INDEX quote_unit ON quote (shop, unit, id);

CREATE TABLE approval (
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
CREATE INDEX approval_unit ON approval (shop, unit, id);

CREATE TABLE invoice_line (
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
CREATE INDEX invoice_line_unit ON invoice_line (shop, unit, id);
CREATE INDEX invoice_line_entry ON invoice_line (shop, entry);

CREATE TABLE work (
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
CREATE INDEX work_unit ON work (shop, unit, id);

CREATE TRIGGER plan_is_not_changed BEFORE UPDATE ON plan FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER plan_is_not_removed BEFORE DELETE ON plan FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER plan_choice_is_not_changed BEFORE UPDATE ON plan_choice FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER plan_choice_is_not_removed BEFORE DELETE ON plan_choice FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER quote_is_not_changed BEFORE UPDATE ON quote FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER quote_is_not_removed BEFORE DELETE ON quote FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER approval_is_not_changed BEFORE UPDATE ON approval FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER approval_is_not_removed BEFORE DELETE ON approval FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER invoice_line_is_not_changed BEFORE UPDATE ON invoice_line FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER invoice_line_is_not_removed BEFORE DELETE ON invoice_line FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER work_is_not_changed BEFORE UPDATE ON work FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER work_is_not_removed BEFORE DELETE ON work FOR EACH ROW EXECUTE FUNCTION append_only();
