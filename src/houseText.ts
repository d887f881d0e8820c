/** The text of `house.json` -> the same text with another value: all that stays is left as the person has written it. */
import { type Node, parseTree } from 'jsonc-parser';

/**
 * @param text valid JSON
 * @param value what it holds from now on; a key that is undefined is taken out
 */
export function rewritten(text: string, value: unknown): string {
  const tree = parseTree(text);
  if (tree === undefined) return JSON.stringify(value);
  let after = '';
  let read = 0;
  for (const { from, to, put } of changes(
    { text, indent: /\n([ \t]+)/.exec(text)?.[1] ?? '' },
    tree,
    value,
  )) {
    after += text.slice(read, from) + put;
    read = to;
  }
  return after + text.slice(read);
}

interface Written {
  readonly text: string;
  /** What a line is set in by; empty where all stands in one line. */
  readonly indent: string;
}

/** What stands from an offset to another gives way to this. */
interface Change {
  readonly from: number;
  readonly to: number;
  readonly put: string;
}

/** In the order of the text. */
function* changes(written: Written, node: Node, value: unknown): Generator<Change> {
  if (isSame(plainOf(node), value)) return;
  if (node.type === 'object' && isObject(value)) yield* inObject(written, node, value);
  else if (node.type === 'array' && Array.isArray(value)) yield* inList(written, node, value);
  else yield { from: node.offset, to: endOf(node), put: newValue(written, value, setIn(written, node)) };
}

function* inObject(written: Written, node: Node, value: Readonly<Record<string, unknown>>) {
  const members = node.children ?? [];
  const keyOf = (member: Node) => String(member.children?.[0].value);
  const known = new Set(members.map(keyOf));
  const news = Object.keys(value).filter((key) => value[key] !== undefined && !known.has(key));
  const parts = members.map((member): Part => {
    const [, own] = member.children ?? [];
    const next = Object.hasOwn(value, keyOf(member)) ? value[keyOf(member)] : undefined;
    return { node: member, own, next };
  });
  const put = (base: string, brief: boolean) =>
    news.map((key) => `${JSON.stringify(key)}:${gap(written)}${newValue(written, value[key], base, brief)}`);
  yield* inParts(written, node, { parts, at: members.length, put });
}

/** What is alike at both ends of a list stays; between them one is made of the other, and the rest put in or taken out. */
function* inList(written: Written, node: Node, value: readonly unknown[]) {
  const items = node.children ?? [];
  const shorter = Math.min(items.length, value.length);
  const alike = (i: number, k: number) => isSame(plainOf(items[i]), value[k]);
  let first = 0;
  while (first < shorter && alike(first, first)) first++;
  let last = 0;
  while (last < shorter - first && alike(items.length - 1 - last, value.length - 1 - last)) last++;
  const at = items.length - last;
  const wanted = value.length - last;
  const parts = items.map((item, i): Part => {
    const next = i >= at ? value[i - at + wanted] : i < wanted ? value[i] : undefined;
    return { node: item, own: item, next };
  });
  const put = (base: string, brief: boolean) =>
    value.slice(Math.min(at, wanted), wanted).map((it) => newValue(written, it, base, brief));
  yield* inParts(written, node, { parts, at, put: at < wanted ? put : () => [] });
}

/** One of those that a bracket or brace holds. */
interface Part {
  readonly node: Node;
  /** Its value. */
  readonly own: Node | undefined;
  /** Undefined where it is taken out. */
  readonly next: unknown;
}

interface Held {
  readonly parts: readonly Part[];
  /** Where the new ones come: before this one of the parts. */
  readonly at: number;
  readonly put: (base: string, brief: boolean) => readonly string[];
}

function* inParts(written: Written, node: Node, { parts, at, put }: Held): Generator<Change> {
  const { text, indent } = written;
  const [first] = parts;
  const outer = setIn(written, node);
  const between =
    first === undefined
      ? indent === ''
        ? ''
        : `\n${outer}${indent}`
      : text.slice(node.offset + 1, first.node.offset);
  const brief = first !== undefined && !textOf(text, first.node).includes('\n');
  const news = put(between.includes('\n') ? between.slice(between.lastIndexOf('\n') + 1) : outer, brief);
  if (parts.every(({ next }) => next === undefined)) {
    const all = news.length === 0 ? '' : `${between}${news.join(`,${between}`)}${closing(between, outer)}`;
    return yield { from: node.offset + 1, to: endOf(node) - 1, put: all };
  }
  for (const [i, { node: part, own, next }] of parts.entries()) {
    if (i === at && news.length > 0 && i === 0)
      yield { from: part.offset, to: part.offset, put: `${news.join(`,${between}`)},${between}` };
    if (next !== undefined && own !== undefined) yield* changes(written, own, next);
    else if (parts.slice(0, i).some((it) => it.next !== undefined))
      yield { from: endOf(parts[i - 1].node), to: endOf(part), put: '' };
    else yield { from: part.offset, to: parts[i + 1].node.offset, put: '' };
    if (i + 1 === at && news.length > 0)
      yield { from: endOf(part), to: endOf(part), put: news.map((it) => `,${between}${it}`).join('') };
  }
}

const closing = (between: string, outer: string) =>
  between.includes('\n') ? `${between.slice(0, between.lastIndexOf('\n') + 1)}${outer}` : between;

/** In one line where those beside it are. */
function newValue({ indent }: Written, value: unknown, base: string, brief = false): string {
  if (indent === '') return JSON.stringify(value);
  const lines = JSON.stringify(value, null, indent);
  return brief ? lines.replace(/\n\s*/g, ' ') : lines.replaceAll('\n', `\n${base}`);
}

const gap = ({ indent }: Written) => (indent === '' ? '' : ' ');
const endOf = ({ offset, length }: Node) => offset + length;
const textOf = (text: string, node: Node) => text.slice(node.offset, endOf(node));

/** What the line is set in by in which something begins. */
function setIn({ text }: Written, { offset }: Node): string {
  const line = text.slice(text.lastIndexOf('\n', offset) + 1);
  return /^[ \t]*/.exec(line)?.[0] ?? '';
}

const isObject = (it: unknown): it is Readonly<Record<string, unknown>> =>
  typeof it === 'object' && it !== null && !Array.isArray(it);

/** The plain value of a part of the text; of a key that stands twice the last, as JSON has it. */
function plainOf(node: Node): unknown {
  if (node.type === 'array') return (node.children ?? []).map(plainOf);
  if (node.type !== 'object') return node.value;
  return Object.fromEntries(
    (node.children ?? []).map(({ children = [] }) => [String(children[0].value), plainOf(children[1])]),
  );
}

/** A key that is undefined is none. */
function isSame(one: unknown, other: unknown): boolean {
  if (Array.isArray(one) && Array.isArray(other))
    return one.length === other.length && one.every((it, i) => isSame(it, other[i]));
  if (isObject(one) && isObject(other))
    return [...new Set([...Object.keys(one), ...Object.keys(other)])].every((key) =>
      isSame(own(one, key), own(other, key)),
    );
  return one === other;
}

const own = (it: Readonly<Record<string, unknown>>, key: string) =>
  Object.hasOwn(it, key) ? it[key] : undefined;
