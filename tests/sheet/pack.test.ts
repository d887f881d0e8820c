import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };
import { assessCommand } from '../../server/assessCommand.ts';
import { sheetCommand } from '../../server/sheetCommand.ts';
import { sha256 } from '../../server/store/sha256.ts';
import { readHashList } from '../../src/sheet/pack/hashList.ts';
import { readPack } from '../../src/sheet/pack/readPack.ts';
import { houseFolder } from '../server/inventedHouse.ts';
import { sampleFolder, writeFolder } from './inputs.ts';

let folder: string;
let pack: Uint8Array;
const read = (bytes: Uint8Array, largest?: number) => readPack(bytes, async (it) => sha256(it), OWN, largest);
const OWN = `Stillwarm ${packageFile.version}`;

const run = (...args: string[]) => runAt('2027-02-14T12:00Z', ...args);

async function runAt(now: string, ...args: string[]) {
  const said = { out: '', err: '' };
  const code = await sheetCommand(
    args,
    new Date(now),
    { write: (text) => (said.out += text) },
    { write: (text) => (said.err += text) },
  );
  return { code, ...said };
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'stillwarm-pack-'));
  await writeFolder(folder, houseFolder);
  expect(await run(folder, '--pack', join(folder, 'pack.zip'))).toMatchObject({ code: 0, err: '' });
  pack = await readFile(join(folder, 'pack.zip'));
}, 120_000);
afterAll(() => rm(folder, { recursive: true }));

/** The same pack with a change to its files. */
const changed = (change: (files: Record<string, Uint8Array>) => void) => {
  const files = unzipSync(pack);
  change(files);
  return zipSync(files);
};
const text = (it: string) => new TextEncoder().encode(it);
const problems = async (bytes: Uint8Array, largest?: number) => {
  const reading = await read(bytes, largest);
  return reading.kind === 'refused' ? reading.problems.map(({ code, where }) => [code, where?.file]) : [];
};

describe('a pack', () => {
  test('comes back as the house folder it was made of, byte for byte', async () => {
    const reading = await read(pack);
    if (reading.kind !== 'pack') throw new Error('refused');
    const texts = Array.from(reading.files, ([name, it]) => [
      name,
      new TextDecoder('utf-8', { ignoreBOM: true }).decode(it),
    ]);
    expect(Object.fromEntries(texts)).toEqual(houseFolder);
    expect(reading.software).toMatch(/^Stillwarm \d/);
  });

  test('comes back from within one folder too', async () => {
    const inside = Object.fromEntries(
      Object.entries(unzipSync(pack)).map(([name, it]) => [`Our house/${name}`, it]),
    );
    expect((await read(zipSync(inside))).kind).toBe('pack');
  });

  test('lists the hash of every file but the list itself', async () => {
    const files = unzipSync(pack);
    const list = readHashList(new TextDecoder().decode(files['handover/hashes.txt']));
    expect([...(list ?? new Map()).keys()].toSorted()).toEqual(
      Object.keys(files)
        .filter((name) => name !== 'handover/hashes.txt')
        .toSorted(),
    );
  });

  test('has the same bytes whenever it is made on the same day, and on another day but for that day', async () => {
    const made = async (name: string, now: string, date: string) => {
      const path = join(folder, name);
      expect((await runAt(now, folder, '--pack', path, '--date', date)).code).toBe(0);
      return readFile(path);
    };
    const first = await made('one.zip', '2027-02-14T12:00Z', '2027-02-14');
    expect(first.equals(await made('two.zip', '2031-07-01T03:04:05Z', '2027-02-14'))).toBe(true);
    const [before, after] = [first, await made('three.zip', '2027-02-14T12:00Z', '2030-05-06')].map((it) =>
      unzipSync(it),
    );
    const other = Object.keys(before).filter((name) => sha256(before[name]) !== sha256(after[name]));
    expect(other.toSorted()).toEqual([
      'README.txt',
      'handover/first-page.html',
      'handover/hashes.txt',
      'handover/pack.json',
      'handover/sheet.html',
    ]);
    const lines = (it: Uint8Array) => new TextDecoder().decode(it).split('\n');
    for (const name of other.filter((it) => it !== 'handover/hashes.txt')) {
      const differing = lines(after[name]).filter((line, i) => line !== lines(before[name])[i]);
      expect([name, differing.length]).toEqual([name, 1]);
    }
  });

  test('says how it is worked out again, and by which version', () => {
    const readme = new TextDecoder().decode(unzipSync(pack)['README.txt']);
    expect(readme).toContain('stillwarm assess . --json');
    expect(readme).toMatch(/by Stillwarm \d+\.\d+\.\d+/);
  });
});

describe('a pack that was tampered with is told by its hashes', () => {
  test.each([
    'in.csv',
    'logs/out.csv',
    'house.json',
    'handover/sheet.html',
    'handover/assessment.json',
    'README.txt',
  ])('%s was changed', async (name) => {
    const bytes = changed((files) => {
      files[name] = text(`${new TextDecoder().decode(files[name])} `);
    });
    expect(await problems(bytes)).toEqual([['pack-file-changed', name]]);
  });

  test('a file was taken out, another put in', async () => {
    const bytes = changed((files) => {
      delete files['in.csv'];
      files['extra.csv'] = text('1');
    });
    expect(await problems(bytes)).toEqual([
      ['pack-file-missing', 'in.csv'],
      ['pack-file-added', 'extra.csv'],
    ]);
  });

  test('its list of hashes was taken out', async () => {
    const bytes = changed((files) => {
      delete files['handover/hashes.txt'];
    });
    expect(await problems(bytes)).toEqual([['pack-file-missing', 'handover/hashes.txt']]);
  });

  test('it says what it is no more', async () => {
    const bytes = changed((files) => {
      delete files['handover/pack.json'];
    });
    expect(await problems(bytes)).toEqual([['pack-file-missing', 'handover/pack.json']]);
  });
});

