import type { LanguageWords } from '../language-words.ts';

export const emergency: LanguageWords['emergency'] = {
  harmless: [
    /no (more )?(fires?|flames|injuries|injury|accidents?)( yet| today)?/,
    /(not|isnt|wasnt|aint) (a |an |on |any )?(fire|hurt|injured)/,
    /(nobody|no one|noone|none of us) (is |was |got |gets |were )?(hurt|injured|trapped|bleeding)/,
    /(cant|wont|wouldnt|couldnt|(will|would|can|could) not) hurt/,
    /(doesnt|dont|didnt|never|(does|do|did) not) hurts? (to|anything|a thing|us|it|the|my|your|our)|dont get hurt/,
    /hurts? (the |our |your |my )?(beets?|crop|crowns?|yields?|sugar|prices?|wallet|feelings|roots?|stand|tonnage)/,
    /feelings (are |were |got )?hurt|stroke of luck|(two|four|2|4) stroke|911 (loads|tons|trucks)/,
    /burning (daylight|oil|fuel|gas|diesel|rubber)/,
    /(fire|fires|firing) (it|her|him|them|me|you|that|this|the (truck|digger|piler|tractor|topper))?( back| right)? ?up/,
    /fired( up| it up| her up)?|fire (away|sale|drill|ban|season|restrictions|when ready|hydrant|pit)/,
    /(going to|gonna|will|should|dont|can|cant|to|ill|about to) fire (him|her|me|you|them|someone|anyone|that guy)/,
    /(cease|friendly|rapid|sure|camp) fire|fire extinguishers? (goes|checked|check|inspection|charged|full)/,
    // A scale line, not a power line: it shrinks to or by a number.
    // A scale line, not a power line: it shrinks to or by a number.
    /(?<!(power|electric|overhead|live) )lines? (is |are |was |went |now |still )?(way )?down (to|by) (about |only |just |like )?(\d+|one|two|three|four|five|six|seven|eight|nine|ten)/,
    /(?<!(power|electric|overhead|live) )lines? (is |are |was |went |now |still )?(way )?down (a little|a bit|some|from (this|earlier|yesterday|\d+))/,
    /(watch|mind|careful|watch out)( out)?( for| of| with)? (the |those |that )?power ?lines?(?!.*(down|fell|hit|touch|caught|spark|live|across|truck|box))/,
    /by accident|accident (report|insurance|free)/,
    /(my |the |your )?(phone|app|computer|laptop|tablet|website|radio|printer|system) (just |has |keeps )?(crashed|crashing|died)/,
    /help me (with|find|load|unload|move|fix|change|understand|read|figure|clean|pick|get ready|grease|carry|set)/,
    /(rolled|roll) up (the|your|my|our) (tarps?|hoses?|windows?|sleeves|doors?)/,
    /rolled (in|out) (at|now|early|late|around|about|to the (station|field|yard|piler|scale|shop))/,
    /(jumper|phone|charger|phone charger|charging|usb|hdmi|battery|tv|aux) cables?|cables? (tv|guy|usb)/,
  ],
  danger: [
    /hurts?|hurting|injur(ed|y|ies)|wounded|bleeding|unconscious|unresponsive|not breathing|cant breathe|choking/,
    /crushed|electrocuted|(got|was|been) shocked|electric shock|suffocating|buried (under|in|alive)|passed out/,
    /heart attack|stroke|seizure|collapsed|trapped|pinned|run over|ran over|fell (off|from|under|in the)/,
    /caught in (the |a )?(pto|shaft|chain|belt|rollers?|piler|digger|topper|machine|auger)/,
    /(cut|lost|crushed) (off )?(a|his|her|my|the) (fingers?|hand|arm|foot|leg|toes?)/,
    /fires?|flames|burning|exploded|explosion/,
    /roll ?overs?|rolled/,
    /(tipped|tips|flipped|turned|laid) (it |her |him )?(over|on its side)|on its side|overturned|upside down/,
    /power ?lines?|(lines?|wires?|cables?) (is |are |got |came |went |have come )?(down|fell)|downed (line|wire|cable)s?/,
    /down(ed)? (power|electric) ?lines?/,
    /(hit|touch|touched|touching|caught|snagged|pulled down) (a |the |an |some )?(overhead |electric |live )?(line|wire)s?/,
    /ambulance|paramedics?|medic|911|9 1 1|emergency|mayday|sos/,
    /accident|wrecked|wreck|crash|crashed/,
    /help (me|us)|(need|send|get) (some )?help (now|here|quick|fast|right now|asap|bad)/,
  ],
  need: '(?:i|we) need|^need',
  help: 'help',
  known: `hurt injured bleeding unconscious crushed trapped pinned fire flames burning explosion rollover rolled overturned
    flipped tipped power powerline ambulance paramedic emergency accident crashed`,
};
