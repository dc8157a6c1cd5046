import type { LanguageWords } from '../language-words.ts';

const DIG = 'digging|diggin|dig|lifting|harvesting|harvest';

export const orders: LanguageWords['orders'] = {
  withdraw: `
    undo (that|it|last|this)
    scratch that|it|last
    take that|it back`,
  correct: `
    that|it|this was|is|should <truck>|<field> (,) not <truck>|<n>|<field>
    that|it|this was|should (be) (at)
    that|it|this is <truck>|<field>|<clock>
    thats <truck>|<field>|<clock>
    should be <truck>|<field>
    meant|mean <truck>|<field>|<clock>|<n>
    make that <truck>|<field>|<clock>|<n>
    <truck> (,) not <truck>|<n>
    <ticket> was|should|is (be)
    that|it was <clock> (,) not <clock>
    correct|fix|change <ticket> (to)
    correction`,
  correctReversed: `
    not <truck> (,) <truck>
    that|it was not <truck> (,) (that|it was) <truck>`,
  acknowledge: `
    got it
    seen (it)
    saw it
    copy (that)
    roger (that)
    understood
    read it
    10-4
    message received
    received`,
  stop: `
    stop|quit|halt|hold|pause (the|all) ${DIG}|digger|harvest
    no more ${DIG}
    shut|shutting down digger|${DIG}
    shut digger down`,
  resume: `
    resume (${DIG})
    dig on
    all clear
    ${DIG} again
    start|restart|begin|continue|keep ${DIG} (again)
    go ahead and|, dig
    go ahead dig
    back to digging
    you can|may dig (again)
    we can dig again
    can dig again`,
  drill: `
    drill
    (this) is drill
    start|begin|run drill
    practice|practise drill|stop (${DIG})
    drill (,) stop (${DIG})`,
  drillEnds: `
    end|stop|finish drill
    drill over|ended|finished|done`,
  offShift: `
    (going|go) off shift|duty
    end of shift`,
  onShift: `
    on shift|duty
    back on shift|duty
    start|starting shift`,
  notices: `notices when off (shift|duty)`,
  noNotices: `no notices when off (shift|duty)`,
  dig: `
    (now) digging|diggin|lifting|harvesting (in|at|on) <field>
    digger|digging moved|moving|now|started|starting (to|in|at|on) <field>
    digger in|at|on|to <field>
    moved|moving|starting|started|start|switching|switched (digger|digging) (to|on|in) <field>
    we moved|on|in <field>`,
  takeTruck: `
    have|driving|drive|taking|take|got|running|run <truck>
    i|im|am in|on <truck> (<span>)
    <person> has|got|have|drives|driving|taking|takes|in|on|is <truck>
    <person> (is) driving|in|on <truck>`,
};
