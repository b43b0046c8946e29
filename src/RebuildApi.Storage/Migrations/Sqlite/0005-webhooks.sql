-- Receivers of webhooks. Who is told of what is an index of the chain like the shop's other records. How far each has come, what happened to each
-- delivery and the secrets that sign them are no part of it: the chain itself is the outbox, and a delivery must not be an event.

CREATE TABLE webhook (
    shop    TEXT    NOT NULL,
    id      TEXT    NOT NULL,
    unit    TEXT,
    about   TEXT,
    version INTEGER NOT NULL,
    entry   INTEGER NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);

CREATE TABLE webhook_outbox (
    shop     TEXT    NOT NULL,
    webhook  TEXT    NOT NULL,
    sequence INTEGER NOT NULL,
    PRIMARY KEY (shop, webhook),
    FOREIGN KEY (shop, webhook) REFERENCES webhook (shop, id)
);

CREATE TABLE webhook_secret (
    shop    TEXT NOT NULL,
    webhook TEXT NOT NULL,
    secret  TEXT NOT NULL,
    made    TEXT NOT NULL,
    ends    TEXT,
    PRIMARY KEY (shop, webhook, secret),
    FOREIGN KEY (shop, webhook) REFERENCES webhook (shop, id)
);

CREATE TABLE webhook_delivery (
    shop     TEXT    NOT NULL,
    webhook  TEXT    NOT NULL,
    sequence INTEGER NOT NULL,
    at       TEXT    NOT NULL,
    kind     TEXT    NOT NULL,
    state    TEXT    NOT NULL,
    attempts INTEGER NOT NULL,
    first    TEXT    NOT NULL,
    last     TEXT    NOT NULL,
    status   INTEGER,
    error    TEXT,
    PRIMARY KEY (shop, webhook, sequence),
    FOREIGN KEY (shop, webhook) REFERENCES webhook (shop, id)
);
