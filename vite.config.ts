import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { generateSW } from 'workbox-build';

/**
 * Writes the service worker that keeps every file of the program at the first visit, so that the bench needs no
 * network. A newer program waits until a person takes it: nothing is reloaded under anybody's hands.
 */
function offline(): Plugin {
  return {
    name: 'ventwright-offline',
    apply: 'build',
    async writeBundle({ dir }) {
      const { warnings } = await generateSW({
        globDirectory: dir!,
        globPatterns: ['**/*.{html,js,css,svg,png,webmanifest}'],
        swDest: `${dir!}/sw.js`,
        navigateFallback: 'index.html',
        // A page that was there before the worker has its late files from it too.
        clientsClaim: true,
        cleanupOutdatedCaches: true,
        inlineWorkboxRuntime: true,
        sourcemap: false,
        // The files' names carry their contents already.
        dontCacheBustURLsMatching: /^assets\//,
        maximumFileSizeToCacheInBytes: 20_000_000,
      });
      // A file left out would be missing at the bench.
      if (warnings.length > 0) throw new Error(warnings.join(' '));
    },
  };
}

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
  plugins: [offline()],
  build: { target: 'es2022', chunkSizeWarningLimit: 2000 },
  worker: { format: 'es' },
});
