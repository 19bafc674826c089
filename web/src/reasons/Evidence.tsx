import { OddsChip } from '../answer/OddsChip.tsx';
import { keepTogether, sayOdds } from '../answer/oddsInWords.ts';
import { TableRoom } from '../answer/TableRoom.tsx';
import type { Answer } from '../api/contract.ts';
import { useDates } from '../units/useDates.ts';

/** What soil tests and bioassays did to the odds, and whether a bioassay is worth it. */
export function Evidence({ answer }: { answer: Answer }) {
  const dates = useDates();
  const { evidence, inputs } = answer;
  if (evidence === null) return null;
  const { findings, bioassay, oddsBefore, oddsAfter } = evidence;
  const { plantOn, residual } = inputs.question;
  return (
    <section class="reasons" aria-labelledby="evidence-title" data-testid="evidence">
      <h2 id="evidence-title" class="section-title">
        Evidence from the field
      </h2>
      {findings.length > 0 && (
        <TableRoom label="evidence">
          <table class="wide" data-testid="findings">
            <caption>
              <span class="caption-words">{evidenceFinding(oddsBefore, oddsAfter)}</span>
            </caption>
            <thead>
              <tr>
                <th scope="col">What was found</th>
                <th scope="col" class="number">
                  Odds before, in 20
                </th>
                <th scope="col" class="number">
                  Odds after, in 20
                </th>
                <th scope="col">On</th>
              </tr>
            </thead>
            <tbody>
              {findings.map(({ kind, on, text, oddsAfter: after }, index) => (
                <tr key={index}>
                  <th scope="row">{foundWords(text, kind)}</th>
                  <td class="number">
                    <OddsChip odds={index === 0 ? oddsBefore : findings[index - 1].oddsAfter} />
                  </td>
                  <td class="number">
                    <OddsChip odds={after} />
                  </td>
                  <td>{dates.near(on, plantOn)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableRoom>
      )}
      <p class="section-lead" data-testid="bioassay-worth">
        <b>{bioassay.worthIt ? 'A field bioassay is worth it.' : 'A field bioassay would change little.'}</b>{' '}
        {keepTogether(bioassay.text)}
      </p>
      {bioassay.oddsIfClean !== null && bioassay.oddsIfInjured !== null && (
        <dl class="if-list">
          <div>
            <dt>Now</dt>
            <dd>
              <OddsChip odds={oddsAfter} /> in 20
            </dd>
          </div>
          <div>
            <dt>If plants stay clean</dt>
            <dd>
              <OddsChip odds={bioassay.oddsIfClean} /> in 20
            </dd>
          </div>
          <div>
            <dt>If plants are hurt</dt>
            <dd>
              <OddsChip odds={bioassay.oddsIfInjured} /> in 20
            </dd>
          </div>
        </dl>
      )}
      {bioassay.how && (
        <p class="section-note">
          {bioassay.how}{' '}
          <a href={`/bioassay?${new URLSearchParams({ residual, crop: guideCrop(answer) })}`}>
            The bioassay sheet, to print
          </a>
        </p>
      )}
    </section>
  );
}

/** The crop that a bioassay is about: of a mix, the species that rules. */
const guideCrop = ({ mix, inputs }: Answer): string => mix.find(({ rules }) => rules)?.crop ?? inputs.crop;

/** The finding without its odds, which stand in the columns beside it. */
function foundWords(text: string, kind: string): string {
  const end = text.indexOf(' on ');
  return end < 0 ? kind : text.slice(0, end);
}

function evidenceFinding(before: number, after: number): string {
  const [said, now] = [sayOdds(before), sayOdds(after)];
  return keepTogether(
    said === now
      ? `The evidence leaves the odds where they were, at ${said}.`
      : `The evidence moves the odds from ${said} to ${now}.`,
  );
}
