import { from } from 'arquero';
import { PUBLISHED_CASES } from '../test/cases/published/registry.ts';
import { recordedVerdict } from '../test/cases/published/table.ts';
import { type Notebook, words } from './kit/notebook.ts';

export interface DryCaseRow {
  readonly id: string;
  readonly source: string;
  readonly measured: string;
  readonly verdict: string;
  readonly why: string;
}

/** Every published case with the verdict that the tests hold. */
export const caseRows = (): DryCaseRow[] =>
  PUBLISHED_CASES.map((given) => ({
    id: given.id,
    source: `${given.source.title}. ${given.source.publisher}${given.source.year === null ? '' : `, ${given.source.year}`}`,
    measured: given.measured,
    verdict: recordedVerdict({ given, state: 'run', results: {} }),
    why: given.why,
  }));

export const dryCases: Notebook = {
  name: 'dry-cases',
  title: 'What did published trials in dry and wet seasons find, and does the model agree?',
  async cells() {
    const rows = caseRows();
    const count = (fits: (verdict: string) => boolean) => rows.filter(({ verdict }) => fits(verdict)).length;
    return [
      words(
        `Of ${rows.length} published cases ${count((verdict) => verdict === 'agreed')} agree in every check, ${count((verdict) => verdict.startsWith('not agreed ('))} in part, ${count((verdict) => verdict === 'not agreed')} not at all, and ${count((verdict) => verdict === 'cannot be run')} cannot be run for want of figures. What counts as agreeing was written down before the model was run, and nothing was changed afterwards to make a case agree. Misses stay in the table.`,
      ),
      {
        kind: 'table',
        caption: 'Each case, what was measured, and how the model did.',
        table: from(rows),
        isWordy: true,
        columns: {
          id: { head: 'Case' },
          source: { head: 'Source' },
          measured: { head: 'Measured' },
          verdict: { head: 'The model' },
          why: { head: 'Why' },
        },
      },
      words(
        'A test runs every case that can be run and fails where the verdict here is no longer the one that the computation gives; it needs the real records of the places that stand in for the trials’ own.',
      ),
    ];
  },
};
