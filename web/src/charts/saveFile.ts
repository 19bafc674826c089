import { type Column, csvOf } from './csv.ts';
import { madeNow, svgWithMade, withMade } from './madeBy.ts';

/** Hands a text to the browser as a file to keep; nothing leaves the machine. */
export function saveFile(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  URL.revokeObjectURL(url);
}

/** A CSV text as a file. */
export const saveCsv = (name: string, text: string): void => saveFile(name, text, 'text/csv;charset=utf-8');

/** Rows as a CSV file whose last columns say by what, when and for which question it was made. */
export const saveTable = <Row>(name: string, columns: readonly Column<Row>[], rows: readonly Row[]): void =>
  saveCsv(name, csvOf(withMade(columns, madeNow()), rows));

/** A drawing as a file that says inside what it shows, and by what, when and for which question it was made. */
export const saveSvg = (name: string, svg: string, about: string): void =>
  saveFile(name, svgWithMade(svg, about, madeNow()), 'image/svg+xml;charset=utf-8');

/** A value as a JSON file. */
export const saveJson = (name: string, value: unknown): void =>
  saveFile(name, JSON.stringify(value, null, 2), 'application/json');
