/** Which convention for timber fits an element: by what its members are called, else by the flow of heat. */
import type { Framing } from '../../src/fabric/index.ts';
import type { Bridge, DesignElement } from '../../src/house.ts';

export function framingOf({ buildUp, to }: Pick<DesignElement, 'buildUp' | 'to'>, { name }: Bridge): Framing {
  if (/rafter/i.test(name)) return 'rafters';
  if (/stud/i.test(name)) return 'timber-frame wall';
  const facing = buildUp?.facing ?? 'across';
  if (facing === 'down') return 'floor joists';
  if (facing === 'across') return 'timber-frame wall';
  return /joist/i.test(name) || to === 'void' ? 'ceiling joists' : 'rafters';
}