describe('a zip is refused as a whole', () => {
  test.each(['../evil.csv', 'a/../../evil.csv', '/etc/evil', 'C:evil.csv', 'a\\evil.csv'])(
    'for a path that leads out of its folder: %s',
    async (name) => {
      const bytes = changed((files) => {
        files[name] = text('1');
      });
      expect(await problems(bytes)).toEqual([['pack-path-refused', undefined]]);
    },
  );

  test('when a newer version laid it out, which is named', async () => {
    const bytes = changed((files) => {
      files['handover/pack.json'] = text('{"pack": 2, "software": "Stillwarm 9.0.0"}');
    });
    const reading = await read(bytes);
    expect(reading.kind === 'refused' && reading.problems[0]).toMatchObject({ code: 'pack-newer' });
    expect(JSON.stringify(reading)).toContain('Stillwarm 9.0.0');
    expect(JSON.stringify(reading)).toContain(OWN);
  });

  test('when it has no house, is cut off, is no zip, or would be too large', async () => {
    expect(await problems(zipSync({ 'a.csv': text('1') }))).toEqual([['pack-no-house', undefined]]);
    expect(await problems(pack.subarray(0, pack.length - 40))).toEqual([['pack-no-zip', undefined]]);
    expect(await problems(text('no zip at all, whatever its name'))).toEqual([['pack-no-zip', undefined]]);
    expect(await problems(pack, 1000)).toEqual([['pack-too-large', undefined]]);
  });
});

test('a plain zip of a house folder is taken too, as one that nothing vouches for', async () => {
  const files = Object.fromEntries(Object.entries(houseFolder).map(([name, it]) => [name, text(it)]));
  expect(await read(zipSync(files))).toMatchObject({ kind: 'pack', software: null });
});

describe('a pack of another version that is laid out as this one knows', () => {
  const of = (software: string) => {
    const files = unzipSync(pack);
    const name = 'handover/pack.json';
    const other = text(JSON.stringify({ pack: 1, software, made: '2027-02-14' }));
    const list = new TextDecoder().decode(files['handover/hashes.txt']);
    files['handover/hashes.txt'] = text(list.replace(sha256(files[name]), sha256(other)));
    files[name] = other;
    return zipSync(files);
  };

  test.each([
    ['Stillwarm 9.0.0', 'pack-newer-version'],
    ['Stillwarm 0.10.0', 'pack-newer-version'],
    ['Stillwarm 0.2.9', 'pack-other-version'],
    ['something else', 'pack-other-version'],
  ])('%s is taken, and both versions are told with what to do', async (software, code) => {
    const reading = await read(of(software));
    if (reading.kind !== 'pack') throw new Error('refused');
    expect(reading.otherVersion).toMatchObject({ code, remedy: expect.stringContaining(software) });
    expect(reading.otherVersion?.text).toContain(OWN);
    expect(reading.otherVersion?.text).toContain(software);
  });

  test('is told by the command line too, whatever comes of the figures', async () => {
    await writeFile(join(folder, 'other.zip'), of('Stillwarm 9.0.0'));
    const { code, out } = await run('--check', join(folder, 'other.zip'));
    expect(out).toContain('made by Stillwarm 9.0.0, which is newer');
    expect(out).toContain('the same assessment');
    expect(code).toBe(0);
  });

  test('nothing is told of one of this version', async () => {
    expect(await read(pack)).toMatchObject({ otherVersion: null });
  });
});

describe('a second opinion', () => {
  test('on an invented house is the packed one, to the last digit', async () => {
    const { code, out } = await run('--check', join(folder, 'pack.zip'));
    expect(out).toContain('the same assessment, to the last digit');
    expect(code).toBe(0);
  });

  test('by the one command that the pack names prints the packed assessment, byte for byte', async () => {
    const unpacked = join(folder, 'unpacked');
    const files = unzipSync(pack);
    await writeFolder(
      unpacked,
      Object.fromEntries(Object.entries(files).map(([name, it]) => [name, new TextDecoder().decode(it)])),
    );
    let printed = '';
    const command =
      /stillwarm (assess \. --json)/.exec(new TextDecoder().decode(files['README.txt']))?.[1] ?? '';
    const [, ...args] = command.replace('.', unpacked).split(' ');
    await assessCommand(args, { write: (it) => (printed += it) }, { write: () => {} });
    expect(printed).toBe(new TextDecoder().decode(files['handover/assessment.json']));
  });

  test('on the demonstration house is the packed one, to the last digit', async () => {
    const path = join(folder, 'demonstration.zip');
    expect((await run(sampleFolder, '--pack', path)).code).toBe(0);
    expect(await run('--check', path)).toMatchObject({ code: 0, err: '' });
  }, 240_000);

  test('on changed figures with hashes to match says that they differ', async () => {
    const files = unzipSync(pack);
    const name = 'handover/assessment.json';
    const other = text(new TextDecoder().decode(files[name]).replace('"Test house"', '"Best house"'));
    const list = new TextDecoder().decode(files['handover/hashes.txt']);
    files['handover/hashes.txt'] = text(list.replace(sha256(files[name]), sha256(other)));
    files[name] = other;
    await writeFile(join(folder, 'forged.zip'), zipSync(files));
    const { code, out } = await run('--check', join(folder, 'forged.zip'));
    expect(out).toContain('the assessment differs from the packed one');
    expect(code).toBe(1);
  });
});
