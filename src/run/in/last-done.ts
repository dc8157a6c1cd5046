/** What the sender's truck did last, in the words that the ranker learned. */
import type { Harvest } from '../../core/harvest/harvest.ts';
import type { CrewMember } from '../../core/roster.ts';
import type { TruckState } from '../../core/haul/truck.ts';

const ofTruck = ({ phase, loads, source }: TruckState): string => {
  switch (phase) {
    case 'at-field':
      return 'at_field';
    case 'hauling':
      return 'loaded';
    case 'in-line':
      return 'in_line';
    case 'on-piler':
      return loads.at(-1)?.stamps.dumped ? 'dumped' : 'weighed_in';
    case 'returning':
      return source === 'ticket' ? 'weighed_out' : 'returning';
    case 'loading':
    case 'parked':
    case 'down':
      return phase;
  }
};

export const lastDone = ({ trucks }: Harvest, speaker: CrewMember | null): string => {
  const truck = speaker?.truck == null ? undefined : trucks.get(speaker.truck);
  return truck === undefined ? 'none' : ofTruck(truck);
};
