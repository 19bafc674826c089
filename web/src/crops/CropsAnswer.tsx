import { useState } from 'preact/hooks';
import { ODDS_WORDS } from '../../../src/chart/oddsScale.ts';
import { keepTogether } from '../answer/oddsInWords.ts';
import type { CropGrid } from '../api/contract.ts';
import { PlainTable } from '../charts/PlainTable.tsx';
import { saveJson, saveTable } from '../charts/saveFile.ts';
import { NotJudged } from '../compare/NotJudged.tsx';
import { PlainCautions } from '../compare/PlainCautions.tsx';
import { encodeAddress } from '../question/address.ts';
import { AnswerHead } from '../shell/AnswerHead.tsx';
import { CopyLink } from '../shell/CopyLink.tsx';
import type { Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';
import { CropGridTable, type Place } from './CropGridTable.tsx';
import { type CropsAsked, withCrop } from './cropsAddress.ts';
import { cropsStem, fileColumns, tableColumns } from './cropsFiles.ts';
import { byLabelDate, type CropsFinding, cellInWords, YEARS_WORDS } from './cropsWords.ts';
import { columnAround, columnsOf, splitRows } from './gridView.ts';
import { YearsSwitch } from './YearsSwitch.tsx';

interface CropsAnswerProps {
  readonly answer: CropGrid;
  readonly finding: CropsFinding;
  readonly asked: CropsAsked;
  readonly units: Units;
  readonly stale: string | null;
  readonly look: (part: Partial<CropsAsked>, entry?: 'push' | 'replace') => void;
}

/** Which crops can go in when: in a sentence, then as a grid with one cell ringed and read out. */
export function CropsAnswer({ answer, finding, asked, units, stale, look }: CropsAnswerProps) {
  const { question, years } = asked;
  const [plain, setPlain] = useState(false);
  const [pointed, point] = useState<Place | null>(null);
  const dates = useDates();
  const { columns, every } = columnsOf(answer.dates);
  const { open, barred } = splitRows(answer, question.crop);
  const column = columnAround(columns, question.plantOn);
  const row = open.findIndex(({ crop }) => crop === question.crop);
  const ringed = column === null || row < 0 ? null : { row, column };
  const over = pointed !== null && open[pointed.row] && columns[pointed.column] ? pointed : null;
  const read = over ?? ringed;
  const stem = cropsStem(answer);
  const caption = `Harm in 20 seasons and soils like this, ${YEARS_WORDS[years]}, by planting date`;
  return (
    <article class="answer crops" data-stale={stale === null ? undefined : ''}>
      <AnswerHead stale={stale} sentence={finding.head} rest={finding.rest} />
      {open.length > 0 && (
        <figure class="chart grid-figure">
          <figcaption>{caption}</figcaption>
          <YearsSwitch years={years} choose={(chosen) => look({ years: chosen }, 'replace')} />
          <CropGridTable
            caption={caption}
            rows={open}
            columns={columns}
            years={years}
            ringed={ringed}
            point={point}
            ring={(place) =>
              look(
                { question: withCrop(question, open[place.row].crop, columns[place.column].date) },
                'replace',
              )
            }
          />
          <GridKey free={open.some(({ odds }) => odds === null)} />
          {every > 1 && (
            <p class="small">
              There are {answer.dates.length} dates; every {every}th is shown, the file has all of them.
            </p>
          )}
          <p class="ringed" data-testid="ringed">
            {read === null ? (
              'Point at a cell, or press it, to read it in full here.'
            ) : (
              <>
                {keepTogether(cellInWords(open[read.row], columns[read.column], years, dates))}{' '}
                <a
                  href={`/${encodeAddress(withCrop(question, open[read.row].crop, columns[read.column].date), units)}`}
                >
                  The whole answer for it
                </a>
              </>
            )}
          </p>
          <div class="do-row chart-tools">
            <button type="button" class="quiet" aria-expanded={plain} onClick={() => setPlain(!plain)}>
              {plain ? 'Hide the table' : 'As a table'}
            </button>
            <button
              type="button"
              class="quiet"
              onClick={() => saveTable(`${stem}.csv`, fileColumns(answer.dates), answer.crops)}
            >
              CSV
            </button>
            <button type="button" class="quiet" onClick={() => saveJson(`${stem}.json`, answer)}>
              JSON
            </button>
            <CopyLink />
          </div>
          {plain && (
            <PlainTable
              testId="plain-table"
              label={`Table: ${caption}, in percent`}
              columns={tableColumns(answer.dates, years)}
              rows={answer.crops}
            />
          )}
        </figure>
      )}
      {barred.length > 0 && (
        <section class="barred" aria-labelledby="barred-title" data-testid="barred">
          <h2 id="barred-title">Not allowed by the label on any of these dates</h2>
          <dl>
            {byLabelDate(barred).map(({ labelDate, crops }) => (
              <div key={labelDate}>
                <dt>
                  {labelDate === '' ? 'while a condition is not met' : `until ${dates.full(labelDate)}`}
                </dt>
                <dd>{crops.join(', ')}</dd>
              </div>
            ))}
          </dl>
        </section>
      )}
      {answer.crops.length === 0 && (
        <p class="note" data-testid="empty">
          No crop has an interval after {answer.residual} here. The label of the product in your shed has one.
        </p>
      )}
      {question.interval !== undefined && (
        <p class="small">
          The interval that you gave for {question.crop} counts on its field page only; here all stand on the
          catalogue’s.
        </p>
      )}
      <NotJudged all={answer.unjudged} title={`Not judged: ${answer.unjudged.length} crops`} />
      <PlainCautions cautions={answer.cautions} />
    </article>
  );
}

/** How to read a cell. */
function GridKey({ free }: { free: boolean }) {
  return (
    <div class="legend grid-key">
      <span class="scale" aria-hidden="true">
        {ODDS_WORDS.map((word, step) => (
          <i key={word} data-step={step} />
        ))}
      </span>
      <span>
        from {ODDS_WORDS[0]} to {ODDS_WORDS[ODDS_WORDS.length - 1]}
      </span>
      <span class="key key-barred">not allowed by the label</span>
      <span>
        <b>L</b> <Term name="label date" />
      </span>
      <span>
        <b>C</b> <Term name="clear date" />, all years
      </span>
      {free && (
        <span>
          <b>–</b> no carryover reckoned
        </span>
      )}
      <span class="from-memory">interval from memory</span>
    </div>
  );
}
