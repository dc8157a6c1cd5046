/** Tons, loads, tickets and the board. */
export const tallies = {
  // Tallies
  'tally.tons': '{span}{who}: {tons} in {loads, plural, one {# load} other {# loads}}.',
  'tally.loads': '{span}{who}: {loads, plural, one {# load} other {# loads}}, {tons}.',
  'tally.who': ', {name}',
  'tally.today': 'Today so far',
  'tally.yesterday': 'Yesterday',
  'tally.week': 'This week, since Monday',
  'tally.season': 'Season so far',
  'tally.field': '{field}: {tons}, {loads, plural, one {# load} other {# loads}}',
  'tally.truck': '{truck}: {tons}, {loads, plural, one {# load} other {# loads}}',
  'tally.no-field': 'field not told',
  'tally.without-ticket':
    '{count, plural, one {# load has} other {# loads have}} no ticket yet and no tons here.',
  'tally.net': 'Net of the weigh tickets; the lab takes off its tare % later.',
  'left.field': '{field}: about {tons} left, {acres} acres, {loads, plural, one {# load} other {# loads}}.',
  'left.field-hours':
    '{field}: about {tons} left, {acres} acres, {loads, plural, one {# load} other {# loads}}, {hours} h of digging.',
  'left.dug': '{field}: {acres} acres dug, the crew said at {time}.',
  'left.by-yield': 'By the yield expected of each field, less what the tickets say.',
  'left.none': 'I cannot say: no field has acres and an expected yield in the operation file.',

  // The board
  'board.title': 'Trucks at {time}',
  'board.row': '{truck}: {phase}{place}{since}, {loads, plural, one {# load} other {# loads}}{note}',
  'board.unheard': '{truck}: nothing heard yet',
  'board.since': ' since {time}',
  'board.at': ' at {place}',
  'board.from': ' from {place}',
  'board.inferred': ' (worked out, not told)',
  'board.head.truck': 'Truck',
  'board.head.phase': 'Where',
  'board.head.since': 'Since',
  'board.head.loads': 'Loads',
  'board.moved': 'The trucks: see the newer list further down.',
  'board.mark': '* worked out from a later message, not told',
  'phase.at-field': 'at the field',
  'phase.loading': 'loading',
  'phase.hauling': 'hauling',
  'phase.in-line': 'in line',
  'phase.on-piler': 'on the piler',
  'phase.returning': 'returning',
  'phase.parked': 'parked',
  'phase.down': 'down',

  // Tickets
  'ticket.form': 'When parked, the ticket in one line: {ticket} truck {truck}',
  'tickets.none': 'No tickets today.',
  'tickets.title': 'Tickets today: {count}.',
  'tickets.row': '{serial} {truck} {tons} {time}',
  'tickets.no-serial': 'no serial',
} as const;
