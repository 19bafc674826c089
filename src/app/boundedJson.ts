/** Letters that a list and a value take at least on the average of what the program writes, with room to spare. */
const LETTERS_A_LIST = 24;
const LETTERS_A_VALUE = 8;
/** Lists and values beyond that which any text may hold. */
const SPARE = 500_000;

const COMMA = 44;
const BRACKET = 91;
const BRACE = 123;

/**
 * Whether a JSON text would take more memory than its length lets one think: a byte can open a list, which takes forty.
 * What stands inside texts counts too, so the figure is an upper bound.
 */
export function isTooDense(text: string): boolean {
  let values = 0;
  let lists = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === COMMA) values++;
    else if (code === BRACKET || code === BRACE) lists++;
  }
  return values > SPARE + text.length / LETTERS_A_VALUE || lists > SPARE + text.length / LETTERS_A_LIST;
}

/**
 * The value of a JSON text.
 * @throws {Error} whose message says what is wrong with it
 */
export function parseJson(text: string): unknown {
  if (isTooDense(text)) throw new Error('it holds too many values');
  return JSON.parse(text);
}
