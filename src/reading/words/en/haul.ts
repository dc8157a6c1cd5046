import type { LanguageWords } from '../language-words.ts';

export const haul: LanguageWords['haul'] = {
  leftField: `
    loaded (up) (full)
    (got) fully loaded
    full load
    leaving|left|leave (<field>|field) full|loaded
    leaving|left|leave <field>|field
    pulling|pulled|pull out (of) <field>|field
    heading|headed|going|driving|way|off to|in <station>|station|piler|pilers|scale|pile
    heading|headed in|out full|loaded
    hauling`,
  leftFieldIfNamed: `
    leaving
    full`,
  leftFieldIfAny: `left`,
  loading: `
    loading (up)
    getting|being loaded
    started|start loading
    under digger|lifter|harvester`,
  atStation: `at station|<station>|piler|scale`,
  joinedLine: `
    in|at|into|joined|entered line
    waiting|wait|sitting|parked in line
    lined up
    just got in line
    got|made to station|<station>|piler|scale`,
  placeInLine: ``,
  firstWeighed: `
    weighed|weighing|weigh in
    on scale|scales|piler|belt
    crossing scale
    dumping|unloading`,
  dumped: `
    dumped (out|off)
    done|finished|finish dumping|unloading
    unloaded
    empty`,
  returning: `
    heading|headed|going|coming|driving|way back (to) (field|<field>|digger)
    heading|headed|going|driving|way to|for <field>|field|digger
    back to <field>|field|digger
    returning (to) (field|<field>)
    leaving|left|leave <station>|station|piler|scale|pilers (empty)
    empty (,) heading|headed|going|coming|way back (to) (field|<field>)
    weighed|weighing|weigh out`,
  inField: `at|in field|digger`,
  atField: `
    back|here|arrived|waiting at|in|to|on field|<field>|digger
    got|made (it) back (to|at) field|<field>|digger
    got|made to field|<field>|digger
    arrived (at|in) field|<field>`,
};
