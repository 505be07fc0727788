import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createFileLog, LOG_DEFAULTS } from '../../../../main/host/log.ts';
import { writeSmallFile } from '../../../../main/host/write-small-file.ts';

let folder = '';
beforeEach(() => { folder = mkdtempSync(path.join(tmpdir(), 'culet-files-')); });
afterEach(() => { rmSync(folder, { recursive: true, force: true }); });

describe('writeSmallFile', () => {
  test('replaces the whole and leaves nothing beside it', () => {
    const file = path.join(folder, 'window.json');
    writeSmallFile(file, 'a longer first text', 'a');
    writeSmallFile(file, Uint8Array.of(0x68, 0x69), 'b');
    expect(readFileSync(file, 'utf8')).toBe('hi');
    expect(readdirSync(folder)).toEqual(['window.json']);
  });

  test('does not take over the half-written file of another', () => {
    const file = path.join(folder, 'window.json');
    writeFileSync(`${file}.a.new`, 'of another');
    expect(() => { writeSmallFile(file, 'mine', 'a'); }).toThrow(/EEXIST/);
    expect(existsSync(file)).toBe(false);
  });
});

describe('createFileLog', () => {
  const log = (fallback: (line: string) => void = () => { throw new Error('not expected'); }) => createFileLog(folder, () => new Date('2026-11-25T08:00:00Z'), fallback);
  const file = () => path.join(folder, LOG_DEFAULTS.folder, LOG_DEFAULTS.file);

  test('writes one object on each line', () => {
    log().info('slow call', { name: 'cases.list', ms: 80 });
    log().error('fault', { stack: 'Error: a\nb' });
    expect(readFileSync(file(), 'utf8').trimEnd().split('\n').map((line) => JSON.parse(line) as unknown)).toEqual([
      { at: '2026-11-25T08:00:00.000Z', level: 'info', message: 'slow call', name: 'cases.list', ms: 80 },
      { at: '2026-11-25T08:00:00.000Z', level: 'error', message: 'fault', stack: 'Error: a\nb' },
    ]);
  });

  test('starts anew when it is full and keeps the one before', () => {
    log().info('first');
    writeFileSync(file(), 'x'.repeat(LOG_DEFAULTS.maxBytes + 1));
    log().info('second');
    expect(readFileSync(file(), 'utf8')).toContain('second');
    expect(readFileSync(path.join(folder, LOG_DEFAULTS.folder, LOG_DEFAULTS.older), 'utf8')).toMatch(/^x+$/);
  });

  test('a folder that cannot be written is no reason to stop', () => {
    writeFileSync(path.join(folder, LOG_DEFAULTS.folder), 'a file where the folder should be');
    const lines: string[] = [];
    log((line) => { lines.push(line); }).info('said elsewhere');
    expect(lines).toHaveLength(1);
  });
});
