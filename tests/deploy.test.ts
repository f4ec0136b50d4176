import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { EXITS } from '../src/app/exit.ts';
import { readSettings } from '../src/settings.ts';

const ROOT = join(import.meta.dirname, '..');
const read = (name: string): string => readFileSync(join(ROOT, name), 'utf8');

/** Sections of a unit file and their rows, in order; what is no section, row, comment or blank line is kept as a fault. */
function unitOf(text: string) {
  const sections = new Map<string, [string, string][]>();
  const faults: string[] = [];
  let rows: [string, string][] | undefined;
  for (const line of text.split('\n')) {
    const section = /^\[(\w+)\]$/.exec(line)?.[1];
    const row = /^([A-Z]\w*)=(.*)$/.exec(line);
    if (section !== undefined) sections.set(section, (rows = []));
    else if (row !== null && rows !== undefined) rows.push([row[1] ?? '', row[2] ?? '']);
    else if (line !== '' && !line.startsWith('#')) faults.push(line);
  }
  return { sections, faults };
}

/** Where each directive may stand, from systemd.unit(5), systemd.service(5), systemd.exec(5), systemd.kill(5) and
 *  systemd.resource-control(5); from memory. */
const UNIT = {
  Unit: ['Description', 'Documentation', 'Wants', 'After', 'StartLimitIntervalSec', 'StartLimitBurst'],
  Service:
    `Type WorkingDirectory ExecStart EnvironmentFile Environment Restart RestartSec RestartPreventExitStatus TimeoutStopSec
    KillSignal DynamicUser StateDirectory StateDirectoryMode UMask ProtectSystem ProtectHome PrivateTmp PrivateDevices
    ProtectKernelTunables ProtectKernelModules ProtectKernelLogs ProtectControlGroups ProtectClock ProtectHostname
    RestrictAddressFamilies RestrictNamespaces RestrictRealtime RestrictSUIDSGID LockPersonality NoNewPrivileges
    CapabilityBoundingSet SystemCallArchitectures SystemCallFilter MemoryMax`.split(/\s+/),
  Install: ['WantedBy'],
} as const;

const environmentOf = (rows: readonly (readonly [string, string])[]): Record<string, string> =>
  Object.fromEntries(
    rows.flatMap(([name, value]) => {
      const at = value.indexOf('=');
      return name === 'Environment' ? [[value.slice(0, at), value.slice(at + 1)]] : [];
    }),
  );

describe('the systemd unit', () => {
  const { sections, faults } = unitOf(read('data/deploy/jigwright.service'));
  const service = sections.get('Service') ?? [];
  const values = (name: string): readonly string[] => service.filter(([key]) => key === name).map(([, value]) => value);

  test('has its sections, and in each only what belongs there, once', () => {
    expect(faults).toEqual([]);
    expect([...sections.keys()]).toEqual(['Unit', 'Service', 'Install']);
    for (const [section, allowed] of Object.entries(UNIT)) {
      const names = (sections.get(section) ?? []).map(([name]) => name);
      expect(names.filter((name) => !allowed.some((one) => one === name))).toEqual([]);
      const single = names.filter((name) => name !== 'Environment');
      expect(new Set(single).size).toBe(single.length);
    }
  });

  test('starts what is there, with settings that are read', () => {
    const [command = ''] = values('ExecStart');
    expect(existsSync(join(ROOT, command.split(' ').at(-1) ?? ''))).toBe(true);
    const environment = environmentOf(service);
    const set = readSettings({
      ...environment,
      BOT_TOKEN: '4242:AAFakeTokenThatIsLongEnoughToBeOne_00',
      MAKER_IDS: '1',
    });
    expect(set).toMatchObject({ ok: true, settings: { dataDir: environment['DATA_DIR'] } });
    expect(environment['KEY_FILE']?.startsWith(`${environment['DATA_DIR']}/`)).toBe(false);
  });

  test('can write only where the book and the key are', () => {
    expect(values('ProtectSystem')).toEqual(['strict']);
    expect(values('StateDirectoryMode')).toEqual(['0700']);
    const own = values('StateDirectory').flatMap((names) => names.split(' '));
    const environment = environmentOf(service);
    for (const path of [environment['DATA_DIR'], environment['KEY_FILE']])
      expect(own.some((name) => path?.startsWith(`/var/lib/${name}/`))).toBe(true);
    expect(values('CapabilityBoundingSet')).toEqual(['']);
  });

  test('does not start again what starting again does not help', () => {
    const never = Object.values(EXITS)
      .filter(({ code, restart }) => restart === 'no' && code !== 0)
      .map(({ code }) => String(code));
    expect(values('RestartPreventExitStatus')[0]?.split(' ')).toEqual(never);
  });
});

describe('the container file', () => {
  const instructions = read('data/deploy/Containerfile')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'));
  const all = (name: string): readonly string[] =>
    instructions.filter((line) => line.startsWith(`${name} `)).map((line) => line.slice(name.length + 1));

  test('has only instructions that there are, and begins with its base', () => {
    const KNOWN = /^(FROM|ENV|WORKDIR|COPY|RUN|USER|VOLUME|STOPSIGNAL|ENTRYPOINT) /;
    expect(instructions.filter((line) => !KNOWN.test(line))).toEqual([]);
    expect(instructions[0]).toMatch(/^FROM [\w./-]+:20-/);
  });

  test('copies what is there and what the program reads, and nothing secret', () => {
    const copied = all('COPY').flatMap((line) => line.split(' ').slice(0, -1));
    for (const path of copied) expect(existsSync(join(ROOT, path)), path).toBe(true);
    expect(copied).toContain('data/lead-law.json');
    expect(copied.join(' ')).not.toMatch(/\.env|key|live|^\.$/);
  });

  test('installs by the lock file without running anyone’s scripts, and runs as nobody special', () => {
    expect(all('RUN').join('\n')).toContain('npm ci --omit=dev --ignore-scripts');
    expect(all('USER')).toEqual(['node']);
    expect(instructions.findIndex((line) => line.startsWith('USER'))).toBeGreaterThan(
      instructions.findLastIndex((line) => line.startsWith('RUN')),
    );
  });

  test('writes only into its volumes, so that the rest may be read-only', () => {
    const volumes = JSON.parse(all('VOLUME')[0] ?? '[]') as string[];
    const environment = Object.fromEntries(
      all('ENV')[0]
        ?.split(' ')
        .map((pair) => pair.split('=')) ?? [],
    ) as Record<string, string>;
    for (const name of ['DATA_DIR', 'KEY_FILE'])
      expect(volumes.some((volume) => environment[name]?.startsWith(`${volume}/`))).toBe(true);
    expect(read('data/deploy/Containerfile')).toContain('--read-only');
    const entry = JSON.parse(all('ENTRYPOINT')[0] ?? '[]') as string[];
    expect(existsSync(join(ROOT, entry.at(-1) ?? ''))).toBe(true);
  });
});

test('the README says how to run it for good', () => {
  for (const name of ['data/deploy/jigwright.service', 'data/deploy/Containerfile', '--read-only'])
    expect(read('README.md')).toContain(name);
});
