/**
 * Slack's text markup. Only & < > are special; unescaped, they would let a person's words forge mentions and links
 * (https://docs.slack.dev/messaging/formatting-message-text/).
 */
export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** `&amp;` last: `&amp;lt;` is the text "&lt;", not "<". */
const unescaped = (text: string): string =>
  text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');

/**
 * What a person typed, from one `<...>`. Slack makes links by itself (a clock time "10.15" can become one): the label is
 * what was typed. Mentions keep the user id, by which people are known.
 */
const typed = (inside: string): string => {
  const [target = '', label] = inside.split('|');
  if (target.startsWith('@')) return target;
  if (target.startsWith('#')) return label === undefined || label === '' ? target : `#${label}`;
  if (target.startsWith('!')) return label ?? `@${target.slice(1)}`;
  return label ?? target;
};

/** Incoming text as plain words. `addressed`: the bot is mentioned; the words are without that mention. */
export const plainWords = (text: string, botUserId: string): { text: string; addressed: boolean } => {
  const mention = new RegExp(`<@${botUserId}(?:\\|[^>]*)?>[:,]?`, 'g');
  const rest = text.replace(mention, '');
  const words = unescaped(rest.replace(/<([^<>]+)>/g, (_, inside: string) => typed(inside)));
  return { text: words.trim(), addressed: rest !== text };
};
