import type { LossFactors, RiskGroup } from '#shared/contract/lossFactors.ts';
import type { PaperCell, PaperPart, PaperTable } from '#shared/contract/paper.ts';
import { counted, missing, number, pFigure, ratio } from '#shared/figures.ts';
import { drawRates } from './drawIntervals.ts';
import { figure, inFile, part, rateCells, rateColumns, table, text } from './paperTables.ts';
import type { SectionMaker } from './sectionFacts.ts';

/** Section 4: what colonies went into the winter with, group by group, yards in order, and all of it held beside each other; then in short over all winters. */
export const factorParts: SectionMaker = ({ answers, season }) => {
  const own = answers.factors(season, 'season');
  const all = answers.factors(season, 'all');
  return [...within(own, '', ''), ...(all.winters.length > 1 ? within(all, '-all', `All ${all.winters.length} winters that are over`) : [])];
};

/** Of all winters together only what is said is printed; their tables stand in the files. */
function within(found: LossFactors, ending: string, title: string): PaperPart[] {
  const winters = found.winters.length;
  const [atRisk, lost] = [found.winters.reduce((sum, one) => sum + one.atRisk, 0), found.winters.reduce((sum, one) => sum + one.lost, 0)];
  const whole = title === '';
  const base = winters === 0 ? 'No winter is on record yet.' : baseOf(winters, atRisk, lost, found.leftOut);
  const enough = atRisk > 0;
  const head = part(`factors${ending}`, title, {
    sentences: [base, ...found.sentences],
    tables: enough ? [riskTable(found, `factors${ending}`, whole)] : [],
    notes: enough && found.tests > 0 && whole ? [how] : [],
  });
  return enough ? [head, ...yardOrder(found, ending, title), ...together(found, ending, title)] : [head];
}

const how = 'Each group is held against all other colonies that have the same on record. Times the others: relative risk (Katz 1978; over several winters Mantel and Haenszel); * half a colony was added to each count, as one side had no losses or nothing but losses. Of 100: difference of the rates (Newcombe 1998; over several winters Sato’s). p is exact and adjusted for every comparison in the table (Holm); below 0.05 a group stands out. Colonies of one yard share their fate, so every p is rather too small.';

function baseOf(winters: number, atRisk: number, lost: number, leftOut: number): string {
  const left = leftOut === 0 ? '' : ` ${counted(leftOut, 'colony', 'colonies')} sold, given away or united meanwhile ${leftOut === 1 ? 'is' : 'are'} in no count.`;
  return `${lost} of ${counted(atRisk, 'colony', 'colonies')} that went into ${winters === 1 ? 'the winter' : `${winters} winters`} were lost in ${winters === 1 ? 'it' : 'them'}.${left}`;
}

function riskTable({ factors, tests }: LossFactors, key: string, onPaper: boolean): PaperTable {
  return table(key, 'Losses by what colonies went into the winter with', {
    onPaper, grouped: true,
    columns: [
      text('By'), text('Group'), ...rateColumns('Lost, with its 95 % range'), inFile('Others at risk', 'count'), inFile('Others lost', 'count'),
      ...(tests === 0 ? [{ ...text('Against the others'), only: 'paper' as const }] : [figure('Times the others'), { ...text('Of 100, lost'), only: 'paper' as const }, figure('p, adjusted')]),
      ...['Times the others', 'Times from', 'Times to'].map((label) => inFile(label)), inFile('Half a colony added', 'text'),
      ...['Difference', 'Difference from', 'Difference to'].map((label) => inFile(label, 'share')), inFile('p'), inFile('p, adjusted after Holm'), inFile('Odds ratio'), inFile('Odds ratio from'), inFile('Odds ratio to'), inFile('Why not compared', 'text'),
    ],
    rows: factors.flatMap((factor) => [
      ...factor.groups.map((group): PaperCell[] => [factor.name, group.name, ...rateCells({ ...group, range: group.wilson }), group.restAtRisk, group.restLost, ...onPaperCells(group, tests), ...fileCells(group)]),
      ...(factor.unknown === null ? [] : [[factor.name, factor.unknown.name, ...rateCells({ ...factor.unknown, range: factor.unknown.wilson }), null, null, ...(tests === 0 ? ['not compared'] : ['', 'not compared', '']), ...Array.from({ length: 12 }, () => null), 'Not on record.']]),
    ]),
  });
}

