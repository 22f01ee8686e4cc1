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

/** What the first screen is made of, besides what the page names itself: each by the end of its source's path. */
const FIRST_SCREEN = [/key-study-view\.ts$/, /guidance-view\.ts$/, /plotly-basic\.min\.js$/];

/** Lets the page ask for the parts of the first screen at once, and not each when the one before has run. */
function firstScreen(): Plugin {
  return {
    name: 'ventwright-first-screen',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler(html, { bundle = {} }) {
        const chunks = Object.values(bundle).filter((part) => part.type === 'chunk');
        const files = new Set<string>();
        for (const source of FIRST_SCREEN) {
          const chunk = chunks.find(({ facadeModuleId }) => source.test(facadeModuleId ?? ''));
          // A part that moved would make the first visit slower, and nobody would see why.
          if (chunk === undefined) throw new Error(`The first screen has no part ${source}.`);
          for (const file of [chunk.fileName, ...chunk.imports]) files.add(file);
        }
        return [...files]
          .filter((file) => !html.includes(file))
          .map((file) => ({
            tag: 'link',
            attrs: { rel: 'modulepreload', crossorigin: true, href: `./${file}` },
            injectTo: 'head',
          }));
      },
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
  plugins: [firstScreen(), offline()],
  build: { target: 'es2022', chunkSizeWarningLimit: 2000 },
  worker: { format: 'es' },
});
