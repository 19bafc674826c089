import type { Answer } from '../api/contract.ts';

/** The sign of a third: dry a solid triangle, middle an open ring, wet a solid square. */
export function ThirdMark({ third }: { third: Answer['years'][number]['third'] }) {
  return (
    <svg class="third-mark" viewBox="0 0 12 12" width="12" height="12" aria-hidden="true" data-third={third}>
      {third === 'dry' && <path d="M6 1 11.500 11H.5z" />}
      {third === 'middle' && <circle cx="6" cy="6" r="4.500" />}
      {third === 'wet' && <path d="M1.500 1.500h9v9h-9z" />}
    </svg>
  );
}
