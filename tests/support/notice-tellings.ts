/** Notices of every sort and stage, and what is said of them. */
import type { FactOf } from '../../src/core/book/facts.ts';
import type { Telling } from '../../src/core/telling.ts';
import { at } from './given.ts';
import { heatStep } from './notices.ts';
import type { DigState } from '../../src/core/notices/notices.ts';

const holdReasons = ['heat', 'frost', 'mud', 'other'] as const;
const stages = ['watch', 'stop', 'update', 'all-clear'] as const;
/** Nothing out of the ordinary. */
export const freeDig: DigState = {
  holds: [],
  coming: [],
  overridden: null,
  closed: [],
  machinesDown: [],
  rain: null,
  unforecast: [],
};

const mayDig = (more: Partial<DigState>): Extract<Telling, { tell: 'may-dig' }> => ({
  tell: 'may-dig',
  dig: { ...freeDig, ...more },
});

const closedNorth: FactOf<'station-reported'> = {
  id: 'local:m1#0',
  cause: 'local:m1',
  atMs: at('14:10'),
  sentMs: at('14:10'),
  heardMs: at('14:10'),
  by: 'ben',
  timeStated: false,
  kind: 'station-reported',
  station: 'north-station',
  open: false,
  untilMs: at('18:00'),
};

export const notices = holdReasons.flatMap((notice) =>
  stages.flatMap((stage): Extract<Telling, { tell: 'notice' }>[] => [
    {
      tell: 'notice',
      step: heatStep({ notice, stage }),
      by: null,
      changed: null,
      rain: null,
      still: [],
      order: stage === 'stop' || stage === 'update',
      asked: 1,
      confirmed: null,
      rings: stage !== 'watch',
    },
    {
      tell: 'notice',
      step: heatStep({
        notice,
        stage,
        number: 2,
        peakF: null,
        resumeAtMs: null,
        words: 'too wet',
        source: 'person',
      }),
      by: 'ruth',
      changed: heatStep({ notice, stopAtMs: at('14:00') }),
      rain: { beforeIn: 0.27, nextIn: 0 },
      still: [heatStep({ event: 'heat-west', stopAtMs: at('09:00') })],
      order: stage === 'stop' || stage === 'update',
      asked: 1,
      confirmed: null,
      rings: stage !== 'watch',
    },
  ]),
);

export const advice: Extract<Telling, { tell: 'notice' }> = {
  tell: 'notice',
  step: heatStep(),
  by: null,
  changed: null,
  rain: null,
  still: [],
  order: false,
  asked: 1,
  confirmed: null,
  rings: false,
};

/** Some have confirmed it. */
export const growing: Extract<Telling, { tell: 'notice' }> = {
  ...advice,
  order: true,
  rings: true,
  confirmed: { seen: ['ruth', 'gus'], unseen: ['mateo', 'fritz'] },
};

export const drills = (['stop', 'all-clear'] as const).map((stage): Extract<Telling, { tell: 'notice' }> => ({
  tell: 'notice',
  step: heatStep({ source: 'drill', notice: 'other', place: null, stage }),
  by: 'ruth',
  changed: null,
  rain: null,
  still: [],
  order: stage === 'stop',
  asked: 1,
  confirmed: null,
  rings: true,
}));

export const digTellings = [
  mayDig({}),
  mayDig({ coming: [heatStep({ stage: 'watch' })] }),
  mayDig({ coming: [heatStep()] }),
  mayDig({ holds: [heatStep({ stopAtMs: at('10:00'), stopToppingMs: at('09:30') })] }),
  mayDig({ holds: [heatStep({ stage: 'all-clear', stopAtMs: at('10:00') })] }),
  mayDig({ holds: [heatStep({ notice: 'mud', source: 'person' })], rain: { beforeIn: 0.27, nextIn: 0.82 } }),
  mayDig({ closed: [closedNorth] }),
  mayDig({ unforecast: [{ station: 'north-station', sinceMs: null }] }),
  mayDig({ holds: [heatStep()], unforecast: [{ station: 'north-station', sinceMs: at('09:50') }] }),
  mayDig({
    overridden: {
      step: heatStep({ stage: 'all-clear', source: 'person', words: 'station agreed' }),
      by: 'ruth',
      atMs: at('10:00'),
    },
  }),
];

export const reminders: readonly Extract<Telling, { tell: 'reminder' }>[] = [
  { tell: 'reminder', step: heatStep() },
  { tell: 'reminder', step: heatStep({ source: 'drill', notice: 'other', place: null }) },
];
