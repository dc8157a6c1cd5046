import { phrased } from './phrased.ts';

/** What is seen at the station and in the beets: the line, the pilers, the gate, root temperature, crowns. */
export const stationSigns = [
  phrased('noLine', { topic: 'line', ahead: 0, mine: false }),
  phrased('nobodyAhead', { topic: 'line', ahead: 0, mine: true }),
  phrased('line', { topic: 'line', ahead: null, mine: false }),
  phrased('ahead', { topic: 'line', ahead: null, mine: true }),
  phrased(
    'pilersOpen',
    { topic: 'pilers', open: 'said', down: null },
    `<n> {piler} ({running})
     <nth> {piler} {running}
     {running} <n>|<nth> {piler}
     {piler} <n> {running}
     {only} <n> {piler} ({running})`,
  ),
  phrased('bothPilersOpen', { topic: 'pilers', open: 2, down: null }),
  phrased(
    'pilerDown',
    { topic: 'pilers', open: null, down: 1 },
    `{piler} {stopped}
     <nth> {piler} {stopped}
     {piler} <n> {stopped}`,
  ),
  phrased('bothPilersDown', { topic: 'pilers', open: null, down: 2 }),
  phrased('pilersDown', { topic: 'pilers', open: null, down: 'said' }, `<n> {piler} {stopped}`),
  phrased('allPilersDown', { topic: 'pilers', open: null, down: 'all' }),
  phrased('pilersUp', { topic: 'pilers', open: null, down: 0 }),
  phrased(
    'stationClosed',
    { topic: 'station', open: false, ahead: false },
    `{station}|<station> {closed} ({until}) ({reopening})`,
  ),
  phrased('stationOpens', { topic: 'station', open: false, ahead: true }),
  phrased('stationOpen', { topic: 'station', open: true, ahead: false }),
  phrased('turnedAway', { topic: 'turned-away' }),
  phrased('root', { topic: 'root' }),
  phrased('acresDug', { topic: 'acres', machine: 'digger' }),
  phrased('acresTopped', { topic: 'acres', machine: 'topper' }),
  phrased('acresDone', { topic: 'acres', machine: null }),
  phrased('crownsSound', { topic: 'crown', sound: true }),
  phrased('crownsBad', { topic: 'crown', sound: false }),
];
