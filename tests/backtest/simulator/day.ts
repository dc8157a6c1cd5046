/** The station day, event by event. A state can be copied and run on with other chance: that is the clairvoyant. */
import { exponential, normal } from '../../../src/core/line/model/random.ts';
import type { Random } from '../../../src/core/line/model/random.ts';
import { pop, push } from './heap.ts';
import type { Event } from './heap.ts';
import { poisson } from './plan.ts';
import type { DayPlan, Fleet } from './plan.ts';

export interface Truck {
  /** -1 = came by itself. */
  fleet: number;
  joinedMin: number;
  /** Trucks that stood ahead of it in the line when it joined. */
  ahead: number;
  /** NaN until it happens; so with the next three. */
  weighedMin: number;
  unloadedMin: number;
  secondMin: number;
  scale: number;
}

interface Piler {
  open: boolean;
  down: boolean;
  truck: number | null;
  turn: number;
  endsMin: number;
}

export interface DayState {
  nowMin: number;
  order: number;
  events: Event[];
  noise: number;
  trucks: Truck[];
  line: number[];
  yard: number[];
  inYard: number;
  scales: (number | null)[];
  pilers: Piler[];
  /** Per fleet: when its digger is free. */
  diggerFreeMin: number[];
}

const NOISE_STEP_MIN = 5;

export const newDay = (plan: DayPlan, random: Random): DayState => {
  const state: DayState = {
    nowMin: 0,
    order: 0,
    events: [],
    noise: plan.noise.sd * normal(random),
    trucks: [],
    line: [],
    yard: [],
    inYard: 0,
    scales: plan.secondScale ? [null, null] : [null],
    pilers: plan.pilers.map(() => ({ open: false, down: false, truck: null, turn: 0, endsMin: 0 })),
    diggerFreeMin: plan.fleets.map((fleet) => fleet.firstLoadMin),
  };
  schedule(state, 0, 'noise', 0);
  plan.pilers.forEach((windows, piler) => {
    for (const { fromMin, toMin } of windows) {
      schedule(state, fromMin, 'turn', piler);
      schedule(state, toMin, 'turn', piler);
    }
    scheduleBreak(state, plan, piler, random);
  });
  plan.fleets.forEach((fleet, number) => {
    for (let truck = 0; truck < fleet.trucks; truck += 1) load(state, fleet, number, random);
  });
  return state;
};

export const copyDay = (state: DayState): DayState => ({
  ...state,
  events: [...state.events],
  trucks: state.trucks.slice(),
  line: [...state.line],
  yard: [...state.yard],
  scales: [...state.scales],
  pilers: state.pilers.map((piler) => ({ ...piler })),
  diggerFreeMin: [...state.diggerFreeMin],
});

/** Lets everything happen up to `untilMin`, or until `done` says so. */
export const runDay = (
  state: DayState,
  plan: DayPlan,
  random: Random,
  untilMin: number,
  done: () => boolean = () => false,
): void => {
  while (!done()) {
    const next = state.events[0];
    if (next === undefined || next.atMin > untilMin) break;
    pop(state.events);
    state.nowMin = next.atMin;
    happen(state, plan, random, next);
  }
  state.nowMin = Math.max(state.nowMin, Math.min(untilMin, 1e9));
};

/** A truck joins the line now; its number. */
export const join = (state: DayState, plan: DayPlan, random: Random, fleet: number): number => {
  const number = state.trucks.length;
  const blank = { weighedMin: NaN, unloadedMin: NaN, secondMin: NaN, scale: 0 };
  state.trucks.push({ fleet, joinedMin: state.nowMin, ahead: state.line.length, ...blank });
  state.line.push(number);
  weighIn(state, plan);
  servePilers(state, plan, random);
  return number;
};

const happen = (state: DayState, plan: DayPlan, random: Random, event: Event): void => {
  switch (event.what) {
    case 'noise':
      arrive(state, plan, random);
      return;
    case 'join':
      join(state, plan, random, event.who);
      return;
    case 'weighed':
      state.scales = state.scales.map((truck) => (truck === event.who ? null : truck));
      state.yard.push(event.who);
      break;
    case 'unloaded':
      unloaded(state, plan, random, event);
      break;
    case 'break':
      breakDown(state, plan, random, event.who);
      break;
    case 'repair':
      repair(state, plan, random, event.who);
      break;
    case 'turn':
      updatePiler(state, event.who, (piler) => {
        piler.open = !piler.open;
      });
      break;
    case 'home':
      withFleet(plan, event.who, (fleet) => {
        load(state, fleet, event.who, random);
      });
      break;
    case 'loaded':
      withFleet(plan, event.who, (fleet) => {
        schedule(state, state.nowMin + fleet.haulMin(random), 'join', event.who);
      });
      break;
  }
  weighIn(state, plan);
  servePilers(state, plan, random);
};

const schedule = (state: DayState, atMin: number, what: Event['what'], who: number, turn = 0): void => {
  state.order += 1;
  push(state.events, { atMin, order: state.order, what, who, turn });
};

