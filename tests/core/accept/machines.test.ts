import { describe, expect, it } from 'vitest';
import type { Intent } from '../../../src/core/intent.ts';
import { board } from '../../../src/core/answers/board.ts';
import { tellsOf } from '../../../src/core/notices/tells.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, given, undo } from '../../support/given.ts';

const down: Extract<Intent, { do: 'report-machine' }> = {
  do: 'report-machine',
  machine: 'digger',
  runs: false,
  atMs: null,
  untilMs: null,
  words: 'chain',
};

describe('a digger or topper', () => {
  it('stands until somebody says that it works again', () => {
    const stood = given().when(down, 'fritz', '10:00');
    expect([...stood.harvest.machinesDown.values()]).toMatchObject([
      { machine: 'digger', atMs: at('10:00'), words: 'chain' },
    ]);
    const works = stood.when({ ...down, runs: true, words: null }, 'fritz', '11:00');
    expect(works.harvest.machinesDown.size).toBe(0);
  });

  it('works again where that it stood is taken back', () => {
    const after = given().when(down, 'fritz', '10:00').when(undo(), 'fritz', '10:01');
    expect(after.harvest.machinesDown.size).toBe(0);
  });

  it('is told to foreman and grower when it stands and when it works again, but not to who said it', () => {
    const stood = given().when(down, 'fritz', '10:00');
    const [fact] = stood.added;
    const tells = fact === undefined ? [] : tellsOf(fact, stood.harvest, zoneClock);
    expect(tells.map(({ audience }) => audience)).toEqual([
      { to: 'person', person: 'ruth' },
      { to: 'person', person: 'mateo' },
    ]);
    expect(tells[0]?.telling).toMatchObject({
      tell: 'machine',
      machine: 'digger',
      runs: false,
      words: 'chain',
    });
    const works = stood.when({ ...down, runs: true }, 'mateo', '11:00');
    const [up] = works.added;
    expect(up === undefined ? [] : tellsOf(up, works.harvest, zoneClock)).toMatchObject([
      { audience: { person: 'ruth' }, telling: { runs: true } },
    ]);
  });

  it('is no truck', () => {
    expect(
      board(given().when(down, 'fritz', '10:00').harvest, at('00:00')).every(({ phase }) => phase === null),
    ).toBe(true);
  });

  it('does not stand from a time to come', () => {
    expect(given().when({ ...down, atMs: at('12:00') }, 'fritz', '10:00').refusal).toEqual({
      refused: 'time-ahead',
      atMs: at('12:00'),
    });
  });
});
