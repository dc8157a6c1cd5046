/** One of every kind of thing that the bot can say; the types make the lists complete. */
import type { FactOf } from '../../src/core/book/facts.ts';
import type { BookedTicket } from '../../src/core/haul/load.ts';
import type { Unclear } from '../../src/core/intent.ts';
import type { ListChange } from '../../src/core/roster.ts';
import type { Telling } from '../../src/core/telling.ts';
import { boardRows } from './board-rows.ts';
import { aTicket, at } from './given.ts';
import { lineTellings } from './line-tellings.ts';
import { advice, digTellings, drills, freeDig, growing, notices, reminders } from './notice-tellings.ts';
import { heatStep } from './notices.ts';
import { outlooks } from './outlooks.ts';
import { offerTellings } from './offer-tellings.ts';
import { receiptFacts } from './receipts.ts';
import { sampleRoster } from './roster.ts';
import { tallies } from './tallies.ts';
import type { Refusal, Warning } from '../../src/core/refusal.ts';

const [station] = sampleRoster.stations;
const [field] = sampleRoster.fields;
const [truck] = sampleRoster.trucks;
const [person] = sampleRoster.people;
if (!station || !field || !truck || !person) throw new Error('the sample has one of each');

const booked: BookedTicket = {
  ...aTicket('3', 50_520, { serial: '048213' }),
  cause: 'local:m1',
  by: 'ana',
  atMs: at('10:40'),
  sentMs: at('10:41'),
};

type Refusals = { [R in Refusal['refused']]: readonly Extract<Refusal, { refused: R }>[] };
const refusals: Refusals = {
  'no-truck': [{ refused: 'no-truck' }],
  'offer-over': [{ refused: 'offer-over' }],
  'no-field': [{ refused: 'no-field' }],
  'more-than-field': [{ refused: 'more-than-field', field: 'north-40', acres: 60, fieldAcres: 38 }],
  'no-station': [{ refused: 'no-station' }],
  'time-ahead': [{ refused: 'time-ahead', atMs: at('16:15') }],
  'not-allowed': (
    ['stop-dig', 'resume-dig', 'correct-others', 'change-lists', 'drill', 'pass-on', 'teach'] as const
  ).map((what) => ({
    refused: 'not-allowed',
    what,
  })),
  'second-not-below-first': [{ refused: 'second-not-below-first', grossLb: 29_320, tareLb: 79_840 }],
  'net-impossible': [{ refused: 'net-impossible', netLb: 505_200, minLb: 1_000, maxLb: 100_000 }],
  'weights-disagree': [{ refused: 'weights-disagree', netLb: 52_520, computedLb: 50_520 }],
  'weight-missing': [{ refused: 'weight-missing' }],
  'serial-known': [booked, { ...booked, serial: null }].map((known) => ({
    refused: 'serial-known',
    ticket: known,
  })),
  'nothing-to-undo': [{ refused: 'nothing-to-undo' }],
  'nothing-to-correct': [{ refused: 'nothing-to-correct' }],
  'nothing-to-see': [{ refused: 'nothing-to-see' }],
  'dig-not-stopped': [{ refused: 'dig-not-stopped' }],
  'dig-stopped-already': [{ refused: 'dig-stopped-already' }],
  'order-overtaken': [{ refused: 'order-overtaken' }],
  'crowns-not-checked': [{ refused: 'crowns-not-checked' }],
  'drill-on-already': [{ refused: 'drill-on-already' }],
  'no-drill': [{ refused: 'no-drill' }],
  'no-such-entry': [{ refused: 'no-such-entry', list: 'trucks', name: '9' }],
  'last-manager': [{ refused: 'last-manager' }],
  'no-room-here': [{ refused: 'no-room-here' }],
  'room-used-already': [{ refused: 'room-used-already' }],
  'room-not-used': [{ refused: 'room-not-used' }],
  'too-many': [{ refused: 'too-many', taken: 12 }],
  'room-of-file': [{ refused: 'room-of-file' }],
};

