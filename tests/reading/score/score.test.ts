/**
 * The scorer on lines whose outcome is known, and the bot on the measuring writers: on a fifth of their lines, because
 * all of them take a minute. Floors only rise, and ceilings only sink.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openDatabase } from '../../../src/store/database.ts';
import type { Database } from '../../../src/store/database.ts';
import { report } from '../../support/given.ts';
import { linesOf } from '../training/corpus.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import type { Intent } from '../../../src/core/intent.ts';
import type { Line } from '../training/corpus.ts';
import { MEASURING } from '../training/writers.ts';
import { crewOf } from './crew.ts';
import { play } from './play.ts';
import { score } from './score.ts';
import type { Scored } from './score.ts';
import { count, harmful, isMeaning } from './tables.ts';
import { verdictOn } from './verdict.ts';

let database: Database;
beforeAll(async () => {
  database = await openDatabase({ memory: true });
});
afterAll(() => database.close());

const plain: Line = {
  id: 'x-001',
  lang: 'en',
  role: 'driver',
  truck: 2,
  where: 'room',
  state: 'at_field',
  now: '10:15',
  text: '',
  acts: [],
  also: [],
  kind: 'report',
};

const scored = async (line: Partial<Line>): Promise<Record<'room' | 'alone', Scored>> => {
  const [room, alone] = await score([{ ...plain, ...line }], undefined, database);
  if (!room || !alone) throw new Error('A line is played in the room and alone');
  return { room, alone };
};

const outcomes = async (line: Partial<Line>): Promise<string> => {
  const { room, alone } = await scored(line);
  const said = ({ outcome, harms }: Scored): string => [outcome, ...harms].join(' ');
  return `${said(room)}, ${said(alone)}`;
};

describe('a line comes out', () => {
  test.each<[string, Partial<Line>]>([
    [
      'right, right',
      { text: 'loaded at River at 10:05', acts: [{ act: 'loaded', field: 'river', time: '10:05' }] },
    ],
    [
      'right, right',
      { text: 'truck 3 is loaded', role: 'foreman', truck: null, acts: [{ act: 'loaded', truck: 3 }] },
    ],
    // His own truck and the message's time are filled in.
    ['right, right', { text: 'in line, 6 ahead', state: 'loaded', acts: [{ act: 'in_line', ahead: 6 }] }],
    [
      'right, right',
      { text: '6 trucks ahead of me', state: 'in_line', acts: [{ act: 'in_line', ahead: 6 }] },
    ],
    [
      'right, right',
      {
        text: 'ticket 48211 tare 28,040',
        state: 'dumped',
        acts: [
          { act: 'weighed_out', tare_lb: 28040 },
          { act: 'ticket', serial: '48211' },
        ],
      },
    ],
    [
      'right, right',
      { text: 'how many tons today', kind: 'question', acts: [{ act: 'ask_tons', span: 'today' }] },
    ],
    // Another reading that is fair too.
    ['right, right', { text: 'parked', acts: [{ act: 'shift_off' }], also: [[{ act: 'parked' }]] }],
    // He counts what is ahead of him: that he stands there goes without saying, but not since when.
    ['right, right', { text: '6 trucks ahead of me', state: 'loaded', acts: [{ act: 'in_line', ahead: 6 }] }],
    [
      'part, part',
      { text: '6 trucks ahead of me', state: 'loaded', acts: [{ act: 'in_line', ahead: 6, time: '10:05' }] },
    ],
    // Fair to say nothing, and fair to record it.
    ['leftAlone, notUnderstood', { text: 'grumpf', acts: [{ act: 'loaded' }], also: [[]] }],
    ['right, right', { text: 'loaded', acts: [{ act: 'loaded' }], also: [[]] }],
    ['silent, notUnderstood', { text: 'grumpf', acts: [{ act: 'loaded' }] }],
    // Who drives no truck means his machine.
    ['right, right', { text: 'broke down', role: 'topper', truck: null, acts: [{ act: 'down' }] }],
    [
      'asked, asked',
      { text: 'loaded at River', role: 'foreman', truck: null, acts: [{ act: 'loaded', field: 'river' }] },
    ],
    ['part, part', { text: 'loaded', acts: [{ act: 'loaded' }, { act: 'acres_done', count: 4 }] }],
    ['part, part', { text: 'loaded', acts: [{ act: 'loaded', field: 'river' }] }],
  ])('%s: %j', async (outcome, line) => {
    expect(await outcomes(line)).toBe(outcome);
  });

  test.each<[string, Partial<Line>]>([
    ['wrong, wrong', { text: 'loading', acts: [{ act: 'at_field' }] }],
    ['wrong, wrong', { text: 'loading at 10:05', acts: [{ act: 'loading', time: '10:06' }] }],
    ['wrong, wrong', { text: 'loading', acts: [{ act: 'loading', time: '10:05' }] }],
    // Stated, and not in the label.
    ['wrong, wrong', { text: 'loading at 10:05', acts: [{ act: 'loading' }] }],
    ['wrong, wrong', { text: 'loading at River', acts: [{ act: 'loading' }] }],
    ['wrong tons, wrong tons', { text: 'loaded', acts: [{ act: 'loaded', truck: 3 }] }],
    ['wrong tons, wrong tons', { text: 'loaded at River', acts: [{ act: 'loaded', field: 'schoolhouse' }] }],
    ['wrong load, wrong load', { text: 'loaded', acts: [{ act: 'at_field' }] }],
    ['wrong load, wrong load', { text: 'loaded', kind: 'others' }],
    [
      'wrong, wrong',
      { text: 'ticket 48211 net 51,200', acts: [{ act: 'ticket', serial: '48211', net_lb: 52100 }] },
    ],
    ['wrong, wrong', { text: 'how many tons today', acts: [{ act: 'ask_where' }] }],
    ['wrong, wrong', { text: 'how many tons yesterday', acts: [{ act: 'ask_tons', span: 'today' }] }],
    ['wrong order, wrong order', { text: 'stop digging', role: 'foreman', truck: null, kind: 'plan' }],
    // Nothing was stopped, so nothing was recorded; on another day it would have been.
    [
      'wrong all-clear, wrong all-clear',
      { text: 'resume digging', role: 'foreman', truck: null, kind: 'plan' },
    ],
    ['wrong alarm, wrong alarm', { text: 'he is hurt, call 911', kind: 'chatter' }],
    // Somebody may be hurt: a question comes first.
    [
      'wrong, wrong',
      { text: 'he is hurt, call 911', kind: 'danger', acts: [{ act: 'danger', sure: false }] },
    ],
  ])('%s: %j', async (outcome, line) => {
    expect(await outcomes(line)).toBe(outcome);
  });

  test.each<[string, Partial<Line>]>([
    ['leftAlone, notUnderstood', { text: 'that was some ball game', kind: 'chatter' }],
    ['falseAnswer, falseAnswer', { text: 'how many tons today', kind: 'chatter' }],
  ])('%s: %j', async (outcome, line) => {
    expect(await outcomes(line)).toBe(outcome);
  });

  test('an order that the label means meets a stop that can be ended', async () => {
    const line = { text: 'resume digging', role: 'foreman', truck: null, acts: [{ act: 'resume_order' }] };
    expect(await outcomes(line)).toBe('right, right');
  });

  test('a correction meets an entry that holds what it sets', async () => {
    const line = { text: 'that was truck 4 not 3', role: 'foreman', truck: null };
    expect(await outcomes({ ...line, acts: [{ act: 'correct', truck: 4 }] })).toBe('right, right');
    expect(await outcomes({ ...line, acts: [{ act: 'correct', truck: 3 }] })).toMatch(/^(wrong|aside)/);
  });
});

describe('an offer', () => {
  const line: Line = {
    ...plain,
    text: 'grumpf',
    // By its driver, whose truck an intent need not name.
    acts: [{ act: 'loaded', truck: 2, field: 'river' }],
  };
  const others = [report('at-field'), report('loading'), report('parked')].map((intent) => [intent]);
  const right = [report('left-field', { field: 'river' })];

  test.each<[string, [Intent[][]]]>([
    ['offered', [[...others.slice(0, 1), right]]],
    ['offered', [[...others.slice(0, 2), right]]],
    // Nobody looks through four.
    ['aside', [[...others, right]]],
    ['aside', [[[report('left-field', { field: 'schoolhouse' })]]]],
    ['aside', [[[...right, report('joined-line')]]]],
  ])('comes out %s', async (outcome, [readings]) => {
    const played = await play(database, line, crewOf([line]), 'alone');
    const fact: Fact = {
      ...{ id: 'line#0', cause: 'line', atMs: 0, sentMs: 0, heardMs: 0, by: null, timeStated: false },
      ...{ kind: 'reading-offered', person: 'ben', number: 1, readings },
    };
    const offer = { kind: 'offer', data: { danger: false } };
    expect(verdictOn({ ...played, facts: [fact], replies: [offer] }).outcome).toBe(outcome);
  });
});

/** Figures of both places together: of lines that mean something, and of talk. */
const FLOORS = { right: 546, rightOrOffered: 888, leftAlone: 199 };
/** Of all lines: orders with all-clears, alarms, loads and tons that nobody meant, and all that came out wrong. */
const CEILINGS = { orders: 0, alarms: 16, loadsAndTons: 0, wrong: 30 };

