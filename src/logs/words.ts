import type { Channel } from '../calc/fuelling/drive.ts';

/** What a column of a log can be: one of the readings, or something that helps to read another. */
export type Role = Channel | 'longTrimRatio' | 'dateOnly' | 'barometerKPa' | 'vacuumKPa';

/** Words of the trade by which a column is known. All of `all` must be among a name's words, none of `none`. */
export interface Rule {
  readonly role: Role;
  readonly all: readonly RegExp[];
  readonly none?: RegExp;
  /** Units that the column must be in, where the words alone say too little. */
  readonly units?: readonly string[];
  /** How sure: of two columns for one reading the surer is taken; alike, it is asked. */
  readonly sure: number;
}

/* Words as normalised by header-name.ts: small, without accents. German, French, Spanish, Italian, Portuguese, Dutch, Swedish,
 * Norwegian and Polish beside English, as workshops write them. */
const WANTED =
  /\b(target|targ|tgt|desired|des|demand|demanded|command|commanded|cmd|setpoint|set point|set|goal|wanted|soll|sollwert|ziel|consigne|cible|objetivo|deseado|deseada|consigna|obiettivo|desiderato|alvo|mal|malvarde|borvarde|doel|gewenst|gewenste|streef|zadana|zadane)\b/;
const MIXTURE =
  /\b(lambda|lam|afr|air fuel|air fuel ratio|airfuel|wideband|wide band|wbo|wb|luftzahl|luftverhaltnis|mixture|gemisch|melange|richesse|mezcla|miscela|mistura|mengsel|blandning|o 2|equivalence|phi)\b/;
const TRIM =
  /\b(trim|trims|correction|corr|cor|korrektur|korr|control|controller|ctrl|regler|regelung|correccion|correzione|correcao|correctie|korrigering|feedback|ego|stft|short term|fuel trim|adjust|adjustment|integrator)\b/;
const TEMPERATURE = /\b(temp|temperature|temperatur|temperatura|temperatuur|tmp|t|deg|grad)\b/;
const PRESSURE =
  /\b(press|pressure|pres|prs|p|druck|pression|presion|pressione|pressao|druk|tryck|trykk|cisnienie)\b/;
const OIL = /\b(oil|ol|oel|olje|huile|aceite|olio|oleo|olie|olja|olje|olej)\b/;
const FUEL =
  /\b(fuel|petrol|kraftstoff|benzin|carburant|essence|combustible|gasolina|carburante|benzina|combustivel|brandstof|benzine|bransle|drivstoff|bensin|paliwo|paliwa|rail|fp)\b/;
const SENSOR = /\b(sensor|sonde|sonden|sond|sonda|probe|capteur|sensore|givare|lambdasonde)\b/;
const STATUS =
  /\b(status|state|zustand|fault|error|err|fehler|defaut|fallo|guasto|falha|storing|fel|ok|ready|valid|bereit|flag|health|heater status)\b/;
const NO_READING =
  /\b(volt|voltage|spannung|current|strom|ip|ri|raw|heater|heizung|duty|adc|resistance|impedance|count|index|table|zelle|cell)\b/;
const MANIFOLD =
  /\b(map|manifold|intake|inlet|saugrohr|saugrohrdruck|ansaugdruck|krummer|collecteur|admission|colector|admision|multiple|collettore|aspirazione|coletor|admissao|inlaat|insug|insugs|plenum|dolot|dolotu|kolektor|kolektorze|kolektora)\b/;

