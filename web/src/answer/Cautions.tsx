import type { Answer } from '../api/contract.ts';
import { keepTogether } from './oddsInWords.ts';

/** What the user must know beside the numbers; never folded away. */
export function Cautions({ cautions }: { cautions: Answer['cautions'] }) {
  return (
    <section class="cautions" aria-labelledby="cautions-title" data-testid="cautions">
      <h2 id="cautions-title">Before you act on this</h2>
      <ul>
        {cautions.map(({ code, text, sources }) => (
          <li key={text} data-code={code}>
            {keepTogether(text)}
            {sources && <small class="caution-source"> {sources.join('; ')}</small>}
          </li>
        ))}
      </ul>
    </section>
  );
}
