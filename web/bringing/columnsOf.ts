/** The columns of one file of a house that is being begun. */
import type { BringingPreview } from '../../server/api/shapes.ts';
import { placementsOf } from './answers.ts';
import type { Begun } from './begun.ts';
import { type ColumnShown, columnsShown } from './columns.ts';

export function columnsOf(file: string, { first, draft }: Begun, { files }: BringingPreview): ColumnShown[] {
  const now = files.find(({ imported }) => imported.file === file)?.imported.understood;
  if (!now) return [];
  return columnsShown(now, first.get(file)?.understood ?? now, placementsOf(file, draft));
}
