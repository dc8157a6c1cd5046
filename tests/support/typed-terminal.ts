import { PassThrough } from 'node:stream';
import { setImmediate as turn } from 'node:timers/promises';
import { localChat } from '../../adapters/local/chat.ts';
import type { Chat, Heard } from '../../src/ports/chat.ts';
import type { Roster } from '../../src/core/roster.ts';
import { sampleRoster } from './roster.ts';

/** Lets everything happen that follows from what was done, turn by turn of the event loop. */
const settled = async (): Promise<void> => {
  for (let turns = 0; turns < 20; turns += 1) await turn();
};

interface Given {
  tty: boolean;
  noColor: string;
  roster: Roster;
  nowMs: () => number;
}

/** A terminal chat that a test types into, at 10:15 by its own clock unless another one is given. */
export const typedTerminal = (given: Partial<Given> = {}) => {
  const { roster = sampleRoster, nowMs = () => Date.parse('2026-10-20T10:15:00-06:00') } = given;
  const input = new PassThrough();
  const output = Object.assign(new PassThrough(), { isTTY: given.tty ?? false });
  const ended: string[] = [];
  let text = '';
  let changed = Promise.withResolvers<undefined>();
  output.on('data', (chunk: Buffer) => {
    text += chunk.toString();
    changed.resolve(undefined);
    changed = Promise.withResolvers();
  });
  const chat: Chat = localChat(
    { input, output, noColor: given.noColor, onEnd: (why) => ended.push(why) },
    {
      people: () => roster.people,
      rooms: () => roster.rooms,
      nowMs,
      wallTime: () => '10:15',
    },
  );
  let marks = 0;

  /** Resolves when the text has come; the test's time limit is the deadline. */
  const shows = async (piece: string): Promise<void> => {
    while (!text.includes(piece)) await changed.promise;
  };
  /** Types the lines and returns what was shown from then until all of them were taken. */
  const type = async (...lines: string[]): Promise<string> => {
    marks += 1;
    const before = text.length;
    const mark = `/mark-${marks}`;
    input.write([...lines, mark, ''].join('\n'));
    await shows(`${mark} is not understood`);
    return text.slice(before, text.indexOf(mark, before));
  };
  /** Types where nobody may be reading any more, and lets everything happen that would. */
  const typeUnheard = async (...lines: string[]): Promise<void> => {
    input.write([...lines, ''].join('\n'));
    await settled();
  };
  const listened = async (): Promise<Heard[]> => {
    const heard: Heard[] = [];
    await chat.listen(async (message) => {
      heard.push(message);
    });
    return heard;
  };
  return { chat, input, ended, type, typeUnheard, settled, shows, listened, text: () => text };
};
