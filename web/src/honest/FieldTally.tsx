import { twentieths } from '../answer/oddsInWords.ts';
import { TableRoom } from '../answer/TableRoom.tsx';
import type { Hindcast } from '../api/contract.ts';
import { useDates } from '../units/useDates.ts';
import { bandName } from './lookBackWords.ts';

/** Outcomes that were recorded in kept fields, beside the look back: they test the odds as a whole. */
export function FieldTally({ tally }: { tally: NonNullable<Hindcast['recorded']> }) {
  const dates = useDates();
  const { sentence, meaning, counted, brier, skill, bins, leftOut } = tally;
  return (
    <div class="field-tally" data-testid="field-tally" data-counted={counted}>
      <h3>What was seen in your fields</h3>
      <p class="section-lead">{sentence}</p>
      {counted === 0 ? (
        <p class="section-note">
          Write down with its field, under <a href="/fields">Fields</a>, how a crop came through, and it is
          counted here, whatever residual and crop.
        </p>
      ) : (
        <>
          <p class="section-note">{meaning}</p>
          <TableRoom label="outcomes seen in fields, by band of odds">
            <table class="wide">
              <caption>
                <span class="caption-words">
                  Brier score {brier?.toFixed(3)}
                  {skill === null
                    ? '; all or none were hurt, so there is no skill to speak of.'
                    : `, skill ${skill.toFixed(2)}.`}
                </span>
              </caption>
              <thead>
                <tr>
                  <th scope="col">Odds given, in 20</th>
                  <th scope="col" class="number">
                    Crops
                  </th>
                  <th scope="col" class="number">
                    Hurt
                  </th>
                  <th scope="col" class="number">
                    Mean odds, in 20
                  </th>
                  <th scope="col" class="number">
                    95 % of chance, in 20
                  </th>
                </tr>
              </thead>
              <tbody>
                {bins.map((bin) => (
                  <tr key={bin.from}>
                    <th scope="row">{bandName(bin)}</th>
                    <td class="number">{bin.outcomes}</td>
                    <td class="number">{bin.injured}</td>
                    <td class="number">{twentieths(bin.meanOdds)}</td>
                    <td class="number">
                      {twentieths(bin.low)} to {twentieths(bin.high)}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableRoom>
        </>
      )}
      {leftOut.length > 0 && (
        <ul class="rule-list" data-testid="tally-left-out">
          {leftOut.map(({ fieldId, name, crop, lookedAtOn, reason }) => (
            <li key={`${fieldId} ${crop} ${lookedAtOn}`}>
              Left out: {name}, {crop} looked at on {dates.full(lookedAtOn)}. {reason}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
