import type { Example, QuestionInput, StationExtent } from '../api/contract.ts';

interface FieldLineProps {
  readonly question: QuestionInput;
  readonly example: Example;
  readonly station: StationExtent | undefined;
}

/** Whose field this is about; invented places say so. */
export function FieldLine({ question, example, station }: FieldLineProps) {
  const isExample = question.station === example.question.station;
  const { farm } = example;
  const given: string | undefined = question.station;
  const place = (station?.name ?? given ?? 'No weather record yet').replace(/ \(invented\)$/, '');
  const parts = [
    isExample ? `${farm.name}, ${farm.field.toLowerCase()}` : null,
    question.soilClass ?? null,
    place === farm.name && isExample ? null : place,
  ].filter(Boolean);
  return (
    <p class="field-line">
      {parts.join(' · ')}
      {station?.invented && <span class="tag">invented</span>}
    </p>
  );
}
