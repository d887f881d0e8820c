/** What is dropped anywhere on a page, and what is pasted while no field has the cursor. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Message } from '../../src/assessment.ts';
import { droppedFiles, NotOpened } from './droppedFiles.ts';
import type { PathOf } from './houseFolder.ts';
import { isLog } from './pastedLog.ts';

export interface Taking {
  readonly send: (found: readonly PathOf<File>[]) => void;
  readonly complain: (problem: Message) => void;
  /** Lines that were pasted; without it they are left alone. */
  readonly offer?: (text: string) => void;
}

/** @returns whether something is being held over the page */
export function useDrop(taking: Taking): boolean {
  const [over, setOver] = useState(false);
  const latest = useRef(taking);
  latest.current = taking;
  useEffect(() => {
    const take = (transfer: DataTransfer) => {
      const { send, complain } = latest.current;
      droppedFiles(transfer).then(
        (found) => (found.length === 0 ? undefined : send(found)),
        (thrown) => complain(notOpened(thrown)),
      );
    };
    const hold = (event: DragEvent) => {
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      event.preventDefault();
      setOver(false);
      if (event.dataTransfer !== null) take(event.dataTransfer);
    };
    const paste = (event: ClipboardEvent) => {
      const { clipboardData, target } = event;
      if (clipboardData === null || isField(target)) return;
      // A table that is copied may come with its own picture: the lines are what is wanted.
      const text = clipboardData.getData('text/plain');
      const { offer } = latest.current;
      if (isLog(text)) offer?.(text);
      else take(clipboardData);
    };
    addEventListener('dragover', hold);
    addEventListener('dragleave', leave);
    addEventListener('drop', drop);
    addEventListener('paste', paste);
    return () => {
      removeEventListener('dragover', hold);
      removeEventListener('dragleave', leave);
      removeEventListener('drop', drop);
      removeEventListener('paste', paste);
    };
  }, []);
  return over;
}

/** What is pasted there is typed there. */
const isField = (target: EventTarget | null) =>
  target instanceof Element && target.closest('input:not([type=file]), textarea, select') !== null;

const notOpened = (thrown: unknown): Message => ({
  code: 'file-not-opened',
  text: thrown instanceof NotOpened ? thrown.message : 'What was dropped could not be opened.',
  remedy: 'See whether this file may be read and is not held by another program, then drop it again.',
});
