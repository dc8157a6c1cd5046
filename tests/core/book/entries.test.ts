import { describe, expect, expectTypeOf, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import { NOTHING_TOLD, standingEntryOf, standingFactsOf, told } from '../../../src/core/book/standing.ts';
import type { Standing } from '../../../src/core/book/standing.ts';
import type { Correction, EntryTarget, Fact, FactHeader } from '../../../src/core/book/facts.ts';
import {
  at,
  bookTicket,
  correct,
  fact,
  given,
  loadsOf,
  report,
  step,
  ticket,
  undo,
} from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';
import type { Harvest } from '../../../src/core/harvest/harvest.ts';

const mine: EntryTarget = { by: 'latest', person: 'ana', truck: null };
const undone = (clock: string, target: EntryTarget = mine, header: Partial<FactHeader> = {}): Fact =>
  fact({ kind: 'entry-withdrawn', target }, clock, header);
const nothingSet: Correction = {
  truck: null,
  field: null,
  atMs: null,
  grossLb: null,
  tareLb: null,
  netLb: null,
};
const corrected = (set: Partial<Correction>, clock: string, target: EntryTarget = mine): Fact =>
  fact({ kind: 'entry-corrected', target, set: { ...nothingSet, ...set } }, clock);

const standingFacts = (facts: readonly Fact[]): Fact[] => {
  const { standing } = told(NOTHING_TOLD, facts);
  return [...new Set(facts.map(({ cause }) => cause))].flatMap((cause) => standingFactsOf(standing, cause));
};
const kinds = (facts: readonly Fact[]): string[] =>
  standingFacts(facts).flatMap((one) => (one.kind === 'truck-reported' ? [`${one.truck} ${one.step}`] : []));
const weights = (harvest: Harvest) =>
  harvest.tickets.map(({ grossLb, tareLb, netLb }) => [grossLb, tareLb, netLb]);

describe('undo', () => {
  const said = [
    step('1', 'left-field', '10:00'),
    step('1', 'joined-line', '10:20'),
    step('1', 'dumped', '10:40'),
  ];

  it('takes back the newest entry of the sender', () => {
    expect(kinds([...said, undone('10:41')])).toEqual(['1 left-field', '1 joined-line']);
  });

  it('twice takes back the two newest', () => {
    expect(kinds([...said, undone('10:41'), undone('10:42')])).toEqual(['1 left-field']);
  });

  it('delivered twice under two ids takes back one', () => {
    expect(kinds([...said, undone('10:41'), undone('10:41', mine, { heardMs: at('10:55') })])).toHaveLength(
      2,
    );
  });

  it('sent before a message that was heard earlier leaves that message alone', () => {
    const late = undone('10:30', mine, { heardMs: at('10:50') });
    expect(kinds([...said, late])).toEqual(['1 left-field', '1 dumped']);
  });

  it('heard before what it takes back takes it back when that comes', () => {
    const { standing } = told(NOTHING_TOLD, [undone('10:01')]);
    const late = step('1', 'left-field', '10:00');
    expect(standingFactsOf(told(standing, [late]).standing, late.cause)).toEqual([]);
  });

  describe('in a recorded day with a minute for each line', () => {
    const numbered = (facts: readonly Fact[]): Fact[] =>
      facts.map((one, n) => ({ ...one, cause: `local:m${n + 9}`, id: `local:m${n + 9}#0` }));
    const first = step('1', 'left-field', '10:00');
    const second = step('2', 'left-field', '10:00');

    it('takes back the line before it, also after "m9" comes "m10"', () => {
      expect(kinds(numbered([first, second, undone('10:00')]))).toEqual(['1 left-field']);
    });

    it('leaves alone the line after it', () => {
      expect(kinds(numbered([first, undone('10:00'), second]))).toEqual(['2 left-field']);
    });

    it('does so too when each line is told by itself', () => {
      const lines = numbered([first, second, undone('10:00'), step('3', 'left-field', '10:00')]);
      const { standing } = lines.reduce(
        (before, line) => told(before.standing, [line]),
        told(NOTHING_TOLD, []),
      );
      expect(lines.filter(({ cause }) => standingFactsOf(standing, cause).length > 0)).toEqual([
        lines[0],
        lines[2],
        lines[3],
      ]);
    });
  });

  it('by serial leaves alone a ticket that is booked anew in the same minute', () => {
    const booked = ticket('1', '10:00', 50_000, { serial: '48213' });
    const again = ticket('1', '10:00', 52_000, { serial: '48213' });
    const gone = undone('10:00', { by: 'serial', serial: '48213' });
    expect(standingFacts([booked, gone, again])).toEqual([gone, again]);
  });

  it('of a truck passes over entries of other trucks', () => {
    const other = step('2', 'left-field', '10:45');
    const target: EntryTarget = { by: 'latest', person: 'ana', truck: '1' };
    expect(kinds([...said, other, undone('10:46', target)])).toEqual([
      '1 left-field',
      '1 joined-line',
      '2 left-field',
    ]);
  });

  it('never reaches another person', () => {
    expect(kinds([...said, undone('10:41', { by: 'latest', person: 'ben', truck: null })])).toHaveLength(3);
  });

  it('by message takes back all that the message brought', () => {
    const both = [
      step('1', 'joined-line', '11:00', { header: { cause: 'local:both', id: 'local:both#0' } }),
      fact({ kind: 'line-seen', station: 'north-station', ahead: 14, truck: '1' }, '11:00', {
        cause: 'local:both',
        id: 'local:both#1',
      }),
    ];
    expect(standingFacts([...both, undone('11:01', { by: 'message', cause: 'local:both' })])).toHaveLength(1);
  });

  it('passes over acknowledgements, notices and lists', () => {
    const seen = fact({ kind: 'notice-seen', person: 'ana' }, '10:41');
    expect(standingFacts([...said, seen, undone('10:42')])).toContainEqual(seen);
    expect(kinds([...said, seen, undone('10:42')])).toHaveLength(2);
  });

  it('by serial takes back the ticket that was booked before it, not the one booked anew', () => {
    const facts = [
      ticket('1', '10:00', 50_000, { serial: '48213' }),
      undone('10:05', { by: 'serial', serial: '48213' }),
      ticket('1', '10:06', 52_000, { serial: '48213' }),
    ];
    expect(foldHarvest(sampleRoster, facts).tickets.map(({ netLb }) => netLb)).toEqual([52_000]);
  });

  it('of a correction brings the first version back', () => {
    const facts = [...said, corrected({ truck: '2' }, '10:41')];
    expect(kinds(facts)).toEqual(['1 left-field', '1 joined-line', '2 dumped']);
    expect(kinds([...facts, undone('10:42')])).toEqual(['1 left-field', '1 joined-line', '1 dumped']);
  });

  it('the order in which messages of one moment stand in the book does not matter', () => {
    const facts = [
      step('1', 'left-field', '10:00', { header: { cause: 'a', id: 'a#0', heardMs: at('10:09') } }),
      step('2', 'left-field', '10:00', { header: { cause: 'b', id: 'b#0', heardMs: at('10:08') } }),
      undone('10:01'),
    ];
    expect(kinds(facts)).toEqual(['2 left-field']);
    expect(kinds(facts.toReversed())).toEqual(['2 left-field']);
  });
});

describe('correction', () => {
  const booked = ticket('1', '10:40', 50_520, { serial: '48213', grossLb: 79_840, tareLb: 29_320 });

  it('of the truck moves the load to the other truck', () => {
    const harvest = foldHarvest(sampleRoster, [booked, corrected({ truck: '4' }, '10:45')]);
    expect([loadsOf(harvest, '1').length, loadsOf(harvest, '4').length]).toEqual([0, 1]);
  });

  it('of the truck, once more, starts from what stands', () => {
    const first = corrected({ truck: '4' }, '10:45', { by: 'latest', person: 'ana', truck: '1' });
    const second = corrected({ truck: '5' }, '10:46', { by: 'latest', person: 'ana', truck: '4' });
    expect(foldHarvest(sampleRoster, [booked, first, second]).tickets[0]?.truck).toBe('5');
  });

  it('of the field', () => {
    const harvest = foldHarvest(sampleRoster, [booked, corrected({ field: 'south-80' }, '10:45')]);
    expect(loadsOf(harvest, '1')[0]?.field).toBe('south-80');
  });

  it('of the field passes over what was said since and has none', () => {
    const counted = fact({ kind: 'line-seen', station: 'north-station', ahead: 3, truck: '1' }, '10:42');
    const pilers = fact({ kind: 'pilers-seen', station: 'north-station', open: 2, down: 0 }, '10:43');
    const harvest = foldHarvest(sampleRoster, [
      booked,
      counted,
      pilers,
      corrected({ field: 'south-80' }, '10:45'),
    ]);
    expect(loadsOf(harvest, '1')[0]?.field).toBe('south-80');
  });

  it('of the time of a report leaves its truck, field and first weight as they were said', () => {
    const said = step('1', 'first-weighed', '10:20', { field: 'south-80', grossLb: 79_840 });
    const [first] = standingFacts([said, corrected({ atMs: at('10:12') }, '10:45')]);
    expect(first).toMatchObject({ truck: '1', field: 'south-80', grossLb: 79_840, atMs: at('10:12') });
  });

  it('of the time changes when it happened, not when it was sent', () => {
    const [first] = standingFacts([booked, corrected({ atMs: at('10:12') }, '10:45')]);
    expect(first).toMatchObject({ atMs: at('10:12'), sentMs: at('10:40'), timeStated: true });
  });

  it('of one weight computes the net anew', () => {
    const harvest = foldHarvest(sampleRoster, [booked, corrected({ tareLb: 29_520 }, '10:45')]);
    expect(weights(harvest)).toEqual([[79_840, 29_520, 50_320]]);
  });

  it('of the net alone puts the scale weights out of force', () => {
    const harvest = foldHarvest(sampleRoster, [booked, corrected({ netLb: 48_000 }, '10:45')]);
    expect(weights(harvest)).toEqual([[null, null, 48_000]]);
  });

  it('of weights passes over what was said since and has none', () => {
    const facts = [booked, step('1', 'returning', '10:44'), corrected({ grossLb: 79_640 }, '10:45')];
    expect(weights(foldHarvest(sampleRoster, facts))).toEqual([[79_640, 29_320, 50_320]]);
  });

  it('of a first weight that stands alone', () => {
    const weighed = step('1', 'first-weighed', '10:30', { grossLb: 79_840 });
    const harvest = foldHarvest(sampleRoster, [weighed, corrected({ grossLb: 79_640 }, '10:31')]);
    expect(loadsOf(harvest, '1')[0]?.grossLb).toBe(79_640);
  });

  it('by serial reaches a ticket of long ago', () => {
    const target: EntryTarget = { by: 'serial', serial: '48213' };
    const facts = [
      booked,
      ticket('1', '12:00', 48_000, { serial: '48300' }),
      corrected({ field: 'south-80' }, '15:00', target),
    ];
    expect(foldHarvest(sampleRoster, facts).tickets.map(({ field }) => field)).toEqual(['south-80', null]);
  });

  it('of a truck that was taken', () => {
    const taken = fact({ kind: 'truck-taken', person: 'ana', truck: '3' }, '05:00');
    const harvest = foldHarvest(sampleRoster, [taken, corrected({ truck: '4' }, '05:01')]);
    expect(harvest.roster.people.find(({ id }) => id === 'ana')?.truck).toBe('4');
  });

  it('of what was taken back changes nothing', () => {
    const facts = [booked, undone('10:41'), corrected({ truck: '4' }, '10:45')];
    expect(foldHarvest(sampleRoster, facts).tickets).toEqual([]);
  });
});

describe('who may', () => {
  const booked = ticket('2', '10:40', 50_520, {
    serial: '48213',
    header: { by: 'ben', cause: 'local:bens' },
  });
  const bens = { by: 'message', cause: 'local:bens' } as const;

  it('the sender, the foreman and the grower may take it back', () => {
    for (const person of ['ben', 'mateo', 'ruth'])
      expect(given([booked]).when(undo(bens), person, '10:50').harvest.tickets).toEqual([]);
  });

  it('another driver may not, by message, by serial or by correction', () => {
    const serial = { by: 'serial', serial: '48213' } as const;
    for (const intent of [
      undo(bens),
      undo(serial),
      correct({ truck: '1' }, bens),
      correct({ netLb: 48_000 }, serial),
    ])
      expect(given([booked]).when(intent, 'ana', '10:50')).toMatchObject({
        refusal: { refused: 'not-allowed', what: 'correct-others' },
        facts: [booked],
      });
  });

  it('nothing to undo or to correct is told', () => {
    expect(given().when(undo(), 'ana', '10:50').refusal).toEqual({ refused: 'nothing-to-undo' });
    expect(given([booked]).when(correct({ truck: '4' }), 'ana', '10:50').refusal).toEqual({
      refused: 'nothing-to-correct',
    });
  });

  it('a correction to a time that has not come is refused', () => {
    const after = given([booked]).when(correct({ atMs: at('16:15') }), 'ben', '10:50');
    expect(after.refusal).toEqual({ refused: 'time-ahead', atMs: at('16:15') });
  });

  it('corrected weights must pass as new ones do', () => {
    const full = ticket('2', '10:40', 50_520, { grossLb: 79_840, tareLb: 29_320, header: { by: 'ben' } });
    const when = (set: Partial<Correction>) => given([full]).when(correct(set), 'ben', '10:50');
    expect(when({ tareLb: 80_000 }).refusal).toEqual({
      refused: 'second-not-below-first',
      grossLb: 79_840,
      tareLb: 80_000,
    });
    expect(when({ netLb: 505_200 }).refusal).toMatchObject({ refused: 'net-impossible', netLb: 505_200 });
    expect(when({ tareLb: 29_333 }).warnings).toMatchObject([{ warning: 'not-multiple', weight: 'second' }]);
  });

  it('a first weight told for a ticket that has only its net is kept beside it', () => {
    const net = ticket('2', '10:40', 50_520, { header: { by: 'ben' } });
    const after = given([net]).when(correct({ grossLb: 79_840 }), 'ben', '10:50');
    expect(weights(after.harvest)).toEqual([[79_840, null, 50_520]]);
  });
});

it('undo, and the thing said again, is as if said once', () => {
  const twice = given()
    .when(report('left-field'), 'ana', '10:00')
    .when(bookTicket({ netLb: 50_520 }), 'ana', '10:40')
    .when(undo(), 'ana', '10:41')
    .when(bookTicket({ netLb: 50_520 }), 'ana', '10:42');
  expect(twice.refusal).toBeNull();
  expect(loadsOf(twice.harvest, '1').map((load) => load.ticket?.netLb)).toEqual([50_520]);
});

it('an entry is all that one message brought, in order of sending', () => {
  const header = { cause: 'local:both' };
  const facts = [
    step('1', 'dumped', '10:40', { header: { ...header, id: 'local:both#0' } }),
    step('1', 'left-field', '10:00', { header: { ...header, id: 'local:both#1' } }),
  ];
  const entry = standingEntryOf(told(NOTHING_TOLD, facts).standing, 'local:both');
  expect(entry?.facts.map(({ sentMs }) => sentMs)).toEqual([at('10:00'), at('10:40')]);
  expect(entry?.sentMs).toBe(at('10:00'));
});

describe('a fact as it was written', () => {
  it('is not to be had of the standing facts by any name, which the compiler sees to', () => {
    expectTypeOf<Extract<keyof Standing, string>>().toBeNever();
    expect(Object.keys(told(NOTHING_TOLD, [step('1', 'left-field', '10:00')]).standing)).toEqual([]);
  });
});
