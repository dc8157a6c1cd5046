/** Emergencies, people, lists and help. */
export const people = {
  // Emergencies
  'emergency.answer':
    'Call 911 now. Say where you are. Foreman and grower are being told. Stay away from power lines and moving machines.',
  'emergency.alert': 'Call 911 if nobody has. {name}{truck} wrote at {time}: "{words}"',
  'emergency.unclear':
    'Is somebody hurt? {name}{truck} wrote at {time}: "{words}", and has not said. Call {name} now; call 911 if in doubt.',
  'emergency.truck': ' (truck {truck})',

  // People and lists
  'stranger.answer': 'I do not know you yet. I have told the foreman, who can put you on the list.',
  'stranger.alert':
    '{name} ({platform}) wrote to me and is not on the list. To add: "add driver NAME truck 3".',
  'truck-down': '{truck} is down since {time}, {person}: {words}',
  'truck-down.no-words': 'no reason given',
  'words.to-all': '{person} to everybody: "{words}"',
  'words.to-some': '{person}: "{words}"',
  'words.passed':
    'Passed on to {count, plural, one {# person} other {# people}}{room}: "{words}". "Who has not seen it" tells who has.',
  'words.and-room': ' and the room',
  'words.no-order':
    'That is passed on as words and stops nothing: for an order, write "stop digging" or "dig again" alone.',
  'machine.down.digger': 'Digger down since {time}{until}, {person}: {words}',
  'machine.down.topper': 'Topper down since {time}{until}, {person}: {words}',
  'machine.runs.digger': 'Digger running again since {time}, {person}.',
  'machine.runs.topper': 'Topper running again since {time}, {person}.',
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
  'list.limits': 'Word of the line: {line}.',
  'list.line-limit': 'when it passes {min} min',
  'list.no-limit': 'not set',
  'list.put': 'Done. {entry}',
  'list.removed': 'Taken off the list: {name}',
  'room.used':
    'This is a room of the crew now: I read what is said here, and stop notices come here too. To end that: "stop using this room".',
  'room.left': 'This is no longer a room of the crew. I take nothing down here; calls for help I still hear.',
  'role.grower': 'grower',
  'role.foreman': 'foreman',
  'role.driver': 'driver',
  'role.digger-operator': 'digger operator',
  'role.topper-operator': 'topper operator',

  // Help
  help: 'Write only when parked. Say what you did: "loaded", "in line, 14 ahead", "dumped", "{ticket}", "truck 4 broke down, flat". Ask: "how long is the line", "if I leave now?", "how many trucks do we need", "tons today?", "where is everybody", "can we dig". Wrong? "undo", or "that was truck 4 not 3". Notice seen? "got it". Going home? "off shift". Español: "español".',
  'help.tons': '{units, select, metric {Tonnes are metric.} other {Tons are short tons, of 2,000 lb.}}',
  'help.manager':
    'You can also: "stop digging, mud", "dig again", "dig on: station agreed", "crowns ok at north 40", "drill: stop digging", "who has not seen it", "add driver Luis truck 4 spanish", "add field West 20 38 acres", "truck 3 limit 86000", "line limit 45 min", "use this room", "delete ticket 48213", "tell everybody: start 5:00 at South 80".',
  trouble:
    'Something went wrong on my side. Your message is kept. Tell the foreman this number: {reference}.',
} as const;
