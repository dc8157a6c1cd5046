import { ClientEvent, MatrixClient, RoomEvent } from 'matrix-js-sdk';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { matrixChat } from '../../adapters/matrix/chat.ts';
import { depsWith, gatherCrew, postTo, settingsFor } from '../support/synapse/crew.ts';
import { plain } from '../support/said.ts';
import type { RawUser } from '../support/synapse/raw-user.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Account, Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';

const ROUNDS = 30;
const WARM_UP = 5;

/** The shortest bot that the SDK allows: it hears a text and says it again. */
const echoBot = async (url: string, { user, password }: Account): Promise<() => void> => {
  const { access_token: accessToken, device_id: deviceId } = await new MatrixClient({
    baseUrl: url,
  }).loginRequest({
    type: 'm.login.password',
    identifier: { type: 'm.id.user', user },
    password,
  });
  const client = new MatrixClient({ baseUrl: url, accessToken, deviceId, userId: user });
  const prepared = new Promise((resolve) => client.once(ClientEvent.Sync, resolve));
  client.on(RoomEvent.Timeline, (event, room, _toStart, _removed, { liveEvent }) => {
    if (liveEvent !== true || event.getSender() === user || event.getType() !== 'm.room.message') return;
    void client.sendTextMessage(room?.roomId ?? '', `echo ${String(event.getContent()['body'])}`);
  });
  await client.startClient({ initialSyncLimit: 0 });
  await prepared;
  return () => {
    client.stopClient();
  };
};

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

describeWithSynapse('the way there and back', () => {
  let synapse: Synapse;
  beforeAll(async () => {
    synapse = await startSynapse();
  });
  afterAll(() => synapse.dispose());

  /** From saying a word until its answer has come, in ms. */
  const roundTrip = async (person: RawUser, room: string, text: string): Promise<number> => {
    const startMs = performance.now();
    await person.say(room, text);
    await person.hears(room, `echo ${text}`);
    return performance.now() - startMs;
  };

  test('is about as long as that of a bot that does nothing else', async () => {
    const ours = await gatherCrew(synapse);
    const theirs = await gatherCrew(synapse);
    const chat = matrixChat(settingsFor(synapse.url, ours.bot), depsWith());
    await chat.listen(async ({ id, room, event }) => {
      if (event.is !== 'message') return;
      void chat.post(postTo({ room: room ?? '' }, id, plain(`echo ${event.text}`)));
    });
    const stop = await echoBot(synapse.url, theirs.bot);
    const crews = { ours, theirs };
    const times: { ours: number[]; theirs: number[] } = { ours: [], theirs: [] };
    // In turn, and each first in every other pair, so that a busy moment of the machine hits both.
    for (let round = 0; round < ROUNDS + WARM_UP; round += 1) {
      const measured = { ours: 0, theirs: 0 };
      for (const who of round % 2 === 0 ? (['ours', 'theirs'] as const) : (['theirs', 'ours'] as const))
        measured[who] = await roundTrip(crews[who].ana, crews[who].room, `${round}`);
      if (round < WARM_UP) continue;
      times.ours.push(measured.ours);
      times.theirs.push(measured.theirs);
    }
    stop();
    await chat.close();
    const ratio = median(times.ours) / median(times.theirs);
    process.stdout.write(
      `Matrix round trip, median of ${ROUNDS}: ${median(times.ours).toFixed(1)} ms, ` +
        `echo bot ${median(times.theirs).toFixed(1)} ms, ratio ${ratio.toFixed(2)}\n`,
    );
    expect(ratio).toBeLessThanOrEqual(1.3);
  }, 400_000);
});
