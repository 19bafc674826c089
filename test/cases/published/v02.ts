import { unrunCase } from './publishedCase.ts';

export const v02 = unrunCase({
  id: 'V02',
  source: {
    title: 'Effects of tillage and application method on clomazone, imazaquin and imazethapyr persistence',
    publisher: 'Weed Science',
    year: 1992,
  },
  measured:
    'clomazone, imazaquin, imazethapyr, Illinois, 1987 and dry 1988: incorporated residues lasted longer than those on the surface in 1988',
  why: 'no half-life of either year was to be seen, and the model does not tell incorporated from surface spray',
});
