-- What the shop opens to others that share its database; about says what, and is empty once it was taken back. The policies of the fence ask it.

CREATE TABLE sharing (
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
CREATE INDEX sharing_to ON sharing (id, shop);
-- By which judgement a text is kept; a policy asks it.
CREATE INDEX judgement_body ON judgement (shop, judgement);

-- How often somebody tried what is slowed, over all copies: until is when, in milliseconds of 1970, the last try is forgotten. Nothing of it need outlive a
-- crash, and none of it is a record of the shop.
CREATE UNLOGGED TABLE tries (
    shop  TEXT COLLATE "C" NOT NULL,
    who   TEXT COLLATE "C" NOT NULL,
    until BIGINT NOT NULL,
    PRIMARY KEY (shop, who)
);
CREATE INDEX tries_until ON tries (shop, until);
