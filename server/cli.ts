/** The `stillwarm` command: what it is asked, and which room answers. */
import { assessCommand } from './assessCommand.ts';

const usage = `Usage:
  stillwarm serve [--port 8620] [--data DIR] [--host ADDR] [--origin URL] [--watch DIR]
                  [--largest-mb 512]
      Opens the dashboard on this machine and prints its address.
      --port    0 for any free one (or STILLWARM_PORT)
      --data    the folder of the database; ./data when left out (or STILLWARM_DATA)
      --host    127.0.0.1 when left out: this machine alone. 0.0.0.0 serves others too, at every address of this
                machine; they need the passphrase (STILLWARM_PASSPHRASE, or stillwarm passphrase)
      --origin  the public address of a proxy with TLS before it, such as https://houses.example
      --watch   a folder in which logs appear, as DIR/HOUSE/log.csv: what is complete is read into the house of that
                name, or into a new one where DIR/HOUSE holds a house.json. Nothing in it is changed.
      --largest-mb  the largest file that is taken (or STILLWARM_LARGEST_MB)

  stillwarm passphrase [--data DIR]
      Asks for the passphrase that others need, and keeps its salted hash in the data folder. Whoever has signed in
      with another one has to do so again.

  stillwarm backup FILE [--data DIR] [--overwrite]
      Puts everything that the dashboard holds into one file, also while it runs, and checks it.

  stillwarm restore FILE [--data DIR]
      Puts a backup in the place of what the data folder holds, which is put aside. The dashboard must not run.

  stillwarm assess FOLDER [--json] [--stage NAME]
      Reads house.json and the logs it names, and tells how well the shell holds its heat.
      --json    the assessment alone, as JSON on standard output
      --stage   only the stage of this name

  stillwarm sheet FOLDER [--out FILE] [--first-page FILE] [--pack FILE] [--photo FILE]... [--date DATE]
      Makes what is handed over, from the same folder; one of the first three at least.
      --out     the handover sheet, one HTML file that opens and prints anywhere
      --first-page  its first page alone, for the people who live there
      --pack    a zip of the sheet, the house folder, the assessment and all hashes
      --photo   a JPEG or PNG of at most 10 MB, to be shown on the sheet
      --date    the day on the sheet, as 2027-02-14; today when left out

  stillwarm sheet --check PACK
      Tells whether a pack is as it was made, and whether its assessment comes out again.
`;

const [command, ...rest] = process.argv.slice(2);
if (command === 'assess') {
  process.exitCode = await assessCommand(rest, process.stdout, process.stderr);
} else if (command === 'sheet') {
  const { sheetCommand } = await import('./sheetCommand.ts');
  process.exitCode = await sheetCommand(rest, new Date(), process.stdout, process.stderr);
} else if (command === 'passphrase') {
  const { passphraseCommand } = await import('./passphraseCommand.ts');
  process.exitCode = await passphraseCommand(
    rest,
    process.env,
    process.stdin,
    process.stdout,
    process.stderr,
  );
} else if (command === 'backup') {
  const { backupCommand } = await import('./backupCommand.ts');
  process.exitCode = backupCommand(rest, process.env, process.stdout, process.stderr);
} else if (command === 'restore') {
  const { restoreCommand } = await import('./restoreCommand.ts');
  process.exitCode = restoreCommand(rest, process.env, new Date(), process.stdout, process.stderr);
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
