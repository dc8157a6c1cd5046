import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { startFieldbell } from '../support/fieldbell.ts';

const settingsIn = (directory: string) => ({
  FIELDBELL_DATABASE: directory,
  FIELDBELL_HEALTH_PORT: '0',
  FIELDBELL_LOG: 'warn',
});
const emptyDirectory = (): string => mkdtempSync(join(tmpdir(), 'fieldbell-live-'));

// Each start opens the database, which takes seconds, on a busy machine many.
describe('the bot in a terminal', { timeout: 400_000 }, () => {
  test('killed in mid-day it carries on where it was, and says nothing twice', async () => {
    const settings = settingsIn(emptyDirectory());
    const first = startFieldbell([], settings);
    first.type('/as ana', 'boleta 48101 bruto 79840 tara 29320', '/as ben', 'in line, 9 ahead');
    await first.shows('Truck 2: in the scale line');
    // Handled after the delivery of the answer before was noted: what was shown is in the book as shown.
    first.type('good morning everybody', '/mark');
    const before = await first.shows('/mark is not understood');
    expect(before).toContain('Boleta 48101: Troca 1, 25.26');

    const rival = await startFieldbell([], settings).end();
    expect(rival.code).toBe(1);
    expect(rival.err.trimEnd().split('\n')).toEqual([
      expect.stringMatching(/^Process \d+ on .* holds .*Stop that process/),
    ]);

    await first.kill();
    const second = startFieldbell([], settings);
    second.type('/as ruth', '/dm', 'tons today?', 'where is everybody');
    // Nothing is waited for: all that was typed is answered before it ends with the input.
    const { code, out, err } = await second.end();
    expect(code).toBe(0);
    expect(err).toBe('');
    // (79,840 - 29,320) lb / 2,000
    expect(out).toContain('Today so far: 25.26 tons in 1 load.');
    expect(out).toMatch(/Truck 1 +returning/);
    expect(out).toMatch(/Truck 2 +in line/);
    expect(out).not.toContain('Boleta 48101');
    expect(out).not.toContain('in the scale line');
  });

  test('the demo plays a day with its heat stop and its tons, and ends', async () => {
    const { code, out, err } = await startFieldbell(['--demo', '--speed', '1000000']).end();
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toMatch(/HEAT STOP for North station: stop topping at .*, stop digging at /);
    expect(out).toMatch(/ALL-CLEAR for North station: heat stop over, dig again now/);
    expect(out).toMatch(/Today so far: \d+\.\d\d tons in \d+ loads\./);
    expect(out).not.toContain('I did not get that');
  });
});
