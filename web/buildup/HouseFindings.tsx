/** What the calculation noticed of the house as a whole, where the fields that it is about stand. */
import type { Design } from '../../src/fabric/index.ts';
import { say } from '../../src/words/index.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { labelled } from './labels.ts';

/** @param about the keys of house.json that they begin with */
export function HouseFindings({ design, about }: { design: Design | null; about: readonly string[] }) {
  const own = (design?.findings ?? []).filter(({ where }) =>
    about.some((key) => where?.key?.startsWith(key)),
  );
  const messages = own.map(say).map(({ code, text, remedy }) => ({
    code,
    text: labelled(text),
    ...(remedy === undefined ? {} : { remedy: labelled(remedy) }),
  }));
  return <ProblemList problems={messages} />;
}
