import { describe, expect, it } from 'vitest';
import type { ListChangeAsk } from '../../../src/core/intent.ts';
import { bookTicket, given } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const change = (asked: ListChangeAsk) => ({ do: 'change-list', change: asked }) as const;
const person = (name: string, more: object = {}): ListChangeAsk => ({
  list: 'people',
  put: { name, role: null, truck: null, language: null, address: null, ...more },
});
const bookedNet = bookTicket({ netLb: 50_520 });
const lone = {
  ...sampleRoster,
  people: sampleRoster.people.filter(({ id }) => id !== 'mateo'),
};

describe('who may change the lists', () => {
  it.each(['ana', 'fritz', 'gus'])('not %s', (by) => {
    expect(given().when(change(person('Luis')), by, '06:00')).toMatchObject({
      refusal: { refused: 'not-allowed', what: 'change-lists' },
      facts: [],
    });
  });

  it('somebody must stay who may: neither removed nor made a driver', () => {
    for (const asked of [{ list: 'people', remove: 'ruth' } as const, person('Ruth', { role: 'driver' })])
      expect(given([], lone).when(change(asked), 'ruth', '06:00').refusal).toEqual({
        refused: 'last-manager',
      });
    expect(given().when(change({ list: 'people', remove: 'ruth' }), 'mateo', '06:00').refusal).toBeNull();
  });
});

describe('people', () => {
  it('are added as drivers, with a slug for an id', () => {
    const { harvest } = given().when(
      change(person('José Luis', { truck: '4', language: 'es' })),
      'ruth',
      '06:00',
    );
    expect(harvest.roster.people.at(-1)).toMatchObject({
      id: 'jose-luis',
      name: 'José Luis',
      roles: ['driver'],
      language: 'es',
      truck: '4',
    });
  });

  it('are spoken to as most of the crew are, where no language is told', () => {
    const people = sampleRoster.people.filter(
      ({ language, roles }) => language === 'es' || roles.includes('grower'),
    );
    const { harvest } = given([], { ...sampleRoster, people }).when(change(person('Luis')), 'ruth', '06:00');
    expect(harvest.roster.people.at(-1)).toMatchObject({ name: 'Luis', language: 'es' });
  });

  it('get a usable id whatever letters the name has', () => {
    const { harvest } = given()
      .when(change(person('Ян')), 'ruth', '06:00')
      .when(change(person('Пётр')), 'ruth', '06:01');
    const ids = harvest.roster.people.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).not.toContain('');
  });

  it('that are known keep what was not said anew', () => {
    const { harvest } = given().when(change(person('ana', { truck: '4' })), 'ruth', '06:00');
    expect(harvest.roster.people.filter(({ id }) => id === 'ana')).toMatchObject([
      { name: 'Ana', roles: ['driver'], language: 'es', truck: '4' },
    ]);
  });

  it('are removed, and then may no longer be removed', () => {
    const after = given().when(change({ list: 'people', remove: 'eli' }), 'ruth', '06:00');
    expect(after.harvest.roster.people.map(({ id }) => id)).not.toContain('eli');
    expect(after.when(change({ list: 'people', remove: 'eli' }), 'ruth', '06:01').refusal).toEqual({
      refused: 'no-such-entry',
      list: 'people',
      name: 'eli',
    });
  });
});

describe('trucks, fields, stations, limits', () => {
  it('a truck gets a limit and keeps the rest', () => {
    const usual = { min: 28_000, max: 31_000 };
    const { harvest } = given()
      .when(
        change({ list: 'trucks', put: { id: '6', grossLimitLb: null, usualTareLb: usual } }),
        'ruth',
        '06:00',
      )
      .when(
        change({ list: 'trucks', put: { id: '6', grossLimitLb: 86_000, usualTareLb: null } }),
        'ruth',
        '06:01',
      );
    expect(harvest.roster.trucks.at(-1)).toMatchObject({
      id: '6',
      name: 'Truck 6',
      grossLimitLb: 86_000,
      usualTareLb: usual,
    });
  });

  it('a field is known by its name however it is written', () => {
    const put = { name: 'NORTH 40', acres: 40, station: null };
    const { harvest } = given().when(change({ list: 'fields', put }), 'ruth', '06:00');
    expect(harvest.roster.fields).toHaveLength(3);
    expect(harvest.roster.fields.find(({ id }) => id === 'north-40')).toMatchObject({
      name: 'North 40',
      acres: 40,
    });
  });

  it('a field needs a station to haul to', () => {
    const put = { name: 'West 20', acres: 20, station: null };
    const nowhere = { ...sampleRoster, stations: [] };
    expect(given([], nowhere).when(change({ list: 'fields', put }), 'ruth', '06:00').refusal).toEqual({
      refused: 'no-station',
    });
  });

  it('a new station starts with the limits of the first', () => {
    const put = { name: 'West', airLimitF: null };
    const { harvest } = given().when(change({ list: 'stations', put }), 'ruth', '06:00');
    expect(harvest.roster.stations.at(-1)).toMatchObject({ id: 'west', airLimitF: 60, rootLimitF: 55 });
  });

  it('the line limit is set and cleared', () => {
    const set = given().when(change({ list: 'limits', put: { lineLimitMin: 45 } }), 'ruth', '06:00');
    expect(set.harvest.roster.limits).toEqual({ lineLimitMin: 45, shortestCycleMin: 15 });
    const cleared = set.when(change({ list: 'limits', put: { lineLimitMin: null } }), 'ruth', '06:01');
    expect(cleared.harvest.roster.limits.lineLimitMin).toBeNull();
  });

  it('removing a truck does not lose its tons', () => {
    const after = given()
      .when({ ...bookedNet, truck: '5' }, 'eli', '10:00')
      .when(change({ list: 'trucks', remove: '5' }), 'ruth', '10:05');
    expect(after.harvest.tickets).toHaveLength(1);
  });
});
