import { enNotices } from './en-notices.ts';
import { weatherEn } from './weather.ts';

/** English, in ICU message syntax. Short lines: they are read on a phone, parked, at 5 a.m. */
export const en = {
  // Receipts
  'step.at-field': '{truck}: at {field}, {time}.',
  'step.loading': '{truck}: loading at {field}, {time}.',
  'step.left-field': '{truck}: loaded, hauling from {field}, {time}.',
  'step.left-somewhere': '{truck}: loaded and hauling, {time}.',
  'step.joined-line': '{truck}: in the scale line, {time}.',
  'step.first-weighed': '{truck}: weighed in, {time}.',
  'step.first-weighed-lb': '{truck}: weighed in at {weight}, {time}.',
  'step.dumped': '{truck}: dumped, {time}.',
  'step.returning': '{truck}: empty, heading back, {time}.',
  'step.parked': '{truck}: parked, {time}.',
  'step.down': '{truck}: down, {time}. Foreman and grower are told.',
  'step.up': '{truck}: back up, {time}.',
  'place.field': 'the field',
  'receipt.ticket': 'Ticket {serial}: {truck}, {tons} net{weights}, {field}, {time}.',
  'receipt.ticket-no-serial': '{truck}: {tons} net{weights}, {field}, {time}. No serial.',
  'receipt.weights': ' ({gross} - {tare})',
  'receipt.line-seen':
    '{count, plural, =0 {No line} one {# truck} other {# trucks}} {count, plural, =0 {} other {ahead }}at {station}, {time}.',
  'receipt.pilers-open': '{station}: {count, plural, one {# piler} other {# pilers}} open, {time}.',
  'receipt.pilers-down':
    '{station}: {count, plural, =0 {all pilers running} one {# piler down} other {# pilers down}}, {time}.',
  'receipt.station-open': '{station}: open, {time}.',
  'receipt.station-closed': '{station}: closed{until}, {time}.',
  'receipt.until': ' until {time}',
  'receipt.root': 'Root temperature {temperature} at {place}, {time}.',
  'receipt.crown-sound': 'Crowns sound at {field}, {time}.',
  'receipt.crown-frosted': 'Crowns frosted at {field}, {time}.',
  'receipt.field-dug': 'Digging {field} since {time}.',
  'receipt.truck-taken': '{person} has {truck}.',
  'receipt.off-shift': 'Off shift: no notices to you alone for ten hours, or until your next load.',
  'receipt.on-shift': 'On shift: notices come to you alone as well.',
  'receipt.notices-when-off': 'Notices will come to you off shift too.',
  'receipt.no-notices-when-off': 'No notices to you alone when you are off shift.',
  'receipt.taken-back': 'Taken back: {what}',
  'receipt.correction': 'the correction.',
  'receipt.corrected': 'Corrected: {what}',
  'receipt.edit-stands': 'I could not read the change, so the first message stands: {what}',

  // Warnings
  'warning.not-multiple': 'Check the {weight}: {lb} is not a multiple of {division}.',
  'warning.unusual': 'Check the {weight}: {lb} is outside the usual {min} to {max}.',
  'warning.over-limit': 'Over the limit set for this truck: {gross} of {limit}. Local weight law decides.',
  'weight.first': 'first weight',
  'weight.second': 'second weight',
  'weight.net': 'net',

  // Refusals
  'refused.no-truck': 'Which truck? Say it with the number: "truck 3 loaded".',
  'refused.no-field': 'Which field? Say it with the name: "leaving {example} full".',
  'refused.no-station': 'No receiving station is on the list. Grower or foreman: "add station North".',
  'refused.time-ahead':
    '{time} is still to come, so nothing is taken down. Say when it happened, or nothing for "now".',
  'refused.not-allowed.stop-dig':
    'Only grower and foreman can stop the dig. Tell them, and tell the station if beets are too warm.',
  'refused.not-allowed.resume-dig': 'Only grower and foreman can start the dig again.',
  'refused.not-allowed.correct-others':
    "That is someone else's entry. Its sender, the foreman or the grower can change it.",
  'refused.not-allowed.change-lists': 'Only grower and foreman can change the lists.',
  'refused.not-allowed.drill': 'Only grower and foreman can call a drill.',
  'refused.second-not-below-first':
    'Not booked: the second weight {tare} must be below the first {gross}. Swapped? Send both again, first weight first.',
  'refused.net-impossible':
    'Not booked: a net of {net} cannot be one load ({min} to {max}). Check the ticket and send it again.',
  'refused.weights-disagree':
    'Not booked: first less second is {computed}, the net you sent is {net}. Check the ticket and send it again.',
  'example.ticket':
    'ticket 48213 {units, select, metric {gross 36220 tare 13300} other {gross 79840 tare 29320}}',
  'example.net': 'ticket 48213 {units, select, metric {22.92} other {25.26}} tons',
  'refused.weight-missing': 'Not booked: I need two weights or the net, like "{ticket}" or "{net}".',
  'refused.serial-known':
    'Ticket {serial} is booked already: {truck}, {tons}, by {person} at {time}. Nothing is changed.',
  'refused.nothing-to-undo': 'There is nothing of yours to take back.',
  'refused.nothing-to-correct': 'I find no entry of yours to correct.',
  'refused.nothing-to-see': 'There is no new notice to confirm.',
  'refused.dig-stopped-already': 'The dig is stopped already; nobody is told again.',
  'refused.order-overtaken':
    'That was sent before the newest order, so nothing is changed and nobody is told. If it still holds, say it again.',
  'refused.crowns-not-checked':
    'Frost hold: cut crowns first, then say "crowns ok at {example}". To dig without, say why: "dig on: station agreed".',
  'refused.drill-on-already': 'A drill is on already. "End drill" ends it.',
  'refused.no-drill': 'There is no drill to end.',
  'refused.dig-not-stopped': 'The dig is not stopped.',
  'refused.no-such-entry': '"{name}" is not on that list.',
  'refused.last-manager': 'Someone must stay grower or foreman, so this is not changed.',
  'refused.no-room-here': 'Say that in the room that you mean.',
  'refused.room-used-already': 'This is a room of the crew already.',
  'refused.room-not-used': 'This is no room of the crew.',
  'refused.too-many': 'That is a lot for one message: I took the first {taken} things. Send the rest again.',
  'refused.room-of-file': 'The operation file names this room; only there can it be taken out.',

  // Questions back
  'question.not-understood':
    'I did not get that. Try "loaded", "in line, 14 ahead", "{net}", "tons today?" or "help".',
  'question.unknown-truck': 'I know no truck "{said}". Known: {known}.',
  'question.unknown-field': 'I know no field "{said}". Known: {known}.',
  'question.unknown-station': 'I know no station "{said}". Known: {known}.',
  'question.unknown-person': 'I know nobody called "{said}". Known: {known}.',
  'question.which-time': 'What time is "{said}"? Say it like 10:15.',
  'question.which-amount': 'Which weights? Say "{ticket}" or "{net}".',

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
  'hold.say':
    '{truck} may as well wait loaded at the field: {why}. Every 10 min of that bring the load in about {cost} min later.',
  'hold.standstill': 'the line does not move',
  'hold.short-line': 'the line will be shorter',
  'hold.field-stops': 'the dig stops before it could be filled again',
  'line.limit': 'Line at {station}: about {median} min ({low} to {high}), over your limit of {limit} min.',
  'line.stopped':
    'The line at {station} seems to stand: no truck of ours weighed for {silent} min. Waiting: {trucks}. Someone there can say "piler down" or "second piler open".',
  'receipt.asks-count': 'How many trucks are ahead of you? Tap, or say "12 ahead".',

  // Trucks against the digger
  'fleet.needed':
    '{needed, plural, one {# truck keeps} other {# trucks keep}} the digger going; {trucks, plural, one {# hauls} other {# haul}} now.',
  'fleet.round': 'A round takes about {round} min: {load} to fill, {wait} in the scale line{guessed}.',
  'fleet.guessed': ' (usual, no fresh word from the line)',
  'fleet.hours': 'Over the next {hours} hours, as the line may go:',
  'fleet.course':
    'With {trucks, plural, one {# truck} other {# trucks}}: the digger waits {idle} % of the time (at worst {bound} %), each truck {wait} min a round at the digger.',

  // Tallies
  'tally.tons': '{span}{who}: {tons} in {loads, plural, one {# load} other {# loads}}.',
  'tally.loads': '{span}{who}: {loads, plural, one {# load} other {# loads}}, {tons}.',
  'tally.who': ', {name}',
  'tally.today': 'Today so far',
  'tally.yesterday': 'Yesterday',
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

  ...enNotices,

  // Emergencies
  'emergency.answer':
    'Call 911 now. Say where you are. Foreman and grower are being told. Stay away from power lines and moving machines.',
  'emergency.alert': 'Call 911 if nobody has. {name}{truck} wrote at {time}: "{words}"',
  'emergency.truck': ' (truck {truck})',

  // People and lists
  'stranger.answer': 'I do not know you yet. I have told the foreman, who can put you on the list.',
  'stranger.alert':
    '{name} ({platform}) wrote to me and is not on the list. To add: "add driver NAME truck 3".',
  'truck-down': '{truck} is down since {time}, {person}: {words}',
  'truck-down.no-words': 'no reason given',
  'language.set': 'English from now on.',
  'list.people': 'People: {names}',
  'list.person': '{name} ({roles}{truck})',
  'list.person-truck': ', truck {truck}',
  'list.trucks': 'Trucks: {names}',
  'list.truck-limit': '{name} (limit {limit})',
  'list.fields': 'Fields: {names}',
  'list.field-acres': '{name} ({acres} acres)',
  'list.stations': 'Stations: {names}',
  'list.station': '{name} (air limit {air}, root limit {root})',
  'list.limits': 'Tell me when the line passes: {line}.',
  'list.line-limit': '{min} min',
  'list.no-limit': 'not set',
  'list.put': 'On the list: {entry}',
  'list.removed': 'Taken off the list: {name}',
  'room.used':
    'This is a room of the crew now: I read what is said here, and stop notices come here too. To end that: "stop using this room".',
  'room.left': 'This is no longer a room of the crew. I take nothing down here; calls for help I still hear.',
  'role.grower': 'grower',
  'role.foreman': 'foreman',
  'role.driver': 'driver',
  'role.digger-operator': 'digger operator',
  'role.topper-operator': 'topper operator',

  // Tickets
  'ticket.form': 'When parked, the ticket in one line: {ticket} truck {truck}',
  'tickets.none': 'No tickets today.',
  'tickets.title': 'Tickets today: {count}.',
  'tickets.row': '{serial} {truck} {tons} {time}',
  'tickets.no-serial': 'no serial',

  // Help
  help: 'Write only when parked. Say what you did: "loaded", "in line, 14 ahead", "dumped", "{ticket}", "truck 4 broke down, flat". Ask: "how long is the line", "if I leave now?", "how many trucks do we need", "tons today?", "where is everybody", "can we dig". Wrong? "undo", or "that was truck 4 not 3". Notice seen? "got it". Going home? "off shift". Español: "español".',
  'help.manager':
    'You can also: "stop digging, mud", "dig again", "dig on: station agreed", "crowns ok at north 40", "drill: stop digging", "who has not seen it", "add driver Luis truck 4 spanish", "add field West 20 38 acres", "truck 3 limit 86000", "line limit 45 min", "use this room", "delete ticket 48213".',
  trouble:
    'Something went wrong on my side. Your message is kept. Tell the foreman this number: {reference}.',

  // Weather
  ...weatherEn,

  // Buttons: label, and the words it says
  'button.loaded': 'Loaded',
  'button.in-line': 'In line',
  'button.dumped': 'Dumped',
  'button.empty': 'Empty, heading back',
  'button.at-field': 'At the field',
  'button.ticket': 'Ticket',
  'button.got-it': 'Got it',
  'button.line': 'How long is the line?',
  'button.ahead': '{count} ahead',
  'words.loaded': 'truck {truck} loaded',
  'words.in-line': 'truck {truck} in line',
  'words.dumped': 'truck {truck} dumped',
  'words.empty': 'truck {truck} empty, heading back',
  'words.at-field': 'truck {truck} at the field',
  'words.ticket': 'ticket',
  'words.got-it': 'got it',
  'words.line': 'how long is the line',
  'words.ahead': '{count} ahead',

  // Units
  'unit.tons': '{tons} tons',
  'unit.tonnes': '{tonnes} t',
  'unit.lb': '{lb} lb',
  'unit.kg': '{kg} kg',
  'unit.in': '{in} in',
  'unit.mm': '{mm} mm',
} as const;

export type Key = keyof typeof en;
