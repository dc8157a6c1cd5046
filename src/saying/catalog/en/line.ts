/** The scale line, and trucks against the digger. */
export const line = {
  // The scale line
  'wait.now': 'Line at {station}: about {median} min ({low} to {high}).',
  'wait.later': 'Leave {when}, at {station} about {arrive}: wait about {median} min ({low} to {high}).',
  'wait.leave-now': 'now',
  'wait.leave-in': 'at {time}',
  'wait.none':
    'I have no word from the line at {station} yet, so I cannot say. A count from someone who stands there helps most: "in line, 14 ahead".',
  'wait.usual':
    'I have no word from the line at {station} yet. Usual for this hour: about {median} min ({low} to {high}).',
  'wait.evidence-serial': 'serial {serial} at {time}',
  'wait.evidence-ahead':
    '{count, plural, =0 {probably no truck} one {about # truck} other {about # trucks}} ahead',
  'wait.evidence-rate': '{rate} an hour',
  'wait.evidence-age': '{age, plural, =0 {newest word just now} other {newest word # min old}}',
  'hold.closed':
    '{truck} may as well wait loaded at the field: the station is closed until {time}. In the line it would only keep its place.',
  'hold.say':
    '{truck} may as well wait loaded at the field: {why}. Every 10 min of that bring the load in about {cost} min later.',
  'hold.standstill': 'the line does not move',
  'hold.short-line': 'the line will be shorter',
  'hold.field-stops': 'the dig stops before it could be filled again',
  'station.closed': '{station} is closed{until}.',
  'station.closed-since': '{station} is closed since {time}, and nobody has said until when.',
  'station.least': ': at least {least} min',
  'station.open': '{station} is open.',
  'station.some-run': '{station}: {running} of {of} pilers {running, plural, one {runs} other {run}}.',
  'station.all-run': '{station}: all pilers run.',
  'station.all-down': '{station}: all pilers are down.',
  'station.all-down-since': 'All pilers at {station} are down since {time}.',
  'station.turned-away': '{station} turns loads away{why}.',
  'station.turned-away-at': '{station} turned loads away at {time}{why}.',
  'station.why': ': {words}',
  'station.said': 'Said by {person}{truck} at {time}.',
  'station.of-truck': ' ({truck})',
  'station.wait-at-field': 'Trucks still at the field: wait there, loaded.',
  'line.limit': 'Line at {station}: about {median} min ({low} to {high}), over your limit of {limit} min.',
  'line.stopped':
    'The line at {station} is not moving, it seems: no truck of ours weighed for {silent} min. Waiting: {trucks}. Someone there can say "piler down" or "second piler open".',
  'receipt.asks-count': 'How many trucks are ahead of you? Tap, or say "12 ahead".',

  // Trucks against the digger
  'fleet.needed':
    '{needed, plural, one {# truck keeps} other {# trucks keep}} the digger going; {trucks, plural, one {# hauls} other {# haul}} now.',
  'fleet.round': 'A round takes about {round} min: {load} to fill, {wait} in the scale line{guessed}.',
  'fleet.guessed': ' (usual, no fresh word from the line)',
  'fleet.hours': 'Over the next {hours} hours, as the line may go:',
  'fleet.course':
    'With {trucks, plural, one {# truck} other {# trucks}}: the digger waits {idle} % of the time (at worst {bound} %), each truck {wait} min a round at the digger.',
} as const;
