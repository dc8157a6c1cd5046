/**
 * The worked weigh ticket: 79,840 - 29,320 = 50,520 lb = 25.26 tons (derived arithmetic; truck in full, the same truck
 * out with its dirt, as receiving stations weigh). Payment tons are left to the lab and are not computed.
 */
import { describe, expect, it } from 'vitest';
import { netOf } from '../../src/core/book/weights.ts';
import { shortTonFromLb, tonneFromLb } from '../../src/core/units.ts';
import { bookTicket, given } from '../support/given.ts';

describe('the worked ticket', () => {
  it('net = first weight - second weight', () => {
    expect(netOf({ grossLb: 79_840, tareLb: 29_320, netLb: null })).toEqual({ netLb: 50_520 });
  });

  it('is 25.26 short tons, 22.92 t', () => {
    expect(shortTonFromLb(50_520)).toBe(25.26);
    expect(tonneFromLb(50_520).toFixed(2)).toBe('22.92');
  });

  // NIST Handbook 44, Scales 2.20, class III L: with 20 lb divisions all three weights are multiples of 20.
  it('is booked without a warning', () => {
    const booked = given().when(
      bookTicket({ grossLb: 79_840, tareLb: 29_320, netLb: 50_520 }),
      'ana',
      '10:40',
    );
    expect(booked).toMatchObject({ refusal: null, warnings: [], added: [{ ticket: { netLb: 50_520 } }] });
  });

  // About 20 tons a load, and 50,000 lb on a semi (West Central Tribune, November 2012; everydaylutherans.com/2012/11).
  it.each([40_000, 50_000])('a common net of %i lb is not unusual', (netLb) => {
    expect(given().when(bookTicket({ netLb }), 'ana', '10:40').warnings).toEqual([]);
  });

  // Gross 62,000 to 110,000 lb (three accounts of piler crews, 2013-2023).
  it.each([62_000, 90_000, 106_000, 110_000])('a first weight of %i lb is not unusual', (grossLb) => {
    expect(given().when(bookTicket({ grossLb }), 'ana', '10:40').warnings).toEqual([]);
  });
});
