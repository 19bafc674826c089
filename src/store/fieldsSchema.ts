/**
 * Steps that build the store of fields, oldest first; the file's version is the number of steps done.
 * Never change a step that has been released: add one.
 *
 * A record is kept whole, as JSON text in the shape of its schema. `field` and `label` hold the present version of each;
 * their histories hold every version, the present one too, with the moment in which it was made. A removal is a version
 * with the last text and the mark. `last_answer` holds what each planned crop was last told.
 */
export const FIELDS_MIGRATIONS: readonly (readonly string[])[] = [
  ['field', 'label'].flatMap((table) => [
    `CREATE TABLE ${table} (
       id VARCHAR PRIMARY KEY,
       version INTEGER NOT NULL,
       document VARCHAR NOT NULL,
       removed BOOLEAN NOT NULL
     )`,
    `CREATE TABLE ${table}_history (
       id VARCHAR NOT NULL,
       version INTEGER NOT NULL,
       document VARCHAR NOT NULL,
       removed BOOLEAN NOT NULL,
       changed_at VARCHAR NOT NULL
     )`,
  ]),
  [
    `CREATE TABLE last_answer (
       field_id VARCHAR NOT NULL,
       plan_id VARCHAR NOT NULL,
       document VARCHAR NOT NULL
     )`,
  ],
];

/** Version of the store of fields that this program reads and writes. */
export const FIELDS_VERSION = FIELDS_MIGRATIONS.length;
