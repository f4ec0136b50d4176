import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** An empty folder for one test. */
export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'jig-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
