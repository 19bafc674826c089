/** Builds a store of fields of version 1, just as the program that had it did. Never change it. */
export const fieldsOfVersionOne = (
  field: string,
  label: string,
): readonly (readonly [string, ...string[]])[] => [
  ['CREATE TABLE schema_version (version INTEGER NOT NULL)'],
  [
    'CREATE TABLE field (id VARCHAR PRIMARY KEY, version INTEGER NOT NULL, document VARCHAR NOT NULL, removed BOOLEAN NOT NULL)',
  ],
  [
    'CREATE TABLE field_history (id VARCHAR NOT NULL, version INTEGER NOT NULL, document VARCHAR NOT NULL, removed BOOLEAN NOT NULL, changed_at VARCHAR NOT NULL)',
  ],
  [
    'CREATE TABLE label (id VARCHAR PRIMARY KEY, version INTEGER NOT NULL, document VARCHAR NOT NULL, removed BOOLEAN NOT NULL)',
  ],
  [
    'CREATE TABLE label_history (id VARCHAR NOT NULL, version INTEGER NOT NULL, document VARCHAR NOT NULL, removed BOOLEAN NOT NULL, changed_at VARCHAR NOT NULL)',
  ],
  ['INSERT INTO schema_version VALUES (1)'],
  [
    "INSERT INTO field_history VALUES ('home-quarter', 1, $1, false, '2026-01-01T00:00:00.000Z')",
    JSON.stringify({ ...JSON.parse(field), note: 'first' }),
  ],
  ["INSERT INTO field_history VALUES ('home-quarter', 2, $1, false, '2026-01-02T00:00:00.000Z')", field],
  ["INSERT INTO field VALUES ('home-quarter', 2, $1, false)", field],
  ["INSERT INTO label_history VALUES ('shed-one', 1, $1, false, '2026-01-01T00:00:00.000Z')", label],
  ["INSERT INTO label VALUES ('shed-one', 1, $1, false)", label],
];
