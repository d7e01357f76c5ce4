import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { chromium } from "@playwright/test";
import { inCheckout } from "@/lib/commands/checkout";
import { Failure } from "@/lib/commands/failure";

// The programs themselves, not Debian's wrapper script, which adds options of its own. The one without a window takes a
// sixth less of the processor for the same pages.
const headless = "/usr/lib/chromium/chromium-headless-shell";
const debian = "/usr/lib/chromium/chromium";

const candidates = () => [process.env.CHROMIUM_PATH, headless, debian, playwrightOwn()];

/** A Chromium to test with: one that is here, or Debian's package, or Playwright's download. */
export function findChromium(log: (line: string) => void): string {
  const here = firstExisting();
  if (here !== undefined) return here;
  if (process.getuid?.() === 0 && runs("apt-get", ["--version"])) {
    log("Installing Debian's Chromium");
    runs("apt-get", ["update", "-q"]);
    for (const name of ["chromium-headless-shell", "chromium"])
      if (firstExisting() === undefined)
        runs("apt-get", ["install", "-y", "-q", "--no-install-recommends", name], {
          DEBIAN_FRONTEND: "noninteractive",
        });
  }
  if (firstExisting() === undefined) {
    log("Installing Playwright's Chromium");
    runs(process.execPath, [
      inCheckout("node_modules", "@playwright", "test", "cli.js"),
      "install",
      "chromium",
    ]);
  }
  const found = firstExisting();
  if (found !== undefined) return found;
  throw new Failure(
    "No Chromium was found or could be installed: install Debian's package chromium, or set CHROMIUM_PATH to one, and run the tests again.",
  );
}

function firstExisting(): string | undefined {
  return candidates().find((path) => path !== undefined && existsSync(path));
}

function playwrightOwn(): string | undefined {
  try {
    return chromium.executablePath();
  } catch {
    return undefined;
  }
}

function runs(
  program: string,
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): boolean {
  return (
    spawnSync(program, args, { env: { ...process.env, ...environment }, stdio: "ignore", timeout: 300_000 })
      .status === 0
  );
}
