import { z } from 'zod';
import type { FreezeAlert } from '../../src/ports/weather.ts';

const alert = z.object({
  id: z.string(),
  event: z.string(),
  status: z.string().nullish(),
  messageType: z.string().nullish(),
  urgency: z.string().nullish(),
  response: z.string().nullish(),
  onset: z.string().nullish(),
  ends: z.string().nullish(),
  expires: z.string().nullish(),
  parameters: z.object({ VTEC: z.array(z.string()).nullish() }).nullish(),
  references: z.array(z.object({ identifier: z.string() })).nullish(),
});
type Alert = z.infer<typeof alert>;

const collection = z.union([
  z.object({ features: z.array(z.object({ properties: alert })) }),
  // JSON-LD.
  z.object({ '@graph': z.array(alert) }),
]);

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

/**
 * Frost and freeze alerts in force, from one or more replies of `/alerts/active`. Null = none of them has the right
 * shape. Leaves out copies, and messages that a newer one replaces.
 */
export const freezeAlerts = (bodies: readonly unknown[], nowMs: number): FreezeAlert[] | null => {
  const replies = bodies.flatMap((body) => {
    const parsed = collection.safeParse(body);
    return parsed.success ? [parsed.data] : [];
  });
  if (replies.length === 0) return null;
  const all = replies.flatMap((reply) =>
    'features' in reply ? reply.features.map((feature) => feature.properties) : reply['@graph'],
  );
  const replaced = new Set(
    all.flatMap(({ references }) => references?.map((earlier) => earlier.identifier) ?? []),
  );
  const current = new Map(all.filter(({ id }) => !replaced.has(id)).map((entry) => [entry.id, entry]));
  return [...current.values()]
    .filter((entry) => isFrost(entry) && isInForce(entry) && !isOver(entry, nowMs))
    .map(({ id, event, onset, ends }) => ({ id, event, onsetMs: instant(onset), endsMs: instant(ends) }));
};