const weights = ['first', 'second', 'net'] as const;
type Warnings = { [W in Warning['warning']]: readonly Extract<Warning, { warning: W }>[] };
const warnings: Warnings = {
  'not-multiple': weights.map((weight) => ({ warning: 'not-multiple', weight, lb: 79_841, divisionLb: 20 })),
  unusual: weights.map((weight) => ({
    warning: 'unusual',
    weight,
    lb: 120_000,
    minLb: 45_000,
    maxLb: 110_000,
  })),
  'over-limit': [{ warning: 'over-limit', grossLb: 87_000, limitLb: 86_000 }],
  'root-cost': [{ warning: 'root-cost', limitF: 55, lbPerTonDay: 0.09 }],
  'root-too-warm': [true, false].map((stopped) => ({
    warning: 'root-too-warm',
    station: 'north-station',
    limitF: 55,
    stopped,
  })),
};

type Problems = { [P in Unclear['problem']]: readonly Extract<Unclear, { problem: P }>[] };
const problems: Problems = {
  'not-understood': [{ problem: 'not-understood' }],
  'unknown-name': (['truck', 'field', 'station', 'person'] as const).map((sort) => ({
    problem: 'unknown-name',
    sort,
    said: '9',
    known: ['1', '2'],
  })),
  'which-time': [{ problem: 'which-time', said: '25:10' }],
  'which-amount': [{ problem: 'which-amount', said: '48213' }],
  'cannot-teach': (['word', 'meaning'] as const).map((why) => ({
    problem: 'cannot-teach',
    why,
    said: 'rollin',
  })),
  'which-span': (['sums', 'tickets'] as const).map((of) => ({
    problem: 'which-span',
    of,
    said: 'last month',
  })),
};

const changes: readonly ListChange[] = [
  { list: 'people', put: { ...person, roles: ['grower', 'foreman', 'driver'], truck: '3' } },
  { list: 'people', put: { ...person, roles: ['digger-operator', 'topper-operator'] } },
  { list: 'trucks', put: { ...truck, grossLimitLb: 86_000 } },
  { list: 'trucks', put: truck },
  { list: 'fields', put: field },
  { list: 'fields', put: { ...field, acres: null } },
  { list: 'stations', put: station },
  { list: 'limits', put: { lineLimitMin: 45, shortestCycleMin: 15 } },
  { list: 'trucks', remove: '5' },
  { list: 'rooms', put: { id: 'matrix:!b:farm.example', platform: 'matrix', room: '!b:farm.example' } },
  { list: 'rooms', remove: 'matrix:!b:farm.example' },
];

const passed = [true, false].map((toAll): FactOf<'words-passed'> => ({
  id: 'local:m1#0',
  cause: 'local:m1',
  atMs: at('18:00'),
  sentMs: at('18:00'),
  heardMs: at('18:00'),
  by: 'ruth',
  timeStated: false,
  kind: 'words-passed',
  to: toAll ? ['ana', 'ben'] : ['ana'],
  toAll,
  words: 'start 5:00 at South 80',
  room: null,
  soundsLikeOrder: toAll,
}));

type Tellings = { [T in Telling['tell']]: readonly Extract<Telling, { tell: T }>[] };