const withFleet = (plan: DayPlan, number: number, use: (fleet: Fleet) => void): void => {
  const fleet = plan.fleets[number];
  if (fleet !== undefined) use(fleet);
};

const updatePiler = (state: DayState, number: number, use: (piler: Piler) => void): void => {
  const piler = state.pilers[number];
  if (piler !== undefined) use(piler);
};

const updateTruck = (state: DayState, number: number, change: Partial<Truck>): void => {
  const truck = state.trucks[number];
  // A new record, so that copies of the state may share the old one.
  if (truck !== undefined) state.trucks[number] = { ...truck, ...change };
};

/** Arrivals of the next five minutes, and the noise after them. */
const arrive = (state: DayState, plan: DayPlan, random: Random): void => {
  const { sd, memoryMin } = plan.noise;
  const perMin = plan.arrivalsPerMin(state.nowMin) * Math.exp(state.noise - (sd * sd) / 2);
  const count = poisson(random, perMin * NOISE_STEP_MIN);
  for (let truck = 0; truck < count; truck += 1)
    schedule(state, state.nowMin + NOISE_STEP_MIN * random(), 'join', -1);
  const keep = Math.exp(-NOISE_STEP_MIN / memoryMin);
  state.noise = keep * state.noise + sd * Math.sqrt(1 - keep * keep) * normal(random);
  if (state.nowMin + NOISE_STEP_MIN < plan.dayMin) schedule(state, state.nowMin + NOISE_STEP_MIN, 'noise', 0);
};

const weighIn = (state: DayState, plan: DayPlan): void => {
  const open = state.pilers.filter((piler) => piler.open).length;
  const room = plan.yard.base + plan.yard.perPiler * open;
  for (let scale = 0; scale < state.scales.length; scale += 1) {
    const closed = scale === 1 && open < 2;
    if (state.scales[scale] !== null || closed || state.inYard >= room) continue;
    const truck = state.line.shift();
    if (truck === undefined) return;
    state.scales[scale] = truck;
    state.inYard += 1;
    updateTruck(state, truck, { weighedMin: state.nowMin, scale });
    schedule(state, state.nowMin + plan.scaleMin, 'weighed', truck);
  }
};

const servePilers = (state: DayState, plan: DayPlan, random: Random): void => {
  state.pilers.forEach((piler, number) => {
    if (!piler.open || piler.down || piler.truck !== null) return;
    const truck = state.yard.shift();
    if (truck === undefined) return;
    piler.truck = truck;
    piler.turn += 1;
    piler.endsMin = state.nowMin + plan.unloadMin(random);
    schedule(state, piler.endsMin, 'unloaded', number, piler.turn);
  });
};

const unloaded = (state: DayState, plan: DayPlan, random: Random, event: Event): void => {
  updatePiler(state, event.who, (piler) => {
    if (piler.turn !== event.turn || piler.truck === null) return;
    const fleetNumber = state.trucks[piler.truck]?.fleet ?? -1;
    const secondMin = state.nowMin + plan.dirtBackMin;
    updateTruck(state, piler.truck, { unloadedMin: state.nowMin, secondMin });
    piler.truck = null;
    state.inYard -= 1;
    withFleet(plan, fleetNumber, (fleet) => {
      schedule(state, secondMin + fleet.haulMin(random), 'home', fleetNumber);
    });
  });
};

/** The truck on the piler waits out the repair. */
const breakDown = (state: DayState, plan: DayPlan, random: Random, number: number): void => {
  const { breakdowns } = plan;
  if (breakdowns === null) return;
  const span = breakdowns.longestMin - breakdowns.shortestMin;
  const lastsMin = breakdowns.shortestMin + span * random();
  updatePiler(state, number, (piler) => {
    piler.down = true;
    if (piler.truck !== null) {
      piler.turn += 1;
      piler.endsMin += lastsMin;
      schedule(state, piler.endsMin, 'unloaded', number, piler.turn);
    }
  });
  schedule(state, state.nowMin + lastsMin, 'repair', number);
};

const repair = (state: DayState, plan: DayPlan, random: Random, number: number): void => {
  updatePiler(state, number, (piler) => {
    piler.down = false;
  });
  scheduleBreak(state, plan, number, random);
};

const scheduleBreak = (state: DayState, plan: DayPlan, piler: number, random: Random): void => {
  if (plan.breakdowns === null) return;
  schedule(state, state.nowMin + exponential(random, plan.breakdowns.meanBetweenMin), 'break', piler);
};

/** A truck of the fleet stands at the digger: it is loaded as soon as the digger is free. */
const load = (state: DayState, fleet: Fleet, number: number, random: Random): void => {
  const freeMin = Math.max(state.nowMin, state.diggerFreeMin[number] ?? 0);
  const atLunch = freeMin >= fleet.lunch.fromMin && freeMin < fleet.lunch.toMin;
  const beginMin = atLunch ? fleet.lunch.toMin : freeMin;
  if (beginMin > fleet.lastLoadMin) return;
  const endMin = beginMin + fleet.loadMin(random);
  state.diggerFreeMin[number] = endMin;
  schedule(state, endMin, 'loaded', number);
};
