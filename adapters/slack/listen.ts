import type { App } from '@slack/bolt';
import { z } from 'zod';
import type { EpochMs } from '../../src/core/units.ts';
import type { Heard, OnHeard, TicketForm } from '../../src/ports/chat.ts';
import type { LogLine } from '../../src/ports/log.ts';
import type { Submission } from './interactions.ts';
import {
  commandBody,
  heardCommand,
  heardPress,
  heardSubmission,
  pressBody,
  submissionBody,
} from './interactions.ts';
import type { SlackIdentity } from './messages.ts';
import { heardEvent, messageEvent } from './messages.ts';
import { asksForTicketForm, OPENS_TICKET_FORM, TICKET_FORM } from './modal.ts';

const messageBody = z.object({ type: z.literal('event_callback'), event: messageEvent });
const anyBody = z.union([messageBody, pressBody, submissionBody, commandBody]);
type Body = z.infer<typeof anyBody>;

const isTicketForm = (body: Submission): boolean => body.view.callback_id === TICKET_FORM;

export interface ListenDeps {
  me: SlackIdentity;
  form: TicketForm;
  onHeard: OnHeard;
  nowMs: () => EpochMs;
  log: LogLine;
}

/** What a person said with it; null = nothing: it asked for a form, or it came from a bot. */
const heardIn = (body: Body, { me, form }: ListenDeps, heardMs: EpochMs): Heard | null => {
  if ('event' in body) return heardEvent(body.event, me, heardMs);
  if ('command' in body) return asksForTicketForm(form, body.text) ? null : heardCommand(body, me, heardMs);
  if ('view' in body) return isTicketForm(body) ? heardSubmission(body, heardMs) : null;
  return OPENS_TICKET_FORM.test(body.actions[0].action_id) ? null : heardPress(body, heardMs);
};

const take = async (raw: unknown, ears: ListenDeps): Promise<void> => {
  const { onHeard, nowMs, log } = ears;
  const { success, data } = anyBody.safeParse(raw);
  const heard = success ? heardIn(data, ears, nowMs()) : null;
  if (heard !== null) await onHeard(heard);
  const isMessage = z.object({ event: z.object({ type: z.literal('message') }) }).safeParse(raw).success;
  if (!success && isMessage) log('warn', 'Slack sent a message event of an unknown form; it was ignored.');
};

/** Sent if there were more events than Slack delivers. It has no `event`, so Bolt would never acknowledge it. */
const rateLimited = z.object({ type: z.literal('app_rate_limited') });

/**
 * Stores events before they are acknowledged. Bolt acknowledges an event before any middleware or listener runs
 * (https://github.com/slackapi/bolt-js/blob/main/src/App.ts, processEvent), so what a listener stores is lost if the
 * process dies in between. If `onHeard` fails, nothing is acknowledged and Slack delivers again. Slack also repeats an
 * event as a first attempt (https://github.com/slackapi/bolt-js/issues/2487), and Bolt does not detect duplicates; the
 * inbox does, by `Heard.id`.
 */
export const databaseFirst = (app: App, ears: ListenDeps, inFlight: Set<Promise<void>>): void => {
  const acknowledge = app.processEvent.bind(app);
  const process: App['processEvent'] = async (event) => {
    await take(event.body, ears);
    if (rateLimited.safeParse(event.body).success) {
      ears.log('warn', 'Slack withholds events: there were more than 30,000 in an hour.');
      await event.ack();
      return;
    }
    await acknowledge(event);
  };
  app.processEvent = (event) => {
    const work = process(event);
    inFlight.add(work);
    const done = () => inFlight.delete(work);
    work.then(done, done);
    return work;
  };
};
