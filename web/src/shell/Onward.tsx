import type { QuestionInput } from '../api/contract.ts';
import { useLastField } from './places.ts';

/** From a field’s answer on to the places that look wider, with the same question. */
export function Onward({ question: { crop, residual } }: { question: QuestionInput }) {
  const asked = useLastField();
  return (
    <nav class="onward do-row" aria-label="Look wider">
      <a href={`/compare${asked}`}>Other residuals before {crop}, side by side</a>
      <a href={`/crops${asked}`}>Other crops after {residual}, by date</a>
      <a href={`/region${asked}`}>The same at every station, on a map</a>
    </nav>
  );
}
