import { useState } from 'preact/hooks';
import type { ChartSpec } from '../../../src/chart/frame.ts';
import { saveSvg } from './saveFile.ts';

/** Saves a drawing; its code is fetched then, if no chart has fetched it before. */
export function SvgButton({
  name,
  about,
  spec,
}: {
  name: string;
  /** What is drawn, for those who hear the button only. */
  about: string;
  spec: () => ChartSpec;
}) {
  const [failed, setFailed] = useState(false);
  const save = async () => {
    const { svgOf } = await import('../../../src/chart/svgOf.ts');
    saveSvg(name, await svgOf(spec()), about);
  };
  return (
    <button
      type="button"
      class="quiet"
      aria-label={`Save this chart as SVG: ${about}`}
      onClick={() => save().catch(() => setFailed(true))}
    >
      {failed ? 'SVG could not be made' : 'SVG'}
    </button>
  );
}
