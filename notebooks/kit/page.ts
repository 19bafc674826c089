import { html, raw } from 'hono/html';
import { chartSvg } from './chartSvg.ts';
import { frame, type Markup } from './frame.ts';
import type { Cell, ChartCell, Notebook, TableCell } from './notebook.ts';

const SHELF = 'Notebooks';

/** Widths of the drawings: a phone of 360 px less its margins, and a wider page. [px] */
const WIDTHS = { phone: 312, page: 640 } as const;

/** The page of a notebook: every cell computed, nothing left to do in the browser. */
export async function notebookPage({ title, cells }: Notebook): Promise<string> {
  const all = await cells();
  const shown: Markup[] = [];
  for (const cell of all) shown.push(await cellMarkup(cell));
  return String(
    await frame({
      title,
      shelf: SHELF,
      body: html`<h1>${title}</h1><div id="cells" data-cells="${all.length}">${shown}</div>`,
    }),
  );
}

/** The page that lists them. */
export const indexPage = async (notebooks: readonly Notebook[]): Promise<string> =>
  String(
    await frame({
      title: null,
      shelf: SHELF,
      body: html`<h1 data-testid="notebooks">Notebooks</h1>
<p>Computations to read and redo. Each is one question; its page was written by running it, and its text and figures are those of the run.</p>
<ol>${notebooks.map(({ name, title }) => html`<li><a href="${name}.html">${title}</a></li>`)}</ol>`,
    }),
  );

async function cellMarkup(cell: Cell): Promise<Markup> {
  switch (cell.kind) {
    case 'words':
      return html`<section data-cell="words">${cell.heading ? html`<h2>${cell.heading}</h2>` : ''}<p>${withCode(cell.text)}</p></section>`;
    case 'table':
      return tableMarkup(cell);
    case 'chart':
      return chartMarkup(cell);
  }
}

/** A drawing for each width; the style sheet shows the one that fits. */
async function chartMarkup({ caption, draw }: ChartCell): Promise<Markup> {
  const drawings: Markup[] = [];
  for (const [name, widthPx] of Object.entries(WIDTHS)) {
    drawings.push(html`<div class="drawing ${name}">${raw(await chartSvg(draw(widthPx), caption))}</div>`);
  }
  return html`<figure class="chart" data-cell="chart"><figcaption>${caption}</figcaption>${drawings}</figure>`;
}

/** Text with `code` in back quotes. */
const withCode = (text: string): Markup[] =>
  text.split('`').map((part, index) => (index % 2 === 1 ? html`<code>${part}</code>` : html`${part}`));

function tableMarkup({ caption, table, columns, isWordy = false }: TableCell): Markup {
  const entries = Object.entries(columns);
  const side = (isNumber = false) => (isNumber ? html` class="number"` : '');
  const cellOf = (row: Record<string, unknown>, name: string) => {
    const { head, say, isNumber } = columns[name];
    const text = say ? say(row[name] as never) : String(row[name] ?? '');
    return html`<td${side(isNumber)}${isWordy ? html` data-head="${head}"` : ''}>${text}</td>`;
  };
  return html`<figure data-cell="table"><figcaption>${caption}</figcaption><div class="wide" tabindex="0" role="region" aria-label="${caption}"><table${isWordy ? html` class="wordy"` : ''}>
<thead><tr>${entries.map(([, { head, isNumber }]) => html`<th scope="col"${side(isNumber)}>${head}</th>`)}</tr></thead>
<tbody>${(table.objects() as Record<string, unknown>[]).map((row) => html`<tr>${entries.map(([name]) => cellOf(row, name))}</tr>\n`)}</tbody>
</table></div></figure>`;
}
