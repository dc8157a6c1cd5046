import { expect, test } from 'vitest';
import type { Question } from '../../src/core/intent.ts';
import { addressed, ask, intents, overheard } from './reading-of.ts';

const line = (leaveInMin: number | null, station: string | null = null): Question => ({
  about: 'line',
  station,
  leaveInMin,
});
type Tally = Extract<Question, { about: 'tons' | 'loads' }>;
const tons = (said: Partial<Tally> = {}): Question => ({
  about: 'tons',
  field: null,
  truck: null,
  span: 'today',
  ...said,
});
const loads = (said: Partial<Tally> = {}): Question => ({ ...tons(), ...said, about: 'loads' }) as Question;
const list = (name: Extract<Question, { about: 'lists' }>['list']): Question => ({
  about: 'lists',
  list: name,
});
const outlook = (of: 'today' | 'tomorrow' | null): Question => ({ about: 'outlook', station: null, of });

const cases: [string, Question][] = [
  ['where do I go', { about: 'where-to' }],
  ['which field now?', { about: 'where-to' }],
  ['what field am I supposed to be at', { about: 'where-to' }],
  ['same field?', { about: 'where-to' }],
  ["where's the digger", { about: 'where-to' }],
  ['¿a cuál campo voy?', { about: 'where-to' }],
  ['pa donde le doy', { about: 'where-to' }],
  ['¿dónde anda la sacadora?', { about: 'where-to' }],
  ['how long is the line', line(null)],
  ['hows the line', line(null)],
  ['line?', line(null)],
  ['how long is the line at north station', line(null, 'north-station')],
  ['whats the wait at north station', line(null, 'north-station')],
  ['como esta la fila', line(null)],
  ['cuanto hay de fila', line(null)],
  ['¿hay fila?', line(null)],
  ['is the line empty', line(null)],
  ['if I leave now?', line(0)],
  ['if I leave right now how long', line(0)],
  ['si salgo ahorita?', line(0)],
  ["what's the wait if I leave at 2", line(198)],
  ['in 30 minutes?', line(30)],
  ['in half an hour?', line(30)],
  ['how long if I leave in 20 minutes', line(20)],
  ['how many trucks do we need', { about: 'fleet' }],
  ['how many trucks?', { about: 'fleet' }],
  ['do I need another truck', { about: 'fleet' }],
  ['enough trucks?', { about: 'fleet' }],
  ['¿cuántos camiones?', { about: 'fleet' }],
  ['¿cuántas trocas necesito?', { about: 'fleet' }],
  ['necesitamos otra troca?', { about: 'fleet' }],
  ['how many trucks in line', line(null)],
  ['tons today?', tons()],
  ['tons so far', tons()],
  ['how many tons off north 40', tons({ field: 'north-40' })],
  ['how many tons have we hauled', tons()],
  ['tons yesterday', tons({ span: 'yesterday' })],
  ['tons this season', tons({ span: 'season' })],
  ['tons so far this week', tons({ span: 'week' })],
  ["3's loads", loads({ truck: '3' })],
  ['tons this week', tons({ span: 'week' })],
  ['how many loads since monday', loads({ span: 'week' })],
  ['toneladas de la semana', tons({ span: 'week' })],
  ['¿cuántas cargas van esta semana?', loads({ span: 'week' })],
  ['how many tons so far this season', tons({ span: 'season' })],
  ['cuantas toneladas van', tons()],
  ['cuantas toneladas ayer', tons({ span: 'yesterday' })],
  ['how many loads has truck 3', loads({ truck: '3' })],
  ['how many loads has carla hauled', loads({ truck: '3' })],
  ['my loads', loads({ truck: '2' })],
  ['how many loads have I hauled', loads({ truck: '2' })],
  ['cuantas cargas lleva la troca 3', loads({ truck: '3' })],
  ['cuantos viajes llevo', loads({ truck: '2' })],
  ['what is left', { about: 'left', field: null }],
  ["what's left to dig", { about: 'left', field: null }],
  ['how many acres left at north 40?', { about: 'left', field: 'north-40' }],
  ['how much is left', { about: 'left', field: null }],
  ['acres left?', { about: 'left', field: null }],
  ['cuanto falta por sacar', { about: 'left', field: null }],
  ['cuantos acres quedan', { about: 'left', field: null }],
  ['cuanto queda en el north 40', { about: 'left', field: 'north-40' }],
  ['where is everybody', { about: 'board' }],
  ['donde estan todos', { about: 'board' }],
  ['where is truck 3', { about: 'truck', truck: '3' }],
  ['where is carla', { about: 'truck', truck: '3' }],
  ['donde anda la troca 3', { about: 'truck', truck: '3' }],
  ['is truck 3 loaded?', { about: 'truck', truck: '3' }],
  ['is truck 3 loaded', { about: 'truck', truck: '3' }],
  ['can we dig', { about: 'may-dig' }],
  ['may we dig?', { about: 'may-dig' }],
  ['dig again?', { about: 'may-dig' }],
  ['stop digging?', { about: 'may-dig' }],
  ['se puede sacar?', { about: 'may-dig' }],
  ['who has not seen it', { about: 'unseen-notice' }],
  ["who hasn't seen it", { about: 'unseen-notice' }],
  ['quien no ha visto', { about: 'unseen-notice' }],
  ['outlook', outlook(null)],
  ['whats the plan', outlook(null)],
  ['forecast at north station', { about: 'outlook', station: 'north-station', of: null }],
  ['tomorrow?', outlook('tomorrow')],
  ['what about tomorrow', outlook('tomorrow')],
  ['forecast for tomorrow?', outlook('tomorrow')],
  ['plan for today', outlook('today')],
  ['pronostico', outlook(null)],
  ['¿y mañana?', outlook('tomorrow')],
  ['como viene mañana?', outlook('tomorrow')],
  ['plan de hoy', outlook('today')],
  ['tickets', { about: 'tickets', truck: null }],
  ['trucks', list('trucks')],
  ['people', list('people')],
  ['fields', list('fields')],
  ['stations', list('stations')],
  ['limits', list('limits')],
  ['trocas', list('trucks')],
  ['help', { about: 'help' }],
  ['ayuda', { about: 'help' }],
];

test.each(cases)('%s', (text, question) => {
  expect(overheard(text)).toEqual(intents(ask(question)));
});

test.each(['ticket', 'Ticket', 'boleta'])(
  '%s alone asks how a ticket is typed, in a room only when pressed',
  (text) => {
    expect(addressed(text)).toEqual(intents(ask({ about: 'ticket-form' })));
    expect(overheard(text)).toEqual({ found: 'chatter' });
  },
);

test('written to the bot, more words may stand around', () => {
  expect(addressed('could you show me the trucks list, and tell')).toEqual({
    found: 'unclear',
    problem: { problem: 'not-understood' },
  });
  expect(addressed('hello, please show me the trucks')).toEqual(intents(ask(list('trucks'))));
});

test.each([
  ['tons last week', 'sums'],
  ['loads last month', 'sums'],
  ['how many tons on friday', 'sums'],
  ['toneladas de la semana pasada', 'sums'],
  ['¿cuántas cargas van este mes?', 'sums'],
  ['tickets yesterday', 'tickets'],
  ['my tickets this week', 'tickets'],
  ['las boletas de ayer', 'tickets'],
])('a span that cannot be given is asked back, and never taken for today: %s', (text, of) => {
  expect(addressed(text)).toMatchObject({ found: 'unclear', problem: { problem: 'which-span', of } });
});
