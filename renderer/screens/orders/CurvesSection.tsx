import type { OrderDecision } from '#shared/contract/decision.ts';
import { CostCurve } from '../../charts/CostCurve.tsx';
import { Figure } from '../../charts/Figure.tsx';
import { money, number, percent } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import type { Question } from './readQuestion.ts';
import { useCurves, type CurvePoint } from './useCurves.ts';
import { words } from './words.ts';

const names = { cash: 'paid', total: 'all together' };

/** What more confidence and a higher target cost. */
export function CurvesSection({ decision, question }: { readonly decision: OrderDecision; readonly question: Question }) {
  const note = useMarginNote();
  const curves = useCurves(decision, question);
  const sure = percent(decision.confidence);
  const error = decision.answer === null ? '–' : percent(decision.answer.samplingError, 2);
  const both = [
    { name: words.curveConfidence(decision.target), axis: words.curveSure, points: curves.byConfidence, at: (point: CurvePoint) => Math.round(point.confidence * 1000) / 10, chosen: decision.confidence * 100, mark: sure, said: saidOfConfidence(curves.byConfidence) },
    { name: words.curveTarget(sure), axis: words.curveColonies, points: curves.byTarget, at: (point: CurvePoint) => point.target, chosen: decision.target, mark: String(decision.target), said: saidOfTarget(curves.byTarget) },
  ];
  return (
    <section className="section" aria-label={words.curves} {...note(<MarginPart heading={words.curves}><p>{words.curveNote(number(decision.answer?.solver.springs ?? 4096), error)}</p></MarginPart>)}>
      <h2>{words.curves}</h2>
      <div className="order-progress" role="status">
        {curves.done === curves.all ? null : (
          <p className="soft">
            {curves.stopped ? words.curveStopped : `${words.working} ${words.curveProgress(curves.done, curves.all)}.`}{' '}
            <button type="button" className="link" onClick={curves.stopped ? curves.goOn : curves.stop}>
              {curves.stopped ? words.curveAgain : words.stop}
            </button>
          </p>
        )}
      </div>
      {curves.done === curves.all && [...curves.byConfidence, ...curves.byTarget].every(({ total }) => total === null) ? <p>{words.curveNone}</p> : null}
      <div className="order-pair">
        {both.map(({ name, axis, points, at, chosen, mark, said }) =>
          points.filter(({ total }) => total !== null).length < 2 ? null : (
            <section key={name} className="figured" aria-label={name}>
              <h3>{name}</h3>
              {said === null ? null : <p className="said">{said}</p>}
              <Figure
                name={name}
                least={260}
                most={420}
                picture={(width) => (
                  <CostCurve alt={`${name}. ${said ?? ''}`} axis={`${axis}; cost in $`} width={width} chosen={chosen} names={{ ...names, chosen: mark }} points={points.map((point) => ({ at: at(point), cash: point.cash, total: point.total }))} />
                )}
                table={<PointsTable name={name} head={axis} points={points} at={at} />}
              />
            </section>
          ),
        )}
      </div>
    </section>
  );
}

function PointsTable({ name, head, points, at }: { readonly name: string; readonly head: string; readonly points: readonly CurvePoint[]; readonly at: (point: CurvePoint) => number }) {
  return (
    <table className="tight">
      <caption className="visually-hidden">{name}</caption>
      <thead>
        <tr>
          {[head, words.curveCash, words.curveTotal, words.curveBought, words.curveSplits].map((one) => (
            <th key={one} scope="col" className="number">
              {one}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {points.map((point) => (
          <tr key={`${point.target} ${point.confidence}`}>
            <th scope="row" className="number">
              {number(at(point), 1)}
            </th>
            {point.total === null ? (
              <td colSpan={4}>{words.cannot}</td>
            ) : (
              <>
                <td className="number">{whole(point.cash)}</td>
                <td className="number">{whole(point.total)}</td>
                <td className="number">{number(point.bought)}</td>
                <td className="number">{number(point.splits)}</td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function whole(cents: number | null): string {
  return money(cents === null ? null : Math.round(cents / 100) * 100);
}

function ends(points: readonly CurvePoint[]): [CurvePoint, CurvePoint] | null {
  const reached = points.filter(({ cash }) => cash !== null);
  const [first, last] = [reached[0], reached.at(-1)];
  return first === undefined || last === undefined || first === last ? null : [first, last];
}

function saidOfConfidence(points: readonly CurvePoint[]): string | null {
  const found = ends(points);
  return found === null ? null : words.curveSaid(percent(found[0].confidence), whole(found[0].cash), percent(found[1].confidence), whole(found[1].cash));
}

function saidOfTarget(points: readonly CurvePoint[]): string | null {
  const found = ends(points);
  return found === null ? null : words.curveSaidTarget(found[0].target, whole(found[0].cash), found[1].target, whole(found[1].cash));
}
