import { expect, test } from 'vitest';
import type { Correction, HoldReason } from '../../src/core/book/facts.ts';
import type { Intent, IntentTarget } from '../../src/core/intent.ts';
import { addressed, at, intents, overheard } from './reading-of.ts';

const latest = (truck: string | null = null): IntentTarget => ({ by: 'latest', truck });
const serial: IntentTarget = { by: 'serial', serial: '48213' };
const NOTHING: Correction = {
  truck: null,
  field: null,
  atMs: null,
  grossLb: null,
  tareLb: null,
  netLb: null,
};
const correct = (target: IntentTarget, set: Partial<Correction>): Intent => ({
  do: 'correct',
  target,
  set: { ...NOTHING, ...set },
});
const withdraw = (target: IntentTarget): Intent => ({ do: 'withdraw', target });
const stop = (
  hold: HoldReason = 'other',
  words: string | null = null,
  stopAtMs: number | null = null,
): Intent => ({
  do: 'order-stop',
  hold,
  stopAtMs,
  words,
});
const resumed = (words: string | null = null): Intent => ({ do: 'order-resume', atMs: null, words });
const resume = resumed();
const drill = (ends = false): Intent => ({ do: 'drill', ends });
const shift = (off: boolean | null, noticesWhenOff: boolean | null = null): Intent => ({
  do: 'tell-shift',
  off,
  noticesWhenOff,
});
const seen: Intent = { do: 'acknowledge' };
const dig = (field: string): Intent => ({ do: 'dig-field', field, atMs: null });
const take = (truck: string, person: string | null = null): Intent => ({ do: 'take-truck', person, truck });

const cases: [string, Intent][] = [
  ['undo', withdraw(latest())],
  ['undo truck 3', withdraw(latest('3'))],
  ['scratch that', withdraw(latest())],
  ['borra eso', withdraw(latest())],
  ['deshacer', withdraw(latest())],
  ['delete ticket 48213', withdraw(serial)],
  ['borra la boleta 48213', withdraw(serial)],
  ['that was truck 4 not 3', correct(latest('3'), { truck: '4' })],
  ['that was truck 4, not truck 3', correct(latest('3'), { truck: '4' })],
  ['era la 4 no la 3', correct(latest('3'), { truck: '4' })],
  ['no era la 3, era la 4', correct(latest('3'), { truck: '4' })],
  ['that was not truck 3, it was truck 4', correct(latest('3'), { truck: '4' })],
  ['ticket 48213 was south 80 not north 40', correct(serial, { field: 'south-80' })],
  ['that was 10:15 not 10:50', correct(latest(), { atMs: at('10:15') })],
  ['perdon, era la troca 4', correct(latest(), { truck: '4' })],
  ['that was truck 4', correct(latest(), { truck: '4' })],
  ['that was south field', correct(latest(), { field: 'south-80' })],
  ['that was at 10:15', correct(latest(), { atMs: at('10:15') })],
  ['ticket 48213 was truck 4', correct(serial, { truck: '4' })],
  ['ticket 48213 was gross 79860', correct(serial, { grossLb: 79_860 })],
  ['la boleta 48213 era de la 4', correct(serial, { truck: '4' })],
  ['got it', seen],
  ['ok got it', seen],
  ['10-4', seen],
  ['seen', seen],
  ['enterado', seen],
  ['stop digging', stop()],
  ['stop the dig, mud', stop('mud', 'mud')],
  ['stop digging at 1:30, too hot', stop('heat', 'too hot', at('13:30'))],
  ['paren de sacar', stop()],
  ['ya párenle', stop()],
  ['paren de sacar, hay mucho lodo', stop('mud', 'hay mucho lodo')],
  ['stop digging / paren de sacar', stop()],
  ['ya no saquen', stop()],
  ['resume', resume],
  ['all clear', resume],
  ['dig again', resume],
  ['all clear, dig again', resume],
  ['ya pueden sacar', resume],
  ['ya le pueden dar', resume],
  ['dig on: station agreed', resumed('station agreed')],
  ['dig on: north station says ok', resumed('north station says ok')],
  ['resume: crowns are fine, too cold to wait', resumed('crowns are fine, too cold to wait')],
  ['sigan sacando: la estación está de acuerdo', resumed('la estación está de acuerdo')],
  ['drill: stop digging', drill()],
  ['practice stop', drill()],
  ['stop digging, this is a drill', drill()],
  ['simulacro: paren de sacar', drill()],
  ['simulacro', drill()],
  ['end drill', drill(true)],
  ['drill over', drill(true)],
  ['fin del simulacro', drill(true)],
  ['off shift', shift(true)],
  ['going off shift', shift(true)],
  ['fuera de turno', shift(true)],
  ['on shift', shift(false)],
  ['back on shift', shift(false)],
  ['en turno', shift(false)],
  ['notices when off', shift(null, true)],
  ['no notices when off', shift(null, false)],
  ['avisos fuera de turno', shift(null, true)],
  ['sin avisos fuera de turno', shift(null, false)],
  ['digging south 80 now', dig('south-80')],
  ['estamos sacando en south 80', dig('south-80')],
  ['I have truck 4 today', take('4')],
  ['traigo la troca 4', take('4')],
  ['eli has truck 4', take('4', 'eli')],
  ['español', { do: 'choose-language', language: 'es' }],
  ['Espanol', { do: 'choose-language', language: 'es' }],
  ['english', { do: 'choose-language', language: 'en' }],
];

test.each(cases)('%s', (text, expected) => {
  expect(overheard(text)).toEqual(intents(expected));
});

test.each([
  'keep it up and sigan adelante',
  'sigan con eso',
  'resume the meeting at noon',
  'dig on south 80',
  'we need the grain drill tomorrow',
])('in the room "%s" orders nothing', (text) => {
  expect(overheard(text).found).toBe('chatter');
});

test('nothing said of a drill is a real stop', () => {
  expect(addressed('drill, everybody stop digging')).toEqual(intents(drill()));
  expect(overheard('drill, everybody stop digging').found).toBe('chatter');
});

test.each([
  ['stop digging until 14:00', null, at('14:00')],
  ['stop digging at 11:30 till 18:00', at('11:30'), at('18:00')],
  ['paren de sacar hasta las 2', null, at('14:00')],
])('a stop may say until when, which is not when it begins: %s', (text, stopAtMs, untilMs) => {
  expect(addressed(text)).toMatchObject({
    found: 'intents',
    intents: [{ do: 'order-stop', stopAtMs, untilMs }],
  });
});

test.each([
  ['on shift since 5:30', [{ do: 'tell-shift', off: false, atMs: at('05:30') }]],
  ['off shift at 10:15', [{ do: 'tell-shift', off: true, atMs: at('10:15') }]],
  ['starting shift, truck 2', [{ do: 'tell-shift', off: false }]],
  [
    'starting shift, truck 4',
    [
      { do: 'tell-shift', off: false },
      { do: 'take-truck', truck: '4' },
    ],
  ],
  ['entro a turno a las 5:30', [{ do: 'tell-shift', off: false, atMs: at('05:30') }]],
])('a shift with its time and truck: %s', (text, told) => {
  const reading = addressed(text);
  expect(reading.found === 'intents' ? reading.intents : []).toMatchObject(told);
});
