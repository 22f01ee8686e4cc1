import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser } from 'playwright-core';

/** A browser to start: where it lies, and what it has to be started with. */
export interface FoundBrowser {
  readonly executablePath: string;
  readonly args: readonly string[];
  /** how it was found, for messages */
  readonly from: string;
}

const COMMANDS = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge'];

const USUAL_PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  '/snap/bin/chromium',
];

/** Below a folder of playwright's cache, by system. */
const CACHED = [
  'chrome-linux/chrome',
  'chrome-linux64/chrome',
  'chrome-mac/Chromium.app/Contents/MacOS/Chromium',
  'chrome-mac-arm64/Google Chrome for Testing.app/Contents/MacOS/Google Chrome for Testing',
  'chrome-mac-x64/Google Chrome for Testing.app/Contents/MacOS/Google Chrome for Testing',
  'chrome-win/chrome.exe',
  'chrome-win64/chrome.exe',
];

/**
 * Finds a Chromium: the one named in VENTWRIGHT_BROWSER, else one installed, else playwright's own, else the
 * one that came with the packages.
 *
 * @throws Error saying what to install, where there is none
 */
export async function findBrowser(): Promise<FoundBrowser> {
  const named = process.env.VENTWRIGHT_BROWSER;
  if (named !== undefined && named !== '') {
    if (named === 'packaged') return packagedBrowser();
    if (existsSync(named)) return { executablePath: named, args: [], from: 'VENTWRIGHT_BROWSER' };
    throw new Error(`VENTWRIGHT_BROWSER names "${named}", but no file is there.`);
  }
  const installed = [...onPath(), ...USUAL_PLACES, ...inPlaywrightCache()].find((path) => existsSync(path));
  if (installed !== undefined) return { executablePath: installed, args: [], from: 'this machine' };
  try {
    return await packagedBrowser();
  } catch (error) {
    throw new Error(
      'No browser was found. Install Chromium or Google Chrome (on Debian: apt install chromium), or put the ' +
        'path of one in VENTWRIGHT_BROWSER.',
      { cause: error },
    );
  }
}

/** Finds and starts one. @param more what else it is started with */
export async function launchBrowser(more: readonly string[] = []): Promise<Browser> {
  const { executablePath, args } = await findBrowser();
  return chromium.launch({ executablePath, args: [...args, ...more], headless: true });
}

/**
 * The Linux build among the packages. It unpacks its libraries only when told which system it runs on. The
 * arguments it comes with are left out: they put everything into one process, which ends with the first page.
 * Its own fonts have no arrows, accidentals or signs; it is given those among the packages.
 */
export async function packagedBrowser(): Promise<FoundBrowser> {
  process.env.AWS_LAMBDA_JS_RUNTIME ??= 'nodejs22.x';
  process.env.FONTCONFIG_FILE ??= writeFontsFile();
  const { default: packaged } = await import('@sparticuz/chromium');
  return { executablePath: await packaged.executablePath(), args: [], from: '@sparticuz/chromium' };
}

/** Tells where the packages' fonts lie. @returns the file that says so */
function writeFontsFile(): string {
  const fonts = fileURLToPath(new URL('../../node_modules/dejavu-fonts-ttf/ttf', import.meta.url));
  const folder = mkdtempSync(join(tmpdir(), 'ventwright-fonts-'));
  const file = join(folder, 'fonts.conf');
  writeFileSync(
    file,
    `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${fonts}</dir>
  <cachedir>${join(folder, 'cache')}</cachedir>
  <selectfont><rejectfont>
    <glob>*Serif*</glob><glob>*Condensed*</glob><glob>*ExtraLight*</glob><glob>*Math*</glob>
  </rejectfont></selectfont>
  <match><edit name="family" mode="append"><string>DejaVu Sans</string></edit></match>
</fontconfig>
`,
  );
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  return file;
}

function onPath(): string[] {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return COMMANDS.flatMap((command) => folders.map((folder) => join(folder, command)));
}

function inPlaywrightCache(): string[] {
  const roots = [
    process.env.PLAYWRIGHT_BROWSERS_PATH,
    join(homedir(), '.cache/ms-playwright'),
    join(homedir(), 'Library/Caches/ms-playwright'),
    join(homedir(), 'AppData/Local/ms-playwright'),
  ];
  return roots
    .filter((root): root is string => root !== undefined && existsSync(root))
    .flatMap((root) =>
      readdirSync(root)
        .filter((folder) => /^chromium-\d+$/.test(folder))
        .flatMap((folder) => CACHED.map((path) => join(root, folder, path))),
    );
}
