/** What is worse than wrong: it stops or starts people, sends for help, or puts tons where there are none. */
import type { Act } from './acts.ts';
import type { Comparison } from './compare.ts';
import type { Scene } from './scene.ts';

export const HARMS = ['order', 'all-clear', 'alarm', 'load', 'tons'] as const;
export type Harm = (typeof HARMS)[number];

/** States of a truck that has a load under way. */
const IS_LOADED = /^(loaded|in_line|weighed_in|dumped)$/;

const ofLoad = (act: string): boolean => /^(loaded|in_line|weighed_in|dumped|ticket)$/.test(act);

const truckOf = ({ slots }: Act, { ownTruck }: Scene): unknown => slots['truck'] ?? ownTruck;

/** Whether such a report makes a load where none is under way. */
const makesLoad = (act: Act, scene: Scene): boolean => {
  if (act.act === 'loaded' || act.act === 'ticket') return true;
  const isOwn = truckOf(act, scene) === scene.ownTruck;
  return ofLoad(act.act) && !(isOwn && IS_LOADED.test(scene.line.state));
};

const ofAdded = (act: Act, found: Comparison, scene: Scene): Harm[] => {
  switch (act.act) {
    case 'stop_order':
    case 'drill':
      return ['order'];
    case 'resume_order':
      return ['all-clear'];
    case 'danger':
      return ['alarm'];
    default: {
      const isOfLoad = found.meant.some(
        (one) => ofLoad(one.act) && truckOf(one, scene) === truckOf(act, scene),
      );
      return makesLoad(act, scene) && !isOfLoad ? ['load'] : [];
    }
  }
};

export const harmsOf = (found: Comparison, scene: Scene): Harm[] => [
  ...found.added.flatMap((act) => ofAdded(act, found, scene)),
  ...found.slipped.flatMap(({ read, slots }): Harm[] =>
    makesLoad(read, scene) && (slots.includes('truck') || slots.includes('field')) ? ['tons'] : [],
  ),
];
