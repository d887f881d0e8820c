/** What the library says of a material and where it has each figure from, in words. */
import type { Material, Source } from '../../src/fabric/index.ts';

const marks = { READ: 'read', MEMORY: 'from memory, to be confirmed', PRACTICE: 'practice' } as const;

/** "ISO 10456:2007, table of design values (from memory, to be confirmed)" */
export const sourceOf = ({ mark, source }: Source) => `${source} (${marks[mark]})`;

interface Said {
  readonly words: string;
  readonly source: Source;
}

/** One sentence for each source: "Conductivity 0.022 W/(mK), density 32 kg/m³: common in the trade (practice)." */
export function sourceWords(material: Material): string[] {
  const bySource = new Map<string, string[]>();
  for (const { words, source } of saidOf(material)) {
    const own = bySource.get(sourceOf(source)) ?? [];
    bySource.set(sourceOf(source), [...own, words]);
  }
  return [...bySource].map(([source, words]) => `${capital(words.join(', '))}: ${source}.`);
}

function saidOf(material: Material): Said[] {
  if (material.kind === 'air') return [];
  const { vapour } = material;
  const held =
    vapour.kind === 'factor'
      ? { words: `vapour factor ${vapour.dry} dry and ${vapour.humid} humid`, source: vapour }
      : { words: `like ${vapour.thickness} m of air to vapour`, source: vapour };
  if (material.kind === 'sheet') return [held];
  const { conductivity, density, specificHeat } = material;
  return [
    { words: `conductivity ${conductivity.value} W/(mK)`, source: conductivity },
    { words: `density ${density.value} kg/m³`, source: density },
    { words: `specific heat ${specificHeat.value} J/(kgK)`, source: specificHeat },
    held,
  ];
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
