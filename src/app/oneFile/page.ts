import { html, raw } from 'hono/html';
import { twentieths } from '../../chart/saidWords.ts';
import type { Answer } from '../../schema/answer.ts';
import type { Sheet } from '../../schema/sheet.ts';
import type { Say } from '../say.ts';
import { assumptionLines } from './assumptionLines.ts';
import type { Figure } from './figures.ts';
import { FILE_STYLE } from './style.ts';

type Markup = ReturnType<typeof html>;

/** What a file is made of. */
export interface PageParts {
  readonly answer: Answer;
  /** The same answer in the words of its sheet. */
  readonly sheet: Sheet;
  readonly figures: readonly Figure[];
  readonly say: Say;
  /** When it was made, ISO 8601 in UTC. */
  readonly madeAt: string;
}

/** Nothing may be fetched, run or sent from the file. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/** One page of HTML that needs nothing but itself. Every text is escaped where it is put in. */
export async function filePage({ answer, sheet, figures, say, madeAt }: PageParts): Promise<string> {
  const { field } = sheet;
  const made = `${say.dates.full(madeAt.slice(0, 10))}, ${madeAt.slice(11, 16)} UTC`;
  const page = await html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${raw(POLICY)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${sheet.title}${field && `, ${field.name}`}</title>
<style>${raw(FILE_STYLE)}</style>
</head>
<body>
<main>
<p class="small">Drywake answer, saved ${made}. It stays as it was then; no weather after ${say.dates.full(sheet.dataDate)} is in it.</p>
${field && html`<p><b>${[field.farm, field.name, field.area].filter(Boolean).join(', ')}</b></p>`}
${sheet.invented && html`<p class="tag">${sheet.invented}</p>`}
<h1>${sheet.sentence}</h1>
<p>${sheet.advice}</p>
<p class="floor">${sheet.floor}</p>
${list('Dates and odds', sheet.dates)}
${figures.map(figureMarkup)}
${list('Dry, middle and wet years', sheet.thirds)}
${list('Parts of the field with another overlap', sheet.zones)}
${bullets('Why', sheet.reasons)}
${list('What the label ties its interval to', sheet.conditions)}
${bullets('Before you act on this', sheet.cautions)}
${yearsTable(answer, say)}
${list('What was entered', sheet.inputs)}
${list('Assumptions of the model', assumptionLines(answer.inputs.question.assume, say.wording.units))}
${bullets('Sources', sourcesOf(answer, sheet))}
<p class="small">${sheet.model}. Saved ${made}.</p>
</main>
</body>
</html>
`;
  return page.toString();
}

const section = (title: string, empty: boolean, body: () => Markup): Markup | '' =>
  empty
    ? ''
    : html`<section>
<h2>${title}</h2>
${body()}
</section>`;

const list = (title: string, lines: Sheet['inputs']) =>
  section(
    title,
    lines.length === 0,
    () =>
      html`<dl>${lines.map(
        ({ label, value }) => html`<div><dt>${label}</dt><dd>${value}</dd></div>
`,
      )}</dl>`,
  );

const bullets = (title: string, texts: readonly string[]) =>
  section(
    title,
    texts.length === 0,
    () =>
      html`<ul>${texts.map(
        (text) => html`<li>${text}</li>
`,
      )}</ul>`,
  );

/** A drawing for phones, and one for wider pages and paper; only one of them shows. */
function figureMarkup({ name, caption, legend, keys, narrowSvg, wideSvg }: Figure): Markup {
  return html`<figure id="${name}">
<figcaption>${caption}</figcaption>
${keys.length > 0 && html`<ul class="keys">${keys.map(({ key, words }) => html`<li class="${key}">${words}</li>`)}</ul>`}
<div class="narrow" role="img" aria-label="${caption}"><div aria-hidden="true">${raw(narrowSvg)}</div></div>
<div class="wide" role="img" aria-label="${caption}"><div aria-hidden="true">${raw(wideSvg)}</div></div>
${legend && html`<p class="small">${legend}</p>`}
</figure>
`;
}

function yearsTable({ years }: Answer, say: Say) {
  return section(
    'The years behind the odds',
    years.length === 0,
    () => html`<div class="room" role="region" tabindex="0" aria-label="Table of the years">
<table>
<caption class="small">Each past year’s weather from spraying on: its warm rain by the label date, the odds at planting with it, and when it would be clear.</caption>
<thead><tr><th scope="col">Year</th><th scope="col">Third</th><th scope="col" class="number">Warm rain</th><th scope="col" class="number">Odds, in 20</th><th scope="col">Clear</th></tr></thead>
<tbody>
${years.map(
  ({ year, third, warmRainMm, probability, clearDate }) =>
    html`<tr><th scope="row">${year}</th><td>${third}</td><td class="number">${say.water(warmRainMm)}</td><td class="number">${twentieths(probability)}</td><td>${clearDate === null ? 'not within the search' : say.dates.full(clearDate)}</td></tr>
`,
)}</tbody>
</table>
</div>`,
  );
}

/** Where weather, intervals and cautions come from. */
function sourcesOf({ inputs, cautions }: Answer, { weather }: Sheet): string[] {
  const treatments = [
    { name: inputs.residual.name, interval: inputs.mainInterval },
    ...inputs.otherTreatments.map(({ residual, interval }) => ({ name: residual.name, interval })),
  ];
  const titles = [
    ...treatments.flatMap(({ interval }) => interval.sources),
    ...cautions.flatMap(({ sources = [] }) => sources),
  ];
  return [
    `Weather: ${weather}`,
    ...treatments.map(({ name, interval }) => `Interval of ${name}: ${interval.text}, from your own label.`),
    ...new Set(titles),
  ];
}
