import { describe, expect, test } from 'vitest';
import { browserArguments, hasDisplay, rootFlags } from '#build/starting/windowChoice.ts';
import { booksFolder, dataFolder, type Surroundings } from '#electron/folders.ts';
import { readClock } from '#electron/keeper/clock.ts';
import { unfitNode } from '#electron/keeper/nodeGuard.ts';
import { nextZoom, zoomSteps } from '#electron/main/zoom.ts';
import { windowPlace } from '#electron/main/windowPlace.ts';
import { program, version } from '#electron/program.ts';
import packageJson from '../../package.json' with { type: 'json' };

const around: Surroundings = { environment: {}, platform: 'linux', home: '/home/a', documents: '/home/a/Documents' };

describe('where things lie', () => {
  test('books among the documents, or at home without any', () => {
    expect(booksFolder(around)).toBe('/home/a/Documents/Outyard');
    expect(booksFolder({ ...around, documents: null })).toBe('/home/a/Outyard');
  });

  test('the named folder holds everything of a trial', () => {
    const trial = { ...around, environment: { OUTYARD_FOLDER: '/trial', XDG_DATA_HOME: '/elsewhere' } };
    expect(booksFolder(trial)).toBe('/trial');
    expect(dataFolder(trial)).toBe('/trial/program');
  });

  test('the program’s own things in the platform’s place', () => {
    expect(dataFolder(around)).toBe('/home/a/.local/share/outyard');
    expect(dataFolder({ ...around, environment: { XDG_DATA_HOME: '/data' } })).toBe('/data/outyard');
    expect(dataFolder({ ...around, platform: 'darwin' })).toBe('/home/a/Library/Application Support/Outyard');
    expect(dataFolder({ ...around, platform: 'win32', environment: { LOCALAPPDATA: '/local' } })).toBe('/local/Outyard');
  });

  test('the version is the package’s', () => {
    expect(version).toBe(packageJson.version);
    expect(program).toBe(`Outyard ${packageJson.version}`);
  });
});

describe('the clock', () => {
  test('is the local day and minute, whatever the zone', () => {
    expect(readClock(new Date(2026, 10, 5, 9, 7))).toEqual({ day: '2026-11-05', stamp: '2026-11-05 09:07' });
    expect(readClock(new Date(2024, 1, 29, 23, 59, 59))).toEqual({ day: '2024-02-29', stamp: '2024-02-29 23:59' });
    expect(readClock(new Date(2026, 11, 31, 0, 0))).toEqual({ day: '2026-12-31', stamp: '2026-12-31 00:00' });
  });
});

describe('the Node that runs the keeper', () => {
  test.each(['22.12.0', '22.21.1', '24.0.0', '24.21.0', '26.1.0'])('%s serves', (node) => expect(unfitNode(node)).toBeNull());
  test.each(['18.15.0', '20.20.2', '22.11.0', '21.7.3', 'nonsense'])('%s is told what to do', (node) => {
    expect(unfitNode(node)).toContain(`this is Node ${node}`);
    expect(unfitNode(node)).toContain('npm start');
  });
});

describe('the window', () => {
  test('opens in the middle, never larger than the screen’s free area, never off it', () => {
    expect(windowPlace({ x: 0, y: 0, width: 1920, height: 1040 })).toEqual({ x: 320, y: 120, width: 1280, height: 800 });
    expect(windowPlace({ x: -1920, y: 25, width: 1024, height: 700 })).toEqual({ x: -1920, y: 25, width: 1024, height: 700 });
    expect(windowPlace({ x: 0, y: 0, width: 1281, height: 801 })).toEqual({ x: 0, y: 0, width: 1280, height: 800 });
  });

  test('zooms in steps between 80 and 200 per cent', () => {
    const up = zoomSteps.map((step) => nextZoom(step, 1));
    expect(up).toEqual([0.9, 1, 1.1, 1.25, 1.5, 1.75, 2, 2]);
    const down = zoomSteps.map((step) => nextZoom(step, -1));
    expect(down).toEqual([0.8, 0.8, 0.9, 1, 1.1, 1.25, 1.5, 1.75]);
    expect(nextZoom(0.9999999, 1)).toBe(1.1);
    expect(nextZoom(1.0000001, -1)).toBe(0.9);
    expect(nextZoom(5, 1)).toBe(2);
    expect(nextZoom(0.3, -1)).toBe(0.8);
  });

  test('is not tried without a display', () => {
    expect(hasDisplay('linux', {})).toBe(false);
    expect(hasDisplay('linux', { DISPLAY: '' })).toBe(false);
    expect(hasDisplay('linux', { DISPLAY: ':0' })).toBe(true);
    expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBe(true);
    expect(hasDisplay('darwin', {})).toBe(true);
    expect(hasDisplay('win32', { OUTYARD_HEADLESS: '1' })).toBe(false);
    expect(hasDisplay('linux', { DISPLAY: ':0', OUTYARD_HEADLESS: '1' })).toBe(false);
  });

  test('of a browser keeps its sandbox except for root, and fetches nothing', () => {
    const flags = browserArguments('http://127.0.0.1:1/open?token=x', '/data/profile', 1000);
    expect(flags).toContain('--app=http://127.0.0.1:1/open?token=x');
    expect(flags).toContain('--user-data-dir=/data/profile');
    expect(flags).toContain('--disable-background-networking');
    expect(flags).not.toContain('--no-sandbox');
    expect(rootFlags(0)).toEqual(['--no-sandbox', '--test-type']);
    expect(rootFlags(undefined)).toEqual([]);
  });
});
