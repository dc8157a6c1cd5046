import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Fieldbell } from '../support/fieldbell.ts';
import { startFieldbell } from '../support/fieldbell.ts';
import type { RawUser } from '../support/synapse/raw-user.ts';
import { rawUser } from '../support/synapse/raw-user.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Account, Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';
import { temporaryDirectory } from '../support/temporary.ts';

const COMMAND = fileURLToPath(new URL('../../src/command/matrix-set-up.ts', import.meta.url));

/** Keys of cross-signing are signed as https://spec.matrix.org/latest/client-server-api/#cross-signing says. */
interface Keys {
  master_keys: Record<string, unknown>;
  self_signing_keys: Record<string, { keys: Record<string, string> }>;
  device_keys: Record<string, Record<string, { signatures: Record<string, Record<string, string>> }>>;
}

describeWithSynapse('the guided set-up of the encryption', () => {
  let synapse: Synapse;
  beforeAll(async () => {
    synapse = await startSynapse();
  });
  afterAll(() => synapse.dispose());

  const start = (url: string, bot: Account, directory: string): Fieldbell =>
    startFieldbell(
      [],
      {
        FIELDBELL_MATRIX_HOMESERVER: url,
        FIELDBELL_MATRIX_USER: bot.user,
        FIELDBELL_MATRIX_PASSWORD: bot.password,
        FIELDBELL_MATRIX_DIRECTORY: directory,
      },
      COMMAND,
    );

  /** Answers each question when it has come. */
  const setUp = async (
    bot: Account,
    directory: string,
    answers: readonly [question: string, typed: string][],
  ) => {
    const command = start(synapse.url, bot, directory);
    for (const [question, typed] of answers) {
      await command.shows(question);
      command.type(typed);
    }
    const { code, out, err } = await command.end();
    expect(err).toBe('');
    expect(code).toBe(0);
    return { out, device: /device (\w+) of/.exec(out)?.[1] ?? '' };
  };

  const isSigned = async (person: RawUser, bot: string, device: string): Promise<boolean> => {
    const keys = (await person.keysOf(bot)) as unknown as Keys;
    const selfSigning = Object.keys(keys.self_signing_keys[bot]?.keys ?? {});
    const signatures = keys.device_keys[bot]?.[device]?.signatures[bot] ?? {};
    return bot in keys.master_keys && selfSigning.some((key) => key in signatures);
  };

  test('shows a recovery key once, signs the device, and takes the key for a new device', async () => {
    const bot = await synapse.register('bell');
    const person = await rawUser(synapse.url, await synapse.register('ana'));
    const directory = temporaryDirectory();
    const first = await setUp(bot, directory, [['Press Enter when you have it.', '']]);
    // Base58 in groups of four: https://spec.matrix.org/latest/client-server-api/#recovery-key
    const key = /^ {4}((?:[1-9A-HJ-NP-Za-km-z]{4} ?)+)$/m.exec(first.out)?.[1] ?? '';
    expect(key.replaceAll(' ', '')).toHaveLength(48);
    expect(await isSigned(person, bot.user, first.device)).toBe(true);
    expect(first.out).toContain('What to do next:');

    const moved = temporaryDirectory();
    const second = await setUp(bot, moved, [
      ['made at the first set-up: ', 'wrong key'],
      ['That is not it. ', key],
    ]);
    expect(second.device).not.toBe(first.device);
    expect(await isSigned(person, bot.user, second.device)).toBe(true);
    expect(second.out).not.toContain(key);

    const again = await setUp(bot, moved, [['made at the first set-up: ', key]]);
    expect(again.device).toBe(second.device);
  }, 600_000);

  test('says what is missing, and does not wait for answers that can not come', async () => {
    const nothing = await startFieldbell([], {}, COMMAND).end();
    expect(nothing.code).toBe(78);
    expect(nothing.err).toContain('set FIELDBELL_MATRIX_HOMESERVER');
    const bot = await synapse.register('bell2');
    const unattended = await start(synapse.url, bot, temporaryDirectory()).end();
    expect(unattended.code).toBe(1);
    expect(unattended.err).toContain('run this in a terminal');
    const directory = temporaryDirectory();
    const busy = start(synapse.url, bot, directory);
    await busy.shows('Press Enter when you have it.');
    const rival = await start(synapse.url, bot, directory).end();
    expect(rival.code).toBe(1);
    expect(rival.err).toContain('in use by another process');
  }, 600_000);
});
