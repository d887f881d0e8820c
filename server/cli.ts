/** The `stillwarm` command: what it is asked, and which room answers. */
import { assessCommand } from './assessCommand.ts';

const usage = `Usage:
  stillwarm assess FOLDER [--json] [--stage NAME]
      Reads house.json and the logs it names, and tells how well the shell holds its heat.
      --json    the assessment alone, as JSON on standard output
      --stage   only the stage of this name
`;

const [command, ...rest] = process.argv.slice(2);
if (command === 'assess') {
  process.exitCode = await assessCommand(rest, process.stdout, process.stderr);
} else {
  const asked = command === undefined || command === '--help' || command === '-h' || command === 'help';
  const out = asked ? process.stdout : process.stderr;
  if (!asked) out.write(`“${command}” is not a command.\n`);
  out.write(usage);
  process.exitCode = asked ? 0 : 2;
}
