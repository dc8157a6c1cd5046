import { phrased } from './phrased.ts';

export const orderSigns = [
  phrased(
    'withdraw',
    { topic: 'withdraw' },
    `{erase} {that}
     {erase} <ticket>`,
  ),
  phrased(
    'correct',
    { topic: 'correct', reversed: false },
    `<ticket> {was} <truck>|<field> (,) {not} <truck>|<n>|<field>`,
  ),
  phrased('correctReversed', { topic: 'correct', reversed: true }),
  phrased('acknowledge', { topic: 'acknowledge' }),
  phrased('stop', { topic: 'stop' }),
  phrased('resume', { topic: 'resume' }),
  phrased('drill', { topic: 'drill', ends: false }),
  phrased('drillEnds', { topic: 'drill', ends: true }),
  phrased('offShift', { topic: 'shift', off: true, noticesWhenOff: null }),
  phrased('onShift', { topic: 'shift', off: false, noticesWhenOff: null }),
  phrased('notices', { topic: 'shift', off: null, noticesWhenOff: true }),
  phrased('noNotices', { topic: 'shift', off: null, noticesWhenOff: false }),
  phrased('dig', { topic: 'dig' }),
  phrased('takeTruck', { topic: 'take-truck' }),
];

export const ticketSigns = [phrased('weighed', { topic: 'ticket' }, `<ticket>`)];
