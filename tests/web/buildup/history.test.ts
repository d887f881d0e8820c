import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { begin, edited, redone, undone } from '../../../web/buildup/history.ts';

describe('edits', () => {
  test('that are typed in one field are taken back as one', () => {
    const typed = edited(edited(edited(begin('1'), '12', 'thickness'), '120', 'thickness'), 'roof', 'name');
    expect(undone(typed).present).toBe('120');
    expect(undone(undone(typed)).present).toBe('1');
  });

  test('by two buttons in a row are taken back one by one', () => {
    const pressed = edited(edited(begin(0), 1, null), 2, null);
    expect(undone(pressed).present).toBe(1);
  });

  test('typed in the same field after an undo are an edit of their own', () => {
    const again = edited(undone(edited(edited(begin(0), 1, 'a'), 2, 'b')), 3, 'a');
    expect(undone(again).present).toBe(1);
  });

  test('leave nothing to be made again once another edit was made', () => {
    const other = edited(undone(edited(begin(0), 1, null)), 2, null);
    expect(redone(other)).toBe(other);
  });

  test('are neither taken back nor made again where there are none', () => {
    const fresh = begin(0);
    expect(undone(fresh)).toBe(fresh);
    expect(redone(fresh)).toBe(fresh);
  });
});

test('whatever is edited, taking all of it back gives what was, and making it again what is', () => {
  const edit = fc.record({ value: fc.integer(), at: fc.constantFrom(null, 'a', 'b') });
  fc.assert(
    fc.property(fc.integer(), fc.array(edit, { maxLength: 30 }), (first, edits) => {
      let history = begin(first);
      for (const { value, at } of edits) history = edited(history, value, at);
      const last = history.present;
      const steps = history.past.length;
      for (let i = 0; i < steps; i++) history = undone(history);
      expect(history.present).toBe(first);
      for (let i = 0; i < steps; i++) history = redone(history);
      expect(history.present).toBe(last);
    }),
  );
});
