/** Before v1.13 of the specification a reply began with the message that it answers, as quoted lines. */
const QUOTE = /^(?:> ?[^\n]*\n)+\n?/;

export const withoutQuote = (body: string): string => body.replace(QUOTE, '');

const literal = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The text after the bot's name: "loaded" for "Bell: loaded". Null = it does not begin with a name of the bot. */
export const afterName = (text: string, names: readonly string[]): string | null => {
  // The longest first: "@bell:example.org" begins with "bell" too.
  const pattern = names
    .map((name) => name.replace(/^@/, ''))
    .filter((name) => name !== '')
    .toSorted((a, b) => b.length - a.length)
    .map(literal)
    .join('|');
  if (pattern === '') return null;
  const match = new RegExp(`^\\s*@?(?:${pattern})(?:\\s*[:,]\\s*|\\s+|$)`, 'i').exec(text);
  return match === null ? null : text.slice(match[0].length);
};
