import type { Happening } from '../book/facts.ts';
import { refused, stationFor, stationOfTruck, taken, truckFor } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';
import { isStoppedAt } from '../notices/notices.ts';
import type { Warning } from '../refusal.ts';
import { fieldById, mayManage, stationById } from '../roster.ts';
import type { StationId } from '../roster.ts';
import { addMinutes } from '../units.ts';
import { HEAT_FIGURES } from '../weather/assumptions.ts';
import { extraLossLbPerTonDay } from '../weather/respiration.ts';
import { LEAST_LOSS_LB } from './assumptions.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** A step of a truck's round trip, with a head count if the driver in the line counted. */
export const acceptReport = (intent: IntentOf<'report'>, harvest: Harvest, speaking: Speaking): Accepted => {
  const truck = truckFor(speaking, intent.truck);
  if (truck === null) return refused({ refused: 'no-truck' });
  const { step, field, words, untilMs } = intent;
  const station = intent.station;
  const happenings: Happening[] = [
    {
      ...{ kind: 'truck-reported', truck, step, field, station, grossLb: null, words },
      ...(untilMs === null ? {} : { untilMs }),
    },
  ];
  const place = stationOfTruck(harvest, truck, station, field);
  if (intent.ahead !== null && place !== null)
    happenings.push({ kind: 'line-seen', station: place, ahead: intent.ahead, truck });
  return taken(speaking, intent.atMs, happenings);
};

type Sighting = IntentOf<'see-line' | 'see-pilers' | 'report-station' | 'report-turned-away'>;

/** Pilers that are down; all of them are as many as the station has. */
const pilersDown = (
  down: IntentOf<'see-pilers'>['down'],
  station: StationId,
  { roster }: Harvest,
): number | null => (down === 'all' ? (stationById(roster, station)?.pilers ?? 1) : down);

/** What a person sees at the station: the line, the pilers, whether it is open and takes loads. */
export const acceptSighting = (intent: Sighting, harvest: Harvest, speaking: Speaking): Accepted => {
  const truck = (intent.do === 'report-turned-away' ? intent.truck : null) ?? speaking.speaker.truck;
  const station = stationOfTruck(harvest, truck, intent.station, null);
  if (station === null) return refused({ refused: 'no-station' });
  switch (intent.do) {
    case 'see-line':
      return taken(speaking, intent.atMs, [
        { kind: 'line-seen', station, ahead: intent.ahead, truck: speaking.speaker.truck },
      ]);
    case 'see-pilers':
      return taken(speaking, intent.atMs, [
        {
          kind: 'pilers-seen',
          station,
          open: intent.open,
          down: pilersDown(intent.down, station, harvest),
        },
      ]);
    case 'report-station':
      return taken(speaking, intent.atMs, [
        { kind: 'station-reported', station, open: intent.open, untilMs: intent.untilMs },
      ]);
    case 'report-turned-away':
      return taken(speaking, intent.atMs, [
        { kind: 'loads-turned-away', station, truck, words: intent.words },
      ]);
  }
};

/** What follows from roots above the limit of the station that they go to. */
const rootWarnings = (
  { field, station, temperatureF }: Omit<Extract<Happening, { kind: 'root-measured' }>, 'kind'>,
  harvest: Harvest,
  { speaker, sentMs }: Speaking,
): Warning[] => {
  const id = stationFor(harvest.roster, station, field);
  const limitF = id === null ? undefined : stationById(harvest.roster, id)?.rootLimitF;
  if (id === null || limitF === undefined || temperatureF <= limitF) return [];
  const stopped = isStoppedAt(harvest, id, sentMs);
  const lbPerTonDay = extraLossLbPerTonDay(temperatureF, limitF);
  const isWorthIt = mayManage(speaker) && lbPerTonDay >= LEAST_LOSS_LB;
  return [
    { warning: 'root-too-warm', station: id, limitF, stopped },
    ...(isWorthIt ? [{ warning: 'root-cost', limitF, lbPerTonDay } as const] : []),
  ];
};

/** The digger or topper stands, or works again. */
export const acceptMachine = (
  { machine, runs, atMs, untilMs, words }: IntentOf<'report-machine'>,
  speaking: Speaking,
): Accepted => taken(speaking, atMs, [{ kind: 'machine-reported', machine, runs, untilMs, words }]);

/** Acres of the field that is named, else of the one that is dug; more than the field has are a slip. */
export const acceptAcres = (
  intent: IntentOf<'report-acres'>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  const { machine, acres, atMs } = intent;
  const field = intent.field ?? harvest.dugField;
  const fieldAcres = (field === null ? undefined : fieldById(harvest.roster, field))?.acres ?? null;
  if (field !== null && fieldAcres !== null && acres > fieldAcres)
    return refused({ refused: 'more-than-field', field, acres, fieldAcres });
  return taken(speaking, atMs, [{ kind: 'acres-told', machine, field, acres }]);
};

/** What a person measures or decides in the field. */
export const acceptFieldReport = (
  intent: IntentOf<'measure-root' | 'check-crown' | 'dig-field'>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  switch (intent.do) {
    case 'measure-root': {
      // If no place is named, the roots are from the field being dug; if that is not known, they go to the first station.
      const field = intent.field ?? (intent.station === null ? harvest.dugField : null);
      const station = field === null ? stationFor(harvest.roster, intent.station, null) : intent.station;
      const { temperatureF } = intent;
      const isStanding =
        (intent.atMs ?? speaking.sentMs) >= addMinutes(speaking.sentMs, 0 - HEAT_FIGURES.rootHoldsMin);
      const warnings = isStanding ? rootWarnings({ field, station, temperatureF }, harvest, speaking) : [];
      return taken(
        speaking,
        intent.atMs,
        [{ kind: 'root-measured', field, station, temperatureF }],
        warnings,
      );
    }
    case 'check-crown':
      return taken(speaking, intent.atMs, [
        { kind: 'crown-checked', field: intent.field, sound: intent.sound },
      ]);
    case 'dig-field':
      return taken(speaking, intent.atMs, [{ kind: 'field-dug', field: intent.field }]);
  }
};
