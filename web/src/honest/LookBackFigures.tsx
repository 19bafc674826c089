import { keepTogether } from '../answer/oddsInWords.ts';
import { TableRoom } from '../answer/TableRoom.tsx';
import type { Hindcast } from '../api/contract.ts';
import { FieldTally } from './FieldTally.tsx';
import { leadName, scoreWords } from './lookBackWords.ts';
import { PastYears } from './PastYears.tsx';
import { ReliabilityChart } from './ReliabilityChart.tsx';

/** A look back: the finding, what it tests, the scores, the drawing, and each lead and year. */
export function LookBackFigures({ hindcast, stale }: { hindcast: Hindcast; stale: boolean }) {
  const { sentence, meaning, overall, leads, recorded, residual, crop, labelEntries, station, years } =
    hindcast;
  const first = years[0].year;
  const last = years[years.length - 1].year;
  return (
    <div class="look-back-figures" data-testid="look-back-figures" data-stale={stale ? '' : undefined}>
      <p class="look-back-finding" data-testid="look-back-sentence">
        {keepTogether(sentence)}
      </p>
      <p class="section-lead" data-testid="look-back-meaning">
        {meaning}
      </p>
      <p class="section-note">
        {residual} before {crop}
        {labelEntries.length > 0 &&
          `, by your own label ${labelEntries.map(({ name }) => name).join(' and ')}`}
        ; {station.invented ? 'invented record' : 'record'} of {station.name}, seasons sprayed {first} to{' '}
        {last}.
      </p>
      <ul class="score-list" data-testid="look-back-scores">
        {scoreWords(overall).map((words) => (
          <li key={words}>{keepTogether(words)}</li>
        ))}
      </ul>
      <ReliabilityChart hindcast={hindcast} />
      <TableRoom label="scores by how long before planting">
        <table class="wide" data-testid="look-back-leads">
          <caption>
            <span class="caption-words">
              How good the odds were, by how long before planting they were given. A lower Brier score is
              better.
            </span>
          </caption>
          <thead>
            <tr>
              <th scope="col">Given</th>
              <th scope="col" class="number">
                Brier score
              </th>
              <th scope="col" class="number">
                Of the base rate alone
              </th>
              <th scope="col" class="number">
                Skill
              </th>
            </tr>
          </thead>
          <tbody>
            {leads.map((lead) => (
              <tr key={lead.leadDays}>
                <th scope="row">{leadName(lead)}</th>
                <td class="number">{lead.brier.toFixed(3)}</td>
                <td class="number">{lead.uncertainty.toFixed(3)}</td>
                <td class="number">{lead.skill === null ? 'none' : lead.skill.toFixed(2)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableRoom>
      <PastYears hindcast={hindcast} />
      {recorded !== null && <FieldTally tally={recorded} />}
    </div>
  );
}
