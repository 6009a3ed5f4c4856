/**
 * A long computation in slices: it yields where it may be interrupted, so that whoever carries it on can do something
 * else in between; what it answers is the same.
 */
export type Slices<Value> = Generator<void, Value, void>;

/** All slices one after the other. */
export function whole<Value>(work: Slices<Value>): Value {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}
