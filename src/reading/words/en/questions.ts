import type { LanguageWords } from '../language-words.ts';

const HAVE = '(has|have|did|does|do|is|from|off|in|for)';
const DONE = '(hauled|haul|dug|delivered|done|made|had|got)';

export const questions: LanguageWords['questions'] = {
  line: `
    how long|big|bad line|wait (now)
    how|hows|howd line|wait (look|looking)
    how many in|trucks line
    how many trucks in line
    how long wait
    whats|what line|wait (time) (look)
    line|wait <?>
    any|is line|wait <?>
    line|wait now|<span> <?>
    wait time
    line at <station>|station <?>`,
  leave: `
    (how|what) (long) if leave|left|go|head|start (out|over|now) (<clock>) (how) (long)
    leave|leaving|go <clock>|now <?>
    line|wait <clock> <?>
    if leave|go now|<clock>`,
  fleet: `
    how many (more) trucks|rigs|semis (do|should) (we|i) need|want|run (now|today)
    how many trucks <?>
    how many trucks
    (do|does) (we|i) need|want (another|more|one|less|fewer) (more) truck|trucks|rig|rigs
    need|want another|more (more) truck|trucks <?>
    (do) (we|i) have enough trucks
    (do) (we|i) have too many trucks
    enough trucks <?>
    too many trucks <?>
    another truck <?>`,
  tons: `
    how many|much tons|tonnes|tonnage ${HAVE} (<truck>|<person>) ${DONE}
    <truck>|<field> tons|tonnes
    tons|tonnage
    total tons|tonnes|tonnage
    whats|what tonnage|total`,
  ownTons: `
    my tons|tonnes
    how many tons have|did i ${DONE}`,
  loads: `
    how many loads|trips ${HAVE} (<truck>|<person>) ${DONE}
    load count
    loads`,
  ownLoads: `
    my loads|trips
    how many loads|trips have|did|do i ${DONE}`,
  left: `
    whats|what (is|are) left (to dig|haul|harvest) (in|at|on) (<field>)
    how much|many (more) (acres|tons|tonnes|loads|beets) (is|are) left|remain|remaining (to dig|haul|harvest) (in|at|on) (<field>)
    acres|tons|loads|beets left|remaining (to dig|haul|harvest) (in|at|on) (<field>) <?>
    <field> left|remaining <?>`,
  board: `
    where|wheres everybody|everyone|they|trucks|crew
    where all trucks
    whos where
    who where
    board
    status`,
  truck: `
    where|wheres|whats <truck>|<person> (at)
    where did <truck>|<person> go
    status (of|for) <truck>|<person>
    how|hows <truck> doing`,
  whereTo: `
    where (do|should|am) (i|we) go|going|headed|head|haul (to) (next|now) (from)
    where (do|did) (you) want|need me
    where to <?>
    where to (next|now) <?>
    which|what field (am|do|should|are|is) (i|we|you) (go|going|supposed|digging|want|need|dig) (to|be|me) (at|in|on)
    which|what field (now|next|<span>)
    same field <?>
    where|wheres {digger} (at|now|digging)
    where we digging`,
  mayDig: `
    can|may|could we|i dig|start|harvest|top (digging)
    ok|okay|good|clear|safe|allowed to dig|harvest
    are we digging|diggin|harvesting (<span>|yet) <?>
    are we ok|good|clear|allowed to dig|go
    are we shut down
    digging <?>
    dig <span>|now|yet <?>
    when|what can|may|time we dig
    is it too|to hot|warm|cold (to) (dig|harvest)
    too hot|warm to dig`,
  unseenNotice: `
    who has|have not|never seen|read|answered (it|notice|message)
    who hasnt|havent|didnt seen|read|see|answered|answer (it|notice|message)
    who (all) has|have|saw (not) seen|read it|notice|message
    who saw|seen|read it|notice|message`,
  outlookTomorrow: `
    (and) tomorrow <?>
    ({tell}) {outlook} look ({for}) {tomorrow}
    what|how about tomorrow
    hows|how tomorrow (look|looking)
    tomorrows {outlook}
    tomorrow {outlook}`,
  outlookToday: `
    ({tell}) {outlook} look ({for}) <span>
    todays {outlook}`,
  outlook: `
    outlook|forecast
    plan <?>
    (whats|what|show|give) outlook|forecast|plan`,
  tickets: `(my|list|show|all|todays|which|what) tickets ({of}) (<span>)`,
  people: `list|show|all {people}`,
  trucks: `list|show|all {trucks}`,
  fields: `list|show|all {fields}`,
  stations: `list|show|all {stations}`,
  limits: `list|show|all|what {limits}`,
  help: `
    help
    commands
    what can you do
    what do you do
    how does|do this work`,
};
