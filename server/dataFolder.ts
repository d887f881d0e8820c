/** Where the database lies, unless a command is told otherwise. */
export const dataFolder = (
  asked: string | undefined,
  env: Readonly<Record<string, string | undefined>>,
): string => asked ?? env.STILLWARM_DATA ?? './data';
