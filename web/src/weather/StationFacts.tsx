import type { StationCheck } from '../api/contract.ts';
import { sayDate } from '../question/calendar.ts';
import { heightNumber, heightUnit, rainText, type Units } from '../units/units.ts';
import { sayPoint } from './weatherAddress.ts';

const many = (count: number) => count.toLocaleString('en-US');
const percent = (fraction: number) => `${Number((fraction * 100).toPrecision(2))} %`;

/** Everything counted in reading and checking a record, in pairs. */
export function StationFacts({ check, units }: { check: StationCheck; units: Units }) {
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
    ['First day', sayDate(check.firstDate)],
    ['Last day', sayDate(check.lastDate)],
    ['Driest complete year', year(driestYear)],
    ['Wettest', year(wettestYear)],
    ['Days from totals', `${many(check.spreadDays)} share a total of several days`],
    ['Days filled in', `${many(check.filledDays)} with the mean of their time of year`],
    ['Days without temperatures', percent(check.temperatureMissingFraction)],
    ['Dropped by quality flag', many(reading.droppedByFlag)],
    ['Dropped as impossible', many(reading.implausible)],
    ['Missing, presumed zero', many(reading.presumedZero)],
    ['Standing twice', many(reading.duplicated)],
    ['Hour of reading', check.changes.observationTime],
    ['Moves of the station', check.changes.position],
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
