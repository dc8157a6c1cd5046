/** What a reply that records nothing does for the line: whether its answer completes it. */
import { z } from 'zod';
import type { Act } from './acts.ts';
import type { Harm } from './harm.ts';
import type { BotReply } from './play.ts';
import type { Scene } from './scene.ts';

const question = z.object({ problem: z.string() });
const refusal = z.object({ refused: z.string() });

const problemOf = ({ kind, data }: BotReply): string | null =>
  kind === 'question' ? question.parse(data).problem : null;
const refusedBy = ({ kind, data }: BotReply): string | null =>
  kind === 'refusal' ? refusal.parse(data).refused : null;

/** As a list of failures shows it. */
export const nameOf = (reply: BotReply): string =>
  [reply.kind, problemOf(reply), refusedBy(reply)].filter((part) => part !== null).join(':');

export const isNotUnderstood = (reply: BotReply): boolean => problemOf(reply) === 'not-understood';

const states = (meant: readonly Act[], ...slots: readonly string[]): boolean =>
  meant.some((act) => slots.some((slot) => slot in act.slots));
const tells = (meant: readonly Act[], ...names: readonly string[]): boolean =>
  meant.some(({ act }) => names.includes(act));

const HAULS = ['at_field', 'loading', 'loaded', 'in_line', 'weighed_in', 'dumped', 'returning', 'ticket'];
const STANDS = ['parked', 'down', 'repaired'];

const MACHINE = /digger|topper|topad|sacador|excavador|desfoliador|defoliator|flail/i;

/** A digger or a topper is no truck: "which truck" helps its operator nothing. */
const isOfTrucks = ({ line }: Scene): boolean =>
  line.role !== 'digger' && line.role !== 'topper' && !MACHINE.test(line.text);

type Completes = (meant: readonly Act[], scene: Scene) => boolean;

/**
 * By what a question or a refusal is about: whether the answer to it would complete what is meant. A new question counts
 * as asked only once it stands here.
 */
const COMPLETES: Partial<Record<string, Completes>> = {
  'unknown-name': (meant) => states(meant, 'truck', 'field', 'person'),
  'which-time': (meant) => states(meant, 'time', 'until'),
  'which-amount': (meant) => states(meant, 'gross_lb', 'tare_lb', 'net_lb', 'temp_f'),
  'no-truck': (meant, scene) => tells(meant, ...HAULS) || (tells(meant, ...STANDS) && isOfTrucks(scene)),
  'weight-missing': (meant) => tells(meant, 'ticket'),
  'no-field': (meant) => states(meant, 'field') || tells(meant, 'digging'),
  'crowns-not-checked': (meant) => tells(meant, 'resume_order'),
};

export const completes = (reply: BotReply, meant: readonly Act[], scene: Scene): boolean =>
  COMPLETES[problemOf(reply) ?? refusedBy(reply) ?? '']?.(meant, scene) ?? false;

/** Refusals of orders that only the state kept from being given: on another day the same words would have been one. */
const ORDERS: Partial<Record<string, { act: string; harm: Harm }>> = {
  'dig-not-stopped': { act: 'resume_order', harm: 'all-clear' },
  'crowns-not-checked': { act: 'resume_order', harm: 'all-clear' },
  'dig-stopped-already': { act: 'stop_order', harm: 'order' },
};

/** What such a reply shows to have been read, though nobody meant it. */
export const harmsIn = (reply: BotReply, fair: readonly (readonly Act[])[]): Harm[] => {
  const order = ORDERS[refusedBy(reply) ?? ''];
  return order === undefined || tells(fair.flat(), order.act) ? [] : [order.harm];
};
