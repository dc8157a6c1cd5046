import { styleText } from 'node:util';
import type { Button, Post, Said } from '../../src/ports/chat.ts';

/** A message of the bot for the terminal. */
interface ShownMessage {
  /** Counted from 1 while the terminal is open; `/reply 3` refers to it. */
  number: number;
  at: string;
  to: Post['to'];
  /** It replaces what was shown under the same number. */
  changed: boolean;
  said: Said;
}

/** Before every line of a message that must be seen. */
const RING = '*** ';
const INDENT = '    ';

/** Messages repeat crew members' words, which must not be able to control the terminal. */
const printable = (text: string): string => text.normalize('NFC').replace(/[^\P{Cc}\n]/gu, ' ');

/** Columns as wide as their widest cell, two spaces between them. */
export const aligned = (rows: readonly (readonly string[])[]): string[] => {
  const widths = rows.reduce<number[]>(
    (widest, row) =>
      row.map((cell, i) => Math.max(cell.length, widest[i] ?? 0)).concat(widest.slice(row.length)),
    [],
  );
  return rows.map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd(),
  );
};

const numbered = (buttons: readonly Button[]): string =>
  buttons.map(({ label }, i) => `[${i + 1}] ${printable(label)}`).join('  ');

const headOf = ({ number, at, to, changed, said }: ShownMessage): string =>
  [
    at,
    'room' in to ? to.room : `to ${to.user} only`,
    `#${number}`,
    ...(changed ? ['(changed)'] : []),
    ...said.mentions.map((user) => `@${user}`),
  ].join(' ');

/** The message as lines of text: time and recipient, words, table in columns, description of the picture, numbered buttons. */
export const rendered = (shown: ShownMessage, color: boolean): string => {
  const { text, table, buttons, picture, ring } = shown.said;
  const [first = '', ...lines] = printable(text).split('\n');
  // The text repeats each row of the table, such as "Truck 3: in line since 10:15 AM".
  const more = lines.filter(
    (line) => !table?.rows.some(([name = '']) => line.startsWith(`${printable(name)}:`)),
  );
  const cells = table === null ? [] : [table.header, ...table.rows].map((row) => row.map(printable));
  const head = headOf(shown);
  const seen = picture === null ? [] : [`(${printable(picture.altText)})`];
  const body = [...more, ...aligned(cells), ...seen, ...(buttons.length === 0 ? [] : [numbered(buttons)])];
  const dressed = color ? styleText(ring ? ['bold', 'red'] : 'dim', head, { validateStream: false }) : head;
  return [`${dressed} | ${first}`, ...body.map((line) => INDENT + line)]
    .map((line) => (ring ? RING + line : line))
    .join('\n');
};
