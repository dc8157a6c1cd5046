/** Runs one season after another as the main thread hands them out. */
import { parentPort } from 'node:worker_threads';
import { runSeason } from './season.ts';
import { ALL_SETS, NO_COUNTS } from './sets.ts';
import { drawStation } from './simulator/station.ts';
import type { Family } from './simulator/station.ts';

/** A season as it can be sent to a worker. */
export interface Job {
  family: Family;
  number: number;
  ownLoads: number;
  seed: number;
  trainingDays: number;
  testDays: number;
  sets: 'all' | 'no counts';
  example: boolean;
}

parentPort?.on('message', ({ family, number, ownLoads, seed, sets, ...plan }: Job) => {
  const station = drawStation(number, family, ownLoads, seed);
  parentPort?.postMessage(runSeason({ ...plan, station, seed, sets: sets === 'all' ? ALL_SETS : NO_COUNTS }));
});
