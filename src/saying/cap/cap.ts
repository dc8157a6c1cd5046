/**
 * A notice step as a message of the Common Alerting Protocol 1.2 (OASIS Standard, 1 July 2010,
 * https://docs.oasis-open.org/emergency/cap/v1.2/CAP-v1.2-os.html), for other systems to take in. Names and values are
 * the standard's. The words come from outside, because the core has none.
 */
import type { HoldReason, NoticeStep } from '../../core/book/facts.ts';
import { MS_PER_MINUTE } from '../../core/units.ts';
import type { EpochMs } from '../../core/units.ts';
import type { ZoneClock } from '../../core/zone-clock.ts';

/** The words of one language. */
export interface CapWords {
  /** As in RFC 3066: `en-US`. */
  language: string;
  headline: string;
  description: string;
  instruction: string;
  areaDesc: string;
}

export interface CapInfo {
  language: string;
  category: 'Met';
  event: string;
  responseType: 'Prepare' | 'Execute' | 'AllClear';
  urgency: 'Immediate' | 'Expected' | 'Future' | 'Past';
  severity: 'Severe' | 'Moderate' | 'Minor';
  certainty: 'Observed' | 'Likely' | 'Possible';
  onset: string | null;
  expires: string | null;
  senderName: string;
  headline: string;
  description: string;
  instruction: string;
  /** Name and value, for what the standard has no element for. */
  parameters: readonly (readonly [valueName: string, value: string])[];
  areaDesc: string;
}

export interface CapAlert {
  identifier: string;
  sender: string;
  sent: string;
  status: 'Actual' | 'Exercise';
  msgType: 'Alert' | 'Update';
  scope: 'Private';
  /** Whom a private message is for. */
  addresses: string;
  note: string | null;
  /** Earlier steps of the same event as `sender,identifier,sent`. */
  references: readonly string[];
  /** Groups the messages of one event. */
  incidents: string;
  infos: readonly CapInfo[];
}

export interface CapContext {
  /** Unique name of the operation, such as a domain name. */
  sender: string;
  senderName: string;
  /** Whom it is for: the crew. */
  addresses: string;
  zone: string;
  clock: ZoneClock;
  /** A drill is marked as an exercise, in the status, in the note and at the head of its words. */
  drill: boolean;
  /** When each step of the event was sent, by its number; the step itself and those before it. */
  sentMs: ReadonlyMap<number, EpochMs>;
  words: readonly CapWords[];
}

const EVENT: Record<HoldReason, string> = {
  heat: 'Heat stop',
  frost: 'Frost hold',
  mud: 'Mud hold',
  other: 'Dig stop',
};

const two = (value: number): string => String(value).padStart(2, '0');

/** `2026-10-20T13:10:00-06:00`. The standard forbids "Z": UTC is written `-00:00`. */
export const capTime = (atMs: EpochMs, zone: string, clock: ZoneClock): string => {
  const wall = clock.wall(zone, atMs);
  const seconds = Math.floor((atMs % MS_PER_MINUTE) / 1000);
  const offsetMin = Math.round((clock.instant('UTC', wall) - atMs + seconds * 1000) / MS_PER_MINUTE);
  const size = Math.abs(offsetMin);
  const offset = `${offsetMin > 0 ? '+' : '-'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
  const date = `${String(wall.year).padStart(4, '0')}-${two(wall.month)}-${two(wall.day)}`;
  return `${date}T${two(wall.hour)}:${two(wall.minute)}:${two(seconds)}${offset}`;
};

/** Neither spaces, commas, `<` nor `&` may stand in an identifier. */
const token = (text: string): string => text.replace(/[\s,<&]+/g, '-');
const identifierOf = (step: NoticeStep, number: number): string => token(`${step.event}.${number}`);

/** Immediate: act now. Expected: within the hour. */
const urgencyOf = (step: NoticeStep, sentMs: EpochMs): CapInfo['urgency'] => {
  if (step.stage === 'all-clear') return 'Past';
  const actMs = step.stopToppingMs ?? step.stopAtMs ?? sentMs;
  if (actMs <= sentMs) return 'Immediate';
  return actMs - sentMs <= 60 * MS_PER_MINUTE ? 'Expected' : 'Future';
};

/** Likely: more than about half. What was measured, ordered by a person or is over has been observed. */
const certaintyOf = (step: NoticeStep): CapInfo['certainty'] => {
  if (step.source === 'person' || step.stage === 'all-clear' || step.chance === 1) return 'Observed';
  return step.chance === null || step.chance >= 0.5 ? 'Likely' : 'Possible';
};

const severityOf = (step: NoticeStep): CapInfo['severity'] => {
  if (step.stage === 'watch' || step.stage === 'all-clear') return 'Minor';
  return step.notice === 'frost' ? 'Severe' : 'Moderate';
};

const RESPONSE: Record<NoticeStep['stage'], CapInfo['responseType']> = {
  watch: 'Prepare',
  stop: 'Execute',
  update: 'Execute',
  'all-clear': 'AllClear',
};

const infoOf = (step: NoticeStep, context: CapContext, sentMs: EpochMs, words: CapWords): CapInfo => {
  const time = (atMs: EpochMs | null): string | null =>
    atMs === null ? null : capTime(atMs, context.zone, context.clock);
  const parameters: (readonly [string, string | null])[] = [
    ['stopTopping', time(step.stopToppingMs)],
    ['stopDigging', time(step.stopAtMs)],
    ['resumeDigging', time(step.resumeAtMs)],
    ['temperatureF', step.peakF === null ? null : String(step.peakF)],
    ['limitF', step.limitF === null ? null : String(step.limitF)],
    ['chance', step.chance === null ? null : step.chance.toFixed(2)],
  ];
  return {
    language: words.language,
    category: 'Met',
    event: EVENT[step.notice],
    responseType: RESPONSE[step.stage],
    urgency: urgencyOf(step, sentMs),
    severity: severityOf(step),
    certainty: certaintyOf(step),
    onset: time(step.stopAtMs),
    expires: step.stage === 'all-clear' ? null : time(step.resumeAtMs),
    senderName: context.senderName,
    headline: context.drill ? `EXERCISE: ${words.headline}` : words.headline,
    description: words.description,
    instruction: words.instruction,
    parameters: parameters.flatMap(([name, value]) => (value === null ? [] : [[name, value] as const])),
    areaDesc: words.areaDesc,
  };
};

/** Null where the context does not tell when the step was sent. */
export const capAlert = (step: NoticeStep, context: CapContext): CapAlert | null => {
  const sentMs = context.sentMs.get(step.number);
  if (sentMs === undefined) return null;
  const sender = token(context.sender);
  const time = (atMs: EpochMs): string => capTime(atMs, context.zone, context.clock);
  const before = [...context.sentMs].filter(([number]) => number < step.number).sort(([a], [b]) => a - b);
  return {
    identifier: identifierOf(step, step.number),
    sender,
    sent: time(sentMs),
    status: context.drill ? 'Exercise' : 'Actual',
    msgType: before.length === 0 ? 'Alert' : 'Update',
    scope: 'Private',
    addresses: context.addresses,
    note: context.drill ? `Exercise ${token(step.event)}: nobody needs to act on it` : null,
    references: before.map(([number, ms]) => `${sender},${identifierOf(step, number)},${time(ms)}`),
    incidents: token(step.event),
    infos: context.words.map((words) => infoOf(step, context, sentMs, words)),
  };
};
