/** A tagged PDF as Chromium prints it, read back: what stands on which page, and its text. No reader for other PDFs. */
import { inflateSync } from 'node:zlib';

/** An element of the document as the PDF has it: "Table", "TR", "TH", "Figure", "P" … */
export interface Printed {
  readonly kind: string;
  /** Counted from 1; those on which something of it is drawn, its children's too. */
  readonly pages: readonly number[];
  /** As drawn, its children's too, without any white space. */
  readonly text: string;
  readonly children: readonly Printed[];
}

export interface PrintedDocument extends Printed {
  readonly pageCount: number;
}

/** @throws Error when the PDF has no tags */
export function readPrinted(pdf: Buffer): PrintedDocument {
  const objects = objectsOf(pdf);
  const of = (id: string) => objects.get(id)?.text ?? '';
  const pageIds = pagesUnder(
    of(/\/Type \/Catalog[\s\S]*?\/Pages (\d+) 0 R/.exec(allText(objects))?.[1] ?? ''),
  );
  const drawn = new Map(pageIds.map((id) => [id, marksOf(id)]));
  const root = /\/Type \/StructTreeRoot\s*\/K (\d+) 0 R/.exec(allText(objects))?.[1];
  if (root === undefined) throw new Error('this PDF has no tags');
  return { ...elementOf(root), pageCount: pageIds.length };

  function pagesUnder(node: string): string[] {
    const kids = /\/Kids \[([^\]]*)\]/.exec(node)?.[1] ?? '';
    return refs(kids).flatMap((id) => (of(id).includes('/Kids') ? pagesUnder(of(id)) : [id]));
  }

  /** The text of each marked content of a page. */
  function marksOf(page: string): Map<number, string> {
    const contents = /\/Contents (\d+) 0 R/.exec(of(page))?.[1] ?? '';
    const marks = new Map<number, string>();
    const open: (number | null)[] = [];
    let font: ReadonlyMap<number, string> = new Map();
    const tokens = /\/MCID (\d+)\s*>>\s*BDC|(BMC|BDC)\b|(EMC)\b|\/F(\d+) [\d.]+ Tf|<([0-9A-F]+)>/g;
    for (const [, mark, begin, end, fontId, glyphs] of (objects.get(contents)?.stream ?? '').matchAll(
      tokens,
    )) {
      if (mark !== undefined) {
        open.push(Number(mark));
        if (!marks.has(Number(mark))) marks.set(Number(mark), '');
      } else if (begin !== undefined) open.push(null);
      else if (end !== undefined) open.pop();
      else if (fontId !== undefined) font = glyphsOf(fontId);
      else if (glyphs !== undefined) {
        const mark = open.findLast((it) => it !== null);
        if (mark == null) continue;
        const text = (glyphs.match(/.{4}/g) ?? [])
          .map((it) => font.get(Number.parseInt(it, 16)) ?? '')
          .join('');
        marks.set(mark, `${marks.get(mark) ?? ''}${plain(text)}`);
      }
    }
    return marks;
  }

  function glyphsOf(font: string): ReadonlyMap<number, string> {
    const map = objects.get(/\/ToUnicode (\d+) 0 R/.exec(of(font))?.[1] ?? '')?.stream ?? '';
    const glyphs = new Map<number, string>();
    for (const [, table] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
      for (const [, first, last, to] of table.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g))
        for (let i = hex(first); i <= hex(last); i++)
          glyphs.set(i, String.fromCodePoint(hex(to) + i - hex(first)));
    for (const [, table] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
      for (const [, glyph, to] of table.matchAll(/<(\w+)> <(\w+)>/g))
        glyphs.set(hex(glyph), Buffer.from(to, 'hex').swap16().toString('utf16le'));
    return glyphs;
  }

  function elementOf(id: string): Printed {
    const node = of(id).replace(/\/Alt \((?:\\.|[^\\)])*\)/g, '');
    const own = /\/Pg (\d+) 0 R/.exec(node)?.[1];
    const kids = /\/K (\[[\s\S]*?\](?=[\s>])|<<[\s\S]*?>>|\d+ 0 R|\d+)/.exec(node)?.[1] ?? '';
    const children: Printed[] = [];
    for (const [, page, mark, child, number] of kids.matchAll(
      /<<[^>]*?\/Pg (\d+) 0 R[^>]*?\/MCID (\d+)[^>]*>>|(\d+) 0 R|(\d+)/g,
    ))
      children.push(
        child === undefined ? drawnMark(page ?? own ?? '', Number(mark ?? number)) : elementOf(child),
      );
    return {
      kind: /\/S \/(\w+)/.exec(node)?.[1] ?? '',
      pages: [...new Set(children.flatMap(({ pages }) => pages))],
      text: children.map(({ text }) => text).join(''),
      children,
    };
  }

  function drawnMark(page: string, mark: number): Printed {
    const text = drawn.get(page)?.get(mark);
    const pages = text === undefined ? [] : [pageIds.indexOf(page) + 1];
    return { kind: 'mark', pages, text: text ?? '', children: [] };
  }
}

/** The element and all in it that are of a kind, in the order of the document. */
export const allOf = (it: Printed, kind: string): Printed[] => [
  ...(it.kind === kind ? [it] : []),
  ...it.children.flatMap((child) => allOf(child, kind)),
];

/** Without white space and with "fi" as two letters. */
const plain = (text: string) =>
  text.replace(/\s/g, '').replace(/[\uFB00-\uFB04]/g, (it) => it.normalize('NFKD'));

const refs = (text: string) => [...text.matchAll(/(\d+) 0 R/g)].map(([, id]) => id);
const hex = (digits: string) => Number.parseInt(digits, 16);

interface PdfObject {
  readonly text: string;
  readonly stream: string;
}
const allText = (objects: ReadonlyMap<string, PdfObject>) =>
  [...objects.values()].map(({ text }) => text).join('\n');

function objectsOf(pdf: Buffer): ReadonlyMap<string, PdfObject> {
  const all = pdf.toString('latin1');
  const objects = new Map<string, PdfObject>();
  const heads = /(?:^|\n)(\d+) 0 obj\n/g;
  for (let head = heads.exec(all); head !== null; head = heads.exec(all)) {
    const begin = heads.lastIndex;
    const text = all.slice(begin, all.indexOf('endobj', begin));
    const stream = /^<<[^>]*?\/Length (\d+)[^>]*>>\s*stream\r?\n/.exec(text);
    if (stream === null) {
      objects.set(head[1], { text, stream: '' });
      continue;
    }
    const from = begin + stream[0].length;
    const bytes = pdf.subarray(from, from + Number(stream[1]));
    const packed = stream[0].includes('/FlateDecode');
    objects.set(head[1], {
      text: stream[0],
      stream: (packed ? inflateSync(bytes) : bytes).toString('latin1'),
    });
    heads.lastIndex = from + bytes.length;
  }
  return objects;
}
