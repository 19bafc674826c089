import type { Figure } from '../api/contract.ts';
import { Mark } from './Mark.tsx';
import { SourceLinks } from './Sources.tsx';

/** Words long enough to want a line of their own. */
const LONG = 60;

/** Every figure with its unit, its mark and its sources. */
export function Figures({ figures, title }: { figures: readonly Figure[]; title: string }) {
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
        {figures.map(({ name, value, unit, mark, sources }) => (
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