test('the measuring writers come out no worse than they did', async () => {
  const all: Scored[] = [];
  for (const writer of MEASURING) {
    const lines = linesOf(writer);
    const fifth = lines.filter((_, i) => i % 5 === 0);
    all.push(...(await score(lines, fifth, database)));
  }
  const meaning = all.filter(isMeaning);
  const talk = all.filter((one) => !isMeaning(one));
  const harms = (...kinds: readonly string[]): number =>
    harmful(all).filter((one) => one.harms.some((harm) => kinds.includes(harm))).length;
  expect.soft(count(meaning, 'right')).toBeGreaterThanOrEqual(FLOORS.right);
  expect
    .soft(count(meaning, 'right') + count(meaning, 'offered'))
    .toBeGreaterThanOrEqual(FLOORS.rightOrOffered);
  expect.soft(count(talk, 'leftAlone')).toBeGreaterThanOrEqual(FLOORS.leftAlone);
  expect.soft(harms('order', 'all-clear')).toBeLessThanOrEqual(CEILINGS.orders);
  expect.soft(harms('alarm')).toBeLessThanOrEqual(CEILINGS.alarms);
  expect.soft(harms('load', 'tons')).toBeLessThanOrEqual(CEILINGS.loadsAndTons);
  expect.soft(count(meaning, 'wrong')).toBeLessThanOrEqual(CEILINGS.wrong);
}, 180_000);
