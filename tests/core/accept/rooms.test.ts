import { describe, expect, it } from 'vitest';
import { accept } from '../../../src/core/accept/accept.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import type { PersonId } from '../../../src/core/roster.ts';
import { at, fact, given } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const place = (room: string | null, platform = 'slack') => ({ platform, room });

/** What "use this room" (or "do not use this room"), said there, comes to. */
const said = (
  use: boolean,
  where: ReturnType<typeof place>,
  facts: readonly Fact[] = [],
  by: PersonId = 'ruth',
) => {
  const speaker = sampleRoster.people.find(({ id }) => id === by);
  if (!speaker) throw new Error(`${by} is not on the list`);
  const times = { sentMs: at('09:00'), heardMs: at('09:00') };
  const speaking = { speaker, cause: 'slack:m1', place: where, ...times, factsSoFar: 0 };
  return accept({ do: 'use-room', use }, given(facts).harvest, speaking);
};
const refusal = (refused: string) => ({ outcome: 'refused', refusal: { refused } });
const named = fact(
  { kind: 'list-changed', change: { list: 'rooms', put: { id: 'slack:C1', platform: 'slack', room: 'C1' } } },
  '08:00',
);

describe('a room of the crew', () => {
  it('is named by foreman or grower, in the room', () => {
    expect(said(true, place('C1'))).toMatchObject({
      facts: [{ change: { list: 'rooms', put: { id: 'slack:C1', platform: 'slack', room: 'C1' } } }],
    });
    expect(said(true, place('C1'), [], 'ana')).toMatchObject(refusal('not-allowed'));
  });

  it('is not named by a word to the bot alone', () => {
    expect(said(true, place(null))).toMatchObject(refusal('no-room-here'));
    expect(said(false, place(null))).toMatchObject(refusal('no-room-here'));
  });

  it('is named once', () => {
    expect(said(true, place('C1'), [named])).toMatchObject(refusal('room-used-already'));
    expect(said(true, place('C2'), [named])).toMatchObject({ outcome: 'facts' });
  });

  it('that was named by words is taken off by words', () => {
    expect(said(false, place('C1'), [named])).toMatchObject({
      facts: [{ change: { list: 'rooms', remove: 'slack:C1' } }],
    });
    expect(said(false, place('C2'), [named])).toMatchObject(refusal('room-not-used'));
  });

  it('that the operation file names is changed in the file alone', () => {
    expect(said(false, place('crew', 'local'))).toMatchObject(refusal('room-of-file'));
  });
});

describe('the rooms in which a notice is told', () => {
  const rooms = (...facts: readonly Fact[]) => given(facts).harvest.roster.rooms.map(({ id }) => id);

  it('are those of the file and those named by words', () => {
    expect(rooms(named)).toEqual(['crew', 'slack:C1']);
  });

  it('hold each room once, also one that the file names under another name', () => {
    const twice = { id: 'again', platform: 'local', room: 'crew' };
    const again = fact({ kind: 'list-changed', change: { list: 'rooms', put: twice } }, '08:00');
    expect(rooms(again)).toEqual(['crew']);
  });

  it('lose the one that was taken off', () => {
    const gone = fact({ kind: 'list-changed', change: { list: 'rooms', remove: 'slack:C1' } }, '08:30');
    expect(rooms(named, gone)).toEqual(['crew']);
  });
});
