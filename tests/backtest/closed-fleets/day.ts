/** One day of the station and its farms, event by event, in minutes since opening. */
import type { Random } from '../../../src/core/line/model/random.ts';
import { newAgenda } from './agenda.ts';
import type { Agenda } from './agenda.ts';
import { between, brokenForMin, unloadFor } from './habits.ts';
import type { FarmHabit, StationHabit } from './habits.ts';

export interface Round {
  farm: number;
  truck: number;
  /** NaN = on an earlier day; it stood in the line overnight. */
  loadedMin: number;
  joinedMin: number;
  ahead: number;
  /** NaN until it happens, and for good if the station closes before. */
  weighedMin: number;
  secondMin: number;
  serial: number;
}

/** Newest serial of each scale; they go on from day to day. */
export type Serials = number[];

interface Piler {
  busy: boolean;
  stopped: number;
}

interface Day {
  station: StationHabit;
  serials: Serials;
  random: Random;
  nowMin: number;
  agenda: Agenda;
  rounds: Round[];
  line: Round[];
  yard: Round[];
  inYard: number;
  scalesFree: boolean[];
  pilers: Piler[];
  stopped: number;
  digging: { waiting: number[]; busy: boolean; lunchUntilMin: number }[];
}

const newRound = (farm: number, truck: number, loadedMin: number): Round => ({
  farm,
  truck,
  loadedMin,
  joinedMin: NaN,
  ahead: 0,
  weighedMin: NaN,
  secondMin: NaN,
  serial: NaN,
});

/** Nearly always near the usual, sometimes much longer. */
const scattered = (random: Random, meanMin: number): number =>
  meanMin * (0.85 + 0.25 * random() + (random() < 0.06 ? 0.8 * random() : 0));

const isOpen = (day: Day): boolean => day.nowMin < day.station.openMin && day.stopped === 0;

/** `overnight`: trucks that stand in the line since yesterday. */
export const simulateDay = (
  station: StationHabit,
  serials: Serials,
  overnight: readonly Round[],
  random: Random,
): Round[] => {
  const agenda = newAgenda();
  const day: Day = {
    station,
    serials,
    random,
    nowMin: 0,
    agenda,
    rounds: [],
    line: [],
    yard: [],
    inYard: 0,
    scalesFree: Array.from({ length: station.scales }, () => true),
    pilers: Array.from({ length: station.pilers }, () => ({ busy: false, stopped: 0 })),
    stopped: 0,
    digging: station.farms.map(() => ({ waiting: [], busy: false, lunchUntilMin: 0 })),
  };
  for (const { farm, truck } of overnight) join(day, newRound(farm, truck, NaN), 0);
  planStops(day);
  planFarms(day, overnight);
  agenda.run(1000, (nowMin) => {
    day.nowMin = nowMin;
  });
  return day.rounds;
};

const planStops = (day: Day): void => {
  const { station, random } = day;
  const span = (fromMin: number, lastsMin: number, change: (by: number) => void): void => {
    day.agenda.put(fromMin, () => {
      change(1);
    });
    day.agenda.put(fromMin + lastsMin, () => {
      change(-1);
      goOn(day);
    });
  };
  for (const { atMin, lastsMin } of station.stops)
    span(atMin + between(random, -4, 4), lastsMin + between(random, -3, 6), (by) => {
      day.stopped += by;
    });
  day.pilers.forEach((piler, number) => {
    const stop = (by: number): void => {
      piler.stopped += by;
    };
    if (station.cleaningMin > 0)
      span(
        120 + (number * 400) / station.pilers + between(random, -20, 20),
        scattered(random, station.cleaningMin),
        stop,
      );
    for (let atMin = -station.brokenEveryMin * Math.log(random()); atMin < station.openMin;) {
      const lastsMin = brokenForMin(random);
      span(atMin, lastsMin, stop);
      atMin += lastsMin - station.brokenEveryMin * Math.log(random());
    }
  });
};

