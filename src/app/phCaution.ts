import type { Active } from '../schema/catalogue.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';

/** The factor comes on top of the interval, whatever that allows for. */
const DOUBLE_COUNT = ' Where the interval already allows for such a pH, the odds come out too high.';

/** What soil pH does to a question's active and what was made of it, in words; null where nothing is known of it. */
export function phCaution({ active, question, application }: ResolvedQuestion): string | null {
  if (active === null || active.ph === null) return null;
  const { isoName, ph } = active;
  const done = doneWords(ph, question.soilPh, application.siteFactor);
  const injury = ph.injury === undefined ? '' : ` Beside that, ${ph.injury}.`;
  return `Soil pH and ${isoName}: ${ph.words}. ${done}${injury} ${capital(ph.caution)}.`;
}

/** @param factor the factor that was put on the half-life [-] */
function doneWords(ph: NonNullable<Active['ph']>, soilPh: number | undefined, factor: number): string {
  if (ph.kind === 'direction') return 'Sources give no numbers, so no factor is applied.';
  if (soilPh === undefined) return 'No factor is applied, for the soil’s pH was not given.';
  const said = `At pH ${soilPh} its half-life is multiplied by ${Number(factor.toPrecision(3))}`;
  if (ph.kind === 'slope' && (soilPh < ph.lowPh || soilPh > ph.highPh)) {
    return `${said}, the factor of pH ${soilPh < ph.lowPh ? ph.lowPh : ph.highPh}, where the sources end.${factor > 1 ? DOUBLE_COUNT : ''}`;
  }
  return `${said}.${factor > 1 ? DOUBLE_COUNT : ''}`;
}

const capital = (text: string): string => text[0].toUpperCase() + text.slice(1);
