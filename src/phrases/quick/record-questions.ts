/**
 * How the record is asked in a whole line, by what answers it. Each is a pattern for the whole line in small letters without
 * its marks; `near` ones are as often said to people as to the record.
 */
export type RecordAsks = 'now' | 'ready' | 'when' | 'orders' | 'missing' | 'drive';

export interface Question {
  readonly asks: RecordAsks;
  readonly pattern: RegExp;
  /** Too near to talk to be answered where nobody spoke to the bot. */
  readonly near?: true;
}

const WE = '(?:i|we|one)';
const IT = '(?:it|her|him|this|the (?:car|engine|motor)|(?:our|my) (?:car|engine))';
const SHE = '(?:it|she|he|the (?:car|engine|motor)|(?:our|my) (?:car|engine))';
const SOON =
  '(?: (?:(?:right )?now|next|today|tonight|this (?:morning|afternoon|evening|weekend)|first|meanwhile|in the meantime|on (?:it|the (?:car|engine))))*';
const YET = '(?: (?:yet|now|today|tonight))?';
const TIME =
  '(?:,? (?:(?:with|in|for|if|when) )?(?:(?:i|we) (?:only )?have |having )?(?:only |just |about )?(?<minutes>\\d+(?:[.,]\\d+)? ?(?:minutes|minute|mins|min|m|hours|hour|hrs|hr|h|std)|half an hour|an hour)(?: (?:left|free|to spare|at hand|time))?)?';
const PEOPLE = '(?:,? (?:with|for|and) (?<people>\\d{1,2}) (?:people|persons|of us|pairs of hands))?';
const HEUTE = '(?: (?:jetzt|heute|heute abend|als nächstes|noch))*';

const whole = (pattern: string): RegExp => new RegExp(`^(?:${pattern})$`, 'u');

