import type { StationCheck } from '../api/contract.ts';
import type { DateWords } from '../units/dates.ts';
import { heightNumber, heightUnit, rainText, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { sayPoint } from './weatherAddress.ts';

const many = (count: number) => count.toLocaleString('en-US');
const percent = (fraction: number) => `${Number((fraction * 100).toPrecision(2))} %`;

type Changes = StationCheck['changes'];

/** Hours of reading in words, changes with their dates. */
function hoursText(
  { periods, exceptions, knownDays, unknownDays }: Changes['observationTime'],
  dates: DateWords,
): string {
  if (knownDays === 0) return 'the records do not say at what hour';
  const told = periods.map(({ time, lastDate }, index) =>
    index === periods.length - 1
      ? `${time} ${index === 0 ? 'throughout' : 'since'}`
      : `${time} until ${dates.full(lastDate)}`,
  );
  const change = periods.length > 1 ? ' A change of hour moves rain to the day before or after.' : '';
  const rest = [
    exceptions > 0 ? `${many(exceptions)} readings at other hours` : '',
    unknownDays > 0 ? `${many(unknownDays)} without a known hour` : '',
  ].filter((text) => text !== '');
  return `${[...told, ...rest].join(', ')}.${change}`;
}

const movesText = (moves: Changes['formerPositions'], units: Units): string =>
  moves.length === 0
    ? 'none that the sources read tell of'
    : moves
        .map(({ latitudeDeg, longitudeDeg, elevationM, replacedBy }) => {
          const point =
            latitudeDeg === null || longitudeDeg === null ? '' : sayPoint(latitudeDeg, longitudeDeg);
          const height = elevationM === null ? '' : `${heightNumber(elevationM, units)} ${heightUnit(units)}`;
          return `${[point, height].filter((text) => text !== '').join(', ')} until ${replacedBy} gave another`;
        })
        .join('; ');

/** Everything counted in reading and checking a record, in pairs. */
export function StationFacts({ check, units }: { check: StationCheck; units: Units }) {
  const dates = useDates();
  const { station, reading, driestYear, wettestYear } = check;
  const { latitudeDeg, longitudeDeg, elevationM } = station;
  const year = (one: StationCheck['driestYear']) => one && `${one.year}, ${rainText(one.rainMm, units)}`;
  const facts: [string, string | null][] = [
    ['Id', station.id],
    [
      'Position',
      latitudeDeg === null || longitudeDeg === null ? 'not known' : sayPoint(latitudeDeg, longitudeDeg),
    ],
    ['Height', elevationM === null ? 'not known' : `${heightNumber(elevationM, units)} ${heightUnit(units)}`],
    ['First day', dates.full(check.firstDate)],
    ['Last day', dates.full(check.lastDate)],
    ['Driest complete year', year(driestYear)],
    ['Wettest', year(wettestYear)],
    ['Days from totals', `${many(check.spreadDays)} share a total of several days`],
    ['Days filled in', `${many(check.filledDays)} with the mean of their time of year`],
    ['Days without temperatures', percent(check.temperatureMissingFraction)],
    ['Dropped by quality flag', many(reading.droppedByFlag)],
    ['Dropped as impossible', many(reading.implausible)],
    ['Missing, presumed zero', many(reading.presumedZero)],
    ['Standing twice', many(reading.duplicated)],
    ['Rain read at', hoursText(check.changes.observationTime, dates)],
    ['Moves of the station', movesText(check.changes.formerPositions, units)],
    ['From', station.invented ? 'invented by this program' : check.source],
  ];
  return (
    <dl class="facts">
      {facts.map(
        ([name, value]) =>
          value !== null && (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ),
      )}
    </dl>
  );
}
