import type { HouseRule } from '#shared/contract/order.ts';

type Definition = Omit<HouseRule, 'value'>;
const practice = 'common practice, no source';

/** The ways a treatment is given, each with its own needs. `ingredient`: how it is called in the journal. */
export const treatmentForms = [
  { key: 'formic', ingredient: 'formic acid', name: 'Formic acid, pads or strips' },
  { key: 'oxalicDribble', ingredient: 'oxalic acid', name: 'Oxalic acid, dribbled' },
  { key: 'oxalicVapour', ingredient: 'oxalic acid', name: 'Oxalic acid, vapour' },
  { key: 'oxalicStrips', ingredient: 'oxalic acid', name: 'Oxalic acid, strips in glycerin' },
  { key: 'thymolGel', ingredient: 'thymol', name: 'Thymol, gel' },
  { key: 'thymolTablets', ingredient: 'thymol', name: 'Thymol, tablets' },
  { key: 'amitraz', ingredient: 'amitraz', name: 'Amitraz, strips' },
  { key: 'hop', ingredient: 'hop acids', name: 'Hop beta acids, strips' },
  { key: 'fluvalinate', ingredient: 'tau-fluvalinate', name: 'Tau-fluvalinate, strips' },
  { key: 'coumaphos', ingredient: 'coumaphos', name: 'Coumaphos, strips' },
] as const;
export type TreatmentForm = (typeof treatmentForms)[number]['key'];

const label = 'US labels; the label in the hand always wins';

interface Needs {
  readonly low: number;
  readonly high: number;
  readonly supers: 'yes' | 'no' | 'see the label';
  readonly brood: 'any' | 'little' | 'none';
  readonly days: number;
  /** Days to stay off before honey supers go on. */
  readonly clear: number;
  readonly rotate: 'yes' | 'no';
}

// 0 °F and 120 °F stand for no border. Figures from memory of the labels; every one is the person's to change.
const needs: Readonly<Record<TreatmentForm, Needs>> = {
  formic: { low: 50, high: 85, supers: 'yes', brood: 'any', days: 14, clear: 0, rotate: 'no' },
  oxalicDribble: { low: 37, high: 50, supers: 'see the label', brood: 'none', days: 0, clear: 0, rotate: 'no' },
  oxalicVapour: { low: 37, high: 120, supers: 'see the label', brood: 'none', days: 0, clear: 0, rotate: 'no' },
  oxalicStrips: { low: 0, high: 120, supers: 'yes', brood: 'any', days: 56, clear: 0, rotate: 'no' },
  thymolGel: { low: 59, high: 105, supers: 'no', brood: 'little', days: 28, clear: 0, rotate: 'no' },
  thymolTablets: { low: 59, high: 95, supers: 'no', brood: 'little', days: 30, clear: 30, rotate: 'no' },
  amitraz: { low: 50, high: 120, supers: 'no', brood: 'any', days: 56, clear: 14, rotate: 'yes' },
  hop: { low: 50, high: 120, supers: 'yes', brood: 'little', days: 30, clear: 0, rotate: 'no' },
  fluvalinate: { low: 50, high: 120, supers: 'no', brood: 'any', days: 56, clear: 0, rotate: 'yes' },
  coumaphos: { low: 50, high: 120, supers: 'no', brood: 'any', days: 45, clear: 0, rotate: 'yes' },
};

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const highs = [30, 33, 44, 57, 69, 78, 83, 81, 73, 61, 46, 34];

function number(key: string, text: string, unit: string, standard: number, range: [number, number], source: string, confidence: HouseRule['confidence']): Definition {
  return { key: `treat.${key}`, label: text, room: 'treatments', unit, type: 'number', default: standard, range, source, confidence };
}
function said(key: string, text: string, standard: string, source = label): Definition {
  return { key: `treat.${key}`, label: text, room: 'treatments', unit: 'words', type: 'text', default: standard, range: null, source, confidence: 'from memory' };
}
function season(key: string, text: string, standard: string): Definition {
  return { key: `treat.${key}`, label: text, room: 'treatments', unit: 'month-day', type: 'month-day', default: standard, range: null, source: 'House choice for the northern tier; put in your own', confidence: practice };
}

const ofForm = treatmentForms.flatMap(({ key, name }): Definition[] => {
  const need = needs[key];
  const low = number(`${key}.low`, `${name}: day temperature from`, '°F', need.low, [0, 120], label, 'from memory');
  const high = number(`${key}.high`, `${name}: day temperature up to`, '°F', need.high, [0, 120], label, 'from memory');
  return [
    low,
    high,
    said(`${key}.supers`, `${name}: with honey supers on (yes, no, see the label)`, need.supers, key.startsWith('oxalic') ? `${label}; in the US a tolerance exemption of 23 February 2021 opened oxalic acid to use with supers, by label` : label),
    said(`${key}.brood`, `${name}: brood that may be there (any, little, none)`, need.brood),
    number(`${key}.days`, `${name}: days it stays on`, 'days', need.days, [0, 90], label, 'from memory'),
    number(`${key}.clear`, `${name}: days off before honey supers go on`, 'days', need.clear, [0, 90], label, 'from memory'),
    said(`${key}.rotate`, `${name}: not twice running (yes, no)`, need.rotate, 'Mites that withstand it are reported; change the active ingredient'),
  ];
});

/** Which needs of a form are rules: the product's label goes before every one. */
export const formRuleKeys: readonly string[] = ofForm.map(({ key }) => key);

/** What each treatment needs of weather, supers, brood and days; and the place's own year. */
export const treatmentRuleDefinitions: readonly Definition[] = [
  ...months.map((month, at) => number(`high.${String(at + 1).padStart(2, '0')}`, `Usual day temperature, ${month}`, '°F', highs[at] ?? 50, [-20, 120], 'House choice for the northern tier; put in your own place’s', practice)),
  season('flow.main', 'The main flow begins', '06-10'),
  season('flow.second', 'The second flow begins', '08-20'),
  number('broodSeen', 'A look tells of brood for', 'days', 21, [7, 60], 'One worker brood cycle of 21 days', 'arithmetic'),
  ...ofForm,
];

/** What each of them changes, in a sentence. */
export const treatmentAffects: Readonly<Record<string, string>> = Object.fromEntries(
  treatmentRuleDefinitions.map(({ key }) => {
    const part = key.split('.').at(-1) ?? '';
    const said: Readonly<Record<string, string>> = {
      low: 'Below which day temperature this treatment is said not to fit.', high: 'Above which day temperature this treatment is said not to fit.', supers: 'Whether this treatment is said to fit while honey supers are on.',
      brood: 'Whether this treatment is said to fit while there is brood.', days: 'How long this treatment is reckoned to stay on before the next flow.', clear: 'How long before the next flow this treatment is to be off.',
      rotate: 'Whether this treatment is said to fit when it was the one used last.', main: 'How many days are left before the next flow.', second: 'How many days are left before the next flow.', broodSeen: 'How long a look at the brood stands for what is in the hive.',
    };
    return [key, said[part] ?? 'The day temperature that is taken where you type none.'];
  }),
);
