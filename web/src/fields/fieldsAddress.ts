import { decodedPart } from '../shell/decodedPart.ts';

/** What an address under /fields names. */
export interface FieldsAddress {
  readonly field: string | null;
  /** The treatment whose record is to be printed. */
  readonly treatment: string | null;
  /** The planned crop whose sheet is to be printed. */
  readonly sheet: string | null;
}

export const fieldAddress = (id: string): string => `/fields/${encodeURIComponent(id)}`;

export const recordAddress = (id: string, treatment: string): string =>
  `${fieldAddress(id)}/record/${encodeURIComponent(treatment)}`;

export const sheetAddress = (id: string, plan: string): string =>
  `${fieldAddress(id)}/sheet/${encodeURIComponent(plan)}`;

export function readFieldsPath(path: string): FieldsAddress {
  const [, , field = '', page, id = ''] = path.split('/').map(decodedPart);
  return {
    field: field === '' ? null : field,
    treatment: page === 'record' && id !== '' ? id : null,
    sheet: page === 'sheet' && id !== '' ? id : null,
  };
}
