import type { Answer } from '../api/contract.ts';

/** Beginning of a file's name: what it is about, and that it is invented where it is. */
export function fileStem({ inputs, weather }: Answer): string {
  const { residual, appliedOn } = inputs.question;
  const parts = ['drywake', weather.station.invented ? 'invented' : null, residual, inputs.crop, appliedOn];
  return parts
    .filter((part) => part !== null)
    .join('-')
    .replaceAll(/[^\w.-]+/g, '-');
}
