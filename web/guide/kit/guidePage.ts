import { html, raw } from 'hono/html';
import { Marked, type Tokens } from 'marked';
import { frame } from '../../../notebooks/kit/frame.ts';

const SHELF = 'Guide';

/** Address of a heading on its page: its words in small letters, with hyphens. */
export const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]/gu, '')
    .trim()
    .replace(/ +/g, '-');

/** Where a link of a document leads once it is a page; null for what is no page of the guide. */
function pageAddress(href: string): string | null {
  if (href.startsWith('http') || href.startsWith('/') || href.startsWith('#')) return href;
  if (href.startsWith('../../data/README.md')) return href.replace('../../data/README.md', 'data.html');
  if (href.startsWith('../picture/')) return href.replace('../picture/', '');
  return href.startsWith('.') ? null : href.replace('README.md', 'index.html').replace('.md', '.html');
}

const markdown = new Marked({
  renderer: {
    heading({ tokens, depth, text }: Tokens.Heading): string {
      return `<h${depth} id="${anchorOf(text)}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
    },
    link({ href, tokens }: Tokens.Link): string {
      const text = this.parser.parseInline(tokens);
      const address = pageAddress(href);
      return address === null ? text : `<a href="${address}">${text}</a>`;
    },
    image({ href, text }: Tokens.Image): string {
      return `<img src="${pageAddress(href)}" alt="${text}">`;
    },
    code({ text, lang }: Tokens.Code): string {
      const escaped = text.replace(/[&<>]/g, (sign) => `&#${sign.charCodeAt(0)};`);
      const [kind = '', fileName] = (lang ?? '').split(' ');
      const named = fileName === undefined ? '' : `<p class="file"><code>${fileName}</code></p>\n`;
      return `${named}<pre tabindex="0" class="${kind}"><code>${escaped}</code></pre>\n`;
    },
    tablecell({ tokens, header, align }: Tokens.TableCell): string {
      const tag = header ? 'th' : 'td';
      const right = align === 'right' ? ' class="number"' : '';
      return `<${tag}${right}>${this.parser.parseInline(tokens)}</${tag}>\n`;
    },
  },
  hooks: {
    postprocess: (page: string) =>
      page
        .replaceAll('<table>', '<div class="wide" tabindex="0" role="region" aria-label="table"><table>')
        .replaceAll('</table>', '</table></div>'),
  },
});

/** The first heading of a document. */
export const titleOf = (document: string): string => /^# (.+)$/m.exec(document)?.[1] ?? '';

/** A document of the guide as a page that needs no script. */
export async function guidePage(document: string, isFirst: boolean): Promise<string> {
  const body = html`${raw(await markdown.parse(document))}`;
  return String(await frame({ title: isFirst ? null : titleOf(document), shelf: SHELF, body }));
}
