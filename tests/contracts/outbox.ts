/** What every outbox must do. */
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Claimed, Outbox, Outgoing } from '../../src/ports/outbox.ts';
import { MINUTE_MS, NOON_MS, outgoing } from './samples.ts';
import type { StoreSetting } from './store-setting.ts';

const LEASE_MS = 30_000;
const OTHER_ROOM: Partial<Outgoing> = { to: { room: 'C2' } };

export const outboxContract = (open: () => Promise<StoreSetting>): void => {
  describe('outbox', () => {
    let setting: StoreSetting;
    let outbox: Outbox;
    beforeAll(async () => {
      setting = await open();
      outbox = setting.store.outbox;
    });
    beforeEach(() => setting.wipe());

    const enqueue = (messages: readonly Outgoing[], operation = 'a') =>
      setting.store.book.inOneGo(operation, (page) => page.enqueue(messages));
    const claim = (nowMs = NOON_MS, limit = 10) => outbox.claim(['local'], nowMs, LEASE_MS, limit);
    const claimKeys = async (nowMs = NOON_MS, limit = 10) =>
      (await claim(nowMs, limit)).map(({ key }) => key);
    const claimOne = async (nowMs = NOON_MS): Promise<Claimed> => {
      const [claimed, ...more] = await claim(nowMs);
      if (claimed === undefined || more.length > 0) throw new Error(`${more.length} more than one, or none`);
      return claimed;
    };
    const deliver = async (claimed: Claimed, nowMs = NOON_MS) => {
      await outbox.sent(claimed.id, `posted ${claimed.key}`, nowMs);
      return claimed.key;
    };
    const deliverAll = async (nowMs = NOON_MS): Promise<string[]> => {
      const keys: string[] = [];
      for (let lent = await claim(nowMs); lent.length > 0; lent = await claim(nowMs)) {
        for (const claimed of lent) keys.push(await deliver(claimed, nowMs));
      }
      return keys;
    };

    test('a message comes out as it went in, with its operation: several share one deliverer', async () => {
      const message = outgoing('k1', {
        recipient: { person: 'ana' },
        to: { user: 'U1' },
        repliesTo: 'm1',
        expiresMs: NOON_MS + MINUTE_MS,
        said: {
          text: '3 loads · 66.15 t',
          table: { header: ['truck', 'tons'], rows: [['1', '22.05']] },
          buttons: [{ label: 'Seen', words: 'seen' }],
          picture: null,
          ring: true,
          mentions: ['U1'],
        },
      });
      await enqueue([message], 'b');
      const claimed = await claimOne();
      expect(claimed).toEqual({ ...message, id: claimed.id, operation: 'b', attempts: 1, replaces: null });
    });

    test('the messages of another operation are not lent: they would go out over the wrong accounts', async () => {
      await enqueue([outgoing('k1')]);
      const { outbox: theirs } = setting.neighbour;
      expect(await theirs.claim(['local'], NOON_MS, LEASE_MS, 10)).toEqual([]);
      expect(await theirs.nextMs()).toBeNull();
      expect(await claimKeys()).toEqual(['k1']);
    });

    test('a repeated key is not sent twice, also after delivery; the key is the operation’s own', async () => {
      await enqueue([outgoing('k1')]);
      await enqueue([outgoing('k1'), outgoing('k2')]);
      await enqueue([outgoing('k1')], 'b');
      expect((await deliverAll()).sort()).toEqual(['k1', 'k1', 'k2']);
      await enqueue([outgoing('k1')]);
      expect(await deliverAll()).toEqual([]);
    });

    test('a lane keeps its order, one message at a time: an all-clear must not overtake its stop', async () => {
      await enqueue([outgoing('k3'), outgoing('k1')]);
      await enqueue([outgoing('k2')]);
      const first = await claimOne();
      expect(await claimKeys()).toEqual([]);
      await deliver(first);
      expect([first.key, ...(await deliverAll())]).toEqual(['k3', 'k1', 'k2']);
    });

    test('lanes go out side by side: rooms, persons and platforms do not wait for each other', async () => {
      await enqueue([
        outgoing('room'),
        outgoing('other room', OTHER_ROOM),
        outgoing('person', { to: { user: 'C1' } }),
        outgoing('other platform', { platform: 'elsewhere' }),
      ]);
      expect(await claimKeys(NOON_MS, 2)).toEqual(['room', 'other room']);
      expect(await claimKeys()).toEqual(['person']);
      expect(
        (await outbox.claim(['local', 'elsewhere'], NOON_MS, LEASE_MS, 10)).map(({ key }) => key),
      ).toEqual(['other platform']);
      expect(await outbox.claim([], NOON_MS, LEASE_MS, 10)).toEqual([]);
    });

    test('urgent ones go first, in order, and past what is on loan to the same room: a receipt may hang', async () => {
      await enqueue([outgoing('k1'), outgoing('k2')]);
      const onLoan = await claimOne();
      await enqueue([outgoing('stop', { urgent: true }), outgoing('stop too', { urgent: true })]);
      await enqueue([outgoing('k3', { to: { room: 'C0' } })]);
      expect(await claimKeys(NOON_MS, 1)).toEqual(['stop']);
      expect(await claimKeys()).toEqual(['k3']);
      await outbox.sent(onLoan.id, 'p1', NOON_MS);
      expect(await claimKeys()).toEqual(['k2']);
    });

    test('one that is put off until later does not hold up its lane', async () => {
      await enqueue([outgoing('stop', { urgent: true }), outgoing('end', { urgent: true })]);
      await outbox.again((await claimOne()).id, NOON_MS + MINUTE_MS, 'not in the room');
      expect(await deliverAll()).toEqual(['end']);
      expect(await outbox.nextMs()).toBe(NOON_MS + MINUTE_MS);
      expect(await deliverAll(NOON_MS + MINUTE_MS)).toEqual(['stop']);
    });

    test('whom the newest of a series has reached, lane by lane', async () => {
      const [ana, ben] = (['ana', 'ben'] as const).map((person) => ({
        recipient: { person },
        to: { user: person },
      }));
      const stop = (key: string, state: number, more: Partial<Outgoing> = {}) =>
        outgoing(key, { slot: `stop 1#${state}`, ...more });
      await enqueue([stop('a1', 1, ana), outgoing('b0', { ...ben, slot: 'stop 2#1' })]);
      await deliverAll();
      await enqueue([stop('a2', 2, ana), stop('b1', 2, ben), stop('r', 2)]);
      const lent = await claim();
      const idOf = (key: string): number => lent.find((one) => one.key === key)?.id ?? 0;
      await outbox.again(idOf('a2'), NOON_MS + MINUTE_MS, 'no such user');
      await outbox.sent(idOf('b1'), 'p', NOON_MS);
      const reach = await setting.store.book.inOneGo('a', (page) => page.reach('stop 1'));
      expect(reach.map(({ recipient, state }) => [recipient, state])).toEqual([
        [{ person: 'ana' }, 'refused'],
        [{ person: 'ben' }, 'sent'],
        [outgoing('r').recipient, 'waiting'],
      ]);
    });

    test('what was shown leads back to the message that it answers, within the operation alone', async () => {
      const answered = (id: string, operation = 'a') =>
        setting.store.book.inOneGo(operation, (page) => page.answeredBy('local', id));
      await enqueue([outgoing('k1', { repliesTo: 'm1' }), outgoing('k2', { to: { user: 'U1' } })]);
      await deliverAll();
      expect(await answered('posted k1')).toBe('m1');
      expect(await answered('posted k2')).toBeNull();
      expect(await answered('posted k1', 'b')).toBeNull();
    });

    test('two deliverers never get the same message, nor two of one lane: a stop notice rings once', async () => {
      const lanes = 6;
      const messages = Array.from({ length: 48 }, (_, i) =>
        outgoing(`k${i}`, { to: { room: `C${i % lanes}` }, urgent: i % 5 === 0 }),
      );
      await enqueue(messages);
      const deliverers = [setting.store.outbox, setting.second.outbox, setting.store.outbox];
      const seen: string[] = [];
      while (seen.length < messages.length) {
        const lent = (
          await Promise.all(deliverers.map((each) => each.claim(['local'], NOON_MS, LEASE_MS, 3)))
        ).flat();
        expect(lent.length).toBeGreaterThan(0);
        expect(new Set(lent.map(({ to, urgent }) => JSON.stringify([to, urgent]))).size).toBe(lent.length);
        await Promise.all(lent.map((claimed) => outbox.sent(claimed.id, 'p', NOON_MS)));
        seen.push(...lent.map(({ key }) => key));
      }
      expect(seen.sort()).toEqual(messages.map(({ key }) => key).sort());
    });

    test('what a dead deliverer had on loan comes back when the loan ends, and before what follows it', async () => {
      await enqueue([outgoing('k1'), outgoing('k2')]);
      expect((await claimOne()).attempts).toBe(1);
      expect(await claimKeys(NOON_MS + LEASE_MS - 1)).toEqual([]);
      expect(await claimOne(NOON_MS + LEASE_MS)).toMatchObject({ key: 'k1', attempts: 2 });
    });

    test('leases that are returned are lent again at once, in order, but for a neighbour’s', async () => {
      await enqueue([outgoing('k1'), outgoing('k2')]);
      await enqueue([outgoing('theirs')], 'elsewhere');
      expect(await claimKeys()).toEqual(['k1']);
      const { outbox: theirs } = setting.neighbour;
      expect(await theirs.claim(['local'], NOON_MS, LEASE_MS, 10)).toHaveLength(1);
      expect(await claimKeys()).toEqual([]);
      await outbox.returnLeases();
      expect(await claimKeys()).toEqual(['k1']);
      expect(await theirs.claim(['local'], NOON_MS, LEASE_MS, 10)).toEqual([]);
    });

    test('a lane told to wait waits as a whole, and no other lane: not what is urgent there, which asks for itself', async () => {
      await enqueue([outgoing('k1'), outgoing('k2'), outgoing('other', OTHER_ROOM)]);
      const [first] = await claim(NOON_MS, 1);
      if (first === undefined) throw new Error('nothing was lent');
      await outbox.later(first.id, NOON_MS + MINUTE_MS, 'throttled');
      await enqueue([outgoing('stop', { urgent: true })]);
      expect(await deliverAll(NOON_MS + MINUTE_MS - 1)).toEqual(['stop', 'other']);
      expect(await deliverAll(NOON_MS + MINUTE_MS)).toEqual(['k1', 'k2']);
    });

    test('a neighbour’s loan or wait in the same room holds up nothing: operations may share a person', async () => {
      const shared = { to: { user: 'U1' } };
      await enqueue([outgoing('a1', shared)]);
      const { id } = await claimOne();
      await enqueue([outgoing('b1', shared)], 'b');
      const theirs = await claimOne();
      expect(theirs.key).toBe('b1');
      await deliver(theirs);
      await outbox.later(id, NOON_MS + MINUTE_MS, 'throttled');
      await enqueue([outgoing('b2', shared)], 'b');
      expect(await claimKeys()).toEqual(['b2']);
    });

    test('a shorter wait does not end a longer one', async () => {
      await enqueue([outgoing('k1')]);
      const { id } = await claimOne();
      await outbox.later(id, NOON_MS + 2 * MINUTE_MS, 'throttled');
      await outbox.later(id, NOON_MS + MINUTE_MS, 'timed out');
      expect(await claimKeys(NOON_MS + MINUTE_MS)).toEqual([]);
      expect(await claimKeys(NOON_MS + 2 * MINUTE_MS)).toEqual(['k1']);
    });

    test('a message that is not due yet holds up nothing', async () => {
      await enqueue([outgoing('evening', { notBeforeMs: NOON_MS + MINUTE_MS }), outgoing('now')]);
      expect(await deliverAll()).toEqual(['now']);
      expect(await deliverAll(NOON_MS + MINUTE_MS)).toEqual(['evening']);
    });

    test('of a series the newest due message goes out alone, and replaces none that has another slot', async () => {
      await enqueue([outgoing('n1', { slot: 'stop#1' })]);
      expect(await deliverAll()).toEqual(['n1']);
      await enqueue([
        outgoing('n2', { slot: 'stop#2' }),
        outgoing('other', { slot: 'stops#1' }),
        outgoing('n3', { slot: 'stop#3' }),
        outgoing('n4', { slot: 'stop#1', notBeforeMs: NOON_MS + MINUTE_MS }),
      ]);
      expect(await deliverAll()).toEqual(['other', 'n3']);
      expect(await claimOne(NOON_MS + MINUTE_MS)).toMatchObject({ key: 'n4', replaces: 'posted n1' });
    });

    test('of a slot only the newest due state goes out, and replaces the one delivered: one board, not a pile', async () => {
      const board = { slot: 'board' };
      await enqueue([outgoing('b1', board), outgoing('b2', board), outgoing('receipt')]);
      await enqueue([
        outgoing('elsewhere', { ...board, ...OTHER_ROOM }),
        outgoing('other', { slot: 'other board' }),
      ]);
      await enqueue([outgoing('neighbour', board)], 'b');
      expect((await deliverAll()).sort()).toEqual(['b2', 'elsewhere', 'neighbour', 'other', 'receipt']);

      await enqueue([outgoing('b3', board), outgoing('b4', { ...board, notBeforeMs: NOON_MS + MINUTE_MS })]);
      const b3 = await claimOne();
      expect(b3).toMatchObject({ key: 'b3', replaces: 'posted b2' });
      await deliver(b3);
      expect(await claimOne(NOON_MS + MINUTE_MS)).toMatchObject({ key: 'b4', replaces: 'posted b3' });
    });

    test('a state on loan is not dropped: it may be on the screen already, and the newer one replaces it', async () => {
      await enqueue([outgoing('b1', { slot: 'board' })]);
      const onLoan = await claimOne();
      await enqueue([outgoing('b2', { slot: 'board' })]);
      expect(await claimKeys()).toEqual([]);
      await deliver(onLoan);
      expect(await claimOne()).toMatchObject({ key: 'b2', replaces: 'posted b1' });
    });

    test('an expired message is not sent and blocks nothing: yesterday’s line forecast is worse than none', async () => {
      await enqueue([outgoing('forecast', { expiresMs: NOON_MS }), outgoing('receipt')]);
      expect(await deliverAll(NOON_MS + 1)).toEqual(['receipt']);
      expect(await outbox.nextMs()).toBeNull();
      await enqueue([outgoing('in time', { expiresMs: NOON_MS })]);
      expect(await deliverAll(NOON_MS)).toEqual(['in time']);
    });

    test('a message given up no longer blocks its lane: the room may be gone for one message only', async () => {
      await enqueue([outgoing('k1'), outgoing('k2')]);
      await outbox.giveUp((await claimOne()).id, 'no such thread', NOON_MS);
      expect(await deliverAll()).toEqual(['k2']);
    });

    test('sent stays sent: a late giveUp or later of a slow deliverer changes nothing', async () => {
      await enqueue([outgoing('b1', { slot: 'board' })]);
      const { id } = await claimOne();
      await outbox.sent(id, 'p1', NOON_MS);
      await outbox.giveUp(id, 'timed out', NOON_MS);
      await outbox.later(id, NOON_MS + MINUTE_MS, 'timed out');
      await enqueue([outgoing('b2', { slot: 'board' })]);
      expect(await claimOne()).toMatchObject({ key: 'b2', replaces: 'p1' });
    });

    test('nextMs tells when to look again: the deliverer neither spins nor sleeps through a stop', async () => {
      expect(await outbox.nextMs()).toBeNull();
      await enqueue([outgoing('evening', { notBeforeMs: NOON_MS + 9 * MINUTE_MS })], 'b');
      expect(await outbox.nextMs()).toBe(NOON_MS + 9 * MINUTE_MS);
      await enqueue([outgoing('k1'), outgoing('k2')]);
      expect(await outbox.nextMs()).toBe(NOON_MS);
      const { id } = await claimOne();
      expect(await outbox.nextMs()).toBe(NOON_MS + LEASE_MS);
      await outbox.later(id, NOON_MS + 2 * MINUTE_MS, 'throttled');
      expect(await outbox.nextMs()).toBe(NOON_MS + 2 * MINUTE_MS);
    });
  });
};
