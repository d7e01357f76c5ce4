import { spawnSync } from "node:child_process";

/** Programs that check our documents from outside, by the Debian package that brings them. */
const packages = [
  {
    name: "poppler-utils",
    programs: [
      ["pdfsig", "-v"],
      ["pdftoppm", "-v"],
    ],
  },
  { name: "openssl", programs: [["openssl", "version"]] },
] as const;

/**
 * Where they are missing and this is Debian and root, they are installed; elsewhere the tests that need one are left
 * out and say so.
 */
export function ensureTools(log: (line: string) => void): void {
  const missing = packages.filter(({ programs }) => !programs.every(isHere)).map(({ name }) => name);
  if (missing.length === 0) return;
  if (process.getuid?.() !== 0 || !isHere(["apt-get", "--version"])) {
    log(
      `Without ${missing.join(" and ")}: tests that need them are left out (apt-get install ${missing.join(" ")})`,
    );
    return;
  }
  log(`Installing Debian's ${missing.join(" and ")}`);
  const quiet = { stdio: "ignore", timeout: 300_000 } as const;
  spawnSync("apt-get", ["update", "-q"], quiet);
  spawnSync("apt-get", ["install", "-y", "-q", "--no-install-recommends", ...missing], {
    ...quiet,
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
  });
}

function isHere([program, ...args]: readonly [string, ...string[]]): boolean {
  return spawnSync(program, args, { stdio: "ignore" }).status === 0;
}
