import type { types } from '@slack/bolt';
import type { Button, Said, TicketForm } from '../../src/ports/chat.ts';
import { asksForTicketForm } from './modal.ts';
import { escaped } from './text.ts';

/** Limits of Block Kit (https://docs.slack.dev/reference/block-kit/blocks/ and .../block-elements/button-element/). */
const SECTION_CHARS = 3000;
const BLOCKS = 50;
const BUTTONS_PER_BLOCK = 25;
const LABEL_CHARS = 75;
const WORDS_CHARS = 2000;

interface Rendered {
  /** Always sent with the blocks: notifications and screen readers use it. */
  text: string;
  blocks: types.KnownBlock[];
}

/** Joins whole lines into texts within `limit`; a line that is too long by itself is cut. */
const packed = (lines: readonly string[], limit: number): string[] => {
  const packs: string[] = [];
  for (const line of lines.map((each) => each.slice(0, limit))) {
    const last = packs.at(-1);
    if (last !== undefined && last.length + 1 + line.length <= limit)
      packs[packs.length - 1] = `${last}\n${line}`;
    else packs.push(line);
  }
  return packs;
};

const section = (mrkdwn: string): types.SectionBlock => ({
  type: 'section',
  // verbatim: keeps Slack from turning words into links or channel names.
  text: { type: 'mrkdwn', text: mrkdwn, verbatim: true },
});

/** Pads every column to its widest cell: in a fixed-width font, columns line up on any phone. */
const fixedWidth = (rows: readonly (readonly string[])[]): string[] => {
  const columns = Math.max(...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, at) =>
    Math.max(...rows.map((row) => row[at]?.length ?? 0)),
  );
  return rows.map((row) =>
    row
      .map((cell, at) => cell.padEnd(widths[at] ?? 0))
      .join('  ')
      .trimEnd(),
  );
};

const FENCE = '```';

const tableSections = (table: NonNullable<Said['table']>): types.SectionBlock[] => {
  const lines = fixedWidth([table.header, ...table.rows]).map((line) => escaped(line).replaceAll('`', "'"));
  return packed(lines, SECTION_CHARS - 2 * (FENCE.length + 1)).map((pack) =>
    section(`${FENCE}\n${pack}\n${FENCE}`),
  );
};

/** The text repeats the table's rows, such as "Truck 3: in line ..."; these lines are left out beside the table. */
const besideTable = ({ text, table }: Said): string[] => {
  const starts = (table?.rows ?? []).flatMap(([first = '']) => (first === '' ? [] : [`${first}:`]));
  return text.split('\n').filter((line) => !starts.some((start) => line.startsWith(start)));
};

const button = ({ label, words }: Button, at: number, form: TicketForm): types.Button => ({
  type: 'button',
  action_id: `${asksForTicketForm(form, words) ? 'open-form' : 'say'}-${String(at)}`,
  text: { type: 'plain_text', text: label.slice(0, LABEL_CHARS), emoji: true },
  value: words.slice(0, WORDS_CHARS),
});

const buttonBlocks = (buttons: readonly Button[], form: TicketForm): types.ActionsBlock[] => {
  const elements = buttons.map((one, at) => button(one, at, form));
  const blocks: types.ActionsBlock[] = [];
  for (let from = 0; from < elements.length; from += BUTTONS_PER_BLOCK)
    blocks.push({ type: 'actions', elements: elements.slice(from, from + BUTTONS_PER_BLOCK) });
  return blocks;
};

/** In a room Slack notifies people only of mentions; a direct message always notifies. */
const call = (said: Said, inRoom: boolean): string =>
  [...(said.ring && inRoom ? ['<!channel>'] : []), ...said.mentions.map((user) => `<@${user}>`)].join(' ');

/** What Slack shows for `said`, without its picture. */
export const rendered = (said: Said, inRoom: boolean, form: TicketForm): Rendered => {
  const called = call(said, inRoom);
  const lines = besideTable(said).map(escaped);
  const shown = called === '' ? lines : [called, ...lines];
  const after = [
    ...(said.table === null ? [] : tableSections(said.table)),
    ...buttonBlocks(said.buttons, form),
  ];
  const sections = packed(shown, SECTION_CHARS)
    .filter((pack) => pack.trim() !== '')
    .slice(0, Math.max(BLOCKS - after.length, 0))
    .map(section);
  return {
    text: called === '' ? escaped(said.text) : `${called} ${escaped(said.text)}`,
    blocks: [...sections, ...after].slice(0, BLOCKS),
  };
};
