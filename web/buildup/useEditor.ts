/** The house as it is being changed: each edit tried, taken or refused, undone and made again. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { House } from '../../src/house.ts';
import { begin, edited, type History, redone, undone } from './history.ts';
import { type Edit, tried } from './tried.ts';

export interface Editor {
  readonly house: House;
  /**
   * An edit by typing in a field, which says itself what is refused.
   *
   * @param at names the field
   * @returns why it is refused; nothing when it is taken
   */
  readonly type: (at: string, edit: Edit) => readonly string[];
  /** An edit by a button. @returns whether it was taken */
  readonly act: (edit: Edit) => boolean;
  /** Why the last button's edit was refused. */
  readonly refused: readonly string[];
  readonly undo: () => void;
  readonly redo: () => void;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

export function useEditor(stored: House): Editor {
  const [history, setHistory] = useState(() => begin(stored));
  const [refused, setRefused] = useState<readonly string[]>([]);
  /** What the next edit begins from, also before the page is drawn again. */
  const latest = useRef(history);
  const set = (next: History<House>) => {
    latest.current = next;
    setRefused([]);
    setHistory(next);
  };
  const attempt = (edit: Edit, at: string | null): readonly string[] => {
    const outcome = tried(latest.current.present, edit);
    if (outcome.kind === 'refused') return outcome.reasons;
    set(edited(latest.current, outcome.house, at));
    return [];
  };
  const undo = () => set(undone(latest.current));
  const redo = () => set(redone(latest.current));
  useUndoKeys(undo, redo);
  return {
    house: history.present,
    type: (at, edit) => attempt(edit, at),
    act(edit) {
      const reasons = attempt(edit, null);
      setRefused(reasons);
      return reasons.length === 0;
    },
    refused,
    undo,
    redo,
    canUndo: history.past.length > 0,
    canRedo: history.future.length > 0,
  };
}

/** Ctrl+Z and Ctrl+Shift+Z (or Ctrl+Y), in a field as well: what is typed there is an edit like any other. */
function useUndoKeys(undo: () => void, redo: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) redo();
      else undo();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  });
}
