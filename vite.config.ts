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

/** The first screen, by the end of its sources' paths: with all they import they are one file. */
const FIRST_SCREEN = /(ui\/main|key-study-view|guidance-view)\.ts$/;
/** Begins the acoustics; it runs before the first screen has come. */
const FIRST_WORKER = /first-worker\.ts$/;
/** Draws the curve; the page asks for it at once, and not when the first screen asks. */
const PICTURE = /plotly-basic\.min\.js$/;

/** A part of the program in the page's head. */
const PART = /^ *<(?:script type="module"|link rel="(?:modulepreload|stylesheet)").*$\n/gm;

/** Lets the page ask for the parts of the first screen at once, and begins the worker before all of them. */
function firstScreen(): Plugin {
  return {
    name: 'ventwright-first-screen',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler(html, { bundle = {} }) {
        const fileOf = (source: RegExp): string => {
          const chunk = Object.values(bundle).find(
            (part) => part.type === 'chunk' && part.moduleIds.some((id) => source.test(id)),
          );
          // A part that moved would make the first visit slower, and nobody would see why.
          if (chunk === undefined) throw new Error(`The first screen has no part ${source}.`);
          return `./${chunk.fileName}`;
        };
        const worker = fileOf(FIRST_WORKER);
        const parts = html.match(PART)!.filter((tag) => !tag.includes(worker));
        const first = [
          `<script type="module" async crossorigin src="${worker}"></script>`,
          ...parts,
          // Fetched and not yet read: reading it is long, and the words come first.
          `<link rel="preload" as="script" crossorigin href="${fileOf(PICTURE)}">`,
        ];
        // Before the policy: a browser that meets one reads no further ahead until the page has come to it.
        return html
          .replace(PART, '')
          .replace(/(?<=<meta charset[^>]*>)/, first.map((tag) => `\n    ${tag.trim()}`).join(''));
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
  build: {
    target: 'es2022',
    chunkSizeWarningLimit: 2000,
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'first-worker', test: FIRST_WORKER, priority: 1 },
            { name: 'first-screen', test: FIRST_SCREEN },
          ],
        },
      },
    },
  },
  worker: { format: 'es' },
});