function onPaperCells({ p, pHolm, ratio: times, differenceWords, why }: RiskGroup, tests: number): PaperCell[] {
  const words = why === null ? '' : why.startsWith('Too few') ? 'too few to tell' : why.startsWith('The other side') ? 'the line above, seen from here' : 'not compared';
  if (tests === 0) return [words];
  if (p === null) return ['', words, ''];
  return [
    times === null ? missing : `${ratio(times.value)}  (${ratio(times.range[0])}–${ratio(times.range[1])})${times.half ? ' *' : ''}`,
    differenceWords?.replace('of 100 colonies, ', '').replace('about ', '').replace(' lost', '') ?? missing,
    `${pFigure(pHolm)}${pHolm !== null && pHolm < 0.05 ? ', stands out' : ''}`,
  ];
}

function fileCells({ ratio: times, difference, p, pHolm, odds, why }: RiskGroup): PaperCell[] {
  return [
    times?.value ?? null, times?.range[0] ?? null, times?.range[1] ?? null, times === null ? null : times.half ? 'yes' : 'no', difference?.value ?? null, difference?.range[0] ?? null, difference?.range[1] ?? null,
    p, pHolm, odds?.value ?? null, odds?.range[0] ?? null, odds?.range[1] ?? null, why,
  ];
}

function yardOrder({ yards: { sentence, rows } }: LossFactors, ending: string, of: string): PaperPart[] {
  const title = 'Yards, pulled towards the whole';
  if (sentence === '' && rows.length === 0) return [];
  if (of !== '' && rows.length === 0) return [];
  return [part(`yard-order${ending}`, of === '' ? title : '', {
    sentences: [sentence],
    drawings: of === '' ? drawRates(title, rows.map((row) => ({ label: row.name, counts: `${number(row.pooled * 100)} (${number(row.range[0] * 100)}–${number(row.range[1] * 100)})`, rate: row.pooled, interval: row.range, all: false })), '% pulled') : [],
    tables: rows.length === 0 ? [] : [table(`yard-order${ending}`, title, {
      onPaper: of === '',
      columns: [text('Yard'), ...rateColumns('Lost, with its 95 % range'), figure('Pulled rate, with its range'), inFile('Pulled rate', 'share'), inFile('Pulled from', 'share'), inFile('Pulled to', 'share')],
      rows: rows.map((row) => [row.name, ...rateCells({ ...row, range: row.wilson }), `${number(row.pooled * 100)} (${number(row.range[0] * 100)}–${number(row.range[1] * 100)})`, row.pooled, row.range[0], row.range[1]]),
    })],
    notes: of === '' && rows.length > 0 ? ['Beta-binomial pooling: the fewer its colonies, the further a yard is pulled towards what all lost, so that a small one is not first or last by chance alone. With few yards the ranges are somewhat too short.'] : [],
  })];
}

function together({ together: parts }: LossFactors, ending: string, of: string): PaperPart[] {
  const terms = parts.flatMap((one) => one.terms.map((term): PaperCell[] => [one.heading, term.name, term.ratio, term.range?.[0] ?? null, term.range?.[1] ?? null, term.p, one.colonies, one.losses, one.missing]));
  return parts.map((one, at) => part(`together${ending}-${at + 1}`, at === 0 && of === '' ? 'With the others held fixed' : '', {
    sentences: one.sentences,
    tables: at > 0 || terms.length === 0 ? [] : [table(`together${ending}`, 'With the others held fixed', {
      onPaper: false,
      columns: [text('Colonies'), text('Held'), inFile('Times the risk'), inFile('From'), inFile('To'), inFile('p'), inFile('In it', 'count'), inFile('Losses', 'count'), inFile('Left out, not recorded', 'count')], rows: terms,
    })],
    notes: [
      ...(one.terms.length === 0 ? [] : [`${one.heading}: ${counted(one.colonies, 'colony', 'colonies')}, ${counted(one.losses, 'loss', 'losses')}.`]), ...one.notes,
      ...(at === parts.length - 1 && of === '' && terms.length > 0 ? ['Cox’s proportional hazards, ties after Efron; each yard and winter is compared only within itself. It says what went together, not what caused it.'] : []),
    ],
  }));
}
