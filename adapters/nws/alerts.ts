import { z } from 'zod';
import type { FreezeAlert } from '../../src/ports/weather.ts';

/** Without an id or an event an alert says nothing; of all else a fault costs that field alone. */
const alert = z.object({
  id: z.string(),
  event: z.string(),
  status: z.string().nullish().catch(null),
  messageType: z.string().nullish().catch(null),
  urgency: z.string().nullish().catch(null),
  response: z.string().nullish().catch(null),
  onset: z.string().nullish().catch(null),
  ends: z.string().nullish().catch(null),
  expires: z.string().nullish().catch(null),
  parameters: z
    .object({ VTEC: z.array(z.string()).nullish() })
    .nullish()
    .catch(null),
  references: z
    .array(z.object({ identifier: z.string() }).nullable().catch(null))
    .nullish()
    .catch(null),
});
type Alert = z.infer<typeof alert>;

const collection = z.union([
  z.object({ features: z.array(z.unknown()) }),
  // JSON-LD.
  z.object({ '@graph': z.array(z.unknown()) }),
]);

const feature = z.object({ properties: z.unknown() });

/** Valid time event code: class (O = operational), action, office, phenomenon, significance, number, span. */
const VTEC = /^\/([OTEX])\.([A-Z]{3})\.[A-Z]{4}\.([A-Z]{2})\.([A-Z])\.\d{4}\./;
const ENDED = new Set(['UPG', 'CAN', 'EXP']);

/** An upgraded or cancelled watch stays listed for a while, so a listed alert is not always in force. */
const isInForce = ({ parameters, messageType, urgency, response, status }: Alert): boolean => {
  const codes = parameters?.VTEC?.map((code) => VTEC.exec(code)) ?? [];
  if (codes.some((code) => code && (code[1] !== 'O' || ENDED.has(code[2] ?? '')))) return false;
  const isReal = status == null || status === 'Actual';
  return isReal && messageType !== 'Cancel' && urgency !== 'Past' && response !== 'AllClear';
};

const isFrost = ({ event }: Alert): boolean => /freeze|frost/i.test(event);

const instant = (text: string | null | undefined): number | null => {
  const ms = Date.parse(text ?? '');
  return Number.isNaN(ms) ? null : ms;
};

/** `expires` is when the message lapses, `ends` when the cold does; `expires` counts only if there is no `ends`. */
const isOver = ({ ends, expires }: Alert, nowMs: number): boolean =>
  (instant(ends) ?? instant(expires) ?? nowMs) < nowMs;

export interface AlertsRead {
  /** Null = none of the replies has the right shape. */
  alerts: FreezeAlert[] | null;
  /** Alerts that could not be read, for the log. */
  remarks: string[];
}

/** The alerts of one reply, as they came; null = it is no list of alerts. */
const entriesOf = (body: unknown): unknown[] | null => {
  const parsed = collection.safeParse(body);
  if (!parsed.success) return null;
  return 'features' in parsed.data
    ? parsed.data.features.map((entry) => feature.safeParse(entry).data?.properties ?? null)
    : parsed.data['@graph'];
};

/**
 * Frost and freeze alerts in force, from one or more replies of `/alerts/active`. Leaves out copies, and messages that a
 * newer one replaces; one that cannot be read costs itself alone.
 */
export const readAlerts = (bodies: readonly unknown[], nowMs: number): AlertsRead => {
  const replies = bodies.flatMap((body) => {
    const entries = entriesOf(body);
    return entries === null ? [] : [entries];
  });
  if (replies.length === 0) return { alerts: null, remarks: [] };
  const read = replies.flat().map((entry) => alert.safeParse(entry));
  const all = read.flatMap(({ data }) => (data ? [data] : []));
  const unread = read.length - all.length;
  const remarks = unread === 0 ? [] : [`${unread} alerts cannot be read: left out`];
  const replaced = new Set(all.flatMap(({ references }) => references?.map((one) => one?.identifier) ?? []));
  const current = new Map(all.filter(({ id }) => !replaced.has(id)).map((entry) => [entry.id, entry]));
  const alerts = [...current.values()]
    .filter((entry) => isFrost(entry) && isInForce(entry) && !isOver(entry, nowMs))
    .map(({ id, event, onset, ends }) => ({ id, event, onsetMs: instant(onset), endsMs: instant(ends) }));
  return { alerts, remarks };
};

export const freezeAlerts = (bodies: readonly unknown[], nowMs: number): FreezeAlert[] | null =>
  readAlerts(bodies, nowMs).alerts;
