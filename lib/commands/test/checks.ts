import { inCheckout } from "@/lib/commands/checkout";
import { type Outcome, outcome } from "@/lib/commands/test/outcome";
import { type Ran, run } from "@/lib/commands/test/run";

const program = (...parts: string[]) => inCheckout("node_modules", ...parts);

const quiet = { show: false, minutes: 5 };

/** The types of everything, and of metrology alone under its own rules, in which it sees no DOM, node or clock. */
export async function checkTypes(): Promise<Outcome> {
  // Pages may use types that Next derives from the folders of app/.
  const typegen = await run(program("next", "dist", "bin", "next"), ["typegen"], {
    ...quiet,
    environment: { NEXT_TELEMETRY_DISABLED: "1" },
  });
  if (typegen.code !== 0) return told("types", typegen);
  const tsc = program("typescript", "bin", "tsc");
  const whole = await run(tsc, ["--noEmit", "-p", "."], quiet);
  if (whole.code !== 0) return told("types", whole);
  return told("types", await run(tsc, ["--noEmit", "-p", "lib/metrology"], quiet));
}

export async function checkLint(): Promise<Outcome> {
  const args = ["check", ".", "--colors=off", "--max-diagnostics=40"];
  return told("lint", await run(program("@biomejs", "biome", "bin", "biome"), args, quiet));
}

export async function checkBoundaries(): Promise<Outcome> {
  const args = ["--config", "tests/boundaries.cjs", "app", "lib", "prisma", "proxy.ts", "instrumentation.ts"];
  return told(
    "boundaries",
    await run(program("dependency-cruiser", "bin", "dependency-cruise.mjs"), args, quiet),
  );
}

function told(name: string, { code, output }: Ran): Outcome {
  return code === 0 ? outcome(name, 1, 0) : outcome(name, 0, 1, [`${name}:\n${output.trim()}`]);
}
