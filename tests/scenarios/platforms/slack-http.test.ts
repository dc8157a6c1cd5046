/** The recorded day on Slack over HTTP; its figures are those of the day as it was invented. */
import { test } from 'vitest';
import { recordedDatabase } from '../../support/recorded-day.ts';
import { expectSameDay } from '../../support/slack/recorded-day.ts';

const database = recordedDatabase();

test('the recorded day on Slack over http gives the same book', { timeout: 900_000 }, async () => {
  await expectSameDay(database.now(), 'http');
});
