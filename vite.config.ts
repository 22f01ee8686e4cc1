import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

export default defineConfig({
  base: './',
  resolve: {
    alias: {
      // The workbench draws lines and markers; plotly's own basic bundle is a quarter of the full one.
      'plotly.js-dist': fileURLToPath(
        new URL('node_modules/plotly.js-basic-dist-min/plotly-basic.min.js', import.meta.url),
      ),
    },
  },
  build: { target: 'es2022', chunkSizeWarningLimit: 2000 },
  worker: { format: 'es' },
});
