/** Numbers of tickets as people write and say them. Weights are invented, in the ranges of src/reading/assumptions.ts. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { amountsIn } from '../../src/reading/amounts.ts';
import { withHeardNumbers } from '../../src/reading/heard-numbers.ts';
import { withNumbers } from '../../src/reading/numbers.ts';
import { ticketNumbers } from '../../src/reading/ticket-numbers.ts';
import { tokenize } from '../../src/reading/tokens.ts';

const ALL = ['gross', 'tare', 'net', 'serial'] as const;

const numbersIn = (text: string) => {
  const [found] = ticketNumbers(amountsIn(withNumbers(withHeardNumbers(tokenize(text)))), ALL);
  return found === undefined ? null : [found.serial, found.grossLb, found.tareLb, found.netLb];
};

describe('the numbers of a ticket', () => {
  test.each([
    ['slip 48213, 79,840 in and 29,320 out', ['48213', 79_840, 29_320, null]],
    ['79840 29320 48213', ['48213', 79_840, 29_320, null]],
    ['papelito 48213 lleno 79 mil 840 vacio 29,320', ['48213', 79_840, 29_320, null]],
    [
      'ticket forty eight two thirteen, seventy nine eight forty over twenty nine three twenty',
      ['48213', 79_840, 29_320, null],
    ],
    ['tkt 48213 net 25.26', ['48213', null, null, 50_520]],
    ['boleta 48213 neto veinticinco toneladas y media', ['48213', null, null, 51_000]],
    ['48213 25.26 tons', ['48213', null, null, 50_520]],
    ['gross 77.9k tare 28.4k', [null, 77_900, 28_400, null]],
    ['folio 48213 bruto 36,200 kilos tara 13,300 kilos', ['48213', 79_807, 29_321, null]],
    ['48213 gross 79,840 tare 29,320 net 50,520', ['48213', 79_840, 29_320, 50_520]],
    ['ticket four eight two oh six net 51,880', ['48206', null, null, 51_880]],
    ['48212 tare 29,320', ['48212', null, 29_320, null]],
    ['tick it for ate too for five grows seventy ate nine hundred', ['48245', 78_900, null, null]],
    ['28,660 de tara, 41386 boleto', ['41386', null, 28_660, null]],
    ['con bruto 80 mil 6 y tara 28 mil 2', [null, 80_600, 28_200, null]],
    ['pesada la burra: 72 mil 6 cientos', [null, 72_600, null, null]],
    ['just weighed in eighty thousand four sixty', [null, 80_460, null, null]],
    ['net fueron 25 tons y cuarto, ticket 48223', ['48223', null, null, 50_500]],
    ['tare twenty eight and a quarter thousand', [null, null, 28_250, null]],
    ['sent 80,1 and 28,3 under 48388', ['48388', 80_100, 28_300, null]],
    ['ochenta y un mil cuarenta de bruto', [null, 81_040, null, null]],
    ['28 mil trescientas veinte libras vacio', [null, null, 28_320, null]],
    ['it is 41382', ['41382', null, null, null]],
    ['83 flat in', [null, 83_000, null, null]],
  ])('%s', (text, numbers) => {
    expect(numbersIn(text)).toEqual(numbers);
  });

  test.each(['in line 20 minutes', 'truck 4', 'see you at 5 for 2 beers'])(
    'there are none in "%s"',
    (text) => {
      expect(numbersIn(text)).toBeNull();
    },
  );

  test('are told apart in any order where the labels stand beside them', () => {
    const parts = fc.shuffledSubarray(['ticket 48213', 'gross 79,840', 'tare 29,320', 'net 50,520'], {
      minLength: 2,
    });
    fc.assert(
      fc.property(parts, (said) => {
        const has = (label: string) => said.some((part) => part.startsWith(label));
        expect(numbersIn(said.join(', '))).toEqual([
          has('ticket') ? '48213' : null,
          has('gross') ? 79_840 : null,
          has('tare') ? 29_320 : null,
          has('net') ? 50_520 : null,
        ]);
      }),
      { seed: 1789 },
    );
  });

  test('leave more numbers than a ticket has alone', () => {
    expect(numbersIn('1 2 3, 4, 5, 6, 7, 8')).toBeNull();
  });
});
