import type { Said } from '../../src/ports/chat.ts';
import { CHOICES, choicesOf, pressesOf } from './reactions.ts';

/** Relations of a message: the one that it answers, and the one that it replaces. */
interface Relations {
  repliesTo: string | null;
  replaces: string | null;
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Pads every column to its widest cell. */
const fixedWidth = (rows: readonly (readonly string[])[]): string[] => {
  const columns = Math.max(...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, at) =>
    Math.max(...rows.map((row) => row[at]?.length ?? 0)),
  );
  return rows.map((row) => row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  '));
};

/** In a fixed-width font, because clients on phones drop the tags of a table and run its cells together. */
const preformatted = (table: NonNullable<Said['table']>): string =>
  `<pre><code>${fixedWidth([table.header, ...table.rows])
    .map((line) => escaped(line.trimEnd()))
    .join('\n')}</code></pre>`;

/** The text repeats the table's rows; a line with all cells of a row is left out beside the table. */
const besideTable = (said: Said): string => {
  const rows = (said.table?.rows ?? []).filter((row) => row.some((cell) => cell !== ''));
  const inTable = (line: string) => rows.some((row) => row.every((cell) => line.includes(cell)));
  return said.text
    .split('\n')
    .filter((line) => !inTable(line))
    .join('\n');
};

const choiceLines = (said: Said): string[] => {
  const choices = choicesOf(said.buttons);
  const typed = said.buttons.slice(choices.length).map(({ label, words }) => `${label}: ${words}`);
  return [...choices.map(({ key, label }) => `${key} ${label}`), ...typed];
};

const html = (said: Said): string => {
  const text = escaped(besideTable(said)).replaceAll('\n', '<br>');
  const table = said.table === null ? '' : preformatted(said.table);
  const choices = choiceLines(said).map(escaped).join('<br>');
  return table === '' && choices !== ''
    ? `${text}<br>${choices}`
    : [text, table, choices].filter((part) => part !== '').join('');
};

/**
 * Only m.mentions notifies people, not a name in the text (https://spec.matrix.org/latest/client-server-api/, "User
 * and room mentions"). `room` has an effect only if the bot has the power to notify the room, and does no harm otherwise.
 */
const mentions = (said: Said) => ({
  ...(said.mentions.length > 0 ? { user_ids: [...said.mentions] } : {}),
  ...(said.ring ? { room: true } : {}),
});

/** By default clients do not ring for m.notice, and bots do not answer it: it is for everything that need not ring. */
const body = (said: Said) => ({
  msgtype: said.ring || said.mentions.length > 0 ? 'm.text' : 'm.notice',
  body: [said.text, ...choiceLines(said)].join('\n'),
  format: 'org.matrix.custom.html',
  formatted_body: html(said),
  'm.mentions': mentions(said),
  [CHOICES]: pressesOf(said.buttons),
});

type Content = ReturnType<typeof body> & Record<string, unknown>;

/** The content of the m.room.message event that shows `said`. */
export const rendered = (said: Said, { repliesTo, replaces }: Relations): Content => {
  const content = body(said);
  if (replaces !== null) {
    return {
      ...content,
      body: `* ${content.body}`,
      formatted_body: `* ${content.formatted_body}`,
      'm.new_content': content,
      'm.relates_to': { rel_type: 'm.replace', event_id: replaces },
    };
  }
  return repliesTo === null
    ? content
    : { ...content, 'm.relates_to': { 'm.in_reply_to': { event_id: repliesTo } } };
};
