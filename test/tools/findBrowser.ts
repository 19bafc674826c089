import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];
/** A mirror that does not answer once is asked again. */
const APT_RETRIES = ['-o', 'Acquire::Retries=5'];
const PLACES = ['/Applications/Chromium.app/Contents/MacOS/Chromium'];

/** Path of a browser that is there already; null where none is found. */
export function findBrowser(): string | null {
  const asked = process.env.DRYWAKE_BROWSER;
  if (asked) return asked;
  const folders = (process.env.PATH ?? '').split(delimiter);
  const candidates = [
    ...NAMES.flatMap((name) => folders.map((folder) => join(folder, name))),
    ...PLACES,
    chromium.executablePath(),
  ];
  return candidates.find((path) => existsSync(path)) ?? null;
}

/** Debian, where root may install its chromium. */
function isRootOnDebian(): boolean {
  const release = existsSync('/etc/os-release') ? readFileSync('/etc/os-release', 'utf8') : '';
  return process.getuid?.() === 0 && /^ID(_LIKE)?=.*debian/m.test(release);
}

function runQuietly(command: string, args: readonly string[]): string | null {
  try {
    execFileSync(command, args, { stdio: ['ignore', 'ignore', 'pipe'], timeout: 600_000 });
    return null;
  } catch (error) {
    const { stderr } = error as { stderr?: Buffer };
    return `${command} ${args.join(' ')}: ${stderr?.toString().trim().split('\n').at(-1) || (error as Error).message}`;
  }
}

/**
 * Finds a browser, else installs one: Debian's chromium as root on Debian, else the test browser's own download.
 * @throws {Error} naming what was tried and what to do
 */
export function ensureBrowser(): string {
  const found = findBrowser();
  if (found !== null) return found;
  const tried: string[] = [];
  const attempt = (command: string, args: readonly string[]) => {
    console.log(`No browser found; trying ${command} ${args.join(' ')}`);
    const failure = runQuietly(command, args);
    if (failure !== null) tried.push(failure);
  };
  if (isRootOnDebian()) {
    attempt('apt-get', [...APT_RETRIES, 'update']);
    attempt('apt-get', [
      ...[...APT_RETRIES, 'install', '-y', '--no-install-recommends'],
      ...['chromium', 'fonts-dejavu-core'],
    ]);
  }
  if (findBrowser() === null) attempt('npx', ['playwright-core', 'install', 'chromium']);
  const installed = findBrowser();
  if (installed !== null) return installed;
  throw new Error(
    `The browser tests need Chromium and none is here.\nTried: ${tried.join('; ')}.\nInstall Chromium (on Debian: apt-get install chromium), or set DRYWAKE_BROWSER to its path.`,
  );
}
