import react from '@vitejs/plugin-react';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

/** The window: plain files that the shell and the loopback host serve under a strict content policy. */
export default defineConfig({
  root: fileURLToPath(new URL('../renderer', import.meta.url)),
  base: './',
  plugins: [react()],
  build: {
    outDir: fileURLToPath(new URL('../out/renderer', import.meta.url)),
    emptyOutDir: true,
    target: 'chrome114',
    modulePreload: { polyfill: false },
    // The content policy allows fonts and pictures from the program itself only, never from `data:`.
    assetsInlineLimit: 0,
    // One page, opened from the own disk: a warning about kilobytes helps nobody.
    chunkSizeWarningLimit: 4000,
  },
});
