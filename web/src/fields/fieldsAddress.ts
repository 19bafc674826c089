/** What an address under /fields names. */
export interface FieldsAddress {
  readonly field: string | null;
  /** The treatment whose record is to be printed. */
  readonly treatment: string | null;
}

export const fieldAddress = (id: string): string => `/fields/${encodeURIComponent(id)}`;

export const recordAddress = (id: string, treatment: string): string =>
  `${fieldAddress(id)}/record/${encodeURIComponent(treatment)}`;

export function readFieldsPath(path: string): FieldsAddress {
  const [, , field = '', record, treatment = ''] = path.split('/').map(decodeURIComponent);
  return {
    field: field === '' ? null : field,
    treatment: record === 'record' && treatment !== '' ? treatment : null,
  };
}
