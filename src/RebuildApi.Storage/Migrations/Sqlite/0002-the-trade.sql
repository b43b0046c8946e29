-- The shop's own records: prices, the shelf, plans, quotes, invoice lines. Each table has the same columns, and is an index of the chain as the
-- others are. "about" is what else a row is looked for by: the kind of a part, the quote of an approval.

CREATE TABLE rates (
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

CREATE TABLE part (
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
CREATE INDEX part_about ON part (shop, about, id);

CREATE TABLE stock (
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
CREATE INDEX stock_about ON stock (shop, about, id);

CREATE TABLE reservation (
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
CREATE INDEX reservation_unit ON reservation (shop, unit, id);
CREATE INDEX reservation_about ON reservation (shop, about, id);

CREATE TABLE machining (
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
CREATE INDEX machining_unit ON machining (shop, unit, id);

CREATE TABLE plan (
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
CREATE INDEX plan_unit ON plan (shop, unit, id);

CREATE TABLE plan_choice (
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
CREATE INDEX plan_choice_unit ON plan_choice (shop, unit, id);

CREATE TABLE quote (
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
CREATE INDEX quote_unit ON quote (shop, unit, id);

CREATE TABLE approval (
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
CREATE INDEX approval_unit ON approval (shop, unit, id);

CREATE TABLE invoice_line (
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
CREATE INDEX invoice_line_unit ON invoice_line (shop, unit, id);
CREATE INDEX invoice_line_entry ON invoice_line (shop, entry);

CREATE TABLE work (
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
CREATE INDEX work_unit ON work (shop, unit, id);

CREATE TRIGGER plan_is_not_changed BEFORE UPDATE ON plan BEGIN SELECT RAISE(ABORT, 'plan is append-only'); END;
CREATE TRIGGER plan_is_not_removed BEFORE DELETE ON plan BEGIN SELECT RAISE(ABORT, 'plan is append-only'); END;
CREATE TRIGGER plan_choice_is_not_changed BEFORE UPDATE ON plan_choice BEGIN SELECT RAISE(ABORT, 'plan_choice is append-only'); END;
CREATE TRIGGER plan_choice_is_not_removed BEFORE DELETE ON plan_choice BEGIN SELECT RAISE(ABORT, 'plan_choice is append-only'); END;
CREATE TRIGGER quote_is_not_changed BEFORE UPDATE ON quote BEGIN SELECT RAISE(ABORT, 'quote is append-only'); END;
CREATE TRIGGER quote_is_not_removed BEFORE DELETE ON quote BEGIN SELECT RAISE(ABORT, 'quote is append-only'); END;
CREATE TRIGGER approval_is_not_changed BEFORE UPDATE ON approval BEGIN SELECT RAISE(ABORT, 'approval is append-only'); END;
CREATE TRIGGER approval_is_not_removed BEFORE DELETE ON approval BEGIN SELECT RAISE(ABORT, 'approval is append-only'); END;
CREATE TRIGGER invoice_line_is_not_changed BEFORE UPDATE ON invoice_line BEGIN SELECT RAISE(ABORT, 'invoice_line is append-only'); END;
CREATE TRIGGER invoice_line_is_not_removed BEFORE DELETE ON invoice_line BEGIN SELECT RAISE(ABORT, 'invoice_line is append-only'); END;
CREATE TRIGGER work_is_not_changed BEFORE UPDATE ON work BEGIN SELECT RAISE(ABORT, 'work is append-only'); END;
CREATE TRIGGER work_is_not_removed BEFORE DELETE ON work BEGIN SELECT RAISE(ABORT, 'work is append-only'); END;
