import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openSetFolder } from '../../src/cli/build/set-folder.js';
import { folderWith } from './test-terminal.js';

const OWN = '{ "format": "leverleaf-report" }';
/** Process ids are at most 2^22 on Linux and below on other systems: nobody has this one. */
const GONE = 2 ** 30;

function files(out: string, path = 'game'): Record<string, string> {
  return Object.fromEntries(
    readdirSync(join(out, path))
      .sort()
      .map(name => [name, readFileSync(join(out, path, name), 'utf8')]),
  );
}

async function replace(out: string, content: Record<string, string>, force = false): Promise<void> {
  const folder = await openSetFolder(out, 'game', force);
  try {
    await folder.replace(Object.entries(content).map(([name, text]) => ({ name, content: text })));
  } finally {
    await folder.close();
  }
}

describe('a set folder', () => {
  it('is replaced as a whole, with nothing left of the set before or of the work', async () => {
    const out = join(folderWith(), 'deep', 'out');
    await replace(out, { 'report.json': OWN, 'old.html': 'old' });
    await replace(out, { 'report.json': OWN, 'new.html': 'new' });
    expect(files(out)).toEqual({ 'report.json': OWN, 'new.html': 'new' });
    expect(readdirSync(out)).toEqual(['game']);
  });

  it('stays as it was when the set can’t be finished', async () => {
    const out = folderWith();
    await replace(out, { 'report.json': OWN, 'old.html': 'old' });
    const fault = replace(out, { 'report.json': OWN, '../evil.html': 'x' });
    await expect(fault).rejects.toThrow('no plain file name');
    expect(files(out)).toEqual({ 'report.json': OWN, 'old.html': 'old' });
    expect(readdirSync(out)).toEqual(['game']);
  });

  it('takes single files in, and outdated ones out, without touching others', async () => {
    const out = folderWith();
    await replace(out, { 'report.json': OWN, 'report.pdf': 'old', 'manual.html': 'good' });
    const folder = await openSetFolder(out, 'game', false);
    await folder.update([{ name: 'report.json', content: `${OWN} new` }], ['report.pdf']);
    await folder.close();
    expect(files(out)).toEqual({ 'report.json': `${OWN} new`, 'manual.html': 'good' });
    expect(readdirSync(out)).toEqual(['game']);
  });

  it('is not replaced if somebody else made it, unless forced', async () => {
    const out = folderWith();
    mkdirSync(join(out, 'game'));
    writeFileSync(join(out, 'game', 'diary.txt'), 'mine');
    await expect(replace(out, { 'report.json': OWN })).rejects.toThrow('holds files that no build has made');
    expect(files(out)).toEqual({ 'diary.txt': 'mine' });
    expect(readdirSync(out)).toEqual(['game']);
    await replace(out, { 'report.json': OWN }, true);
    expect(files(out)).toEqual({ 'report.json': OWN });
  });
});

describe('after a build was killed', () => {
  function leave(out: string, name: string, content: string): void {
    mkdirSync(join(out, name));
    writeFileSync(join(out, name, 'report.json'), OWN);
    writeFileSync(join(out, name, 'manual.html'), content);
  }

  it('unfinished work is swept away and the lock taken over', async () => {
    const out = folderWith({ '.game.lock': JSON.stringify({ pid: GONE, host: hostname() }) });
    leave(out, 'game', 'good');
    leave(out, `.game.new-${GONE}-aa`, 'half');
    leave(out, `.game.old-${GONE}-bb`, 'older');
    leave(out, `.other.new-${GONE}-aa`, 'not ours');
    const folder = await openSetFolder(out, 'game', false);
    expect(files(out)['manual.html']).toBe('good');
    await folder.close();
    expect(readdirSync(out).sort()).toEqual([`.other.new-${GONE}-aa`, 'game']);
  });

  it('a set that was caught between two places is put back', async () => {
    const out = folderWith({ '.game.lock': '' });
    leave(out, `.game.new-${GONE}-aa`, 'half');
    leave(out, `.game.old-${GONE}-bb`, 'good');
    const folder = await openSetFolder(out, 'game', false);
    await folder.close();
    expect(files(out)['manual.html']).toBe('good');
    expect(readdirSync(out)).toEqual(['game']);
  });
});

describe('what a build leaves that was killed while it took the lock', () => {
  it('is swept at once, the claim to a stale lock too; what may be at work stays', async () => {
    const dead = JSON.stringify({ pid: GONE, host: hostname() });
    const elsewhere = JSON.stringify({ pid: GONE, host: 'another-machine' });
    const out = folderWith({
      '.game.lock': dead,
      '.game.lock.aa': dead,
      '.game.lock.bb.claim': dead,
      '.game.lock.cc': elsewhere,
      '.game.lock.dd': '',
    });
    const folder = await openSetFolder(out, 'game', false);
    await folder.close();
    expect(readdirSync(out).sort()).toEqual(['.game.lock.cc', '.game.lock.dd']);
  });
});

describe('two builds at once', () => {
  it('do not both get the folder', async () => {
    const out = folderWith();
    const tries = await Promise.allSettled(
      Array.from({ length: 8 }, () => openSetFolder(out, 'game', false)),
    );
    const won = tries.flatMap(one => (one.status === 'fulfilled' ? [one.value] : []));
    expect(won).toHaveLength(1);
    for (const one of tries) {
      if (one.status === 'fulfilled') continue;
      expect(String(one.reason)).toMatch(
        /Another build of this game is at work \(process \d+ on .+\.game\.lock\)\.$/,
      );
    }
    await won[0]?.close();
    expect(readdirSync(out)).toEqual([]);
  });

  it('are kept apart across machines, where a process can’t be seen, unless forced', async () => {
    const out = folderWith({ '.game.lock': JSON.stringify({ pid: GONE, host: 'another-machine' }) });
    await expect(openSetFolder(out, 'game', false)).rejects.toThrow(`process ${GONE} on another-machine`);
    const folder = await openSetFolder(out, 'game', true);
    await folder.close();
    expect(readdirSync(out)).toEqual([]);
  });

  it('do not both take over a stale lock', async () => {
    for (let round = 0; round < 20; round++) {
      const out = folderWith({ '.game.lock': JSON.stringify({ pid: GONE, host: hostname() }) });
      const tries = await Promise.allSettled(
        Array.from({ length: 4 }, () => openSetFolder(out, 'game', false)),
      );
      const won = tries.flatMap(one => (one.status === 'fulfilled' ? [one.value] : []));
      expect(won.length).toBeLessThanOrEqual(1);
      for (const folder of won) await folder.close();
    }
  });

  it('of different games do not wait for each other', async () => {
    const out = folderWith();
    const one = await openSetFolder(out, 'game', false);
    const other = await openSetFolder(out, 'game-two', false);
    await one.close();
    await other.close();
    expect(readdirSync(out)).toEqual([]);
  });
});
