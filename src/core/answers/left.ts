import { fieldById } from '../roster.ts';
import type { Field, FieldId } from '../roster.ts';
import { LB_PER_SHORT_TON } from '../units.ts';
import type { EpochMs, Lb } from '../units.ts';
import { acresPerHour } from './field-capacity.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** Mean load where there are no tickets yet: 600,000 trips for 12 million tons (a processor's training, as reported 2020). */
const USUAL_LOAD_LB: Lb = 20 * LB_PER_SHORT_TON;

/** What is still in the ground of one field, by the yield that is expected of it. */
export interface LeftInField {
  field: FieldId;
  deliveredLb: Lb;
  leftLb: Lb;
  acresLeft: number;
  /** What the crew last said that is dug; null = nobody has. */
  dug: { acres: number; atMs: EpochMs } | null;
  /** At the mean net of the tickets so far. */
  loadsLeft: number;
  /** Hours of digging at the digger's field capacity; null = no digger is set. */
  hoursLeft: number | null;
}

/** Mean net of the tickets so far. */
export const meanLoadLb = (harvest: Harvest): Lb =>
  harvest.tickets.length === 0
    ? USUAL_LOAD_LB
    : harvest.tickets.reduce((lb, ticket) => lb + ticket.netLb, 0) / harvest.tickets.length;

const leftIn = (field: Field, harvest: Harvest): LeftInField[] => {
  const { acres, yieldTonsPerAcre } = field;
  if (acres === null || yieldTonsPerAcre === null) return [];
  const loads = [...harvest.trucks.values()]
    .flatMap((truck) => truck.loads)
    .filter((load) => load.field === field.id);
  const deliveredLb = loads.reduce((lb, load) => lb + (load.ticket?.netLb ?? 0), 0);
  const leftLb = Math.max(0, acres * yieldTonsPerAcre * LB_PER_SHORT_TON - deliveredLb);
  const acresLeft = leftLb / LB_PER_SHORT_TON / yieldTonsPerAcre;
  const { digger } = harvest.roster;
  return [
    {
      field: field.id,
      deliveredLb,
      leftLb,
      acresLeft,
      dug: harvest.acresTold.findLast((told) => told.machine === 'digger' && told.field === field.id) ?? null,
      loadsLeft: Math.ceil(leftLb / meanLoadLb(harvest)),
      hoursLeft: digger ? acresLeft / acresPerHour(digger) : null,
    },
  ];
};

/** Fields with acres and an expected yield; null = all of them. */
export const left = (harvest: Harvest, field: FieldId | null): LeftInField[] => {
  const one = field === null ? undefined : fieldById(harvest.roster, field);
  return (one ? [one] : harvest.roster.fields).flatMap((asked) => leftIn(asked, harvest));
};