export const tellings: Tellings = {
  receipt: [
    ...receiptFacts.map((one): Extract<Telling, { tell: 'receipt' }> => ({
      tell: 'receipt',
      facts: [one],
      warnings: [],
      asksCount: false,
    })),
    {
      tell: 'receipt',
      facts: receiptFacts.slice(0, 2),
      warnings: Object.values(warnings).flat(),
      asksCount: true,
    },
  ],
  'taken-back': [{ tell: 'taken-back', facts: receiptFacts.slice(0, 2) }],
  corrected: [
    { tell: 'corrected', facts: receiptFacts.slice(0, 1), warnings: Object.values(warnings).flat() },
  ],
  ...offerTellings,
  'edit-unread': [{ tell: 'edit-unread', facts: receiptFacts.slice(0, 1) }],
  refusal: Object.values(refusals)
    .flat()
    .map((refusal) => ({ tell: 'refusal', refusal })),
  question: Object.values(problems)
    .flat()
    .map((problem) => ({ tell: 'question', problem, said: 'what' })),
  tally: tallies,
  left: [
    { tell: 'left', fields: [] },
    {
      tell: 'left',
      fields: [null, 15.8].map((hoursLeft) => ({
        field: 'north-40',
        deliveredLb: 50_000,
        leftLb: 2_230_000,
        acresLeft: 37.2,
        dug: hoursLeft === null ? null : { acres: 26.5, atMs: at('10:15') },
        loadsLeft: 56,
        hoursLeft,
      })),
    },
  ],
  board: [{ tell: 'board', rows: boardRows, dayStartMs: at('00:00'), dig: freeDig }],
  truck: boardRows.map((one) => ({ tell: 'truck', row: one })),
  'may-dig': digTellings,
  'where-to': [
    { tell: 'where-to', field: 'north-40', station: 'north-station', dig: freeDig },
    { tell: 'where-to', field: 'north-40', station: null, dig: freeDig },
    { tell: 'where-to', field: null, station: null, dig: freeDig },
  ],
  reminder: reminders,
  undelivered: [
    { tell: 'undelivered', step: heatStep(), to: { room: 'crew' }, why: 'invite the bot', rings: true },
    {
      tell: 'undelivered',
      step: heatStep(),
      to: { person: 'ana' },
      why: 'the account is closed',
      rings: true,
    },
    { tell: 'undelivered', step: heatStep(), to: { person: 'ana' }, why: null, rings: true },
  ],
  unseen: [
    { tell: 'unseen', notice: { step: null, seen: [], unseen: [] }, undelivered: [] },
    { tell: 'unseen', notice: { step: heatStep(), seen: ['ana', 'ben'], unseen: [] }, undelivered: [] },
    {
      tell: 'unseen',
      notice: { step: heatStep(), seen: ['ana'], unseen: ['ben', 'carla'] },
      undelivered: ['carla'],
    },
  ],
  tickets: [
    { tell: 'tickets', tickets: [], truck: null, withoutTicket: 0 },
    { tell: 'tickets', tickets: [booked, { ...booked, serial: null }], truck: '3', withoutTicket: 1 },
  ],
  list: (['people', 'trucks', 'fields', 'stations', 'limits'] as const).map((list) => ({
    tell: 'list',
    list,
  })),
  'board-moved': [{ tell: 'board-moved' }],
  'ticket-form': ['3', null].map((truck) => ({ tell: 'ticket-form', truck })),
  help: [true, false].map((manager) => ({ tell: 'help', manager })),
  'passed-words': passed.map((one) => ({ tell: 'passed-words', fact: one, rings: one.toAll })),
  'words-passed': passed.map((one) => ({ tell: 'words-passed', fact: one })),
  'words-seen': [{ tell: 'words-seen' }],
  'words-unseen': [[], ['ben']].map((unseen) => ({
    tell: 'words-unseen',
    words: 'start 5:00 at South 80',
    seen: ['ana'],
    unseen,
  })),
  seen: [{ tell: 'seen', step: heatStep() }],
  'list-changed': changes.map((change) => ({ tell: 'list-changed', change })),
  language: (['en', 'es'] as const).map((language) => ({ tell: 'language', language })),
  notice: [...notices, ...drills, advice, growing],
  'emergency-answer': [{ tell: 'emergency-answer' }],
  emergency: ['3', null].map((own) => ({
    tell: 'emergency',
    name: 'Ana',
    words: 'truck 3 rolled',
    truck: own,
    atMs: at('10:15'),
  })),
  'stranger-answer': [{ tell: 'stranger-answer' }],
  stranger: [{ tell: 'stranger', name: 'Luis', platform: 'slack', user: 'U1' }],
  machine: (['digger', 'topper'] as const).flatMap((machine) =>
    ([true, false] as const).map((runs) => ({
      tell: 'machine' as const,
      machine,
      runs,
      untilMs: runs ? null : at('11:30'),
      words: null,
      by: 'ana',
      atMs: at('10:15'),
    })),
  ),
  'truck-down': ['flat', null].map((words) => ({
    tell: 'truck-down',
    truck: '3',
    words,
    by: 'ana',
    atMs: at('10:15'),
  })),
  outlook: outlooks,
  'no-forecast': [
    { why: 'refused', sinceMs: null, words: '403: refused' } as const,
    { why: 'silent', sinceMs: at('09:50'), words: '503 no reason given' } as const,
    { why: 'old', sinceMs: at('09:50'), words: null } as const,
    { why: 'settings', sinceMs: null, words: null } as const,
  ].map((missing) => ({ tell: 'no-forecast', station: 'north-station', missing })),
  decide: [
    { tell: 'decide', step: heatStep(), forecastMs: at('09:50') },
    { tell: 'decide', step: heatStep({ resumeAtMs: null }), forecastMs: null },
  ],
  'forecast-back': [{ tell: 'forecast-back', station: 'north-station' }],
  ...lineTellings,
  trouble: [{ tell: 'trouble', reference: 'slack:17.2' }],
};

export const allTellings: readonly Telling[] = Object.values(tellings).flat();
