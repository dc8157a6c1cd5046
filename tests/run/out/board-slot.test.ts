import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LANGUAGES } from '../../../src/core/roster.ts';
import { boardSlotFrom, boardSlotText } from '../../../src/run/out/board-slot.ts';

test('a slot comes back as it was stored, whatever the platform calls its messages', () => {
  const slot = fc.record({ language: fc.constantFrom(...LANGUAGES), cause: fc.string({ minLength: 1 }) });
  fc.assert(
    fc.property(slot, (one) => {
      expect(boardSlotFrom(boardSlotText(one))).toEqual(one);
    }),
  );
});

test('slots that are stored already are read', () => {
  expect(boardSlotText({ language: 'es', cause: 'slack:C1/17.2' })).toBe('board es slack:C1/17.2');
  expect(boardSlotFrom('board en matrix:$a b')).toEqual({ language: 'en', cause: 'matrix:$a b' });
});

test('a language that nobody speaks here, or another slot, is no board', () => {
  expect(boardSlotFrom('board xx slack:1')).toBeNull();
  expect(boardSlotFrom('notice es slack:1')).toBeNull();
  expect(boardSlotFrom('board es')).toBeNull();
});
