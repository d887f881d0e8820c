/**
 * Every code's sentence, in plain English with the figures in it. A code without a sentence does not compile.
 * Read them aloud before you change them.
 */
import type { Message, Where } from '../assessment.ts';
import type { NightReason, NightsNote } from '../cooling/index.ts';
import type { FabricFinding, MoistureFinding } from '../fabric/index.ts';
import type {
  AgreementNote,
  AnnualNote,
  Cause,
  ChangeNote,
  GapNote,
  LookNote,
  LooksNote,
  NextStep,
  StageNote,
} from '../gap/index.ts';
import type { HeatLossNote, SurfaceNote } from '../heatloss/index.ts';
import type { ApartNote } from '../heatloss/network/leakageApart.ts';
import type { HouseProblem } from '../houseFile.ts';
import type { LogFinding } from '../logs/index.ts';
import type { RecordFinding } from '../record/index.ts';
import { aboutAgreement } from './aboutAgreement.ts';
import { aboutApart } from './aboutApart.ts';
import { aboutChange } from './aboutChange.ts';
import { aboutDesign } from './aboutDesign.ts';
import { aboutGap } from './aboutGap.ts';
import { aboutHeatLoss } from './aboutHeatLoss.ts';
import { aboutHouse } from './aboutHouse.ts';
import { aboutLoggers } from './aboutLoggers.ts';
import { aboutLogs } from './aboutLogs.ts';
import { aboutMoisture } from './aboutMoisture.ts';
import { aboutNights } from './aboutNights.ts';
import { aboutStages } from './aboutStages.ts';
import { aboutSurfaces } from './aboutSurfaces.ts';
import { aboutWhereToLook } from './aboutWhereToLook.ts';
import { aboutNextSteps } from './nextSteps.ts';
import type { Sentence, SentencesFor } from './sentence.ts';

export type Finding =
  | HouseProblem
  | LogFinding
  | RecordFinding
  | FabricFinding
  | MoistureFinding
  | NightReason
  | NightsNote
  | HeatLossNote
  | SurfaceNote
  | AgreementNote
  | Cause
  | GapNote
  | ApartNote
  | StageNote
  | ChangeNote
  | AnnualNote
  | NextStep
  | LookNote
  | LooksNote;

const sentences: SentencesFor<Finding> = {
  ...aboutHouse,
  ...aboutLogs,
  ...aboutLoggers,
  ...aboutDesign,
  ...aboutMoisture,
  ...aboutNights,
  ...aboutHeatLoss,
  ...aboutSurfaces,
  ...aboutAgreement,
  ...aboutGap,
  ...aboutApart,
  ...aboutStages,
  ...aboutChange,
  ...aboutNextSteps,
  ...aboutWhereToLook,
};

/** The message for a finding: its code, its sentence, and where it was found. */
export function say(finding: Finding): Message {
  const sentence = sentences[finding.code] as (it: Finding) => Sentence;
  const where: Where | undefined = 'where' in finding ? finding.where : undefined;
  return { code: finding.code, ...sentence(finding), ...(where === undefined ? {} : { where }) };
}
