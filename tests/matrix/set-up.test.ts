import { afterAll, beforeAll, expect, test } from 'vitest';
import { startScript } from '../support/synapse/bot-child.ts';
import { settingsFor } from '../support/synapse/crew.ts';
import type { RawUser } from '../support/synapse/raw-user.ts';
import { rawUser } from '../support/synapse/raw-user.ts';
import type { SetUp } from '../support/synapse/set-up-process.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';

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

  /** What it asked, and the device it was for. */
  const setUp = async (what: SetUp): Promise<{ asked: string[]; device: string }> => {
    const script = startScript('set-up-process.ts', what.settings.directory, what);
    const device = await script.until('device');
    return {
      device,
      asked: script.lines.filter((line) => line.startsWith('"')).map((line) => JSON.parse(line) as string),
    };
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
    const settings = settingsFor(synapse.url, bot, { encryption: true });
    const first = await setUp({ settings, typed: [] });
    expect(first.asked).toHaveLength(1);
    // Base58 in groups of four: https://spec.matrix.org/latest/client-server-api/#recovery-key
    const key = /^ {4}((?:[1-9A-HJ-NP-Za-km-z]{4} ?)+)$/m.exec(first.asked[0] ?? '')?.[1] ?? '';
    expect(key.replaceAll(' ', '')).toHaveLength(48);
    expect(await isSigned(person, bot.user, first.device)).toBe(true);

    const moved = settingsFor(synapse.url, bot, { encryption: true });
    const second = await setUp({ settings: moved, typed: ['wrong key', key] });
    expect(second.asked).toHaveLength(2);
    expect(second.asked[1]).toContain('That is not it.');
    expect(second.device).not.toBe(first.device);
    expect(await isSigned(person, bot.user, second.device)).toBe(true);

    const again = await setUp({ settings: moved, typed: [key] });
    expect(again.device).toBe(second.device);
  }, 240_000);
});
