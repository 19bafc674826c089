import { caseVerdict, type Judged, verdictOf } from './judge.ts';
import type { CaseSource, RunCase } from './publishedCase.ts';

const cell = (text: string): string => text.replaceAll('|', '\\|');
const row = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;

/** Title, publisher and year. */
const saySource = ({ title, publisher, year }: CaseSource): string =>
  `${title}. ${publisher}${year === null ? '' : `, ${year}`}`;

/** The recorded verdict of a case; the test holds it against the computed one. */
export function recordedVerdict({ given }: Judged): string {
  if (given.kind === 'cannot be run') return 'cannot be run';
  return caseVerdict(Object.values(given.checks).map(({ recorded }) => recorded));
}

/** One line of the overview: case, source, measured, model, verdict, why. */
export function overviewRow(judged: Judged): string {
  const { given, results } = judged;
  const model = Object.values(results).map((result) => result.model);
  return row([
    given.id,
    saySource(given.source),
    given.measured,
    model.length === 0 ? '-' : model.join('; '),
    recordedVerdict(judged),
    given.why,
  ]);
}

/** The whole of test/cases/published/README.md. */
export function publishedCasesPage(all: readonly Judged[]): string {
  const count = (verdict: (text: string) => boolean) =>
    all.filter((one) => verdict(recordedVerdict(one))).length;
  const checks = all.flatMap(({ given }) => (given.kind === 'run' ? Object.values(given.checks) : []));
  const agreedChecks = checks.filter(({ recorded }) => recorded === 'agreed').length;
  const runs = all.filter((one): one is Judged & { given: RunCase } => one.given.kind === 'run');
  return [
    '# Published validation cases',
    '',
    'This page is written by the test beside it (`UPDATE_TABLE=1 npx vitest run --config .configs/vitest.config.ts test/cases/published`); the text and figures come from the case files.',
    '',
    `Of ${all.length} cases ${count((v) => v === 'agreed')} agree in every check, ${count((v) => v.startsWith('not agreed'))} do not, and ${count((v) => v === 'cannot be run')} cannot be run. Of the ${checks.length} checks in the cases that can, ${agreedChecks} agree.`,
    '',
    'Every criterion was written down before the model was run on its case, and the same few yardsticks serve most of them. Nothing in the model, the catalogue or the choice of stand-ins was changed because of a result; verdicts and reasons were written afterwards. But for V01 (laboratory) and V31 (its season as printed) no trial’s own weather was at hand: a real record of a more or less like climate stands in, so a verdict speaks of the model, the catalogue and the stand-in together.',
    '',
    row(['Case', 'Source', 'Measured', 'The model gives', 'Verdict', 'Why']),
    row(['---', '---', '---', '---', '---', '---']),
    ...all.map(overviewRow),
    '',
    '## Checks, criteria and assumptions',
    '',
    ...runs.flatMap(details),
  ].join('\n');
}

function details({ given, results }: Judged & { given: RunCase }): string[] {
  return [
    `### ${given.id}`,
    '',
    ...given.assumptions.map((assumption) => `- Taken: ${assumption}.`),
    '',
    row(['Measured', 'Agrees if', 'Why that is fair', 'The model gives', 'Verdict']),
    row(['---', '---', '---', '---', '---']),
    ...Object.entries(given.checks).map(([name, { measured, criterion, fair, recorded }]) =>
      row([
        measured,
        criterion,
        fair,
        results[name]?.model ?? '-',
        results[name] ? verdictOf(results[name]) : `${recorded} (skipped)`,
      ]),
    ),
    '',
  ];
}
