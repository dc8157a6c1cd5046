import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../src/core/book/facts.ts';
import { capAlert, capTime } from '../../src/saying/cap/cap.ts';
import type { CapContext } from '../../src/saying/cap/cap.ts';
import { capXml } from '../../src/saying/cap/cap-xml.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { schemaFaults, schemaMissing } from '../support/cap-schema.ts';
import { checkCap, textsAt } from '../support/cap-rules.ts';
import type { XmlElement } from '../support/cap-rules.ts';
import { at, clock } from '../core/weather/forecasts.ts';

const stop: NoticeStep = {
  event: 'heat-north station-1',
  number: 1,
  notice: 'heat',
  stage: 'stop',
  source: 'forecast',
  place: 'north-station',
  stopToppingMs: clock('11:10'),
  stopAtMs: clock('11:40'),
  resumeAtMs: clock('21:00'),
  peakF: 65,
  peakMs: clock('15:00'),
  limitF: 55,
  chance: 0.94,
  words: null,
};

const context: CapContext = {
  sender: 'fieldbell@example.org',
  senderName: 'Riverbend Beets',
  addresses: 'crew',
  zone: 'America/Boise',
  clock: zoneClock,
  drill: false,
  sentMs: new Map([[1, clock('05:00')]]),
  words: [
    {
      language: 'en-US',
      headline: 'STOP DIGGING 11:40 AM',
      description: 'Forecast 65 °F at 3 PM & limit 55 °F: <too warm> to pile.\u0007',
      instruction: 'Stop topping 11:10 AM.',
      areaDesc: 'North station',
    },
    {
      language: 'es-US',
      headline: 'PAREN A LAS 11:40 AM',
      description: 'Pronóstico 65 °F.',
      instruction: 'No desfolien después de las 11:10 AM.',
      areaDesc: 'Estación norte',
    },
  ],
};

/** Every message that a test has made. */
const written: string[] = [];

const message = (step: NoticeStep, changes: Partial<CapContext> = {}): XmlElement | undefined => {
  const made = capAlert(step, { ...context, ...changes });
  if (!made) throw new Error('the step was sent, so there is a message');
  const xml = capXml(made);
  written.push(xml);
  const { alert, faults } = checkCap(xml);
  expect(faults).toEqual([]);
  return alert;
};
const later: NoticeStep = { ...stop, number: 3, stage: 'all-clear' };
const sentMs = new Map([
  [1, clock('05:00')],
  [2, clock('08:00')],
  [3, clock('21:00')],
]);

