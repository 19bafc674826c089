import fc from 'fast-check';

/**
 * Which values the tests that draw theirs draw: the same in every run, so that a commit passes or fails whoever runs it.
 * `PROPERTY_SEED` gives other values: a number, or `random` for new ones in each run.
 */
const asked = process.env.PROPERTY_SEED ?? '20261128';
if (asked !== 'random' && !/^-?\d+$/.test(asked))
  throw new Error(`PROPERTY_SEED is a whole number or random, not ${asked}.`);

/** The seed that every property begins from. */
export const SEED = asked === 'random' ? Math.floor(Math.random() * 2 ** 31) : Number(asked);
fc.configureGlobal({ seed: SEED });

export default fc;
