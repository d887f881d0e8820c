/** How the terminal's page is laid out. */
import type { Message } from '../../src/assessment.ts';

export const heading = (text: string, line: string) => `${text}\n${line.repeat(text.length)}\n`;

export const bullet = ({ text, remedy }: Pick<Message, 'text' | 'remedy'>) =>
  `  - ${text}${remedy ? `\n    ${remedy}` : ''}`;

/** Messages under a title; nothing without any. */
export const section = (title: string, messages: readonly Pick<Message, 'text' | 'remedy'>[]) =>
  messages.length === 0 ? [] : [`${title}:`, ...messages.map(bullet), ''];

/** A sentence as a list of messages, or none. */
export const sentence = (text: string | null) => (text === null ? [] : [{ text }]);
