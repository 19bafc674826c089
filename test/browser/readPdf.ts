import { inflateSync } from 'node:zlib';

/** What a printed file holds: its number of pages, and its words, as far as its fonts tell them. */
export function readPdf(file: Buffer): { pages: number; text: string } {
  const bytes = file.toString('latin1');
  const objects = new Map<string, string>();
  for (const [, number, body] of bytes.matchAll(/(?:^|\n)(\d+) 0 obj\s([\s\S]*?)\nendobj/g)) {
    objects.set(number, body);
  }
  const pages = [...objects.values()].filter((body) => /\/Type\s*\/Page\b(?!s)/.test(body));
  return { pages: pages.length, text: pages.map((page) => textOf(page, objects)).join(' ') };
}

type Objects = ReadonlyMap<string, string>;

function textOf(page: string, objects: Objects): string {
  const fonts = new Map<string, ReadonlyMap<string, string>>();
  const listed = /\/Font\s*<<([\s\S]*?)>>/.exec(page)?.[1] ?? '';
  for (const [, name, number] of listed.matchAll(/\/(\w+) (\d+) 0 R/g)) {
    const unicode = /\/ToUnicode (\d+) 0 R/.exec(objects.get(number) ?? '');
    if (unicode) fonts.set(name, lettersOf(streamOf(objects.get(unicode[1]) ?? '')));
  }
  const content = [...page.matchAll(/\/Contents (\d+) 0 R/g)]
    .map(([, number]) => streamOf(objects.get(number) ?? ''))
    .join('\n');
  let letters: ReadonlyMap<string, string> = new Map();
  let text = '';
  for (const [piece, font, shown] of content.matchAll(/\/(\w+) [\d.]+ Tf|<([0-9a-fA-F]+)>|ET/g)) {
    if (font) letters = fonts.get(font) ?? new Map();
    else if (shown)
      for (const glyph of shown.match(isWide(letters) ? /.{4}/g : /.{2}/g) ?? [])
        text += letters.get(glyph.toLowerCase()) ?? '';
    else if (piece === 'ET') text += ' ';
  }
  return text;
}

/** Whether glyphs are numbered with two bytes instead of one. */
const isWide = (letters: ReadonlyMap<string, string>): boolean =>
  [...letters.keys()].some(({ length }) => length > 2);

function streamOf(body: string): string {
  const match = /stream\r?\n([\s\S]*?)\r?\nendstream/.exec(body);
  if (!match) return '';
  const raw = Buffer.from(match[1], 'latin1');
  return (/FlateDecode/.test(body) ? inflateSync(raw) : raw).toString('latin1');
}

/** Letters by glyph, from a font’s map to Unicode. */
function lettersOf(map: string): Map<string, string> {
  const letters = new Map<string, string>();
  const said = (hex: string) => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, block] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, glyph, letter] of block.matchAll(/<(\w+)>\s*<(\w+)>/g))
      letters.set(glyph.toLowerCase(), said(letter));
  }
  for (const [, block] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, from, to, letter] of block.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
      for (let glyph = Number.parseInt(from, 16); glyph <= Number.parseInt(to, 16); glyph++) {
        const code = Number.parseInt(letter, 16) + glyph - Number.parseInt(from, 16);
        letters.set(glyph.toString(16).padStart(from.length, '0'), String.fromCodePoint(code));
      }
    }
  }
  return letters;
}