export const RULES: readonly Rule[] = [
  // what helps to read the others goes first, so that it is not taken for them
  { role: 'dateOnly', all: [/^(date|datum|fecha|data|dato|jour)$/], sure: 9 },
  {
    role: 'barometerKPa',
    all: [
      /\b(baro|barometer|barometric|ambient|atmospheric|atm|umgebungs|luft druck|atmospherique|atmosferica|ambiente)\b/,
    ],
    none: /\b(temp|temperature|temperatur|temperatura|t)\b/,
    sure: 9,
  },
  {
    role: 'fuelCut',
    all: [
      /\b(fuel cut|fuelcut|fuel cutoff|fuel cut off|dfco|dfso|overrun|overrun cut|decel cut|cut active|shut off|shutoff|cut out|schubabschaltung|schub|coupure|coupure injection|corte|corte inyeccion|taglio|cut off|cutoff|cut|bransleavstangning|odciecie)\b/,
    ],
    none: /\b(spark|ignition|zundung|allumage|limiter|rpm limit|idle)\b/,
    sure: 9,
  },
  {
    role: 'transientFuel',
    all: [
      /\b(accel|acceleration|accelerating|beschleunigung|beschleunigungs|transient|enrich accel|ae|tip in|reprise|aceleracion|accelerazione)\b/,
      /\b(enrich|enrichment|fuel|anreicherung|enrichissement|enriquecimiento|arricchimento|comp|correction|ae)\b/,
    ],
    sure: 9,
  },
  {
    role: 'enrichmentRatio',
    all: [
      /\b(warm up|warmup|warm|cold|after start|afterstart|start|warmlauf|kaltstart|nachstart|coolant|clt)\b/,
      /\b(enrich|enrichment|anreicherung|enrichissement|enriquecimiento|arricchimento|corr|correction|comp|compensation|fuel)\b/,
    ],
    none: /\b(temp|temperature|time)\b/,
    sure: 8,
  },
  {
    role: 'closedLoop',
    all: [
      /\b(closed loop|closedloop|cl active|cl|loop|regelkreis|lambdaregelung|boucle fermee|lazo cerrado|anello chiuso)\b/,
    ],
    none: /\b(trim|correction|corr|target|error|gain|korrektur)\b/,
    sure: 8,
  },
  {
    role: 'sensorC',
    all: [new RegExp(`${SENSOR.source}|${MIXTURE.source}`), TEMPERATURE],
    none: /\b(oil|coolant|air|charge|water|ol|luft)\b/,
    sure: 8,
  },
  {
    role: 'sensorFault',
    all: [SENSOR, STATUS],
    none: TRIM,
    sure: 8,
  },
  // an error of λ itself is how far it is off, and says nothing of the sensor
  {
    role: 'sensorFault',
    all: [MIXTURE, STATUS],
    none: new RegExp(`${TRIM.source}|\\b(error|err|fehler)\\b`),
    sure: 8,
  },
  { role: 'targetLambda', all: [MIXTURE, WANTED], none: /\b(error|diff|volt|voltage)\b/, sure: 8 },
  {
    role: 'longTrimRatio',
    all: [
      /\b(long term|longterm|ltft|lt trim|adaptive|adaption|adaptation|learn|learned|lernwert)\b/,
      /\b(trim|fuel trim|ltft|correction|corr|adaption|adaptation|learn|learned|value|lambda)\b/,
    ],
    sure: 8,
  },
  {
    role: 'trimRatio',
    all: [TRIM],
    none: /\b(temp|temperature|air|iat|baro|battery|coolant|clt|knock|ignition|timing|spark|warm|idle|cyl|cylinder|warmup|accel|throttle|target|boost)\b/,
    sure: 7,
  },
  {
    role: 'pulseMs',
    all: [
      /\b(pw|pulse width|pulsewidth|pulse|injection time|inj time|injector time|injector on time|on time|opening time|einspritzzeit|einspritzdauer|einspritz zeit|ti|temps injection|temps d injection|duree injection|tiempo inyeccion|tiempo de inyeccion|tempo iniezione|tempo di iniezione|tempo injecao|tempo de injecao|inspuittijd|insprutningstid|czas wtrysku)\b/,
    ],
    none: /\b(dead|spark|dwell|cyl [2-9]|duty)\b/,
    sure: 7,
  },
  {
    role: 'dutyRatio',
    all: [
      /\b(inj|injector|injection|injecteur|inyector|iniettore|injetor|einspritz|einspritzventil|duse|dusen|spridare|wtryskiwacz|fuel)\b/,
      /\b(duty|duty cycle|dc|idc|auslastung|tastverhaltnis|utilisation)\b/,
    ],
    none: /\b(pump|pumpe)\b/,
    sure: 8,
  },
  { role: 'dutyRatio', all: [/\b(idc|inj duty)\b/], sure: 8 },
  { role: 'dutyRatio', all: [/^(duty|duty cycle|dc|injectors?)( %)?$/], units: ['percent'], sure: 4 },
  {
    role: 'knock',
    all: [
      /\b(knock|knocking|klopf|klopfen|klopfzahler|cliquetis|picado|detonacion|detonation|detonazione|battito|pingel|knack|stukanie|det)\b/,
    ],
    none: /\b(threshold|limit|noise|background|retard max|enable|window)\b/,
    sure: 7,
  },
  { role: 'oilC', all: [OIL, TEMPERATURE], sure: 8 },
  { role: 'oilKPa', all: [OIL, PRESSURE], sure: 8 },
  { role: 'fuelKPa', all: [FUEL, PRESSURE], none: /\b(target|regulator|duty|pump)\b/, sure: 8 },
  {
    role: 'coolantC',
    all: [
      /\b(coolant|clt|ect|cts|water|kuhlmittel|kuhlwasser|wasser|eau|refrigerante|refrigerant|liquide de refroidissement|ldr|agua|acqua|raffreddamento|koelvloeistof|koelwater|kylvatska|kylvatten|kjolevaeske|ciecz|cieczy|plyn|plynu|chlodziwa)\b/,
    ],
    none: PRESSURE,
    sure: 7,
  },
  {
    role: 'coolantC',
    all: [
      /\b((?:temp|temperatura|temperature|temperatur) (?:do |del |du |de |di )?(?:motor|motore|moteur)|motor temperatur|engine temp|engine temperature|temp motor|temperatura motor|temperatura motore|temp moteur|temperature moteur|motor temp)\b/,
    ],
    none: /\b(oil|ol)\b/,
    sure: 6,
  },
  {
    role: 'chargeC',
    all: [
      /\b(iat|act|mat|intake air temp|intake air temperature|intake temp|inlet air temp|inlet temp|charge temp|charge temperature|charge air temp|charge air temperature|manifold temp|manifold air temp|air temp|air temperature|air intake temp|ansaugluft|luft temperatur|luft temp|ladeluft|temp air|temperature air|temp admission|aire admision|temp aire|temperatura aire|temp aria|temperatura aria|temp ar|inlaatlucht|lucht temperatuur|insugsluft)\b/,
    ],
    none: /\b(ambient|outside)\b/,
    sure: 7,
  },
  {
    role: 'vehicleKmH',
    all: [
      /\b(vehicle speed|veh speed|road speed|car speed|ground speed|wheel speed|vss|gps speed|fahrgeschwindigkeit|fahrzeuggeschwindigkeit|geschwindigkeit|velocidad|velocita|velocidade|snelheid|hastighet|vitesse vehicule|v veh|predkosc)\b/,
    ],
    none: /\b(engine|motor|moteur|motore)\b/,
    sure: 7,
  },
  {
    role: 'gear',
    all: [/\b(gear|gang|rapport|marcha|marcia|versnelling|vaxel|bieg|gear position)\b/],
    none: /\b(oil|temp|box)\b/,
    sure: 6,
  },
  {
    role: 'vacuumKPa',
    all: [/\b(vacuum|vac|unterdruck|depression|vacio|depressione|vacuo)\b/],
    none: /\b(boost|map)\b/,
    sure: 6,
  },
  {
    role: 'loadKPa',
    all: [
      /^(map|manifold pressure|manifold absolute pressure|manifold abs pressure|map abs|map kpa|map sensor|pman|p man)$/,
    ],
    sure: 9,
  },
  {
    role: 'loadKPa',
    all: [MANIFOLD],
    none: /\b(temp|temperature|temperatur|temperatura|air temp|valve|cam|target|set|switch|number|index|flow|throttle|t|air)\b/,
    sure: 7,
  },
  {
    role: 'loadKPa',
    all: [
      /\b(boost|lade|ladd|boost pressure|suralimentation|pression turbo|soplado|sovralimentazione|laddtryck|ladetrykk|vuldruk)\b/,
    ],
    none: /\b(target|soll|duty|valve|control|solenoid|temp|cut|wastegate|set|error|consigne)\b/,
    sure: 5,
  },
  {
    role: 'loadKPa',
    all: [/\b(load|last|engine load|charge|charge moteur|carga|carico|belastning|belasting|obciazenie)\b/],
    none: /\b(temp|electrical|inj|injector|calc|alternator|battery|air)\b/,
    sure: 3,
  },
  {
    role: 'throttleRatio',
    all: [
      /\b(tps|tp|throttle|throttle position|throttle angle|drosselklappe|drosselklappen|dk|papillon|mariposa|farfalla|borboleta|gasklep|gasspjall|spjall|przepustnica)\b/,
    ],
    none: /\b(rate|dot|delta|target|set|idle|voltage|volt|body temp)\b/,
    sure: 7,
  },
  // how far the pedal is down moves when the throttle does, which is all that is asked of it
  {
    role: 'throttleRatio',
    all: [/\b(pedal|gaspedal|fahrpedal|app|accelerateur|acelerador|acceleratore)\b/],
    none: /\b(rate|dot|delta|brake|clutch|bremse|kupplung|voltage|volt)\b/,
    sure: 5,
  },
  {
    role: 'speedRpm',
    all: [
      /\b(rpm|engine speed|engine rpm|motor speed|engine revs|revs|drehzahl|n motor|regime|regime moteur|revoluciones|regimen|giri|giri motore|regime motore|rotacao|rotacoes|toerental|motortoerental|varvtal|motorvarvtal|turtall|obroty|rev|n engine|tours|umdrehungen|crank speed)\b/,
    ],
    none: /\b(turbo|limit|limiter|target|idle target|soll|wheel|error|fan|pump|dot|rate|delta|max|shift|compressor|driveshaft|gearbox|blower)\b/,
    sure: 8,
  },
  { role: 'speedRpm', all: [/^n$/], sure: 5 },
  {
    role: 'batteryV',
    all: [
      /\b(batt|battery|bat|vbat|ubat|supply|batterie|batterie spannung|bord spannung|bordnetz|bateria|batteria|accu|accuspanning|batteri|akumulator|v batt|battery voltage|system voltage|12 v)\b/,
    ],
    none: /\b(correction|corr|temp|comp)\b/,
    sure: 7,
  },
  {
    role: 'lambda',
    all: [MIXTURE],
    none: new RegExp(
      `${WANTED.source}|${TRIM.source}|${NO_READING.source}|\\b(error|err|diff|deviation|abweichung|oxygen content|stoich|stoichiometric)\\b`,
    ),
    sure: 7,
  },
  {
    role: 'vehicleKmH',
    all: [/\b(speed|vitesse|velocity|kph|kmh|mph)\b/],
    none: /\b(engine|motor|turbo|moteur|motore|wind|fan|pump|rpm)\b/,
    sure: 4,
  },
  { role: 'timeS', all: [/^t (s|ms|us|sec)$/], sure: 7 },
  {
    role: 'timeS',
    all: [
      /^(time|zeit|temps|tiempo|tempo|tijd|tid|czas|t|timestamp|time stamp|zeitstempel|horodatage|elapsed|elapsed time|log time|logtime|session time|run time|runtime|uhrzeit|heure|hora|ora|clock|clock time|time of day|datetime|date time|utc|utc time|unix|unix time|epoch|seconds|sec|secs|s|ms|millis|milliseconds|sekunden|secondes|segundos|secondi|offset|zeit s|abs time|time abs|rel time|relative time|messzeit|duration|laufzeit|timecode)$/,
    ],
    sure: 8,
  },
  {
    role: 'timeS',
    all: [/\b(time|zeit|timestamp|temps|tiempo|tempo|tid|tijd|czas|elapsed|epoch)\b/],
    none: /\b(inj|injection|injector|dwell|spark|on time|opening|run|dead|delay|injecao|inyeccion|iniezione|zone|lap|fuel)\b/,
    sure: 5,
  },
  // what the words leave open the unit may settle
  {
    role: 'speedRpm',
    all: [/./],
    none: /\b(turbo|limit|limiter|target|soll|wheel|error|fan|pump|dot|rate|delta|max|shift|compressor|driveshaft|gearbox|blower|idle|cut)\b/,
    units: ['rpm', 'kilo-rpm'],
    sure: 3,
  },
  {
    role: 'lambda',
    all: [/./],
    none: new RegExp(`${WANTED.source}|${TRIM.source}|${NO_READING.source}|\\b(error|err|diff)\\b`),
    units: ['lambda', 'AFR'],
    sure: 3,
  },
  { role: 'loadKPa', all: [/^k ?pa( abs)?$/], units: ['kPa'], sure: 3 },
];
