/** What is refused and why, and questions back. */
export const refusals = {
  // Refusals
  'refused.no-truck': 'Which truck? Say it with the number: "truck 3 loaded".',
  'refused.no-field': 'Which field? Say it with the name: "leaving {example} full".',
  'refused.more-than-field': 'Not taken down: {field} has {has} acres, and {acres} are more than that.',
  'refused.offer-over': 'That question is over. Please say it again.',
  'refused.no-station': 'No receiving station is on the list. Grower or foreman: "add station North".',
  'refused.time-ahead':
    '{time} is still to come, so nothing is taken down. Say when it happened, or nothing for "now".',
  'refused.not-allowed.stop-dig':
    'Only grower and foreman can stop the dig. Tell them, and tell the station if beets are too warm.',
  'refused.not-allowed.resume-dig': 'Only grower and foreman can start the dig again.',
  'refused.not-allowed.correct-others':
    "That is someone else's entry. Its sender, the foreman or the grower can change it.",
  'refused.not-allowed.change-lists': 'Only grower and foreman can change the lists.',
  'refused.not-allowed.pass-on':
    'Only grower and foreman have words passed on here. Tell them, or say it in the room.',
  'refused.not-allowed.teach': 'Only grower and foreman can teach a word.',
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
  'refused.room-not-used': 'This is not a room of the crew.',
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
  'question.which-span.sums':
    'I can give tons and loads of today, yesterday, this week and the season, but not of "{said}".',
  'question.which-span.tickets': 'I can list the tickets of today only, not of "{said}".',
  'question.cannot-teach.word': '"{said}" means something to me already, or is no word that can be taught.',
  'question.cannot-teach.meaning':
    'I can learn words for reports, questions and shifts only: teach "{said}" with one such, like teach "rollin" = loaded.',
  'question.which-amount': 'Which weights? Say "{ticket}" or "{net}".',
} as const;
