import { describe, expect, test } from 'vitest';
import { LANGUAGES } from '../../src/core/roster.ts';
import { foldHarvest } from '../../src/core/harvest/fold.ts';
import { noticeXml } from '../../src/command/notice-xml.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { schemaFaults, schemaMissing } from '../support/cap-schema.ts';
import { checkCap, textsAt } from '../support/cap-rules.ts';
import { crewForEachTest } from '../support/crew.ts';
import type { Crew } from '../support/crew.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

const WARM = [36, 36, 37, 39, 43, 47, 51, 55, 58, 62, 66, 68, 70, 66, 61, 55, 50, 47, 45, 43];

const dayInBook = async () =>
  foldHarvest(
    crew.bot.roster,
    (await crew.factsSoFar()).map(({ fact }) => fact),
  );

const exported = async (event: string | null = null) => {
  const made = noticeXml(await dayInBook(), zoneClock, event);
  if ('fault' in made) throw new Error(made.fault);
  if (schemaMissing === null) expect(schemaFaults([made.xml])).toEqual([]);
  const { alert, faults } = checkCap(made.xml);
  expect(faults).toEqual([]);
  const languages = textsAt(alert, 'info', 'language');
  expect(languages).toHaveLength(LANGUAGES.length);
  /** Of the infos those in English and Spanish. */
  return (...path: readonly string[]) =>
    textsAt(alert, ...path).filter((_, at) => path[0] !== 'info' || /^(en|es)-/.test(languages[at] ?? ''));
};

describe('a notice as CAP 1.2', () => {
  test('a heat stop: valid, in both languages, as an order to be carried out', async () => {
    await crew.forecast('north-station', '05:10', '04:00', WARM);
    const texts = await exported();
    expect(texts('status')).toEqual(['Actual']);
    expect(texts('msgType')).toEqual(['Alert']);
    expect(texts('info', 'language')).toEqual(['en-US', 'es-US']);
    expect(texts('info', 'responseType')).toEqual(['Execute', 'Execute']);
    expect(texts('info', 'headline')).toEqual([
      'HEAT STOP for North station: stop topping at 10:40 AM, stop digging at 11:10 AM.',
      'PARO POR CALOR para North station: paren de deshojar a las 10:40 a.m., paren de sacar a las 11:10 a.m.',
    ]);
    expect(texts('info', 'onset')).toEqual(Array(2).fill('2026-10-20T11:10:00-06:00'));
  });

  test('its end refers to the stop', async () => {
    await crew.forecast('north-station', '05:10', '04:00', WARM);
    await crew.say('ruth', null, 'dig on: station agreed & waits', '11:30');
    const texts = await exported();
    expect(texts('msgType')).toEqual(['Update']);
    expect(texts('references')).toEqual([expect.stringContaining('.1,2026-10-20T05:10:00-06:00')]);
    expect(texts('info', 'responseType')).toEqual(['AllClear', 'AllClear']);
    expect(texts('info', 'description')[0]).toContain('Why: "station agreed & waits".');
  });

  test('a drill has the status Exercise', async () => {
    await crew.say('ruth', null, 'drill: stop digging', '09:00');
    const texts = await exported();
    expect(texts('status')).toEqual(['Exercise']);
    expect(texts('info', 'headline')[0]).toMatch(/^EXERCISE: DRILL/);
  });

  test('an older event is found by its id, and an unknown one is named with those known', async () => {
    await crew.say('ruth', null, 'stop digging, mud', '09:00', { id: 'first' });
    await crew.say('ruth', null, 'dig again', '09:30');
    await crew.say('ruth', null, 'stop digging, frost', '10:00');
    expect((await exported('mud-local:first'))('info', 'event')).toEqual(['Mud hold', 'Mud hold']);
    const made = noticeXml(await dayInBook(), zoneClock, 'heat-9');
    expect('fault' in made ? made.fault : '').toMatch(/no notice "heat-9". Known: mud-local:first, frost-/);
  });

  test('before any notice there is nothing to print', async () => {
    expect(noticeXml(await dayInBook(), zoneClock, null)).toEqual({
      fault: 'No notice has been raised yet.',
    });
  });
});
