/** What may be dug, and notices: what stops and when first, then why, then what to do. */
export const notices = {
  // Dig or not
  'may-dig.yes': "Yes: nothing stops the dig. The station's own word goes before mine.",
  'may-dig.no-forecast':
    "Nobody has stopped it, but I have no forecast{place}{since}: foreman and grower decide. The station's own word goes before mine.",
  'may-dig.unforecast': 'No forecast{place}{since}: foreman and grower decide.',
  'may-dig.for': ' for {station}',
  'may-dig.since': ' since {time}',
  'may-dig.until': 'Yes, until {time}. {notice}',
  'may-dig.no': 'No. {notice}',
  'may-dig.partly': 'Not everywhere. {notice}',
  'may-dig.free': 'Nothing stops the dig for {station}.',
  'may-dig.nowhere': 'No: there is nowhere to haul to.',
  'may-dig.closed': '{station} is closed{until}, {person} said at {time}.',
  'may-dig.overridden': 'Dug on by order of {person} at {time}: {words}',

  // Notices
  'notice.title.heat': 'HEAT STOP',
  'notice.title.frost': 'FROST HOLD',
  'notice.title.mud': 'MUD HOLD',
  'notice.title.other': 'DIG STOPPED',
  'notice.title.drill': 'DRILL',
  'notice.title-for': '{title} for {place}',
  'notice.name.heat': 'heat stop',
  'notice.name.frost': 'frost hold',
  'notice.name.mud': 'mud hold',
  'notice.name.other': 'stop',
  'notice.drill':
    'DRILL, only an exercise: keep working. A real one would say: stop topping {topping}, stop digging {digging}.',
  'notice.drill-over': 'DRILL OVER. Thanks, keep working.',
  'notice.stop': '{title}: stop topping {topping}, stop digging {digging}.',
  'notice.since': '{title}: stopped since {time}.',
  'notice.update': '{title}, NEW TIME: stop topping {topping}, stop digging {digging}.',
  'notice.watch': '{title} LIKELY{place}: digging may stop {digging}.',
  'notice.watch-frost':
    'FROST LIKELY{place}: do not top ahead of the digger. Dig all that is topped before {time}.',
  'notice.watch-heat': 'Dig on, and top no further ahead than you must. I write again when it is sure.',
  'notice.watch-off': 'ALL-CLEAR{place}: the {what} that was likely at {time} is off.',
  'notice.chance': 'Chance: {chance} %.',
  'notice.now': 'NOW',
  'notice.at': 'at {time}',
  'notice.was': 'It was {time}.',
  'notice.why-forecast': 'Why: forecast {peak} at {time}, limit {limit}. Warm beets spoil in the pile.',
  'notice.why-frost': 'Why: forecast low {peak} at {time}. Beets that froze and thawed rot in the pile.',
  'notice.why-alert': 'Why: the weather service has a freeze alert out.',
  'notice.why-root': 'Why: roots measured at {peak} at {time}, limit {limit}. Warm beets spoil in the pile.',
  'notice.rain': 'Rain by the forecast: {before} in the last 24 h, {next} in the next 24 h.',
  'notice.why-person': 'Ordered by {person}.',
  'notice.why-words': 'Why: {words}',
  'notice.loaded':
    'Loaded trucks: haul on to the station and weigh in. If the station turns you away, park where it is safe and tell the foreman.',
  'notice.resume': 'Dig again likely {time}. Wait for the all-clear.',
  'notice.resume-unknown': 'No restart time yet. Wait for the all-clear.',
  'notice.resume-frost':
    'Dig again only when foreman or grower has cut crowns and says "crowns ok at {field}".',
  'notice.resume-frost-anywhere':
    'Dig again only when foreman or grower has cut crowns and says "crowns ok".',
  'notice.all-clear':
    "ALL-CLEAR{place}: {what} over, dig again from {time}. The station's own word goes before mine.",
  'notice.called-off': 'ALL-CLEAR{place}: the {what} planned for {time} is off.',
  'notice.all-clear-now':
    "ALL-CLEAR{place}: {what} over, dig again now. The station's own word goes before mine.",
  'notice.over-but-held': '{title} is over, but DO NOT DIG yet.',
  'notice.still': 'Still on: {notice}',
  'notice.reply': 'Read and reply only when parked: "got it".',
  'notice.reminder': 'You have not confirmed this yet.',
  'notice.seen': 'Thanks, noted that you have seen it.',
  'unseen.none': 'No notice has gone out.',
  'unseen.all': 'Everybody has seen it.',
  'unseen.some': '{title}, not confirmed yet: {names}. Confirmed by {seen} of {all}.',
} as const;
