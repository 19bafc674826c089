import type { Page } from 'playwright-core';

/**
 * Hands the lines of a route's answers over to an open page one by one, each with time to be painted, as on a machine on
 * which answers take longer than painting. Where the answers are to stay on their way, no more than so many lines come.
 */
export const linesApart = (page: Page, path: string, most = Number.POSITIVE_INFINITY): Promise<void> =>
  page.evaluate(
    ([asked, lines]) => {
      const painted = () =>
        new Promise<void>((done) => requestAnimationFrame(() => setTimeout(() => done())));
      const apart = () => {
        let rest = '';
        let told = 0;
        return new TransformStream<string, string>({
          async transform(text, to) {
            const whole = (rest + text).split('\n');
            rest = whole.pop() ?? '';
            for (const line of whole) {
              if (told++ >= lines) return;
              to.enqueue(`${line}\n`);
              await painted();
            }
          },
          flush: () => (told > lines ? new Promise<void>(() => undefined) : undefined),
        });
      };
      const before = window.fetch;
      window.fetch = async (...given) => {
        const answer = await before(...given);
        if (!`${given[0]}`.startsWith(asked) || answer.body === null) return answer;
        const pieces = answer.body
          .pipeThrough(new TextDecoderStream() as TransformStream<Uint8Array, string>)
          .pipeThrough(apart())
          .pipeThrough(new TextEncoderStream());
        return new Response(pieces, answer);
      };
    },
    [path, most] as const,
  );
