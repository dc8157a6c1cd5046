/**
 * The README's pictures: what the bot says on the invented demo day, as the terminal shows it, and the picture that it
 * sends with the plan of the day. `node tests/docs/pictures.ts` draws them anew into deploy/pictures and prints the
 * words that the README must give with each of them.
 */
import { writeFileSync } from 'node:fs';
import { sampleOperation } from './examples.ts';
import { fromRoot, textOf } from './markdown.ts';
import {
  DEMO_DAY,
  deliver,
  drawPicture,
  logTo,
  operate,
  parseReplayLine,
  playLine,
  rendered,
  zoneClock,
} from './program.ts';
import type { Claimed, Roster } from './program.ts';
import { drawTerminal } from './terminal-picture.ts';

export interface ReadmePicture {
  /** Under deploy/pictures. */
  file: string;
  /** What is to be seen, for those who cannot see it: the bot's own words. */
  altText: string;
  png: () => Promise<Uint8Array>;
}

/** A quarter to eight: a truck has broken down, another is in the line. */
const ASKED = '2026-10-20T07:45:00-06:00';
const ASKS = JSON.stringify({ at: ASKED, id: 'asks', from: 'ruth', text: 'where is everybody' });
/** Those who must act have been ordered to stop. */
const LAST = '2026-10-20T09:40:00-06:00';

const linesUntilThen = () =>
  [...textOf(DEMO_DAY).trimEnd().split('\n'), ASKS]
    .flatMap((text) => {
      const parsed = parseReplayLine(text);
      if ('fault' in parsed) throw new Error(parsed.fault);
      return parsed.line.atMs > Date.parse(LAST) ? [] : [parsed.line];
    })
    .sort((a, b) => a.atMs - b.atMs);

/** All that the bot says on the demo day until then. */
const saidOnDemoDay = async (roster: Roster): Promise<Claimed[]> => {
  const log = logTo('warn');
  const means = { platforms: ['local'], log, wakeDeliverer: () => undefined };
  const operation = await operate(roster, { memory: true }, means);
  const said: Claimed[] = [];
  const keep = (message: Claimed) => {
    said.push(message);
    return Promise.resolve({ result: 'sent' as const, messageId: `answer-${message.id}` });
  };
  try {
    for (const line of linesUntilThen()) {
      const deliverAt = (atMs: number) => deliver(operation.store.outbox, ['local'], keep, () => atMs, log);
      await playLine(line, line.atMs, operation, deliverAt);
      await deliverAt(line.atMs);
    }
  } finally {
    await operation.close();
  }
  return said;
};

const clockTime = (zone: string, atMs: number): string => {
  const { hour, minute } = zoneClock.wall(zone, atMs);
  return [hour, minute].map((part) => String(part).padStart(2, '0')).join(':');
};

const shown = ({ zone }: Roster, { to, said, notBeforeMs }: Claimed, number: number): string =>
  rendered({ number, at: clockTime(zone, notBeforeMs), to, changed: false, said }, true);

/** On the terminal, one message after the other. */
const terminalPicture = (file: string, roster: Roster, messages: readonly Claimed[]): ReadmePicture => ({
  file,
  altText: messages.map(({ said }) => said.text.replaceAll('\n', ' ')).join(' / '),
  png: () => drawTerminal(messages.map((message, at) => shown(roster, message, at + 1)).join('\n')),
});

const isTo =
  (person: string, kind: string) =>
  (message: Claimed): boolean =>
    message.kind === kind && 'person' in message.recipient && message.recipient.person === person;

const the = (said: readonly Claimed[], person: string, kind: string): Claimed => {
  const found = said.find(isTo(person, kind));
  if (found === undefined) throw new Error(`The demo day has no ${kind} to ${person}.`);
  return found;
};

/** The notice that is to be confirmed; foreman and grower got it as advice before. */
const theOrder = (said: readonly Claimed[], person: string): Claimed =>
  the(
    said.filter((message) => message.said.buttons.length > 0),
    person,
    'notice',
  );

export const readmePictures = async (): Promise<ReadmePicture[]> => {
  const roster = sampleOperation();
  const said = await saidOnDemoDay(roster);
  const stops = ['gus', 'mateo'].map((person) => theOrder(said, person));
  const { picture } = the(said, 'ruth', 'outlook').said;
  if (picture === null) throw new Error('The plan of the demo day has no picture.');
  return [
    terminalPicture('heat-stop.png', roster, stops),
    { file: 'outlook.png', altText: picture.altText, png: () => drawPicture(picture.svg) },
    terminalPicture('board.png', roster, [the(said, 'ruth', 'board')]),
  ];
};

if (import.meta.main)
  for (const { file, altText, png } of await readmePictures()) {
    writeFileSync(fromRoot(`deploy/pictures/${file}`), await png());
    process.stdout.write(`![${altText}](deploy/pictures/${file})\n\n`);
  }