describe('a notice as a CAP 1.2 message', () => {
  it('keeps to the schema at every stage, for every reason, in a drill or not', () => {
    for (const stage of ['watch', 'stop', 'update', 'all-clear'] as const) {
      for (const notice of ['heat', 'frost', 'mud', 'other'] as const) {
        for (const drill of [false, true]) {
          message({ ...stop, stage, notice }, { drill });
          message(
            { ...stop, stage, notice, stopAtMs: null, resumeAtMs: null, peakF: null, chance: null },
            { drill },
          );
        }
      }
    }
  });

  it('is checked by rules that can fail', () => {
    const made = capAlert(stop, context);
    const xml = made ? capXml(made) : '';
    expect(checkCap(xml.replace('<status>Actual</status>', '<status>Real</status>')).faults).toHaveLength(1);
    expect(
      checkCap(xml.replace(/<sent>.*<\/sent>/, '<sent>2026-10-20T11:00:00Z</sent>')).faults,
    ).toHaveLength(1);
    expect(checkCap(xml.replace(/ *<sender>.*<\/sender>\n/, '')).faults).toEqual([
      'alert/sender stands 0 times',
    ]);
    expect(
      checkCap(xml.replace(/(<urgency>.*<\/urgency>)\s*(<severity>.*<\/severity>)/, '$2$1')).faults,
    ).toEqual(['alert/info: elements are out of order']);
  });

  it('tells in both languages what, when and what to do', () => {
    const alert = message(stop);
    expect(textsAt(alert, 'info', 'language')).toEqual(['en-US', 'es-US']);
    expect(textsAt(alert, 'info', 'headline')).toEqual(['STOP DIGGING 11:40 AM', 'PAREN A LAS 11:40 AM']);
    expect(textsAt(alert, 'info', 'description')[0]).toBe(
      'Forecast 65 °F at 3 PM & limit 55 °F: <too warm> to pile.',
    );
    expect(textsAt(alert, 'info', 'onset')[0]).toBe('2026-10-20T11:40:00-06:00');
    expect(textsAt(alert, 'info', 'expires')[0]).toBe('2026-10-20T21:00:00-06:00');
    expect(textsAt(alert, 'info', 'parameter', 'valueName').slice(0, 6)).toEqual([
      'stopTopping',
      'stopDigging',
      'resumeDigging',
      'temperatureF',
      'limitF',
      'chance',
    ]);
  });

  it('refers to every earlier step of its event', () => {
    expect(textsAt(message(stop), 'msgType')).toEqual(['Alert']);
    expect(textsAt(message(stop), 'references')).toEqual([]);
    const alert = message(later, { sentMs });
    expect(textsAt(alert, 'msgType')).toEqual(['Update']);
    expect(textsAt(alert, 'references')).toEqual([
      'fieldbell@example.org,heat-north-station-1.1,2026-10-20T05:00:00-06:00 ' +
        'fieldbell@example.org,heat-north-station-1.2,2026-10-20T08:00:00-06:00',
    ]);
    expect(textsAt(alert, 'identifier')).toEqual(['heat-north-station-1.3']);
    expect(textsAt(alert, 'incidents')).toEqual(['heat-north-station-1']);
  });

  it.each([
    ['a watch', { stage: 'watch', chance: 0.6 }, 'Prepare Future Minor Likely'],
    ['a stop hours ahead', {}, 'Execute Future Moderate Likely'],
    ['a stop within the hour', { stopToppingMs: clock('05:40') }, 'Execute Expected Moderate Likely'],
    ['measured roots', { stopToppingMs: clock('05:00'), chance: 1 }, 'Execute Immediate Moderate Observed'],
    ['a person', { source: 'person', chance: null }, 'Execute Future Moderate Observed'],
    ['a frost hold', { notice: 'frost', chance: null }, 'Execute Future Severe Likely'],
    ['an all-clear', { stage: 'all-clear' }, 'AllClear Past Minor Observed'],
  ] as const)('of %s says so in its codes', (_, changes, codes) => {
    const alert = message({ ...stop, ...changes });
    const names = ['responseType', 'urgency', 'severity', 'certainty'];
    expect(names.map((name) => textsAt(alert, 'info', name)[0]).join(' ')).toBe(codes);
  });

  it('says of a drill that it is one: in the status, in the note and in the headline', () => {
    const alert = message(stop, { drill: true });
    expect(textsAt(alert, 'status')).toEqual(['Exercise']);
    expect(textsAt(alert, 'note')[0]).toContain('nobody needs to act');
    expect(textsAt(alert, 'info', 'headline')[0]).toBe('EXERCISE: STOP DIGGING 11:40 AM');
  });

  it('does not exist for a step that was not sent', () => {
    expect(capAlert(later, context)).toBeNull();
  });
});

describe.skipIf(schemaMissing !== null)(`the schema of OASIS (${schemaMissing ?? 'run by xmllint'})`, () => {
  it('finds no fault in any of these messages', () => {
    expect(written.length).toBeGreaterThan(70);
    expect(schemaFaults(written)).toEqual([]);
  });

  it('finds the faults that the rules find', () => {
    const [xml = ''] = written;
    const faulty = [
      xml.replace(/<status>.*<\/status>/, '<status>Real</status>'),
      xml.replace(/<sent>.*<\/sent>/, '<sent>2026-10-20T11:00:00Z</sent>'),
      xml.replace(/ *<sender>.*<\/sender>\n/, ''),
      xml.replace(/(<urgency>.*<\/urgency>)\s*(<severity>.*<\/severity>)/, '$2$1'),
    ];
    for (const one of faulty) expect(schemaFaults([one]).join()).toMatch(/Schemas validity error/);
  });
});

describe('times of CAP', () => {
  it.each([
    ['America/Boise', '2026-10-20T18:00:07.9Z', '2026-10-20T12:00:07-06:00'],
    ['America/Chicago', '2026-11-01T06:30:00Z', '2026-11-01T01:30:00-05:00'],
    ['America/Chicago', '2026-11-01T07:30:00Z', '2026-11-01T01:30:00-06:00'],
    ['Europe/Berlin', '2026-10-20T23:30:00Z', '2026-10-21T01:30:00+02:00'],
    ['America/St_Johns', '2026-10-20T12:00:00Z', '2026-10-20T09:30:00-02:30'],
    ['UTC', '2026-10-20T12:00:00Z', '2026-10-20T12:00:00-00:00'],
  ])('in %s at %s are %s, never with a Z', (zone, utc, expected) => {
    expect(capTime(at(utc), zone, zoneClock)).toBe(expected);
  });
});
