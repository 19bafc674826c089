import type { SourceFailedError } from '../errors.ts';
import { csvFields } from './csvLine.ts';
import { damagedFile, FETCH_AGAIN } from './damagedFile.ts';
import { nextLineAt, textEnd } from './lineBytes.ts';

/** One line under the header. */
export interface CsvRow {
  /** Line of the file, from 1. */
  readonly line: number;
  /** As many fields as the header has, blanks around them left out. */
  readonly fields: readonly string[];
}

/** How a table is written, and what advice goes with a damaged line. */
export interface CsvStyle {
  readonly separator?: string;
  /** Line of the header, from 1; without it the first line that is not blank. */
  readonly headerLine?: number;
  readonly hint?: string;
}

/** Delimited text with a header; lines are taken from the bytes as they are asked for, as often as they are. */
export class CsvTable {
  readonly header: readonly string[];
  private readonly separator: string;
  private readonly hint: string;
  private readonly firstRowAt: number;
  private readonly firstRowLine: number;

  /** @throws {SourceFailedError} FILE_DAMAGED where the header cannot be read */
  constructor(
    private readonly bytes: Buffer,
    private readonly fileName: string,
    { separator = ',', headerLine, hint = FETCH_AGAIN }: CsvStyle = {},
  ) {
    this.separator = separator;
    this.hint = hint;
    let at = 0;
    let line = 1;
    let next = nextLineAt(bytes, at);
    while (
      next < bytes.length &&
      (headerLine === undefined ? this.textOf(at, next).trim() === '' : line < headerLine)
    ) {
      at = next;
      next = nextLineAt(bytes, at);
      line++;
    }
    this.header = this.fieldsOf(at, next, line);
    this.firstRowAt = next;
    this.firstRowLine = line + 1;
  }

  /**
   * The lines under the header, those without any content passed over.
   * @throws {SourceFailedError} FILE_DAMAGED where a line has fewer fields than the header, or more that are not empty
   */
  *rows(): Generator<CsvRow> {
    const { bytes, header } = this;
    for (let at = this.firstRowAt, line = this.firstRowLine, next = 0; at < bytes.length; at = next, line++) {
      next = nextLineAt(bytes, at);
      const fields = this.fieldsOf(at, next, line);
      if (fields.every((field) => field === '')) continue;
      if (fields.length < header.length) {
        throw this.damaged(
          line,
          fields.length,
          `the line ends after ${fields.length} of ${header.length} fields`,
        );
      }
      const surplus = fields.findIndex((field, index) => index >= header.length && field !== '');
      if (surplus >= 0) {
        throw this.damaged(line, surplus + 1, `the line has more fields than the header’s ${header.length}`);
      }
      yield { line, fields };
    }
  }

  /** Refusal of a field. @param field from 1 */
  damaged(line: number, field: number, what: string): SourceFailedError {
    return damagedFile(this.fileName, line, field, what, this.hint);
  }

  private textOf(at: number, next: number): string {
    return this.bytes.toString('utf8', at, textEnd(this.bytes, at, next));
  }

  private fieldsOf(at: number, next: number, line: number): string[] {
    const text = this.textOf(at, next);
    const fields = csvFields(text, this.separator);
    if (fields !== null) return fields;
    const before = text.slice(0, text.lastIndexOf('"')).split(this.separator).length;
    throw this.damaged(line, before, 'a quote opens and does not close on its line');
  }
}
