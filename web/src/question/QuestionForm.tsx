import type { Answer } from '../api/contract.ts';
import { Term } from '../words/Term.tsx';
import { ChoiceBlank } from './ChoiceBlank.tsx';
import { daysBetween, sayFullDate, sayWeekday } from './calendar.ts';
import { DateBlank } from './DateBlank.tsx';
import { QUESTION_DEFAULTS } from './defaults.ts';
import { useForm } from './FormContext.ts';
import { IntervalBlank } from './IntervalBlank.tsx';
import { MoreBlanks } from './MoreBlanks.tsx';
import { NumberBlank } from './NumberBlank.tsx';

const named = (names: readonly string[]) => names.map((name) => ({ value: name, text: name }));

/** The question: a sentence with blanks, then folds with all that it leaves unsaid. */
export function QuestionForm({ answer }: { answer: Answer | null }) {
  const { question: q, choices, change } = useForm();
  const { stations } = choices;
  return (
    <form class="question" aria-label="The question" onSubmit={(event) => event.preventDefault()}>
      <ChoiceBlank
        field="residual"
        lead="I sprayed"
        label="Residual"
        value={q.residual}
        options={named(choices.residuals.map(({ name }) => name))}
        other="another, written in…"
        commit={(residual) => change({ residual })}
      />
      <DateBlank
        id="blank-appliedOn"
        field="appliedOn"
        lead="on"
        label="Date of spraying"
        value={q.appliedOn}
        echo={q.appliedOn && sayFullDate(q.appliedOn)}
        commit={(appliedOn) => appliedOn && change({ appliedOn })}
      />
      <NumberBlank
        field="rateFraction"
        lead="at"
        label="Rate"
        unit="% of the top label rate"
        quantity="fraction"
        value={q.rateFraction}
        standard={QUESTION_DEFAULTS.rateFraction}
        min={0}
        max={10}
        aboveMin
        commit={(rateFraction) => change({ rateFraction })}
      />
      <ChoiceBlank
        field="crop"
        lead="before"
        label="Next crop"
        value={q.crop}
        options={named(choices.crops.map(({ name }) => name))}
        other="another, written in…"
        commit={(crop) => change({ crop })}
      />
      <DateBlank
        id="blank-plantOn"
        field="plantOn"
        lead="planting"
        label="Planting date"
        value={q.plantOn}
        echo={
          q.plantOn &&
          q.appliedOn &&
          `${sayWeekday(q.plantOn)}, ${daysBetween(q.appliedOn, q.plantOn)} days after spraying`
        }
        commit={(plantOn) => plantOn && change({ plantOn })}
      />
      <ChoiceBlank
        field="soilClass"
        lead="on"
        label="Soil"
        value={q.soilClass ?? 'loam'}
        options={named(choices.soilClasses)}
        commit={(soilClass) => change({ soilClass: soilClass as typeof q.soilClass })}
      />
      <ChoiceBlank
        field="station"
        lead="near"
        label="Weather record"
        value={q.station}
        options={stations.map(({ id, name }) => ({ value: id, text: name }))}
        remark={stationRemark(stations.find(({ id }) => id === q.station))}
        commit={(station) => change({ station })}
      />
      <IntervalBlank used={answer?.inputs.interval ?? null} />
      <NumberBlank
        field="oddsLimit"
        lead="I accept"
        label={<>Odds limit</>}
        unit="in 20"
        quantity="twentieths"
        value={q.oddsLimit}
        standard={QUESTION_DEFAULTS.oddsLimit}
        min={0}
        max={0.999}
        aboveMin
        remark={<Term name="odds limit">What is an odds limit?</Term>}
        commit={(oddsLimit) => change({ oddsLimit })}
      />
      <MoreBlanks />
    </form>
  );
}

function stationRemark(station: { firstDate: string; lastDate: string; invented: boolean } | undefined) {
  if (!station) return undefined;
  const years = `${station.firstDate.slice(0, 4)} to ${station.lastDate.slice(0, 4)}`;
  return station.invented ? `An invented record, ${years}` : `Record ${years}`;
}
