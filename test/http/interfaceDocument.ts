import { Ajv2020 } from 'ajv/dist/2020.js';
import type { Schema } from './arbitraryOf.ts';

/** One way to ask, as the interface's own document gives it. */
export interface Operation {
  readonly parameters?: readonly {
    readonly in: string;
    readonly name: string;
    readonly required?: boolean;
    readonly schema: Schema;
  }[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> };
  readonly responses: Readonly<
    Record<string, { readonly content?: Readonly<Record<string, { readonly schema: Schema }>> }>
  >;
}

/** What an app gives out. */
interface Asked {
  request(path: string): Response | Promise<Response>;
}

const pointer = (text: string) => encodeURIComponent(text.replaceAll('~', '~0').replaceAll('/', '~1'));

/** The interface's own document, and answers held against it. */
export async function interfaceDocument(app: Asked) {
  const document = await (await app.request('/api/openapi.json')).json();
  const paths: Record<string, Record<string, Operation>> = document.paths;
  const ajv = new Ajv2020({ strict: false, validateFormats: false });
  ajv.addSchema({ ...document, $id: 'interface' });

  function faultOfValue(parts: readonly string[], value: unknown): string | null {
    const shape = ajv.getSchema(`interface#/${parts.map(pointer).join('/')}`);
    if (shape === undefined) return `no shape is found at ${parts.join(' ')}`;
    return shape(value) ? null : ajv.errorsText(shape.errors);
  }

  return {
    refs: document.components.schemas as Record<string, Schema>,
    operations: Object.entries(paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, operation]) => ({
        path,
        method: method.toUpperCase(),
        operation,
      })),
    ),
    /** What is wrong with an answer, each of its lines where it is told in lines; null where nothing is. */
    async faultOf(path: string, method: string, answer: Response): Promise<string | null> {
      const status = String(answer.status);
      const [type] = (answer.headers.get('content-type') ?? '').split(';');
      const found = paths[path][method.toLowerCase()].responses[status]?.content?.[type];
      if (found === undefined) return `no shape is given for ${status} as ${type}`;
      const parts = ['paths', path, method.toLowerCase(), 'responses', status, 'content', type, 'schema'];
      const text = await answer.text();
      if (type === 'application/json') return faultOfValue(parts, JSON.parse(text));
      if (type !== 'application/x-ndjson') return text === '' ? 'an empty text' : null;
      const lines = text.trimEnd().split('\n');
      return (
        lines.map((line) => faultOfValue(parts, JSON.parse(line))).find((fault) => fault !== null) ?? null
      );
    },
  };
}
