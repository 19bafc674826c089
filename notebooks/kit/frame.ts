import { html } from 'hono/html';
import { VERSION } from './version.ts';

export type Markup = ReturnType<typeof html>;

/** What a static page is made of. */
export interface FrameParts {
  /** Title of the page; null on the first one of its shelf. */
  readonly title: string | null;
  /** The pages it stands among, such as "Notebooks"; their list is index.html beside it. */
  readonly shelf: string;
  readonly body: Markup;
}

/** A page that needs no script and no style of its own, so that it stands under the strictest policy. */
export const frame = ({ title, shelf, body }: FrameParts): Markup => html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title === null ? shelf : `${title} · ${shelf}`} · Drywake</title>
<link rel="icon" href="/favicon.svg" type="image/svg+xml">
<link rel="stylesheet" href="/notebooks/notebook.css">
</head>
<body>
<header><a href="/">Drywake</a> ${title === null ? shelf : html`<a href="index.html">${shelf}</a>`}</header>
<main data-testid="page">
${body}
</main>
<footer>Drywake ${VERSION}. The label is the law and the floor; odds are a model’s estimate.</footer>
</body>
</html>
`;
