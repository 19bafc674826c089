import { readdirSync, readFileSync } from 'node:fs';
import { marked } from 'marked';
import { describe, expect, it } from 'vitest';
import { anchorOf, titleOf } from '../../web/guide/kit/guidePage.ts';
import { termsIn } from '../../web/src/words/terms.ts';

const PROJECT = new URL('../../', import.meta.url);
const GUIDE = new URL('web/guide/', PROJECT);
const read = (path: string, base = PROJECT) => readFileSync(new URL(path, base), 'utf8');
const NAMES = readdirSync(GUIDE).filter((name) => name.endsWith('.md'));

/** Anchors of a document's headings. */
const anchorsIn = (text: string): string[] =>
  marked.lexer(text).flatMap((token) => (token.type === 'heading' ? [anchorOf(token.text)] : []));

describe('the guide', () => {
  it('starts with a page that leads to all others, each with a title', () => {
    const start = read('README.md', GUIDE);
    for (const name of NAMES) {
      expect(titleOf(read(name, GUIDE)), name).not.toBe('');
      if (name !== 'README.md') expect(start).toContain(`](${name})`);
    }
    expect(read('README.md')).toContain('](web/guide/README.md)');
  });

  it('links to files and headings that are there', () => {
    for (const [path, base] of [
      ['README.md', PROJECT],
      ['notebooks/README.md', new URL('notebooks/', PROJECT)],
      ...NAMES.map((name) => [`web/guide/${name}`, GUIDE] as const),
    ] as const) {
      for (const [, target] of read(path).matchAll(/\]\(([^)\s]+)\)/g)) {
        if (/^(?:https?:|\/)/.test(target)) continue;
        const [file, anchor] = target.split('#');
        const text = file === '' ? read(path) : readFileSync(new URL(file, base), 'utf8');
        if (anchor !== undefined) expect(anchorsIn(text), `${path}: ${target}`).toContain(anchor);
      }
    }
  });

  it('explains in its glossary every term that the page explains', () => {
    const words = [...read('glossary.md', GUIDE).matchAll(/^\| ([^|]+?)(?: \*)? \|/gm)].map(
      ([, word]) => word,
    );
    expect(words.length).toBeGreaterThan(30);
    const isIn = (term: string) =>
      words.some((word) => word === term || (word.includes('third') && /(dry|middle|wet) third/.test(term)));
    expect(Object.keys(termsIn('us')).filter((term) => !isIn(term))).toEqual([]);
    const listed = words
      .slice(1)
      .filter((word) => word !== '---')
      .map((word) => word.toLowerCase());
    expect(listed).toEqual(listed.toSorted());
  });
});

it('the change list is headed by the version of the program', () => {
  const { version } = JSON.parse(read('package.json'));
  const [first] = read('DEVELOPERS.md')
    .split('\n## Changes\n')[1]
    .matchAll(/^### (\S+)/gm);
  expect(first[1]).toBe(version);
});
