import type { ComponentChildren } from 'preact';
import { ASSUMPTIONS } from '../../../src/schema/assumptionList.ts';
import { blankName } from '../../../src/schema/fieldNames.ts';
import { organicMatterWords } from '../../../src/schema/soil.ts';
import type { Answer } from '../api/contract.ts';
import { sayOddsLimit } from '../question/questionInWords.ts';
import { Fold } from '../shell/Fold.tsx';
import { rainText, shownNumber, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';

/** Everything the answer was reckoned from, in a fold. */
export function Basis(props: { answer: Answer; units: Units }) {
  return <Fold title="What the answer rests on">{() => <BasisRows {...props} />}</Fold>;
}

function BasisRows({ answer, units }: { answer: Answer; units: Units }) {
  const dates = useDates();
  const { question: q, residual, interval, soil } = answer.inputs;
  const percent = (fraction: number) => `${shownNumber(fraction, 'fraction', units)} %`;
  const rows: [ComponentChildren, ComponentChildren][] = [
    ['Residual', `${residual.name}${residual.group ? `, group ${residual.group}` : ''}`],
    [
      'Field half-life',
      residual.halfLifeDays === null
        ? 'none known'
        : `${residual.halfLifeDays} days (${residual.halfLifeOrigin})`,
    ],
    ['Sprayed', dates.full(q.appliedOn)],
    ['Rate', `${percent(q.rateFraction)} of the top label rate`],
    ['Overlaps and turn rows', `${q.overlapFactor} times the dose`],
    ['Spray on green leaves', percent(q.canopyFraction)],
    ['Next crop', answer.inputs.crop],
    ['Planting', dates.full(q.plantOn)],
    [
      'Interval',
      `${interval.text} (${interval.confirmed ? 'your label' : interval.origin}${interval.fromMemory ? ', from memory' : ''})`,
    ],
    [
      'Soil',
      `${soil.texture}, ${organicMatterWords(q.organicMatterPercent)}, ${percent(q.coverFraction)} covered`,
    ],
    ['Soil pH', q.soilPh === undefined ? 'not given' : `${q.soilPh}`],
    [
      `Water the top ${units === 'us' ? '6 inches' : '15 cm'} can lose`,
      rainText(soil.evaporableWaterMm, units),
    ],
    [<Term name="odds limit">Odds limit</Term>, sayOddsLimit(q.oddsLimit)],
    [
      'Weather observed up to',
      answer.weather.observedThrough === null ? 'nothing yet' : dates.full(answer.weather.observedThrough),
    ],
    ['Own gauge and irrigation', gaugeWords(q.gauge.length, q.irrigation.length)],
    ['Rain of the rest of the season', `${percent(q.restOfSeasonRain)} of each year’s own`],
    [
      'Rain outlook',
      q.outlook
        ? `below ${q.outlook.belowPercent}, near ${q.outlook.nearPercent}, above ${q.outlook.abovePercent} in 100`
        : 'none: all years count alike',
    ],
  ];
  if (answer.demandBreakdownDays !== null && answer.medianBreakdownDays !== null) {
    rows.push([
      <Term name="breakdown day">Breakdown days</Term>,
      `the label asks for ${answer.demandBreakdownDays.toFixed(1)}; a middling season brings ${answer.medianBreakdownDays.toFixed(1)} by planting`,
    ]);
  }
  if (answer.stretch !== null) {
    rows.push([
      <Term name="stretch">Stretch</Term>,
      `${answer.stretch.toFixed(1)} times the label’s interval`,
    ]);
  }
  return (
    <>
      <Rows rows={rows} />
      <h3>Assumptions of the model</h3>
      <p>
        All of these are our own and can be changed in the question. <Term name="label-basis rain" /> is the
        first of them.
      </p>
      <Rows
        rows={ASSUMPTIONS.map(({ key, standard, quantity, unit, words, blank }) => {
          const value = q.assume[key];
          const shown =
            value === undefined
              ? (blank ?? '')
              : typeof value === 'number'
                ? `${shownNumber(value, quantity, units)} ${unit[units]}`
                : words?.[value];
          return [blankName(key), value !== undefined && value !== standard ? `${shown} (changed)` : shown];
        })}
      />
    </>
  );
}

function gaugeWords(gaugeDays: number, irrigations: number): string {
  if (gaugeDays + irrigations === 0) return 'none given';
  return `${gaugeDays} gauge days, ${irrigations} irrigations`;
}

function Rows({ rows }: { rows: readonly (readonly [ComponentChildren, ComponentChildren])[] }) {
  return (
    <dl class="rows">
      {rows.map(([name, value], index) => (
        <div key={index}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
