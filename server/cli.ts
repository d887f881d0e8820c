/** The `stillwarm` command: what it is asked, and which room answers. */
import { assessCommand } from './assessCommand.ts';

const usage = `Usage:
  stillwarm serve [--port 8620] [--data DIR] [--host ADDR] [--largest-mb 512]
      Opens the dashboard on this machine and prints its address.
      --port    0 for any free one (or STILLWARM_PORT)
      --data    the folder of the database; ./data when left out (or STILLWARM_DATA)
      --host    127.0.0.1, localhost or ::1
      --largest-mb  the largest file that is taken (or STILLWARM_LARGEST_MB)

  stillwarm assess FOLDER [--json] [--stage NAME]
      Reads house.json and the logs it names, and tells how well the shell holds its heat.
      --json    the assessment alone, as JSON on standard output
      --stage   only the stage of this name
`;

const [command, ...rest] = process.argv.slice(2);
if (command === 'assess') {
  process.exitCode = await assessCommand(rest, process.stdout, process.stderr);
} else if (command === 'serve') {
  // Only here, so that assessing a folder needs no database.
  const { serveCommand, toldToStop } = await import('./serveCommand.ts');
  process.exitCode = await serveCommand(rest, process.env, process.stdout, process.stderr, toldToStop());
} else {
  const asked = command === undefined || command === '--help' || command === '-h' || command === 'help';
  const out = asked ? process.stdout : process.stderr;
  if (!asked) out.write(`“${command}” is not a command.\n`);
  out.write(usage);
  process.exitCode = asked ? 0 : 2;
}
