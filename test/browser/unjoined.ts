/** A text of the page without what keeps its ISO dates on one line. */
export const unjoined = (text: string): string => text.replaceAll('\u2060', '');
