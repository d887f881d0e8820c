export type { Window } from './inputs.ts';
export {
  type StateSpaceEstimate,
  type StateSpaceGiven,
  type StateSpaceNote,
  stateSpace,
} from './stateSpace.ts';
export { windowsOf } from './windows.ts';
