import { isCollection, isScalar, LineCounter, type Node, parseDocument } from 'yaml';
import { z } from 'zod';
import { catalogueFault, type TableRow } from './parseTable.ts';

/**
 * Entries of one YAML text, a list, each checked against its schema.
 * @throws {SourceFailedError} CATALOGUE_FAULTY naming file, line and field
 */
export function parseYaml<T>(file: string, yaml: string, schema: z.ZodType<T>): TableRow<T>[] {
  const lineCounter = new LineCounter();
  const document = parseDocument(yaml, { lineCounter });
  const [error] = document.errors;
  if (error) {
    throw catalogueFault(file, error.linePos?.[0].line ?? 1, '(whole entry)', error.message.split('\n')[0]);
  }
  const lineAt = (path: readonly PropertyKey[]): number => {
    for (let depth = path.length; depth > 0; depth--) {
      const node = document.getIn(path.slice(0, depth), true) as Node | undefined;
      if ((isCollection(node) || isScalar(node)) && node.range)
        return lineCounter.linePos(node.range[0]).line;
    }
    return 1;
  };
  const entries: unknown = document.toJS();
  const list = z.array(z.unknown()).min(1).safeParse(entries);
  if (!list.success) throw catalogueFault(file, 1, '(whole file)', 'it must hold a list of entries');
  return list.data.map((entry, i) => {
    const parsed = schema.safeParse(entry);
    if (parsed.success) return { line: lineAt([i]), record: parsed.data };
    const [{ path, message }] = parsed.error.issues;
    throw catalogueFault(file, lineAt([i, ...path]), path.join('.') || '(whole entry)', message);
  });
}
