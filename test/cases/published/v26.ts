import { unrunCase } from './publishedCase.ts';

export const v26 = unrunCase({
  id: 'V26',
  source: { title: 'Thesis on propoxycarbazone-sodium', publisher: 'Oregon State University', year: 1998 },
  measured:
    'propoxycarbazone-sodium on two Oregon soils: longer in the one with higher pH and organic matter; oats hit in dryland',
  why: 'no figures were to be seen, and pH and organic matter differ together',
});
