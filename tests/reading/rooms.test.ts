import { expect, test } from 'vitest';
import { addressed, chatter, intents, overheard } from './reading-of.ts';

test.each([
  'use this room',
  'Use this channel, please',
  'Fieldbell: use this room',
  'usa esta sala',
  'Usen este canal por favor',
])('%s', (text) => {
  expect(overheard(text)).toEqual(intents({ do: 'use-room', use: true }));
});

test.each([
  'stop using this room',
  'quit using this channel',
  'deja esta sala',
  'Deje de usar este canal.',
  'ya no uses más esta sala',
])('%s', (text) => {
  expect(addressed(text)).toEqual(intents({ do: 'use-room', use: false }));
});

test.each([
  'use this room for the lunch orders',
  'can we use this room?',
  'we use this room for parts only',
  'did you use this channel',
  'no dejen esta sala sucia',
  'there is room on this truck',
  'usa esta sala para lo de mañana',
  'hay que usar este canal pa la comida',
])('%s is talk among the crew', (text) => {
  expect(overheard(text)).toEqual(chatter);
});
