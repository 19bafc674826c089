import type { Figure } from '../api/contract.ts';
import { doseUnit, shownNumber, type Units } from '../units/units.ts';
import { useUnits } from '../units/useUnits.ts';
import { Mark } from './Mark.tsx';
import { SourceLinks } from './Sources.tsx';

/** Words long enough to want a line of their own. */
const LONG = 60;

interface FiguresProps {
  readonly figures: readonly Figure[];
  readonly title: string;
}

/** Every figure with its unit, its mark and its sources. */
export function Figures({ figures, title }: FiguresProps) {
  const units = useUnits();
  return (
    <table class="figures" data-testid="figures">
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">Figure</th>
          <th scope="col">Value</th>
          <th scope="col">Where from</th>
        </tr>
      </thead>
      <tbody>
        {figures
          .map((one) => inUnits(one, units))
          .map(({ name, value, unit, mark, sources }) => (
            <tr key={name} data-mark={mark}>
              <th scope="row">{name}</th>
              <td data-long={`${value}`.length > LONG ? '' : undefined}>
                <b>{typeof value === 'number' ? value.toLocaleString('en-US') : value}</b>{' '}
                {unit === 'd' ? 'days' : unit}
              </td>
              <td>
                <Mark mark={mark} />
                <SourceLinks ids={sources} />
              </td>
            </tr>
          ))}
      </tbody>
    </table>
  );
}

/** A rate in the units shown, with three digits; sources are metric. */
function inUnits(figure: Figure, units: Units): Figure {
  const { value, unit } = figure;
  if (unit !== 'g/ha' || units === 'metric') return figure;
  const shown = (grams: string) => `${Number(shownNumber(Number(grams), 'rate', units)).toPrecision(3)}`;
  return { ...figure, unit: doseUnit(units), value: `${value}`.replaceAll(/\d+(?:\.\d+)?/g, shown) };
}
