/** Whether what was read is what is meant, act for act and slot for slot. */
import { STEPS, clockTime } from './acts.ts';
import type { Act } from './acts.ts';
import type { Scene } from './scene.ts';

/** Acts that mean the sender's own truck where none is named. */
const OF_A_TRUCK = new Set([...Object.values(STEPS), 'ticket', 'undo', 'ack']);

/** What a slot is where it is not stated. */
const unsaid = (slot: string, { act }: Act, scene: Scene): string | number | null => {
  if (slot === 'truck') return OF_A_TRUCK.has(act) ? scene.ownTruck : null;
  if (slot === 'time') return clockTime(scene, scene.nowMs);
  if (slot === 'span') return 'today';
  if (slot === 'reason') return 'other';
  return slot === 'count' && act === 'piler_down' ? 1 : null;
};

/** Pounds that were kilograms or tons, and degrees that were Celsius, are rounded in labels. */
const ROUNDING: Record<string, number> = { gross_lb: 1.5, tare_lb: 1.5, net_lb: 1.5, temp_f: 0.06 };

const isAlike = (slot: string, one: unknown, other: unknown): boolean =>
  typeof one === 'number' && typeof other === 'number'
    ? Math.abs(one - other) <= (ROUNDING[slot] ?? 0)
    : one === other;

/** A net that follows from the scale weights; tickets are rounded to hundredths of a ton. */
const isNetOf = ({ slots }: Act): boolean => {
  const { gross_lb: gross, tare_lb: tare, net_lb: net } = slots;
  return (
    [gross, tare, net].every((lb) => typeof lb === 'number') &&
    Math.abs(Number(gross) - Number(tare) - Number(net)) <= 20
  );
};

/** Values that nobody stated, but that `accept` fills in. */
const isFilledIn = (slot: string, read: Act, meant: readonly Act[], scene: Scene): boolean => {
  const value = read.slots[slot];
  // A digger or topper that is down is labelled without a truck.
  if (slot === 'truck') return value === scene.ownTruck || value === 'digger' || value === 'topper';
  if (slot === 'person') return value === scene.sender.id;
  if (slot === 'gross_lb') return value === scene.grossLb;
  if (slot === 'net_lb') return isNetOf(read);
  const isSaidBeside = meant.some(({ slots }) => slots['field'] === value);
  return slot === 'field' && (value === scene.dugField || isSaidBeside);
};

/** The slots in which an act that was read is not the one that is meant. */
const slotsApart = (read: Act, one: Act, meant: readonly Act[], scene: Scene): string[] =>
  [...new Set([...Object.keys(read.slots), ...Object.keys(one.slots)])].filter((slot) => {
    const expected = one.slots[slot] ?? unsaid(slot, one, scene);
    const found = read.slots[slot] ?? unsaid(slot, read, scene);
    if (isAlike(slot, found, expected)) return false;
    return slot in one.slots || !isFilledIn(slot, read, meant, scene);
  });

interface Slip {
  read: Act;
  /** Slots in which it is not what is meant. */
  slots: readonly string[];
}

export interface Comparison {
  /** Read, and not meant by act. */
  added: readonly Act[];
  /** Read with other slots than are meant. */
  slipped: readonly Slip[];
  /** Meant, and not read, or without a slot for which nothing stands now. */
  lacking: readonly Act[];
  meant: readonly Act[];
}

export const isRight = ({ added, slipped, lacking }: Comparison): boolean =>
  added.length + slipped.length + lacking.length === 0;
/** Nothing was read that is not meant. */
export const isPart = ({ added, slipped }: Comparison): boolean => added.length + slipped.length === 0;

/** A field that is lost is filled in from the dig: what is written is short of what is meant, but says nothing else. */
const isOnlyLost = ({ read, slots }: Slip, { dugField }: Scene): boolean =>
  slots.every((slot) => slot === 'field' && (read.slots[slot] ?? dugField) === dugField);

const without = <T>(all: readonly T[], one: T): T[] => all.filter((each) => each !== one);

export const compare = (read: readonly Act[], meant: readonly Act[], scene: Scene): Comparison => {
  let open = meant;
  const unmatched = read.filter((act) => {
    const same = open.find((one) => one.act === act.act && slotsApart(act, one, meant, scene).length === 0);
    if (same) open = without(open, same);
    return same === undefined;
  });
  /** He drives it anyway. */
  const isNothingNew = ({ act, slots }: Act): boolean =>
    act === 'take_truck' && slots['truck'] === scene.ownTruck && slots['person'] === scene.sender.id;
  const slips: Slip[] = [];
  const lost: Act[] = [];
  const added = unmatched.filter((act) => {
    const one = open.find((each) => each.act === act.act);
    if (!one) return !isNothingNew(act);
    open = without(open, one);
    const slip = { read: act, slots: slotsApart(act, one, meant, scene) };
    if (isOnlyLost(slip, scene)) lost.push(one);
    else slips.push(slip);
    return false;
  });
  return { added, slipped: slips, lacking: [...open, ...lost], meant };
};