export const QUESTIONS: readonly Question[] = [
  {
    asks: 'now',
    pattern: whole(
      [
        `what (?:can|could|should|shall|do) ${WE} (?:do|work on|tackle|get on with)${SOON}${TIME}${PEOPLE}${SOON}`,
        `what jobs (?:can ${WE} do|are (?:free|open|unblocked|left))${SOON}${TIME}`,
        `(?:which|what) jobs? (?:is|are|comes?) next`,
        `next jobs?`,
        `was (?:können|kann|sollen|soll) (?:wir|ich)${HEUTE} (?:machen|tun|anfangen)`,
        `was (?:können|kann) (?:wir|ich) (?:in|mit) (?<minutesDe>\\d+ ?(?:min|minuten|h|std|stunden)) (?:machen|tun)`,
        `qu'?est-ce qu'?(?:on|nous|je) (?:peut|pouvons|peux) faire(?: (?:maintenant|aujourd'hui|ce soir))*`,
        `que (?:puis-je|peut-on|pouvons-nous) faire(?: (?:maintenant|aujourd'hui|ce soir))*`,
        `qué (?:puedo|podemos|se puede) hacer(?: (?:ahora|hoy|esta noche))*`,
      ].join('|'),
    ),
  },
  {
    asks: 'now',
    near: true,
    pattern: whole(
      `what(?:'?s| is) next|what next|what now|what(?:'?s| is) (?:there )?to do${SOON}|anything to do${SOON}|was (?:steht|liegt)(?: als nächstes)? an|was jetzt|et maintenant|y ahora qué`,
    ),
  },
  {
    asks: 'ready',
    pattern: whole(
      [
        `(?:are|r) we (?:all )?(?:ready|set|good)(?: to go)?${YET} (?:for|to)(?: the| a| our)? (?<stage>.+?)${YET}`,
        `is ${SHE} ready${YET} (?:for|to)(?: the| a| its| her)? (?<stage2>.+?)${YET}`,
        `ready (?:for|to)(?: the)? (?<stage3>.+?)`,
        `what(?:'?s| is| do ${WE}|) (?:still )?(?:missing|open|left|need(?:ed)?|stopping us|in the way) (?:for|before|from)(?: the)? (?<stage4>.+?)`,
        `can we (?<stage5>start|fire|crank|fire up) ${IT}(?: up)?${YET}`,
        `sind wir (?:schon )?(?:bereit|fertig|so ?weit) (?:für|zum|fürs)(?: den| die| das)? (?<stage6>.+?)`,
        `(?:sommes-nous|est-on|on est) prêts? (?:pour|à)(?: le| la)? (?<stage7>.+?)`,
        `estamos listos para (?:el |la )?(?<stage8>.+?)`,
      ].join('|'),
    ),
  },
  {
    asks: 'ready',
    near: true,
    pattern: whole(
      `(?:are|r) we (?:all )?ready(?: to go)?${YET}|is ${SHE} ready${YET}|sind wir (?:schon )?(?:bereit|so ?weit)|(?:sommes-nous|est-on|on est) prêts?|estamos listos`,
    ),
  },
  {
    asks: 'when',
    pattern: whole(
      [
        `when (?:will|does|can|might|should|is) (?:it|she|the (?:car|engine|motor))(?: be)?(?: (?:going|able|likely|ready|expected) to)? (?:start|run|fire|crank|be running|running|fire up|start up)(?: up)?(?: for the first time| again)?`,
        `when (?:can|will|do|could) we (?:be able to )?(?:start|fire|crank|run) ${IT}(?: up)?`,
        `when(?:'?s| is| will)(?: be)? (?:the )?first (?:start|start-?up|fire-?up)(?: be)?`,
        `what day (?:will|does) (?:it|she|the (?:car|engine)) (?:start|run|fire)(?: up)?`,
        `how long (?:until|till|before) (?:it|she|the (?:car|engine)) (?:starts|runs|fires)(?: up)?`,
        `how (?:far|long|many days) (?:is it )?(?:until|till|to|from|off)(?: the)? first start`,
        `wann (?:läuft|startet|springt|zündet) (?:er|sie|es|der motor|das auto|der wagen)(?: an)?(?: wieder)?`,
        `wann (?:ist|kommt) der erste start|wann können wir (?:ihn|sie|den motor) (?:starten|anlassen)`,
        `quand (?:va-t-(?:il|elle) |est-ce qu'(?:il|elle) (?:va )?|le moteur va-t-il )(?:démarre|démarrer|tourne|tourner)`,
        `cuándo (?:va a )?(?:arrancar|arranca|arrancará)(?: (?:el motor|el coche))?`,
      ].join('|'),
    ),
  },
  {
    asks: 'orders',
    pattern: whole(
      [
        `what(?:'?s| is| have (?:i|we)(?: got)?| do we have)? (?:still )?on order(?: (?:now|still))?`,
        `what have (?:we|i) ordered`,
        `(?:what|which) (?:orders|parcels|parts) are (?:still )?(?:open|late|overdue|on order|due|coming)(?: (?:today|this week))?`,
        `(?:open|late|overdue) orders`,
        `(?:are )?any orders (?:late|overdue)`,
        `was (?:ist|haben wir) (?:noch )?bestellt|was ist überfällig|offene bestellungen|welche bestellungen sind (?:offen|überfällig)`,
        `qu'?est-ce qui est (?:commandé|en commande|en retard)`,
        `qué (?:está|hay|tenemos) pedido|qué pedidos (?:llegan tarde|hay)`,
      ].join('|'),
    ),
  },
  {
    asks: 'orders',
    near: true,
    pattern: whole(
      `what(?:'?s| is) (?:running )?(?:late|overdue)|(?:is )?anything (?:late|overdue)|what(?:'?s| is) (?:still )?(?:coming|to come|outstanding)|was kommt noch`,
    ),
  },
  {
    asks: 'missing',
    pattern: whole(
      [
        `(?:what|which) (?:parts|bits) (?:are (?:still )?missing|do we (?:still )?(?:need|lack)|are we (?:still )?(?:missing|short of))`,
        `what (?:parts|bits) have we not got|missing parts`,
        `welche teile fehlen(?: noch)?`,
        `quelles pièces manquent(?: encore)?|qué piezas faltan`,
      ].join('|'),
    ),
  },
  {
    asks: 'missing',
    near: true,
    pattern: whole(
      `what(?:'?s| is) (?:still )?missing|what (?:are|do) we (?:still )?(?:missing|need|lack)|was fehlt(?: noch)?(?: uns)?|qu'?est-ce qui manque(?: encore)?|que manque-t-il|qué falta`,
    ),
  },
  {
    asks: 'drive',
    pattern: whole(
      [
        `how (?:hard |fast |gently )?(?:may|can|should|must|shall|am|are) ${WE} (?:allowed to )?(?:drive|push|rev|run|treat|load) ${IT}(?: (?:now|today|yet|at the moment))?`,
        `how (?:may|can|should|must) ${IT} be (?:driven|run|revved)(?: (?:now|today|yet))?`,
        `how (?:high|far|hard) (?:may|can|should) ${WE} (?:rev|push) ${IT}(?: (?:now|today|yet))?`,
        `(?:what|how many|how much) (?:revs|rpm|boost|load) (?:may|can|am|are|should) ${WE} (?:use|run|allowed|give ${IT})(?: (?:now|today|yet))?`,
        `wie (?:hart |schnell )?(?:darf|kann|soll|dürfen|können) (?:ich|man|wir)(?: (?:ihn|es|sie|das auto|den wagen|damit))?(?: heute)? fahren`,
        `comment (?:puis-je|peut-on|dois-je) (?:la |le )?(?:rouler|conduire)(?: aujourd'hui)?`,
        `cómo (?:puedo|podemos|se puede) conducir(?:lo)?(?: hoy)?`,
      ].join('|'),
    ),
  },
];