const planFarms = (day: Day, overnight: readonly Round[]): void => {
  const { station, random } = day;
  station.farms.forEach((habit, farm) => {
    const rests = random() < habit.restShare;
    const lunchAtMin = habit.lunch.atMin + between(random, -15, 15);
    const startsMin = habit.startsMin + between(random, -15, 25);
    if (habit.lunch.lastsMin > 0)
      day.agenda.put(lunchAtMin, () => {
        const digger = day.digging[farm];
        if (digger) digger.lunchUntilMin = lunchAtMin + habit.lunch.lastsMin;
      });
    for (let truck = 0; truck < habit.trucks; truck += 1) {
      const stands = overnight.some((round) => round.farm === farm && round.truck === truck);
      if (rests || stands) continue;
      day.agenda.put(startsMin + 2 * truck, () => {
        atDigger(day, habit, farm, truck);
      });
    }
  });
};

/** The digger fills one truck after another. */
const atDigger = (day: Day, habit: FarmHabit, farm: number, truck: number): void => {
  const { station, random } = day;
  const digger = day.digging[farm];
  if (!digger) return;
  digger.waiting.push(truck);
  const fillNext = (): void => {
    if (digger.busy || digger.waiting.length === 0) return;
    // No load is begun that cannot be brought in.
    if (day.nowMin > station.openMin - habit.haulMin - 25) return;
    if (day.nowMin < digger.lunchUntilMin) {
      day.agenda.put(digger.lunchUntilMin, fillNext);
      return;
    }
    const next = digger.waiting.shift();
    if (next === undefined) return;
    digger.busy = true;
    day.agenda.put(day.nowMin + scattered(random, habit.fillMin), () => {
      digger.busy = false;
      const round = newRound(farm, next, day.nowMin);
      const joinMin = day.nowMin + scattered(random, habit.haulMin);
      day.agenda.put(joinMin, () => {
        join(day, round, day.nowMin);
      });
      fillNext();
    });
  };
  fillNext();
};

const join = (day: Day, round: Round, atMin: number): void => {
  round.joinedMin = atMin;
  round.ahead = day.line.length;
  day.rounds.push(round);
  day.line.push(round);
  goOn(day);
};

const goOn = (day: Day): void => {
  unloadNext(day);
  weighNext(day);
};

const weighNext = (day: Day): void => {
  const { station, random } = day;
  day.scalesFree.forEach((free, scale) => {
    if (!free || !isOpen(day) || day.inYard >= 1 + station.yard * station.pilers) return;
    const round = day.line.shift();
    if (round === undefined) return;
    round.weighedMin = day.nowMin;
    round.serial = nextSerial(day, scale);
    day.inYard += 1;
    day.scalesFree[scale] = false;
    day.agenda.put(day.nowMin + scattered(random, station.scaleMin), () => {
      day.scalesFree[scale] = true;
      day.yard.push(round);
      goOn(day);
    });
  });
};

const nextSerial = ({ station, serials, random }: Day, scale: number): number => {
  const others = random() < station.otherSerials ? 1 : 0;
  // Spread over the day: some four hundred trucks.
  const gap = random() < station.gapShare / 200 ? Math.floor(between(random, 20, 500)) : 0;
  const serial = (serials[scale] ?? 0) + 1 + others + gap;
  serials[scale] = serial;
  return serial;
};

const unloadNext = (day: Day): void => {
  const { station, random } = day;
  for (const piler of day.pilers) {
    if (piler.busy || piler.stopped > 0 || day.stopped > 0) continue;
    const round = day.yard.shift();
    if (round === undefined) return;
    piler.busy = true;
    day.agenda.put(day.nowMin + unloadFor(random, station.unloadMin), () => {
      piler.busy = false;
      day.inYard -= 1;
      leave(day, round);
      goOn(day);
    });
  }
};

/** Weighed empty, and back to the field. */
const leave = (day: Day, round: Round): void => {
  const { station, random } = day;
  round.secondMin = day.nowMin + between(random, 1, 4);
  const habit = station.farms[round.farm];
  if (habit === undefined) return;
  day.agenda.put(round.secondMin + scattered(random, 0.9 * habit.haulMin), () => {
    atDigger(day, habit, round.farm, round.truck);
  });
};
