import type { ColumnTable } from 'arquero';
import type { TopLevelSpec } from 'vega-lite';

/** A paragraph; `code` is shown as such. */
export interface WordsCell {
  readonly kind: 'words';
  readonly text: string;
  readonly heading?: string;
}

/** How one column of a table is shown. */
export interface Column {
  readonly head: string;
  /** Text of a value; as it is where absent. */
  readonly say?: (value: never) => string;
  readonly isNumber?: boolean;
}

/** A table, its columns by name in the order they are shown. */
export interface TableCell {
  readonly kind: 'table';
  /** The finding, as a sentence. */
  readonly caption: string;
  readonly table: ColumnTable;
  readonly columns: Readonly<Record<string, Column>>;
  /** Its cells are sentences: on a phone each row stands as a block of its own. */
  readonly isWordy?: boolean;
}

/** A drawing; its table stands beside it in a cell of its own. */
export interface ChartCell {
  readonly kind: 'chart';
  /** The finding, as a sentence. */
  readonly caption: string;
  /** The drawing at a width, in colours that are custom properties of the page. [px] */
  draw(widthPx: number): TopLevelSpec;
}

export type Cell = WordsCell | TableCell | ChartCell;

/** One question, answered by computing. */
export interface Notebook {
  /** Name of its page, in small letters. */
  readonly name: string;
  /** The question, which is its title. */
  readonly title: string;
  cells(): Promise<readonly Cell[]>;
}

export const words = (text: string, heading?: string): WordsCell => ({ kind: 'words', text, heading });
