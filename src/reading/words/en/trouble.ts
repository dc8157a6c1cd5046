import type { LanguageWords } from '../language-words.ts';

export const trouble: LanguageWords['trouble'] = {
  parked: `
    parked (for) (day|night|<span>)
    done|finished for day|night|<span>|shift
    calling it day|night
    shutting|shut down for day|night`,
  parkedIfNamed: `going|heading|headed home`,
  down: `
    broke|broken down
    breaking down
    <truck> down
    <truck> broke|broken|breakdown (down)
    breakdown
    truck down`,
  downBecause: `
    flat tire|tires
    (got|have|has|blew|blown) flat (tire)
    blew|blown tire
    stuck (in mud|ditch|field)
    overheated|overheating
    wont|doesnt start|move`,
  up: `
    back up (and|,) (running|rolling|going)
    fixed (up)
    repaired
    back|up running|rolling (again)
    running|rolling again
    back in service
    unstuck
    (back|up) going again
    up and|, running`,
  machineDown: `
    {digger}|{topper} down|broke|broken|plugged|dead|quit|stuck (down|up)
    {digger}|{topper} wont|doesnt start|turn|run
    down with {digger}|{topper}`,
  machineUp: `
    {digger}|{topper} (back) up|running|going|working|fixed|repaired|unplugged (and|,) (running|going|again)
    {digger}|{topper} back (on|in) (line|service)
    fixed|repaired|unplugged {digger}|{topper}`,
};
