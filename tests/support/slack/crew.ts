/** The sample operation with its crew on Slack, and what the bot has shown them there. */
import { readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { z } from 'zod';
import type { LoopbackSlack } from './slack.ts';
import type { StoredMessage } from './workspace.ts';
import { BOT } from './workspace.ts';

const SAMPLE = new URL('../../../deploy/operation.yaml', import.meta.url);
const sample = z.looseObject({ people: z.array(z.looseObject({ name: z.string() })) });

export const ROOM = 'C0CREW';
export const userOf = (name: string): string => `U0${name.toUpperCase()}`;

/** `also`: other addresses of a person, by name. */
export const operationOnSlack = (also: Readonly<Record<string, Record<string, string>>> = {}): string => {
  // Failsafe: every value stays the text that was written, as the bot reads it.
  const file = sample.parse(parse(readFileSync(SAMPLE, 'utf8'), { schema: 'failsafe' }));
  const people = file.people.map((person) => ({
    ...person,
    addresses: { slack: userOf(person.name), ...also[person.name] },
  }));
  return stringify({ ...file, people, rooms: [{ id: 'crew', platform: 'slack', room: ROOM }] });
};

export const CREW = sample
  .parse(parse(readFileSync(SAMPLE, 'utf8'), { schema: 'failsafe' }))
  .people.map(({ name }) => name);

const keyed = z.object({ event_payload: z.object({ key: z.string() }) });

export interface ShownMessage {
  /** The outbox key. */
  key: string;
  channel: string;
  message: StoredMessage;
}

/** All that the bot has posted, with the keys under which it did. */
export const shownBy = ({ workspace }: LoopbackSlack): ShownMessage[] =>
  [...workspace.channels.values()].flatMap(({ id, messages }) =>
    messages
      .filter((message) => message.bot_id === BOT.botId)
      .map((message) => ({
        key: keyed.parse(message.metadata).event_payload.key,
        channel: id,
        message,
      })),
  );
