/** The recorded day on Slack over Socket Mode; its figures are those of the day as it was invented. */
import { test } from 'vitest';
import { recordedDatabase } from '../../support/recorded-day.ts';
import { expectSameDay } from '../../support/slack/recorded-day.ts';

const database = recordedDatabase();

// Slack's client takes each jump of the clock for a lost pong and connects anew, which costs seconds and must cost no more.
test('the recorded day on Slack over socket gives the same book', { timeout: 900_000 }, async () => {
  await expectSameDay(database.now(), 'socket');
});
