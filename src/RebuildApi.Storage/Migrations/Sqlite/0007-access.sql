-- Who may come in. A token is an index of the chain like the shop's other records; of its secret only a hash stands there.
-- When a token was last used is no record of the shop: it stands outside the chain and is written at most once a minute.

CREATE TABLE token (
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

CREATE TABLE token_use (
    shop  TEXT NOT NULL,
    token TEXT NOT NULL,
    used  TEXT NOT NULL,
    PRIMARY KEY (shop, token),
    FOREIGN KEY (shop, token) REFERENCES token (shop, id)
);
