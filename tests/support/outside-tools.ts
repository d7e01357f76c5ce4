import { execFileSync, spawnSync } from "node:child_process";

const runs = (program: string, ...args: string[]): boolean =>
  spawnSync(program, args, { stdio: "ignore" }).status === 0;

/** Debian's poppler-utils. Where it is missing, a test that needs it is left out and says so. */
export const hasPdfsig = runs("pdfsig", "-v");
export const hasOpenssl = runs("openssl", "version");

export const withoutPdfsig = "pdfsig (poppler-utils) is not installed here";
export const withoutOpenssl = "openssl is not installed here";

/** What it prints, both ways. Throws where it ends with another code than 0. */
export const openssl = (folder: string, ...args: string[]): string =>
  execFileSync("openssl", args, { cwd: folder, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });

/** What pdfsig says of the signatures, whatever it ends with. */
export const pdfsig = (file: string): string => {
  const { stdout, stderr } = spawnSync("pdfsig", ["-nocert", file], { encoding: "utf8" });
  return `${stdout}${stderr}`;
};
