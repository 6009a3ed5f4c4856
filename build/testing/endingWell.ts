import type { Environment } from 'vitest/runtime';

declare global {
  /** What a worker does before it ends: it is killed half a second after it was asked to, too soon for a browser to clear up. */
  var beforeWorkerEnds: (() => Promise<void>) | undefined;
}

/** Node as it is, and time at the end of a worker to close what its files shared. */
// oxlint-disable-next-line import/no-default-export -- this is where the runner looks for it
export default {
  name: 'ending-well',
  viteEnvironment: 'ssr',
  setup: () => ({ teardown: async () => globalThis.beforeWorkerEnds?.() }),
} satisfies Environment;
