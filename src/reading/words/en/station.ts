import type { LanguageWords } from '../language-words.ts';

export const station: LanguageWords['station'] = {
  noLine: `
    no line|waiting
    line empty|clear
    no trucks|one in line|waiting
    nobody|noone in line|waiting`,
  nobodyAhead: `
    nobody|noone ahead|front (of me)
    no one|trucks ahead|front (of me)
    next (up) in line`,
  line: `
    <n> (trucks|truck|rigs|semis) in line (waiting)
    <n> (trucks|truck|rigs|semis) waiting|deep (in line)
    <n> trucks|truck lined up
    line (has|down|up) (to) <n> (trucks|truck|deep|long)`,
  ahead: `
    <n> (trucks|truck|rigs|semis|more) ahead|front (of me)
    <n> before me
    behind <n> (trucks|truck|rigs|others)`,
  pilersOpen: ``,
  bothPilersOpen: `both {piler} ({running})`,
  pilerDown: `
    {piler} broke|shut {stopped}
    <nth> {piler} broke|shut {stopped}
    {piler} <n> broke|shut {stopped}`,
  bothPilersDown: `both {piler} (broke|shut) {stopped}`,
  pilersDown: `<n> {piler} broke|shut {stopped}`,
  allPilersDown: `
    all|every (of) {piler} (broke|shut) {stopped}
    no|none (of) {piler} {running}`,
  pilersUp: `
    {piler} (back) up|running|going|fixed|working (again)
    {piler} back up and|, running`,
  stationClosed: `
    {station}|<station> shut {closed} ({until}) ({reopening})
    {station}|<station> shut|closed down (for|till|until) (day|now|tomorrow)
    closed {station}|<station>
    they closed|shut (down) {station}|<station>
    (they) not|stopped taking|accepting (any) (more) loads|beets ({until}) ({reopening})
    <station>|{station} not|stopped taking|accepting (any) (more) loads|beets ({until}) ({reopening})`,
  stationOpens: `{station}|<station> opens|opening`,
  stationOpen: `
    {station}|<station> (back) open|opened (again)
    opened {station}|<station>
    they opened {station}|<station>`,
  turnedAway: `
    (they|{station}|<station>) turned|turning me|us|him|her|them|<truck>|<person> away
    (they) turned|turning (all) loads|trucks|everybody|everyone|people away
    (they) turned|turning away (all) (loads|trucks|everybody|everyone)
    (got|getting|was|were|being) turned away
    <truck>|<person> (got|getting|was|were|being) turned away
    (all) load|loads|trucks (got|getting|was|were|being) turned away
    (they) rejected|rejecting|refused|refusing (my|our|<truck>|<person>) (all) load|loads|trucks|beets
    <truck>|<person> (got|was) rejected
    (got|was) rejected at|by <station>|{station}
    <station>|{station} rejecting|refusing|turning (my|our) loads|trucks|everybody|everyone|beets (away)
    (they) wont|wouldnt take|accept (my|our) load|loads|beets
    <station>|{station} wont|wouldnt take|accept (my|our) load|loads|beets`,
  acresDug: `
    <n> (, half) {acres} (, half) dug|harvested|lifted (out|up|of) (by|at|on|in) (<field>)
    dug|harvested|lifted <n> (, half) {acres} (, half) (of|at|on|in) (<field>)`,
  acresTopped: `
    <n> (, half) {acres} (, half) topped (by|at|on|in) (<field>)
    topped <n> (, half) {acres} (, half) (of|at|on|in) (<field>)`,
  acresDone: `
    <n> (, half) {acres} (, half) done|finished|off (by|at|on|in) (<field>)
    did|done|finished|got <n> (, half) {acres} (, half) (of|at|on|in) (<field>)`,
  root: `
    root|roots|pulp (temp|temps|temperature|temperatures)
    beet|beets temp|temps|temperature`,
  crownsSound: `
    crown|crowns (look|looking) fine|good|ok|sound|great|white|clean|healthy
    no frost damage (on|in) crowns`,
  crownsBad: `
    crown|crowns (look|looking) bad|frozen|frosted|damaged|dark|brown|soft|mushy|yellow
    frozen|bad|damaged crowns`,
};
