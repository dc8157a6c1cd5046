/** One line of a recorded day. The format is described in deploy/replay.md. */
import { z } from 'zod';
import type { Heard } from '../ports/chat.ts';
import type { HourlyTemperature } from '../core/weather/types.ts';

const instant = z.iso
  .datetime({ offset: true, error: 'is not a time with an offset, such as 2026-10-20T07:05:00-06:00' })
  .transform((text) => Date.parse(text));

const messageLine = z.strictObject({
  at: instant,
  id: z.string().min(1),
  from: z.string().min(1),
  room: z.string().nullable().default(null),
  text: z.string(),
  sentAt: instant.optional(),
  addressed: z.boolean().default(false),
  repliesTo: z.string().nullable().default(null),
});

const editLine = z.strictObject({
  at: instant,
  id: z.string().min(1),
  from: z.string().min(1),
  room: z.string().nullable().default(null),
  edits: z.string().min(1),
  text: z.string(),
});

const deletionLine = z.strictObject({
  at: instant,
  id: z.string().min(1),
  from: z.string().min(1),
  room: z.string().nullable().default(null),
  deletes: z.string().min(1),
});

const forecastLine = z.strictObject({
  at: instant,
  forecast: z.strictObject({
    place: z.string().min(1),
    issuedAt: instant,
    hours: z.array(z.strictObject({ start: instant, temperatureF: z.number().min(-80).max(150) })).min(1),
  }),
});

const tickLine = z.strictObject({ at: instant, tick: z.literal(true) });

export type ReplayLine =
  | { is: 'heard'; atMs: number; heard: Heard }
  | { is: 'forecast'; atMs: number; place: string; issuedMs: number; hours: readonly HourlyTemperature[] }
  | { is: 'tick'; atMs: number };

const schemaFor = (line: object) => {
  if ('forecast' in line) return forecastLine;
  if ('tick' in line) return tickLine;
  if ('edits' in line) return editLine;
  return 'deletes' in line ? deletionLine : messageLine;
};

type ParsedLine = z.infer<ReturnType<typeof schemaFor>>;

const eventOf = (line: Exclude<ParsedLine, { forecast: unknown } | { tick: unknown }>): Heard['event'] => {
  if ('edits' in line) return { is: 'edit', of: line.edits, text: line.text };
  if ('deletes' in line) return { is: 'deletion', of: line.deletes };
  return { is: 'message', text: line.text, addressed: line.addressed, repliesTo: line.repliesTo };
};

const lineFrom = (parsed: ParsedLine): ReplayLine => {
  const atMs = parsed.at;
  if ('tick' in parsed) return { is: 'tick', atMs };
  if ('forecast' in parsed) {
    const { place, issuedAt, hours } = parsed.forecast;
    const temperatures = hours.map((hour) => ({ startMs: hour.start, temperatureF: hour.temperatureF }));
    return { is: 'forecast', atMs, place, issuedMs: issuedAt, hours: temperatures };
  }
  const { id, from, room } = parsed;
  const sentMs = ('sentAt' in parsed ? parsed.sentAt : undefined) ?? atMs;
  const heard = {
    platform: 'local',
    id,
    user: from,
    userName: null,
    room,
    sentMs,
    heardMs: atMs,
    event: eventOf(parsed),
  };
  return { is: 'heard', atMs, heard };
};

/** The line as an event, or what is wrong with it. Never throws. */
export const parseReplayLine = (text: string): { line: ReplayLine } | { fault: string } => {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return { fault: 'is not JSON' };
  }
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    return { fault: 'is not a JSON object' };
  const parsed = schemaFor(json).safeParse(json);
  if (parsed.success) return { line: lineFrom(parsed.data) };
  const faults = parsed.error.issues.map((issue) =>
    [issue.path.join('.'), issue.message].filter(Boolean).join(' '),
  );
  return { fault: faults.join('; ') };
};
