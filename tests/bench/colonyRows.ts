/** Made-up colonies from one seed: exact whole numbers, so that every machine and language gets the same rows. */
export interface ColonyRows {
  readonly yard: Int32Array;
  readonly entry: Float64Array;
  readonly exit: Float64Array;
  readonly status: Float64Array;
  readonly mites: Float64Array;
  readonly queenAge: Float64Array;
  readonly treated: Float64Array;
}

/** The linear congruential generator of Numerical Recipes (1664525, 1013904223, modulo 2^32). */
function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(1_664_525, state) + 1_013_904_223) >>> 0;
    return state / 4_294_967_296;
  };
}

const yards = 8;
const horizon = 730;

/** `rows` colonies in eight yards over two years; two in five are watched only from later on. Days. */
export function colonyRows(rows: number, seed: number): ColonyRows {
  const next = generator(seed);
  const made: ColonyRows = {
    yard: new Int32Array(rows), entry: new Float64Array(rows), exit: new Float64Array(rows), status: new Float64Array(rows),
    mites: new Float64Array(rows), queenAge: new Float64Array(rows), treated: new Float64Array(rows),
  };
  for (let row = 0; row < rows; row += 1) {
    const [u1, u2, u3, u4, u5, u6, u7, u8] = [next(), next(), next(), next(), next(), next(), next(), next()] as const;
    next();
    const yard = Math.floor(u1 * yards);
    const entry = u2 < 0.4 ? Math.floor(u3 * horizon * 0.75) : 0;
    const mites = Math.floor(u5 * u5 * 80) / 10;
    const queenAge = Math.floor(u6 * 4);
    const treated = u7 < 0.5 ? 1 : 0;
    const scale = (500 * (1 + 0.25 * yard) * (1 + 0.5 * treated)) / (1 + 0.2 * mites + 0.1 * queenAge);
    const life = Math.floor((scale * u4) / (1 - u4)) + 1;
    const watched = Math.min(life, Math.floor(u8 * 3 * horizon) + 1, horizon - entry);
    made.yard[row] = yard;
    made.entry[row] = entry;
    made.exit[row] = entry + watched;
    made.status[row] = watched === life ? 1 : 0;
    made.mites[row] = mites;
    made.queenAge[row] = queenAge;
    made.treated[row] = treated;
  }
  return made;
}
