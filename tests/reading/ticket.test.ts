import { expect, test } from 'vitest';
import type { Intent } from '../../src/core/intent.ts';
import { sampleRoster } from '../support/roster.ts';
import { at, chatter, intents, overheard, report, ticket } from './reading-of.ts';

// 79,840 lb - 29,320 lb = 50,520 lb = 25.26 short tons of 2,000 lb (NIST Handbook 44, Appendix C).
const weights = { grossLb: 79_840, tareLb: 29_320 };
const both = ticket('48213', weights);
const net = ticket('48213', { netLb: 50_520 });

const cases: [string, ...Intent[]][] = [
  ['weighed 48213 gross 79840 tare 29320', both],
  ['weigehd 48213 gross 79840 tare 29320', both],
  ['ticket 48213 79,840 29,320', both],
  ['ticket 48213 79840,29320', both],
  ['Ticket no. 48213: 79,840 / 29,320', both],
  ['ticket 48213\n79840\n29320', both],
  ['48213 79840 29320', both],
  ['48213 29320 79840', both],
  ['ticket 48213 79,840 gross 29,320 tare', both],
  ['ticket 48213 79840 tare 29320', both],
  ['peso 48213 bruto 79840 tara 29320', both],
  ['boleta 48213 bruto 79,840 tara 29,320 neto 50,520', ticket('48213', { ...weights, netLb: 50_520 })],
  ['ticket 48213 79840 29320 50520', ticket('48213', { ...weights, netLb: 50_520 })],
  ['ticket 48213 25.26 tons', net],
  ['ticket 48213 25.26 t', net],
  ['ticket 48213 25.26', net],
  ['48213 25.26 tons', net],
  ['boleta 48213 25,26 toneladas', net],
  ['ticket 48213 net 50520', net],
  ['ticket 48213 50520 lb net', net],
  ['hi boss, ticket 48213, 25.26 tons, north 40', { ...net, field: 'north-40' }],
  ['ticket 48213 truck 4 25.26 tons', { ...net, truck: '4' }],
  ['dumped 25.26 tons', report('dumped'), ticket(null, { netLb: 50_520 })],
  ['ticket 00123 25.26 tons', ticket('00123', { netLb: 50_520 })],
  ['boleta A-00123 79840 29320', ticket('A-00123', weights)],
  ['truck 3 weighed 48213 79,840 gross 29,320 tare', { ...both, truck: '3' }],
  [
    'ticket 48213 79840 29320 in 10:05 out 10:31',
    { ...both, firstWeighedMs: at('10:05'), atMs: at('10:31') },
  ],
  ['ticket 48213 79840 29320 in 1005 out 1031', { ...both, firstWeighedMs: at('10:05'), atMs: at('10:31') }],
  ['empty, 48213 79840 29320', report('dumped'), both],
  ['weighed in 48213 79840 29320', both],
  ['weighed 79840 29320', ticket(null, weights)],
];

test.each(cases)('%s', (text, ...expected) => {
  expect(overheard(text)).toEqual(intents(...expected));
});

// 1 lb = 0.45359237 kg exactly (NIST Handbook 44, Appendix C), so 36,215 kg = 79,840.4 lb and 22.92 t = 50,530 lb.
const metric: [string, Intent][] = [
  ['ticket 48213 36215 kg 13,299 kg', ticket('48213', { grossLb: 79_840, tareLb: 29_319 })],
  ['ticket 48213 22.92 tonnes', ticket('48213', { netLb: 50_530 })],
  ['boleta 48213 22,92 toneladas metricas', ticket('48213', { netLb: 50_530 })],
  ['ticket 48213 22.92 metric tons', ticket('48213', { netLb: 50_530 })],
];

test.each(metric)('%s', (text, expected) => {
  expect(overheard(text)).toEqual(intents(expected));
});

test('in a metric operation bare numbers are kilograms and bare tons metric', () => {
  const said = (text: string) => overheard(text, { roster: { ...sampleRoster, units: 'metric' } });
  expect(said('ticket 48213 36215 13299')).toEqual(
    intents(ticket('48213', { grossLb: 79_840, tareLb: 29_319 })),
  );
  expect(said('ticket 48213 22.92 tons')).toEqual(intents(ticket('48213', { netLb: 50_530 })));
});

test('a second weight alone closes the ticket whose first weight was told before', () => {
  expect(overheard('ticket 48213 tare 29320')).toEqual(intents(ticket('48213', { tareLb: 29_320 })));
});

const amount = (said: string) => ({ found: 'unclear', problem: { problem: 'which-amount', said } });

test.each([
  ['ticket 48213', '48213'],
  ['ticket 48213 50520', '50520'],
  ['ticket 48213 22,915 kg', '22,915'],
])('%s: which amount?', (text, said) => {
  expect(overheard(text)).toEqual(amount(said));
});

test('a serial with weights is never passed over in silence', () => {
  const text = 'ticket 48213 79840 29320 and lunch was great today my friends so';
  expect(overheard(text)).toEqual({ found: 'unclear', problem: { problem: 'not-understood' } });
});

test.each([
  '48213',
  'call 208 555 1234',
  '5 tons of fun',
  '25 tons',
  'got a ticket for speeding',
  'parking ticket',
  'peso 80 kilos',
])('%s is no ticket', (text) => {
  expect(overheard(text)).toEqual(chatter);
});
