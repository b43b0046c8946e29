-- Receivers of webhooks. Who is told of what is an index of the chain like the shop's other records. How far each has come, what happened to each
-- delivery and the secrets that sign them are no part of it: the chain itself is the outbox, and a delivery must not be an event.

CREATE TABLE webhook (
    shop    TEXT COLLATE "C"    NOT NULL,
    id      TEXT COLLATE "C"    NOT NULL,
    unit    TEXT COLLATE "C",
    about   TEXT COLLATE "C",
    version BIGINT NOT NULL,
    entry   BIGINT NOT NULL,
    PRIMARY KEY (shop, id),
    FOREIGN KEY (shop, entry) REFERENCES entry (shop, sequence)
);

CREATE TABLE webhook_outbox (
    shop     TEXT COLLATE "C"    NOT NULL,
    webhook  TEXT COLLATE "C"    NOT NULL,
    sequence BIGINT NOT NULL,
    PRIMARY KEY (shop, webhook),
    FOREIGN KEY (shop, webhook) REFERENCES webhook (shop, id)
);

CREATE TABLE webhook_secret (
    shop    TEXT COLLATE "C" NOT NULL,
    webhook TEXT COLLATE "C" NOT NULL,
    secret  TEXT COLLATE "C" NOT NULL,
    made    TEXT COLLATE "C" NOT NULL,
    ends    TEXT COLLATE "C",
    PRIMARY KEY (shop, webhook, secret),
    FOREIGN KEY (shop, webhook) REFERENCES webhook (shop, id)
);

CREATE TABLE webhook_delivery (
    shop     TEXT COLLATE "C"    NOT NULL,
    webhook  TEXT COLLATE "C"    NOT NULL,
    sequence BIGINT NOT NULL,
    at       TEXT COLLATE "C"    NOT NULL,
    kind     TEXT COLLATE "C"    NOT NULL,
    state    TEXT COLLATE "C"    NOT NULL,
    attempts BIGINT NOT NULL,
    first    TEXT COLLATE "C"    NOT NULL,
    last     TEXT COLLATE "C"    NOT NULL,
    status   BIGINT,
    error    TEXT COLLATE "C",
    PRIMARY KEY (shop, webhook, sequence),
    FOREIGN KEY (shop, webhook) REFERENCES webhook (shop, id)
);
