/** Zips made to harm: what they state is not what they hold. */
import { Inflate, strToU8, zipSync } from 'fflate';
import { expect, test, vi } from 'vitest';
import { unzipped } from '../../src/sheet/pack/unzip.ts';

const LARGEST = 100_000_000;
const CENTRAL = 0x02014b50;
/** 16 MB of nothing in a file that states 100 bytes. */
function bomb(): Uint8Array {
  const zip = zipSync({ 'house.json': new Uint8Array(1 << 24) });
  const view = new DataView(zip.buffer);
  let central = 0;
  while (view.getUint32(central, true) !== CENTRAL) central++;
  view.setUint32(central + 24, 100, true);
  return zip;
}

test('a file that holds more than it states is given up at the first step of it', () => {
  const steps = vi.spyOn(Inflate.prototype, 'push');
  const zip = bomb();
  expect(zip.length).toBeGreaterThan(16_384);
  expect(unzipped(zip, LARGEST)).toMatchObject({ kind: 'refused', problem: { code: 'pack-file-broken' } });
  expect(steps).toHaveBeenCalledTimes(1);
  steps.mockRestore();
});

test('files that state more together than may come out are not begun', () => {
  const zip = zipSync({ a: new Uint8Array(60_000_000), b: new Uint8Array(60_000_000) }, { level: 0 });
  expect(unzipped(zip, LARGEST)).toMatchObject({ kind: 'refused', problem: { code: 'pack-too-large' } });
});

test('a zip within is a file like any other: nothing of it is unpacked', () => {
  const inner = bomb();
  const zip = unzipped(zipSync({ 'inner.zip': inner, 'empty.csv': strToU8('') }), LARGEST);
  if (zip.kind === 'refused') throw new Error(zip.problem.text);
  expect(zip.files.get('inner.zip')).toEqual(inner);
  expect(zip.files.get('empty.csv')).toEqual(new Uint8Array());
});
