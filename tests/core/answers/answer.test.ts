import { describe, expect, it } from 'vitest';
import { answer, waitsNeeded } from '../../../src/core/answers/answer.ts';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import type { Question } from '../../../src/core/intent.ts';
import { firstEstimate } from '../../../src/core/line/first-estimate.ts';
import type { PersonId } from '../../../src/core/roster.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, step, ticket } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';
import { sampleRoster } from '../../support/roster.ts';

const asked = (
  question: Question,
  facts: readonly Fact[],
  by: PersonId = 'ana',
  clock = '11:00',
  roster = sampleRoster,
) => {
  const asker = sampleRoster.people.find(({ id }) => id === by);
  if (!asker) throw new Error(`${by} is not on the list`);
  const harvest = foldHarvest(roster, facts);
  const asking = { asker, nowMs: at(clock), clock: zoneClock };
  const needs = waitsNeeded(question, harvest, asking);
  const waits = needs.map(({ observations, ask }) => firstEstimate(observations, ask));
  return answer(question, harvest, asking, waits);
};

const tons = (span: 'today' | 'yesterday' | 'season'): Question => ({
  about: 'tons',
  field: null,
  truck: null,
  span,
});
const days = [
  ticket('1', '2026-10-18 10:00', 40_000, { serial: '1' }),
  ticket('1', '2026-10-19 10:00', 44_000, { serial: '2' }),
  ticket('1', '2026-10-20 10:00', 50_000, { serial: '3' }),
];

describe('tons and loads of a span', () => {
  it.each([
    ['today', 1, 50_000],
    ['yesterday', 1, 44_000],
    ['season', 3, 134_000],
  ] as const)('%s', (span, loads, netLb) => {
    expect(asked(tons(span), days)).toMatchObject({ tell: 'tally', span, tally: { loads, netLb } });
  });

  it('today holds a ticket that a phone ahead of our clock has sent', () => {
    expect(asked(tons('today'), [ticket('1', '11:05', 50_000)])).toMatchObject({ tally: { loads: 1 } });
  });

  // Summer time ends on 2026-11-01 in America/Boise (IANA time zone database): that day has 25 hours.
  it('yesterday is the whole calendar day, also one of 25 hours', () => {
    const first = ticket('1', '2026-11-01 00:05', 50_000, { serial: '1' });
    const last = ticket('1', '2026-11-01 23:55', 50_000, { serial: '2' });
    expect(asked(tons('yesterday'), [first, last], 'ana', '2026-11-02 08:00')).toMatchObject({
      tally: { loads: 2 },
    });
  });

  it('tickets of today, of one truck, with the loads that have none', () => {
    const facts = [...days, step('1', 'dumped', '10:40'), ticket('2', '10:50', 48_000, { serial: '4' })];
    expect(asked({ about: 'tickets', truck: '1' }, facts)).toMatchObject({
      tickets: [{ serial: '3' }],
      withoutTicket: 1,
    });
    expect(asked({ about: 'tickets', truck: null }, facts)).toMatchObject({ tickets: [{}, {}] });
  });
});

describe('the line', () => {
  const line = (leaveInMin: number | null): Question => ({ about: 'line', station: null, leaveInMin });

  it('now is asked for now', () => {
    expect(asked(line(null), [])).toMatchObject({ station: 'north-station', arriveInMin: 0, haulMin: null });
  });

  it('"if I leave in 45 minutes" adds the haul, as driven that day', () => {
    const driven = [step('2', 'left-field', '09:00'), step('2', 'joined-line', '09:18')];
    expect(asked(line(45), driven)).toMatchObject({ arriveInMin: 63, haulMin: 18 });
  });

  const west = sampleRoster.stations.map((station) => ({ ...station, id: 'west' }));
  const both = { ...sampleRoster, stations: [...sampleRoster.stations, ...west] };

  it('is that of the station that was named, else of the last load, else the first of the list', () => {
    const asks = (station: string | null, facts: readonly Fact[]) =>
      asked({ about: 'line', station, leaveInMin: null }, facts, 'ana', '11:00', both);
    const toWest = step('1', 'left-field', '10:00', { station: 'west' });
    expect(asks('north-station', [toWest])).toMatchObject({ station: 'north-station' });
    expect(asks(null, [toWest])).toMatchObject({ station: 'west' });
    expect(asks(null, [step('1', 'at-field', '10:00')])).toMatchObject({ station: 'north-station' });
  });

  it('says to a driver whether the truck had better wait at the field, and not to one without a truck', () => {
    const there = [step('1', 'loading', '10:50'), step('2', 'at-field', '10:40')];
    const queue = fact({ kind: 'line-seen', station: 'north-station', ahead: 40, truck: null }, '10:59');
    expect(asked(line(0), [...there, queue])).toMatchObject({ hold: { truck: '1' } });
    expect(asked(line(0), [...there, queue], 'gus')).toMatchObject({ hold: null });
    expect(asked(line(0), there)).toMatchObject({ hold: null });
  });

  it('without a station on the list says so', () => {
    const nowhere = { ...sampleRoster, stations: [] };
    const [asker] = nowhere.people;
    if (!asker) throw new Error('the sample has people');
    const asking = { asker, nowMs: at('11:00'), clock: zoneClock };
    expect(answer(line(null), foldHarvest(nowhere, []), asking)).toEqual({
      tell: 'refusal',
      refusal: { refused: 'no-station' },
    });
  });
});

describe('trucks, dig, help', () => {
  it('the own truck where none is named; a question back where there is none', () => {
    const facts = [step('1', 'left-field', '10:00')];
    expect(asked({ about: 'truck', truck: null }, facts)).toMatchObject({
      row: { truck: '1', phase: 'hauling' },
    });
    expect(asked({ about: 'truck', truck: null }, facts, 'gus')).toEqual({
      tell: 'refusal',
      refusal: { refused: 'no-truck' },
    });
  });

  it('may we dig: yes, until, no', () => {
    expect(asked({ about: 'may-dig' }, [])).toMatchObject({ dig: { holds: [], coming: [] } });
    expect(asked({ about: 'may-dig' }, [raised('09:00')])).toMatchObject({
      dig: { holds: [], coming: [{ number: 1 }] },
    });
    expect(asked({ about: 'may-dig' }, [raised('09:00')], 'ana', '14:00')).toMatchObject({
      dig: { holds: [{ number: 1 }] },
    });
  });

  it('managers are told what only they may do', () => {
    expect(asked({ about: 'help' }, [], 'mateo')).toEqual({ tell: 'help', manager: true });
    expect(asked({ about: 'help' }, [], 'ana')).toEqual({ tell: 'help', manager: false });
  });
});
