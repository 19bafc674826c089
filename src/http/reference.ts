import type { OpenAPIHono } from '@hono/zod-openapi';
import { html } from 'hono/html';
import { nullableRefs } from './nullableRefs.ts';
import { problemResponses } from './problemResponses.ts';
import { type Shape, typeWords } from './shapes.ts';

/** The parts of an OpenAPI document that the reference page shows. */
interface Document {
  readonly info: { readonly title: string; readonly version: string; readonly description?: string };
  readonly paths?: Record<string, Record<string, Operation>>;
  readonly components?: { readonly schemas?: Record<string, Shape> };
}
interface Operation {
  readonly summary?: string;
}
/** Adds the OpenAPI 3.1 document at /api/openapi.json and its readable form at /api. */
export function referencePage(app: OpenAPIHono, version: string): void {
  const describe = () =>
    nullableRefs(
      app.getOpenAPI31Document({
        openapi: '3.1.0',
        info: {
          title: 'Drywake interface',
          version,
          description:
            'Odds that a soil residual still harms the next crop. Metric units, dates YYYY-MM-DD, numbers unrounded. Every refusal has the same shape: code, message, details, hint.',
        },
      }),
    ) as Document;
  app.get('/api/openapi.json', (context) => context.json(describe()));
  app.get('/api', (context) => context.html(page(describe())));
}

function page({ info, paths = {}, components }: Document) {
  return html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>${info.title}</title>
        <link rel="icon" href="/favicon.svg" type="image/svg+xml" />
        <link rel="stylesheet" href="/reference.css" />
      </head>
      <body>
        <main>
          <h1>${info.title}</h1>
          <p>${info.description} Version ${info.version}. <a href="/api/openapi.json">OpenAPI 3.1 document</a>.</p>
          <h2>Routes</h2>
          ${Object.entries(paths).flatMap(([path, operations]) =>
            Object.entries(operations).map(
              ([method, operation]) => html`<section>
                <h3><code>${method.toUpperCase()} ${path}</code></h3>
                <p>${operation.summary}.</p>
              </section>`,
            ),
          )}
          <h2>Refusals</h2>
          <p>Every route refuses in the one shape <a href="#Problem">Problem</a>, with one of these.</p>
          <ul>
            ${Object.entries(problemResponses).map(
              ([status, { description }]) => html`<li><code>${status}</code> ${description}</li>`,
            )}
          </ul>
          <h2>Shapes</h2>
          ${Object.entries(components?.schemas ?? {}).map(([name, schema]) => shape(name, schema))}
        </main>
      </body>
    </html>`;
}

function shape(name: string, schema: Shape) {
  return html`<section id="${name}">
    <h3>${name}</h3>
    <p>${schema.description}</p>
    <div class="scroll" tabindex="0" role="region" aria-label="Fields of ${name}">
      <table>
        <thead>
          <tr><th scope="col">Field</th><th scope="col">Type</th><th scope="col">Unit</th><th scope="col">Default</th><th scope="col">Meaning</th></tr>
        </thead>
        <tbody>
          ${Object.entries(schema.properties ?? {}).map(
            ([field, value]) => html`<tr>
              <td><code>${field}</code>${schema.required?.includes(field) ? '' : ' (optional)'}</td>
              <td>${typeWords(value)}</td>
              <td>${value.unit ?? ''}</td>
              <td>${value.default === undefined ? '' : JSON.stringify(value.default)}</td>
              <td>${value.description ?? ''}</td>
            </tr>`,
          )}
        </tbody>
      </table>
    </div>
  </section>`;
}
