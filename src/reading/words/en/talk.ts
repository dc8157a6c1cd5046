import type { LanguageWords } from '../language-words.ts';

export const talk: LanguageWords['talk'] = {
  little: `
    the a an i me im ive am is are was were be been it its this my our we so just now right here there of on off in at to
    from by for with w ok okay yes yeah yep yup hey hi hello please pls plz thanks thank thx guys boss man bro dude buddy
    folks all about around like roughly currently already still got get truck bud sir too again some over that oops
    sorry`,
  blockers: `
    not no dont doesnt didnt cant cannot couldnt havent hasnt hadnt wasnt isnt arent wont wouldnt shouldnt never nope
    without unless except almost nearly will ill gonna would could should might may maybe if when whenever before after
    once until till soon later tomorrow want wants wanna need needs wish hope think guess suppose let lets wait you your
    youre he hes she shes they theyre him her his them their who whose whos why what whats which where wheres how does
    did do ready supposed tell told said says ask asked`,
  joining: 'and then also plus while but',
  greetings: `
    good morning afternoon evening night day everyone everybody all hi hello hey thanks thank you much ok okay k kk sure
    yes no yep nope great nice cool perfect lol welcome bye`,
  spellings: { tonns: 'tons', trk: 'truck', trck: 'truck', lines: 'line' },
  asks: 'is are did does do has anyone',
  beside: 'behind after than to by past near beside ahead of following for',
  units:
    'mph mile miles mi percent % bucks dollars cents psi rpm feet foot ft inches years yrs days weeks gallons gal mpg cups beers times',
  behind: 'behind',
  ifs: 'if unless',
  neighbours: 'neighbor neighbors neighbour neighbours',
  self: 'i ive my me mine',
  ahead: 'ahead front line trucks rigs semis',
  root: 'root roots probe temp temperature thermometer',
  topping: 'topp(?:ed|ing)',
  besideMachine: 'under by at behind beside near to from with around alongside past for',
  denials: 'not no wasnt isnt instead aint',
  conditions: 'if when whenever unless before after',
  no: 'no',
};
