/** Something the person at the terminal can understand and act on: told in one line, exit code 1, no stack. */
export class Failure extends Error {
  override readonly name = "Failure";
}

/** Runs a command's main function; a Failure becomes its one line, anything else keeps its stack. */
export async function runCommand(main: () => Promise<number | undefined>): Promise<void> {
  try {
    process.exitCode = (await main()) ?? 0;
  } catch (error) {
    process.exitCode = 1;
    process.stderr.write(error instanceof Failure ? `${error.message}\n` : `${stackOf(error)}\n`);
  }
}

function stackOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
