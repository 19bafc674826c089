/** What waiting costs for certain, and the loss it avoids where residue would have hurt; both per acre or hectare. */
export interface StakesTexts {
  readonly cost: string;
  readonly loss: string;
}

/** Limits that a question takes. [0-1] */
const LOWEST = 0.001;
const HIGHEST = 0.999;
const STORE_KEY = 'drywake-stakes';

/** An odds limit, or why the two figures give none; nothing while a figure is missing. */
export type StakesReading = { readonly limit: number } | { readonly problem: string } | null;

/** The odds limit at which waiting is just worth its cost: cost over loss. */
export function readStakes({ cost, loss }: StakesTexts): StakesReading {
  if (cost.trim() === '' || loss.trim() === '') return null;
  const [c, l] = [cost, loss].map((text) => Number(text.trim().replace(/^\$/, '')));
  if (!(c > 0 && l > 0 && Number.isFinite(c) && Number.isFinite(l))) {
    return { problem: 'Both figures must be amounts of money above 0, in digits.' };
  }
  if (c >= l)
    return { problem: 'Waiting costs as much as the loss it avoids: whatever the odds, it does not pay.' };
  return { limit: Math.min(HIGHEST, Math.max(LOWEST, c / l)) };
}

/** The figures kept over a reload. */
export function keptStakes(): StakesTexts {
  try {
    const { cost, loss } = JSON.parse(localStorage.getItem(STORE_KEY) ?? '{}') as Partial<StakesTexts>;
    return { cost: `${cost ?? ''}`, loss: `${loss ?? ''}` };
  } catch {
    return { cost: '', loss: '' };
  }
}

export function keepStakes(stakes: StakesTexts): void {
  try {
    localStorage.setItem(STORE_KEY, JSON.stringify(stakes));
  } catch {
    // Storage is full or forbidden: the figures live until the page is left.
  }
}
