import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { z } from 'zod';
import type { Bench } from '../../support/slack/bench.ts';
import { startBench } from '../../support/slack/bench.ts';
import { plain } from '../../support/said.ts';
import { waitFor } from '../../support/wait-for.ts';

const blocksWithButtons = z.array(
  z.object({ elements: z.array(z.object({ action_id: z.string(), value: z.string() })).optional() }),
);
const shownView = z.record(z.string(), z.unknown());

describe.each(['socket', 'http'] as const)('screens over %s', (mode) => {
  let bench: Bench;
  beforeEach(async () => {
    bench = await startBench({ mode });
    await bench.listen();
  });
  afterEach(() => bench.close());

  const withButtons = async () => {
    const buttons = [
      { label: 'Got it', words: 'seen' },
      { label: 'Ticket …', words: 'ticket' },
    ];
    const said = { ...plain('Stop digging at 14:10.'), buttons };
    await bench.chat.post({ key: 'n1', to: { room: 'C0CREW' }, said, repliesTo: null, replaces: null });
    const message = await waitFor('notice', () => bench.crew.messages.at(-1));
    const [seen, ticket] = blocksWithButtons.parse(message.blocks).flatMap(({ elements = [] }) => elements);
    if (seen === undefined || ticket === undefined) throw new Error('The notice has no buttons.');
    return { message, seen, ticket };
  };
  const { stringify } = JSON;

  test('a pressed button says its words, in the room, about its message', async () => {
    const { message, seen } = await withButtons();
    const press = bench.slack.people.press(bench.crew, message, 'U1ANA', seen);
    await bench.slack.send(press);
    expect(press.acked).toBe(true);
    expect(bench.heard).toMatchObject([
      {
        user: 'U1ANA',
        room: 'C0CREW',
        event: { is: 'message', text: 'seen', addressed: true, repliesTo: `C0CREW:${message.ts}` },
      },
    ]);
  });

  test('the same press delivered twice has one id; another press and another person have others', async () => {
    const { message, seen } = await withButtons();
    const { people, send } = bench.slack;
    const press = people.press(bench.crew, message, 'U1ANA', seen);
    await send(press);
    if (mode === 'socket') await send(press);
    await send(people.press(bench.crew, message, 'U1ANA', seen));
    await send(people.press(bench.crew, message, 'U2BEN', seen));
    expect(bench.inbox()).toHaveLength(3);
  });

  test('a press is not acknowledged before it is in the database', async () => {
    const { message, seen } = await withButtons();
    const gate = Promise.withResolvers<undefined>();
    bench.state.gate = gate.promise.then(() => undefined);
    const press = bench.slack.people.press(bench.crew, message, 'U1ANA', seen);
    const done = bench.slack.send(press);
    await waitFor('press', () => bench.state.arrived === 1);
    expect(press.acked).toBe(false);
    gate.resolve(undefined);
    await done;
    expect(press.acked).toBe(true);
  });

  test('a command is a direct message with its words, wherever it was typed', async () => {
    const command = bench.slack.people.command(bench.crew, 'U2BEN', 'gross 79840 &amp; <@U1ANA>');
    await bench.slack.send(command);
    await bench.slack.send(bench.slack.people.command(bench.crew, 'U2BEN', ''));
    expect(command.acked).toBe(true);
    expect(bench.heard).toMatchObject([
      {
        user: 'U2BEN',
        userName: 'u2ben',
        room: null,
        event: { text: 'gross 79840 & @U1ANA', addressed: true },
      },
      { event: { text: 'help' } },
    ]);
    expect(bench.inbox()).toHaveLength(2);
  });

  const filledIn = async (fields: Record<string, string>) => {
    const form = await waitFor('form', () => bench.slack.forms.at(-1));
    const submission = bench.slack.people.submit('U1ANA', shownView.parse(form.view), fields);
    await bench.slack.send(submission);
    return submission;
  };

  test('the ticket button opens the form, and the filled-in form says the ticket in the room', async () => {
    const { message, ticket } = await withButtons();
    const press = bench.slack.people.press(bench.crew, message, 'U1ANA', ticket);
    await bench.slack.send(press);
    const fields = { serial: '048213', gross: '79840', tare: '29320', truck: '3' };
    const submission = await filledIn(fields);
    expect(bench.slack.forms[0]?.triggerId).toBe(press.payload['trigger_id']);
    expect(submission.acked).toBe(true);
    expect(bench.heard).toMatchObject([
      {
        user: 'U1ANA',
        room: 'C0CREW',
        event: { text: 'ticket 048213 gross 79840 tare 29320 truck 3', addressed: true },
      },
    ]);
    if (mode === 'socket') {
      await bench.slack.send(submission);
      expect(bench.inbox()).toHaveLength(1);
    }
  });

  test('the command "ticket" opens the form; what is left empty is left out', async () => {
    await bench.slack.send(bench.slack.people.command(bench.crew, 'U1ANA', 'ticket'));
    await filledIn({ serial: '', gross: '79840', tare: ' 29320 ', truck: '' });
    expect(JSON.stringify(bench.slack.forms[0]?.view)).toContain(
      'First weight (gross) · Primer peso (bruto)',
    );
    expect(bench.heard).toMatchObject([{ room: null, event: { text: 'ticket gross 79840 tare 29320' } }]);
  });

  test('a form that cannot be shown is told of in the log, and the press is acknowledged all the same', async () => {
    const fault = { is: 'refused', error: 'expired_trigger_id' } as const;
    bench.slack.misbehave({ method: 'views.open', channel: null, times: 1, fault });
    const command = bench.slack.people.command(bench.crew, 'U1ANA', 'ticket');
    await bench.slack.send(command);
    await waitFor('log line', () => bench.logs.some((line) => line.includes('expired_trigger_id')));
    expect(command.acked).toBe(true);
  });

  test('the Home tab shows what the person should find there; the Messages tab changes nothing', async () => {
    bench.state.home = { ...plain('Truck 3 is in line.'), buttons: [{ label: 'Line', words: 'line' }] };
    await bench.slack.send(bench.slack.people.openHome('U2BEN', 'messages'));
    await bench.slack.send(bench.slack.people.openHome('U1ANA', 'home'));
    const home = await waitFor('home', () => bench.slack.homes.get('U1ANA'));
    expect(stringify(home)).toContain('Truck 3 is in line.');
    expect([...bench.slack.homes.keys()]).toEqual(['U1ANA']);
    expect(bench.heard).toEqual([]);
  });

  test('a button on the Home tab says its words to the bot alone, and the tab is made anew', async () => {
    bench.state.home = plain('Truck 3 is returning.');
    const press = bench.slack.people.pressHome('U1ANA', { action_id: 'say-0', value: 'truck 3 loaded' });
    await bench.slack.send(press);
    expect(bench.heard).toMatchObject([{ user: 'U1ANA', room: null, event: { text: 'truck 3 loaded' } }]);
    const home = await waitFor('home', () => bench.slack.homes.get('U1ANA'));
    expect(stringify(home)).toContain('Truck 3 is returning.');
  });

  test('a Home that cannot be made harms nothing', async () => {
    const fault = { is: 'status', status: 500 } as const;
    bench.slack.misbehave({ method: 'views.publish', channel: null, times: 1, fault });
    await bench.slack.send(bench.slack.people.openHome('U1ANA', 'home'));
    await waitFor('log line', () => bench.logs.some((line) => line.includes('screen failed')));
    await bench.slack.send(bench.slack.people.say(bench.crew, 'U1ANA', 'loaded').delivery);
    expect(bench.texts()).toEqual(['loaded']);
  });
});
