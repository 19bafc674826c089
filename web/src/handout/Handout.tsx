import { keepTogether, sayOdds, splitSentence } from '../answer/oddsInWords.ts';
import type { Answer, FieldRecord, QuestionInput } from '../api/contract.ts';
import { delayFinding, toDateWords } from '../reasons/storyWords.ts';
import { areaText, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { HandoutPicture } from './HandoutPicture.tsx';
import { inputWords } from './inputWords.ts';
import { useOnePage } from './useOnePage.ts';

interface HandoutProps {
  readonly answer: Answer;
  readonly question: QuestionInput;
  readonly units: Units;
  /** The kept field that it is about: its names stand where there are lines to write on otherwise. */
  readonly field: Pick<FieldRecord, 'farm' | 'name' | 'areaHa'> | null;
}

/** The sheet itself. Its letters shrink a little where much has to be said, so that it stays one page. */
export function Handout({ answer, question, units, field }: HandoutProps) {
  const dates = useDates();
  const element = useOnePage<HTMLElement>(answer, units, field);
  const { inputs, weather, model, labelDate, clearDate, conditions, cautions, evidence, season } = answer;
  const { mainInterval: interval } = inputs;
  const { plantOn, appliedOn } = inputs.question;
  const { before, odds, after } = splitSentence(keepTogether(answer.sentence));
  const next = [
    ...(evidence?.findings.map(({ text }) => text) ?? []),
    evidence?.bioassay.worthIt ? evidence.bioassay.how : null,
    season ? delayFinding(season.story.delay) : null,
  ].filter((text) => text !== null);
  return (
    <article class="handout" ref={element} data-testid="handout">
      <header class="handout-head">
        <span>Drywake sheet for the grower and the file</span>
        {weather.station.invented && <b class="tag">Invented example</b>}
        <span>
          {weather.observedThrough === null
            ? 'Made before any weather of the season was known'
            : `Weather known up to ${dates.full(weather.observedThrough)}`}
        </span>
      </header>
      <p class="handout-lines">
        <span data-testid="sheet-grower">
          Grower{field !== null && field.farm !== '' && <b>{field.farm}</b>}
        </span>
        <span data-testid="sheet-field">
          Field
          {field !== null && (
            <b>
              {[field.name, field.areaHa === null ? '' : areaText(field.areaHa, units)]
                .filter(Boolean)
                .join(', ')}
            </b>
          )}
        </span>
        <span>Adviser</span>
        <span>Date</span>
      </p>
      <h1>
        {before}
        <u>{odds}</u>
        {after}
      </h1>
      <p class="handout-advice">{keepTogether(answer.advice)}</p>
      <dl class="handout-dates">
        <Fact name="Sprayed">{dates.full(appliedOn)}</Fact>
        <Fact name="Not before, by your label">{dates.full(labelDate)}</Fact>
        <Fact name="Planting asked about">{dates.full(plantOn)}</Fact>
        <Fact name="Odds down to the limit">
          {clearDate === null ? 'not within the search' : dates.full(clearDate)}
        </Fact>
      </dl>
      {answer.carryoverModelled && season && <HandoutPicture answer={{ ...answer, season }} />}
      <div class="handout-columns">
        <section>
          <h2>Why</h2>
          {answer.why?.words.map((words) => (
            <p key={words}>{words}</p>
          ))}
          {season && <p>{toDateWords(season.story, units).join(' ')}</p>}
          {answer.thirds.length > 0 && (
            <p>
              {answer.thirds
                .map((third) => `${capital(third.name)} years: ${sayOdds(third.odds)}`)
                .join('. ')}
              .
            </p>
          )}
        </section>
        <section>
          <h2>The label is the law and the floor</h2>
          <p>
            Your label: {interval.text} from {inputs.residual.name} to {inputs.crop}. Nothing here lets the
            crop in sooner.
          </p>
          {inputs.otherTreatments.map((other) => (
            <p key={`${other.appliedOn} ${other.residual.name}`}>
              Also sprayed: {other.residual.name} on {dates.full(other.appliedOn)}, by your label{' '}
              {other.interval.text}: not before {dates.full(other.labelDate)}.
            </p>
          ))}
          {conditions.map(({ text }) => (
            <p key={text}>{keepTogether(text)}</p>
          ))}
        </section>
        {answer.zones.length > 0 && (
          <section>
            <h2>Where passes overlap</h2>
            {answer.zones.map(({ name, overlapFactor, oddsAtPlanting, clearDate: zoneClear }) => (
              <p key={name}>
                {capital(name)}, {overlapFactor} times the dose:{' '}
                {oddsAtPlanting === null ? 'no odds reckoned' : sayOdds(oddsAtPlanting)}
                {zoneClear !== null && `, clear ${dates.full(zoneClear)}`}.
              </p>
            ))}
          </section>
        )}
        {next.length > 0 && (
          <section>
            <h2>What next</h2>
            {next.map((text) => (
              <p key={text}>{keepTogether(text)}</p>
            ))}
          </section>
        )}
        <section>
          <h2>What was entered</h2>
          <p>{inputWords(answer, units)}</p>
        </section>
      </div>
      <section class="handout-cautions">
        <h2>Before you act on this</h2>
        <ul>
          {cautions
            .filter(({ code }) => code !== 'bioassay')
            .map(({ text }) => (
              <li key={text}>{keepTogether(text)}</li>
            ))}
        </ul>
      </section>
      <footer class="handout-foot">
        <p>
          {model.name}, version {model.version}. Weather: {weather.station.name} (station {question.station})
          {weather.station.invented ? ', an invented record' : `, ${weather.source}`}, to{' '}
          {dates.withWeekday(weather.lastDate)}
          {weather.yearsUsed > 0 && `, ${weather.yearsUsed} years used`}.{' '}
        </p>
        <p class="handout-address">{location.href}</p>
      </footer>
    </article>
  );
}

function Fact({ name, children }: { name: string; children: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

const capital = (text: string): string => text[0].toUpperCase() + text.slice(1);
