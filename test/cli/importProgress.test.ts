import { expect, it } from 'vitest';
import { fileLine, importProgressText } from '../../src/cli/importProgress.ts';

const first = { source: '1995.csv', done: 0, total: 4, fractionDone: 0.5, elapsedMs: 10_000, fileMs: 10_000 };

it('foretells the rest from the file in hand while it is the first', () => {
  // Half a file in 10 s: three and a half are left.
  expect(importProgressText(first)).toBe('[1/4] 1995.csv: 50 %, about 70 s left');
});

it('says nothing of the rest where too little is done', () => {
  expect(importProgressText({ ...first, fractionDone: 0.01 })).toBe('[1/4] 1995.csv: 1 %');
});

it('takes rate and rest from all files once some are done', () => {
  const third = { ...first, source: '1997.csv', done: 2, elapsedMs: 60_000, fileMs: 12_000 };
  // Two and a half files in 60 s: 2.5 a minute, and one and a half are left.
  expect(importProgressText(third)).toBe('[3/4] 1997.csv: 50 %, 2.5 files a minute, about 36 s left');
});

it('says of an unchanged file how to read it all the same', () => {
  expect(fileLine({ source: 'a.csv', outcome: 'unchanged', stations: [], problem: null })).toBe(
    'a.csv: unchanged since it was imported; --again reads it again',
  );
});
