import type { HaulStep } from '../core/book/facts.ts';
import { phrased } from './phrased.ts';
import type { Needs, Sign } from './sign.ts';

const step = (name: HaulStep, needs: Needs = null): Sign => ({
  topic: 'haul',
  step: name,
  tells: false,
  needs,
  place: false,
});

/** Steps of a truck's round trip. "Loaded" and "left the field" are one report: the truck hauls. */
export const haulSigns = [
  phrased('leftField', step('left-field')),
  // Words too common to count alone in a shared room.
  phrased('leftFieldIfNamed', step('left-field', 'name')),
  phrased('leftFieldIfAny', step('left-field', 'any')),
  phrased('loading', step('loading')),
  phrased('atStation', step('joined-line', 'setting')),
  phrased('joinedLine', step('joined-line')),
  phrased(
    'placeInLine',
    { topic: 'haul', step: 'joined-line', tells: false, needs: null, place: true },
    `{number}|# <n> {in} {line}
     <nth> {in} {line}`,
  ),
  phrased('firstWeighed', step('first-weighed')),
  phrased('dumped', step('dumped')),
  phrased('returning', step('returning')),
  phrased('inField', step('at-field', 'setting')),
  phrased('atField', step('at-field')),
];

/** Out of the round trip and back into it: parked, broken down, fixed. */
export const troubleSigns = [
  phrased('parked', step('parked')),
  phrased('parkedIfNamed', step('parked', 'name')),
  phrased('down', step('down')),
  // Here the phrase is itself the cause.
  phrased('downBecause', { topic: 'haul', step: 'down', tells: true, needs: null, place: false }),
  phrased('up', step('up')),
  phrased('machineDown', { topic: 'machine', runs: false }),
  phrased('machineUp', { topic: 'machine', runs: true }),
];
