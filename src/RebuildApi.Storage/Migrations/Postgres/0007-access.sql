-- Who may come in. A token is an index of the chain like the shop's other records; of its secret only a hash stands there.
-- When a token was last used is no record of the shop: it stands outside the chain and is written at most once a minute.

CREATE TABLE token (
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

CREATE TABLE token_use (
    shop  TEXT COLLATE "C" NOT NULL,
    token TEXT COLLATE "C" NOT NULL,
    used  TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (shop, token),
    FOREIGN KEY (shop, token) REFERENCES token (shop, id)
);
