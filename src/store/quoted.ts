/** A text as a literal of SQL, for the places that take no parameter. */
export const quoted = (text: string): string => `'${text.replaceAll("'", "''")}'`;
