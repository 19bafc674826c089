import { unrunCase } from './publishedCase.ts';

export const v10 = unrunCase({
  id: 'V10',
  source: {
    title: 'Response of rotational crops to soil residues of chlorsulfuron',
    publisher: 'Weed Science',
    year: 1986,
  },
  measured:
    'chlorsulfuron 17-68 g/ha at two South Dakota sites: every test crop hurt at 12 months where pH is high, less at the other site',
  why: 'the pH of neither site was to be seen, and pH is what sets the two apart',
});
